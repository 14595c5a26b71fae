package calc

import (
	"strings"
	"testing"

	"brazebooth/internal/deep"
)

// Every preheat of zinc above hand-warm, and every seam that warms it above that, is cautioned, and nothing colder.
func TestZincThatGetsWarmIsCautioned(t *testing.T) {
	type part struct{ at, kg float64 }
	var parts []part
	for _, at := range []float64{20, 40, 41, 60, 350} {
		for _, kg := range []float64{0, 1, 3, 10, 100} {
			parts = append(parts, part{at, kg})
		}
	}
	for _, p := range deep.Of(t, parts, 8) {
		j := Job{Metal: "galvanized", Thickness: Some(1.5), Preheat: Some(p.at), Feed: Some(4.5), Travel: Some(5),
			Length: Some(2000)}
		if p.kg > 0 {
			j.PartMass = Some(p.kg)
		}
		c := card(t, j)
		rise, _ := c.Figure("seam_rise")
		after, _ := c.Figure("next_start")
		warms := rise.Value > 0 && max(p.at+rise.Value, after.Value) > 40
		if c.Warned(ZincWarmed) != (p.at > 40) || c.Warned("zinc-warms") != warms {
			t.Errorf("%g °C, %g kg, a rise of %g K: warmed said %v, warms said %v", p.at, p.kg, rise.Value,
				c.Warned(ZincWarmed), c.Warned("zinc-warms"))
		}
		j.Metal = "mild-steel"
		if bare := card(t, j); bare.Warned(ZincWarmed) || bare.Warned("zinc-warms") {
			t.Errorf("%g °C, %g kg: bare sheet is told of zinc", p.at, p.kg)
		}
	}
}

// A card cautions every service temperature above what a copper alloy bears.
func TestHotServiceIsOnTheCard(t *testing.T) {
	for at := -50.0; at < 600; at += 12.5 {
		c := Card{Used: Job{ServiceTemp: Some(at)}}
		w := warnings{card: &c}
		if w.service(); (len(w.list) == 1) != (at > 204) || at > 204 && !strings.Contains(w.list[0].Text, "creeps") {
			t.Errorf("%g °C: %+v", at, w.list)
		}
	}
}

// No card of parts that must not be so warm is good.
func TestTooMuchPreheatIsNeverGood(t *testing.T) {
	deep.Turn(t)
	var jobs []Job
	for _, metal := range []string{"galvanized", "galvannealed", "dp800", "mild-steel"} {
		for _, at := range []float64{20, 60, 150, 250, 350} {
			jobs = append(jobs, Job{Metal: metal, Thickness: Some(1.5), Preheat: Some(at)})
		}
	}
	for _, j := range deep.Of(t, jobs, 8) {
		c, at := card(t, j), j.Preheat.V
		bad := j.Metal == "dp800" && at > 200 || strings.HasPrefix(j.Metal, "galv") && at > 40
		if v := c.Verdict(); bad && (v == "good" || v == "marginal") || bad != (c.TooHotParts() != "") {
			t.Errorf("%s at %g °C is %s: %q", j.Metal, at, v, c.TooHotParts())
		}
	}
}
