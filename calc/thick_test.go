package calc

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// At 3 mm two layers become four and a butt is bevelled: no figure of the section moves by more than 3 % there, beyond
// its usual change from thickness to thickness.
func TestNothingJumpsAtThreeMillimetres(t *testing.T) {
	type job struct {
		metal, joint string
		amps, travel float64
	}
	var jobs []job
	for _, joint := range [...]string{"butt", "tee", "lap", "corner", "overlay"} {
		for _, metal := range [...]string{"mild-steel", "stainless-304", "grey-iron", "copper", "silicon-bronze"} {
			jobs = append(jobs, job{metal, joint, 130, 8})
		}
	}
	for _, x := range deep.Of(t, jobs, 4) {
		at := func(mm float64) map[string]float64 {
			c := card(t, Job{Metal: x.metal, Thickness: Some(mm), Joint: x.joint, Filler: "cusi3", Amps: Some(x.amps),
				Travel: Some(x.travel), Preheat: Some(20), Wire: Some(1.143)})
			list := map[string]float64{}
			for _, f := range c.Figures {
				list[f.Name] = f.Value
				if f.Name == "wetted_width_1" || f.Name == "wetting_angle" {
					list[f.Name+" low"], list[f.Name+" high"] = f.Low, f.High
				}
			}
			if c.Zone == "not-modelled" {
				t.Errorf("%+v at %g mm is not judged", x, mm)
			}
			return list
		}
		below, here, above, far := at(2.98), at(2.9999), at(3.0001), at(3.02)
		for _, name := range [...]string{"wetted_width_1", "wetted_width_2", "wetted_width_1 low",
			"wetted_width_1 high",
			"base_peak_temperature", "bead_width", "wetting_angle", "net_heat"} {
			a, b := here[name], above[name]
			if a < 0.4 { // hardly wetted: a share of nothing
				continue
			}
			slope := math.Abs(here[name]-below[name]) + math.Abs(far[name]-b)
			if math.Abs(b-a) > 0.03*a+slope {
				t.Errorf("%+v: %s is %.3f below 3 mm and %.3f above", x, name, a, b)
			}
		}
	}
}

// Thicker parts of every pair of metals take the heat away: at one setting neither wetted width nor peak grows with the
// thickness, from 0.2 to 25 mm, beyond the error of the grid.
func TestThickerIsNeverHotter(t *testing.T) {
	type pair struct{ first, second, joint string }
	var pairs []pair
	for _, a := range tables.Metals {
		for _, b := range tables.Metals {
			for _, joint := range [...]string{"butt", "tee", "lap"} {
				pairs = append(pairs, pair{a.ID, b.ID, joint})
			}
		}
	}
	for _, x := range deep.Of(t, pairs, 14) {
		last, was := math.Inf(1), 0.0
		for mm := 0.4; mm <= 25; mm *= 1.4 {
			var c Card
			job := Job{Metal: x.first, Metal2: x.second, Thickness: Some(mm), Thickness2: Some(mm), Joint: x.joint,
				Filler: "cusi3", Coating: "none", Coating2: "none", Preheat: Some(20)}
			if err := resolve(job, &c); err != nil {
				t.Fatal(err)
			}
			b := newBoard(&c)
			b.inputs[inFeed], b.inputs[inTravel] = 110, 9
			if b.notModelled(&c) != "" {
				break
			}
			h := b.heatField(&c)
			s, err := h.at(b.inputs[inFeed], b.inputs[inTravel], false)
			if err != nil { // thin: the heat runs out of the grid
				continue
			}
			rise := min(s.core[0], s.core[1]) - 20
			if rise > last*1.01 {
				t.Errorf("%v: the colder core rises by %.0f K at %.2f mm after %.0f K at %.2f mm", x, rise, mm, last,
					was)
			}
			last, was = rise, mm
		}
	}
}

// Every pair of metals, joint and thickness has a verdict or a reason, and no setting that misses an edge is called a
// suggestion.
func TestEveryThicknessHasAVerdictOrAReason(t *testing.T) {
	var jobs []Job
	metals := tables.Metals
	for i := range metals {
		for k, joint := range [...]string{"butt", "tee", "lap", "corner", "overlay"} {
			for n, mm := range [...]float64{0.2, 1, 3.5, 6, 12, 25, 30} {
				jobs = append(jobs, Job{Metal: metals[i].ID, Metal2: metals[(i+k+n)%len(metals)].ID,
					Thickness: Some(mm),
					Joint:     joint, Coating: "none", Coating2: "none"})
			}
		}
	}
	for _, j := range deep.Of(t, jobs, 10) {
		c, err := Solve(j)
		if err != nil {
			t.Errorf("%+v: %v", j, err)
			continue
		}
		said := ""
		for _, w := range c.Warnings {
			if w.Code == "not-modelled" {
				said = w.Text
			}
		}
		if (c.Zone == "not-modelled") != (said != "") || c.Zone == "" {
			t.Errorf("%+v: zone %q, %q", j, c.Zone, said)
		}
		good := len(c.Edges) > 0 && c.Met()
		for _, name := range [...]string{"wire_feed", "travel"} {
			f, _ := c.Figure(name)
			if f.Missed() == good && c.Zone != "not-modelled" || f.Suggested() && !good {
				t.Errorf("%+v: %s, %s is suggested %v, a miss %v", j, c.Verdict(), name, f.Suggested(), f.Missed())
			}
		}
	}
}

