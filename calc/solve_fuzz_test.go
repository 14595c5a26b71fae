package calc

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"brazebooth/calc/formula"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// whole fails on a figure that is NaN or infinite or a value outside its interval.
func whole(t *testing.T, c *Card) {
	t.Helper()
	for _, f := range c.Figures {
		for _, v := range [...]float64{f.Value, f.Low, f.High} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%s is %g, from %g to %g", f.Name, f.Value, f.Low, f.High)
			}
		}
		if slack := 1e-9 * math.Abs(f.Value); f.Low > f.Value+slack || f.High < f.Value-slack {
			t.Fatalf("%s is %g, from %g to %g", f.Name, f.Value, f.Low, f.High)
		}
	}
}

// FuzzSolve gives Solve any numbers for any pair of metals: the answer is a whole card, or an error that names the
// choice.
func FuzzSolve(f *testing.F) {
	f.Add(uint8(0), uint8(1), uint8(0), uint8(0), 1.0, 1.0, 5.0, 15.0, 8.0, 12.0, 0.9, 0.0)
	f.Add(uint8(3), uint8(2), uint8(2), uint8(2), 0.5, 3.0, 12.0, 20.0, 3.0, 20.0, 1.2, 2.5)
	f.Add(uint8(9), uint8(0), uint8(5), uint8(1), 40.0, 2.0, math.Inf(1), math.NaN(), -1.0, 0.0, 1e300, 1e-300)
	metals, joints, modes := tables.Metals, []string{"", "lap", "butt", "tee", "corner", "plug", "overlay", "?",
		"edge"}, []string{"", "dip", "pulsed", "timed"}
	f.Fuzz(func(t *testing.T, metal, second, joint, mode uint8, thick, thick2, feed, volts, travel, out, wire,
		gap float64) {
		job := Job{Metal: metals[int(metal)%len(metals)].ID, Joint: joints[int(joint)%len(joints)],
			Mode:      modes[int(mode)%len(modes)],
			Thickness: Some(thick), Feed: Some(feed), Volts: Some(volts), Travel: Some(travel), StickOut: Some(out),
			Wire: Some(wire), Gap: Some(gap)}
		if second%3 > 0 {
			job.Metal2, job.Thickness2 = metals[int(second)%len(metals)].ID, Some(thick2)
		}
		for i, o := range [...]*Opt{&job.Thickness, &job.Feed, &job.Volts, &job.Travel, &job.StickOut, &job.Wire,
			&job.Gap} {
			if (int(metal)+int(second)*3+int(mode))>>i&1 == 1 {
				*o = Opt{}
			}
		}
		solved(t, job)
	})
}

// FuzzJobJSON does the same with a job as a book or another program may give it.
func FuzzJobJSON(f *testing.F) {
	f.Add([]byte(`{"metal":"galvanized","gauge":20,"joint":"lap"}`))
	f.Add([]byte(`{"metal":"mild-steel","thickness":1e308,"feed":-0,"load":1e9,"length":5}`))
	f.Add([]byte(`{"gauge":-9223372036854775808,"filler":"cusi3\u0000","phi":1e-320}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		var job Job
		if json.Unmarshal(text, &job) != nil {
			return
		}
		solved(t, job)
	})
}

func solved(t *testing.T, job Job) {
	t.Helper()
	card, err := Solve(job)
	if err == nil {
		whole(t, &card)
		return
	}
	var field *mistake.Error
	if !errors.As(err, &field) && !errors.Is(err, formula.ErrRange) {
		t.Fatalf("an error that says not what to change: %v", err)
	}
}
