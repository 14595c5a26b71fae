package advice

import (
	"math"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// Over sheet and hole: time, metal and strength grow with the hole's area; the rim is colder than the middle,
// both inside their bands and hotter if the parts are warm; a hole smaller or larger than the trade's has a
// caution.
func TestPlugFollowsItsHole(t *testing.T) {
	deep.Turn(t)
	steps := deep.Many(2, 40)
	for i := range steps + 1 {
		thick := 0.6 * math.Pow(6, float64(i)/float64(steps))
		j := calc.Job{Metal: "mild-steel", Thickness: calc.Some(thick), Joint: "plug", Feed: calc.Some(5)}
		least := value(t, pageOf(t, Plug, j), "hole").Value
		var last [3]float64
		for hole := least - 2; hole < least+12; hole += 1 {
			j.Hole, j.Preheat = calc.Some(hole), calc.Opt{}
			p := pageOf(t, Plug, j)
			inBands(t, p)
			strong := pageOf(t, Strength, j)
			inBands(t, strong)
			now := [3]float64{value(t, p, "plug_time").Value, value(t, strong, "allowable_load").Value,
				value(t, strong, "allowable_pull").Value}
			for k := range now {
				if now[k] < last[k] || k == 0 && now[k] == last[k] {
					t.Errorf("%.2f mm, hole %.1f: figure %d is %g after %g", thick, hole, k, now[k], last[k])
				}
			}
			last = now
			if v := value(t, p, "plug_volume").Value; math.Abs(v/(math.Pi/4*hole*hole*thick)-1) > 1e-9 {
				t.Errorf("%.2f mm, hole %.1f: %g mm³", thick, hole, v)
			}
			most := least + math.Max(3, 2.25*thick-least)
			if small, large := hasWarning(p, "hole-small"), hasWarning(p, "hole-large"); small != (hole < least-1e-9) ||
				large != (hole > most+1e-9) {
				t.Errorf("%.2f mm, hole %.1f: small %v, large %v", thick, hole, small, large)
			}
			rim, ok := p.Figure("plug_rim_temperature")
			if !ok {
				continue
			}
			if middle := value(t, p, "plug_middle_temperature"); !(rim.Value < middle.Value) {
				t.Errorf("%.2f mm, hole %.1f: rim %g, middle %g", thick, hole, rim.Value, middle.Value)
			}
			j.Preheat = calc.Some(220)
			if warm := rimOf(t, j); !(warm > rim.Value) {
				t.Errorf("%.2f mm, hole %.1f: 200 K of preheat take the rim from %g to %g C", thick, hole,
					rim.Value, warm)
			}
			if wets := value(t, p, "plug_wetted"); (wets.Value == hole) != (rim.Value >= p.Card.Setup.Filler.Toe.V) {
				t.Errorf("%.2f mm, hole %.1f: rim %.0f °C, wetted on %.1f mm", thick, hole, rim.Value, wets.Value)
			}
		}
	}
}

// rimOf is the temperature of a plug's rim, C. It skips the search for a remedy, for which a page tries a hundred
// plugs.
func rimOf(t *testing.T, j calc.Job) float64 {
	t.Helper()
	p := Page{Card: *card(t, j)}
	time, ok := p.filled(&p.Card)
	if !ok {
		t.Fatalf("%+v: no time", j)
	}
	h, judged := p.plugHeat(&p.Card, time)
	if !judged {
		t.Fatalf("%+v: not judged", j)
	}
	return h.rim.Value
}

// warnsOfPlug reports a caution that the rim stays cold or the middle melts.
func warnsOfPlug(p *Page) bool {
	return slices.ContainsFunc(p.Warnings, func(w calc.Warning) bool { return strings.HasPrefix(w.Code, "plug-") })
}

// A hole of 10 mm in 1 mm sheet takes 78.5 mm³. Wire of 0.889 mm at 5 m/min brings 0.62072·83.33 = 51.73 mm³/s,
// of which 93 % stay: 1.633 s. Ten plugs take ten times as long, and their wire is what was fed.
func TestPlugByHand(t *testing.T) {
	j := calc.Job{Metal: "mild-steel", Coating: "none", Thickness: calc.Some(1), Joint: "plug", Feed: calc.Some(5),
		Hole: calc.Some(10), Count: calc.Some(10)}
	share := tables.DepositionDip.V
	one := value(t, pageOf(t, Plug, j), "plug_time").Value
	if want := 78.5398 / (51.726 * share); math.Abs(one/want-1) > 2e-3 {
		t.Errorf("%g s, by hand %g", one, want)
	}
	cost := pageOf(t, Cost, j)
	if all := value(t, cost, "arc_time").Value; math.Abs(all/(10*one)-1) > 1e-9 {
		t.Errorf("ten take %g s", all)
	}
	if wire := value(t, cost, "wire_used").Value; math.Abs(wire/(10*78.5398*8.53e-3/share)-1) > 2e-3 {
		t.Errorf("ten take %g g", wire)
	}
}

// Every metal and every mode has a plug or a reason why not; another joint has no hole.
func TestEveryPlugHasFiguresOrAReason(t *testing.T) {
	deep.Turn(t)
	var jobs []calc.Job
	for _, m := range tables.Metals {
		for _, mode := range []string{"dip", "pulsed", "timed"} {
			for _, thick := range []float64{0.5, 2, 12} {
				jobs = append(jobs, calc.Job{Metal: m.ID, Thickness: calc.Some(thick), Joint: "plug", Mode: mode})
			}
		}
	}
	for _, j := range deep.Of(t, jobs, 30) {
		c, err := calc.Solve(j)
		if err != nil {
			continue
		}
		p, err := Plug(&c)
		if err != nil || len(p.Reasons) == 0 {
			t.Errorf("%s %s: %v", j.Metal, j.Mode, err)
		}
		inBands(t, &p)
		if _, err := Cost(&c); err != nil != (j.Mode == "timed") {
			t.Errorf("%s %s: the price %v", j.Metal, j.Mode, err)
		}
	}
	if _, err := Plug(card(t, calc.Job{})); mistake.Of(err) == nil {
		t.Error("a lap has a hole")
	}
}

// Over sheet, metal, feed and preheat: a cold rim with a melted middle, by their middle values, has a caution.
// A plug has an allowable load only if its rim wets, or if somebody gave the hole; then the load is called
// unproved.
func TestAPlugIsNotTrustedBeforeItsRimWets(t *testing.T) {
	deep.Turn(t)
	type plugJob struct {
		metal              string
		thick, feed, start float64
	}
	list := []plugJob{{"mild-steel", 1, 6, 20}, {"mild-steel", 0.6, 8, 300}}
	for _, metal := range []string{"mild-steel", "galvanized", "stainless-304", "copper"} {
		for _, thick := range []float64{0.5, 1, 2, 4, 12} {
			for _, feed := range []float64{3, 6, 9} {
				for _, start := range []float64{20, 220} {
					list = append(list, plugJob{metal, thick, feed, start})
				}
			}
		}
	}
	both := 0
	for _, x := range append(list[:2:2], deep.Of(t, list[2:], 6)...) {
		j := calc.Job{Metal: x.metal, Thickness: calc.Some(x.thick), Joint: "plug", Feed: calc.Some(x.feed),
			Preheat: calc.Some(x.start)}
		p := pageOf(t, Plug, j)
		rim, judged := p.Figure("plug_rim_temperature")
		middle, _ := p.Figure("plug_middle_temperature")
		toe, melts := p.Card.Setup.Filler.Toe.V, p.Card.Setup.Members[1].Metal.Solidus.V
		if judged && rim.Value < toe && middle.Value > melts {
			if both++; !warnsOfPlug(p) {
				t.Errorf("%+v: rim %.0f °C, middle %.0f °C and no caution", x, rim.Value, middle.Value)
			}
		}
		if said := warnsOfPlug(p); judged &&
			said != (rim.Value < toe || middle.Value > melts) {
			t.Errorf("%+v: rim %.0f °C of %.0f °C, middle %.0f °C of %.0f °C, cautioned %v", x, rim.Value, toe,
				middle.Value,
				melts, said)
		}
		ok := judged && rim.Low >= toe && middle.High <= melts
		if _, carries := pageOf(t, Strength, j).Figure("allowable_load"); carries != ok {
			t.Errorf("%+v: rim %.0f °C of %.0f °C, a load %v", x, rim.Value, toe, carries)
		}
		j.Hole = calc.Some(value(t, p, "hole").Value)
		if s := pageOf(t, Strength, j); hasWarning(s, "plug-unproved") == ok {
			t.Errorf("%+v: with the hole given, unproved is %v", x, !ok)
		}
	}
	if both == 0 {
		t.Error("no job has a cold rim and a melted middle")
	}
}