// A lap whose edge is little higher than one bead is not judged, nor is a deep corner or an open root in plate; each
// says why and what to try. A lap whose edge the bead reaches is judged, and a lap whose edge is clear of it.
func TestBuriedBeadsAreNotJudged(t *testing.T) {
	deep.Turn(t)
	for _, x := range []struct {
		job  Job
		says string
	}{
		{Job{Joint: "lap", Thickness: Some(4.6)}, ""}, {Job{Joint: "lap", Thickness: Some(4.8)},
			"higher than one bead"},
		{Job{Joint: "lap", Thickness: Some(4), Leg: Some(3)}, "higher than one bead"},
		{Job{Joint: "lap", Thickness: Some(5), Thickness2: Some(2)}, "higher than one bead"},
		{Job{Joint: "lap", Thickness: Some(7), Thickness2: Some(7)}, "higher than one bead"},
		{Job{Joint: "lap", Thickness: Some(7.1), Thickness2: Some(7)}, ""},
		{Job{Joint: "lap", Thickness: Some(5), Leg: Some(3)}, ""},
		{Job{Joint: "lap", Thickness: Some(1), Thickness2: Some(20)}, ""},
		{Job{Joint: "lap", Thickness: Some(1), Thickness2: Some(25)}, ""},
		{Job{Joint: "lap", Thickness: Some(1), Thickness2: Some(25.1)}, "over 25 mm"},
		{Job{Joint: "tee", Thickness: Some(30), Thickness2: Some(2)}, "over 25 mm"},
		{Job{Joint: "corner", Thickness: Some(4.6)}, ""}, {Job{Joint: "corner", Thickness: Some(5)}, "deep between"},
		{Job{Joint: "tee", Thickness: Some(25)}, ""}, {Job{Joint: "tee", Thickness: Some(26)}, "over 25 mm"},
		{Job{Joint: "butt", Thickness: Some(12)}, ""}, {Job{Joint: "butt", Thickness: Some(4), Gap: Some(1)},
			"0.5 to 3 mm"},
	} {
		x.job.Metal = "mild-steel"
		c := card(t, x.job)
		why := ""
		for _, w := range c.Warnings {
			if w.Code == "not-modelled" {
				why = w.Text
			}
		}
		if (why == "") != (x.says == "") || !strings.Contains(why, x.says) {
			t.Errorf("%s %g mm: %q, want %q", x.job.Joint, x.job.Thickness.V, why, x.says)
		}
	}
}

// A lap whose bead lies under its edge is computed as the tee that it says, except for the heat that the edge's end
// throws back: little, and less the higher the edge; neither the suggestion nor a figure jumps as the edge gets higher.
func TestLapsAsTees(t *testing.T) {
	sizes := deep.Of(t, []float64{7.1, 7.6, 8, 9, 10, 12, 16, 20, 25}, 3)
	over := 1.0
	for _, thick := range sizes {
		lap := card(t, Job{Metal: "mild-steel", Joint: "lap", Thickness: Some(thick), Wire: Some(1.143), Feed: Some(6),
			Travel: Some(8)})
		job := lap.Used
		job.Joint = "tee"
		tee := card(t, job)
		if !hasWarning(lap, "lap-as-tee") || hasWarning(tee, "lap-as-tee") || lap.Section.Joint != "tee" {
			t.Errorf("%g mm: %v, drawn as a %s", thick, lap.Warnings, lap.Section.Joint)
		}
		for _, name := range []string{"net_heat", "bead_area", "bead_width", "wetted_width_1", "wetted_width_2",
			"throat",
			"base_peak_temperature", "passes"} {
			a, ok1 := lap.Figure(name)
			b, ok2 := tee.Figure(name)
			if d := a.Value/b.Value - 1; ok1 != ok2 || d < -0.03 || d > 0.08 {
				t.Errorf("%g mm: %s %.4g, of the tee %.4g", thick, name, a.Value, b.Value)
			}
			if name == "wetted_width_1" {
				if d := a.Value/b.Value - 1; d > over+0.005 {
					t.Errorf("%g mm: %s is %.3f over the tee's, after %.3f", thick, name, d, over)
				} else {
					over = d
				}
			}
		}
	}
}

// Beads are counted: a groove by its section, a fillet by what it needs, none where one bead is enough.
func TestPassesAreCounted(t *testing.T) {
	for _, x := range []struct {
		job  Job
		want float64 // 0 for no figure
	}{
		{Job{Joint: "butt", Thickness: Some(2)}, 0}, {Job{Joint: "tee", Thickness: Some(3)}, 0},
		// 8²·tan(37.5°) = 49.1 mm², beads of 0.785·1.143²·100·0.95/8 = 12.2 mm²
		{Job{Joint: "butt", Thickness: Some(8), Wire: Some(1.143), Feed: Some(6), Travel: Some(8)}, 5},
		{Job{Joint: "tee", Thickness: Some(10), Wire: Some(1.143), Feed: Some(6), Travel: Some(8)}, 5}, // 50 mm²
	} {
		x.job.Metal = "mild-steel"
		f, ok := card(t, x.job).Figure("passes")
		if ok != (x.want > 0) || f.Value != x.want || f.Low > f.Value || f.High < f.Value {
			t.Errorf("%s %g mm: %g (%g to %g) beads, want %g", x.job.Joint, x.job.Thickness.V, f.Value, f.Low, f.High,
				x.want)
		}
	}
}

// short tells jobs of a table apart.
func (j *Job) short() string {
	return fmt.Sprintf("%s %s %g mm, wire %g, %s", j.Metal, j.Joint, j.Thickness.V, j.Wire.V, j.Mode)
}
