package advice

import (
	"math"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// Over every thickness: the planned beads fill the groove and one fewer does not, a thicker plate takes no less
// metal and a wider opening more, card, page and price count the same beads, and every figure lies in its band.
// Outside 2 to 12 mm no groove is planned.
func TestPassesFillTheGroove(t *testing.T) {
	steps := deep.Many(8, 240)
	last := 0.0
	for i := range steps + 1 {
		thick := 1.5 + 12*float64(i)/float64(steps)
		for _, gap := range []calc.Opt{{}, calc.Some(3)} {
			j := calc.Job{Metal: "mild-steel", Coating: "none", Thickness: calc.Some(thick), Joint: "butt",
				Wire: calc.Some(1.2), Gap: gap, Feed: calc.Some(4), Travel: calc.Some(7)}
			c := card(t, j)
			p := pageOf(t, Passes, j)
			inBands(t, p)
			area, ok := p.Figure("groove_area")
			if planned := thick >= tables.GrooveLeast.V && thick <= tables.GrooveMost.V; ok != planned {
				t.Fatalf("%.2f mm: a groove %v", thick, ok)
			}
			if !ok {
				continue
			}
			if _, planned := p.Figure("passes"); !planned {
				one := "not planned, because one bead lays well what this joint takes"
				if !slices.ContainsFunc(p.Reasons,
					func(r Reason) bool { return strings.HasPrefix(r.Text, one) }) {
					t.Errorf("%.2f mm: no passes, and no reason", thick)
				}
				continue
			}
			bead, n := value(t, p, "bead_area").Value, value(t, p, "passes").Value
			if n*bead < area.Value-1e-9 && n > 1 || (n-1)*bead >= area.Value {
				t.Errorf("%.2f mm: %g beads of %.1f mm² in %.1f mm²", thick, n, bead, area.Value)
			}
			if cost := pageOf(t, Cost, j); n > 1 && value(t, cost, "passes").Value != n {
				t.Errorf("%.2f mm: the price counts other passes", thick)
			}
			if said := c.Said("passes"); n > 1 != (said != "") {
				t.Errorf("%.2f mm: %g passes, the card says %q", thick, n, said)
			}
			switch {
			case gap.Set && area.Value < last:
				t.Errorf("%.2f mm: 3 mm of opening take %g mm², less than the usual one's %g", thick, area.Value, last)
			case !gap.Set && area.Value < last:
				t.Errorf("%.2f mm takes %g mm², less than thinner plate's %g", thick, area.Value, last)
			case !gap.Set:
				last = area.Value
			}
			if f, ok := p.Figure("interpass_hold"); n > 1 != ok || ok && !(f.Value > 0) {
				t.Errorf("%.2f mm: %g passes and a hold %v", thick, n, f)
			}
		}
	}
}

func inBands(t *testing.T, p *Page) {
	t.Helper()
	for _, f := range p.Figures {
		if !(f.Low <= f.Value && f.Value <= f.High) || math.IsInf(f.High, 0) {
			t.Errorf("%s: %s %g (%g to %g)", p.Name, f.Name, f.Value, f.Low, f.High)
		}
	}
}

// Every metal, joint and mode has a plan or a reason why not, and a fillet of 8 mm takes several beads.
func TestEveryJointHasPassesOrAReason(t *testing.T) {
	for _, m := range deep.Of(t, tables.Metals, 3) {
		for _, joint := range []string{"lap", "tee", "butt", "corner", "edge", "overlay", "plug"} {
			for _, mode := range []string{"dip", "timed"}[:1+len(joint)%2] {
				c, err := calc.Solve(calc.Job{Metal: m.ID, Thickness: calc.Some(5), Joint: joint, Mode: mode,
					Feed: calc.Some(6), Travel: calc.Some(5)})
				if err != nil {
					continue
				}
				p, err := Passes(&c)
				if err != nil || len(p.Reasons) == 0 || len(p.Figures) == 0 && !strings.Contains(p.Reasons[0].Text,
					"try ") {
					t.Errorf("%s %s %s: %+v, %v", m.ID, joint, mode, p.Reasons, err)
				}
				inBands(t, &p)
			}
		}
	}
	tee := pageOf(t, Passes, calc.Job{Metal: "mild-steel", Thickness: calc.Some(3), Joint: "tee", Leg: calc.Some(8)})
	if a, n := value(t, tee, "joint_area").Value, value(t, tee, "passes").Value; a != 32 || n < 3 {
		t.Errorf("a fillet of 8 mm: %g mm² in %g beads", a, n)
	}
}

// checkPasses checks that card, plan and price count the same beads; for plate too thick for a plan, card and
// price.
func checkPasses(c *calc.Card, of map[string]float64, say func(string, ...any)) {
	planned := calc.MinCore(c.Setup.Joined()) <= tables.GrooveMost.V || c.Used.Joint != "butt"
	if several := c.Warned("passes"); several != (of["cost"] > 1) || planned && of["passes"] != of["cost"] {
		say("passes: %v, the card says several: %v", of, several)
	}
}

// Over thickness and feed: a plan fills its joint, and a single bead that lays too little is not a plan. The
// times on the page and in the cost have the band of the passes, and prices per metre of seam count the seam
// once.
func TestThePlanFillsTheJoint(t *testing.T) {
	steps := deep.Many(4, 60)
	for _, joint := range []string{"tee", "lap", "butt", "edge"} {
		for i := range steps + 1 {
			for _, feed := range []float64{3, 7} {
				j := priced(calc.Job{Metal: "galvanized", Joint: joint, Feed: calc.Some(feed),
					Travel: calc.Some(10), Wire: calc.Some(1),
					Thickness: calc.Some(math.Round(100*math.Pow(10, float64(i)/float64(steps))) / 100)})
				c := card(t, j)
				p, err := Passes(c)
				cost, err2 := Cost(c)
				if err != nil || err2 != nil {
					t.Fatal(err, err2)
				}
				at := joint + " of " + calc.Number(j.Thickness.V) + " mm at " + calc.Number(feed) + " m/min"
				n, planned := p.Figure("passes")
				fill := calc.FillOf(c)
				bead := value(t, &p, "bead_area").Value
				if planned && n.Value*bead < fill.Section*(1-1e-9) && fill.Groove.Depth > 0 {
					t.Errorf("%s: %g beads of %g mm² are to fill %g mm²", at, n.Value, bead, fill.Section)
				}
				for _, e := range c.Edges {
					if e.Name == "joint filled" && !e.Met && planned && n.Value == 1 {
						t.Errorf("%s: one bead is the plan, and the card says that it does not fill the joint", at)
					}
				}
				for _, page := range []*Page{&p, &cost} {
					f, ok := page.Figure("arc_time")
					if m, several := page.Figure("passes"); ok && several {
						one := f.Value / m.Value
						if !near(f.Low, m.Low*one) || !near(f.High, m.High*one) {
							t.Errorf("%s: %s takes %g s (%g to %g) in %g passes (%g to %g)", at, page.Name, f.Value,
								f.Low, f.High,
								m.Value, m.Low, m.High)
						}
					}
				}
				if f, ok := cost.Figure("zinc_repair_time"); ok && !near(f.Value, 2.0/60*0.3) {
					t.Errorf("%s: %g h of zinc repair on 0.3 m of seam", at, f.Value)
				}
			}
		}
	}
}
