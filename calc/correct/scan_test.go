package correct

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

type scanned struct {
	job  calc.Job
	seen string
}

// scan lists sights by metals, thicknesses, modes and joints, at the card's own setting and at two others.
func scan() (list []scanned) {
	for _, metal := range []string{"galvanized", "mild-steel", "stainless-304", "copper", "grey-iron", "dp600"} {
		for _, mm := range []float64{0.8, 1.5, 2.5, 8} {
			for _, joint := range []string{"lap", "butt", "tee", "corner", "edge", "overlay", "plug"} {
				for _, mode := range []string{"dip", "pulsed", "timed"} {
					for _, travel := range []float64{0, 5, 12} {
						for _, s := range tables.Sights {
							j := calc.Job{Metal: metal, Thickness: calc.Some(mm), Joint: joint, Mode: mode}
							if travel > 0 && mode != "timed" {
								j.Travel = calc.Some(travel)
							}
							list = append(list, scanned{j, s.ID})
						}
					}
				}
			}
		}
	}
	return list
}

// Every answer to every sight raises the chance of a good bead, alone or as the first of several steps, or says
// that it cannot and what would. A look that the job cannot have gets a hint, and nothing is advised that is
// already done.
func TestEveryAnswerHelpsOrSaysItCannot(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("slow")
	}
	for _, x := range deep.Of(t, scan(), 3) {
		p, err := Next(t.Context(), []Try{{x.job, x.seen}})
		name := x.job.Metal + " " + x.job.Joint + " " + x.job.Mode + ", " + x.seen
		if err != nil {
			if m := mistake.Of(err); m == nil || m.Hint == "" {
				t.Errorf("%s: %v", name, err)
			}
			continue
		}
		if len(p.Instead) > 0 {
			continue // stopped
		}
		holds(t, name, x.seen, &p.Card, p.Correction.GoodBefore, p.Correction.GoodAfter, p.Correction.Why,
			p.Correction.Do,
			p.Correction.Change != nil, OfHeat(p.Correction.Causes[0].ID), p.Correction.Causes[0].ID)
	}
}

func holds(t *testing.T, name, seen string, card *calc.Card, before, after float64, why, do string, change, heat bool,
	cause string) {
	t.Helper()
	steps := strings.Contains(why, "several steps") || strings.Contains(why, "Both times have to move") ||
		strings.Contains(why, "let the arc pause")
	modelled := before > 0 || after > 0 || card.Zone == "good" || card.Zone == "cold" || card.Zone == "hot" ||
		card.Zone == "burn-through"
	switch {
	case change && heat && modelled && card.Used.Mode != "timed" && !(after > before) && !steps &&
		!strings.Contains(why, "usual step of a hand"):
		t.Errorf("%s: the chance goes from %.1f to %.1f of 100: %s", name, before, after, why)
	case !change && do == "" && cause != tables.CauseFine && seen != "good" && !strings.Contains(why,
		"cold and hot at once"):
		t.Errorf("%s: nothing to do: %s", name, why)
	case !change && heat && card.Used.Mode != "timed" && !strings.Contains(why, "cannot") && !strings.Contains(why,
		"No single setting"):
		t.Errorf("%s: nothing is changed, and it does not say why: %s", name, why)
	case strings.Contains(do, "aluminium-bearing wire") && calc.AluminiumWire(card.Used.Filler),
		strings.Contains(do, "timed arc") && card.Used.Mode == "timed":
		t.Errorf("%s: advised, and in use: %s", name, do)
	}
}

// A heavy part that looks cold gets preheat or wire, whatever the joint; a stick-out that is too long is
// corrected first.
func TestLeverForHeavyPartsAndLongStickOut(t *testing.T) {
	deep.Turn(t)
	heavy := []calc.Job{{Metal: "grey-iron", Thickness: calc.Some(8), Joint: "butt"},
		{Metal: "copper", Thickness: calc.Some(6), Joint: "butt"}}
	for _, metal := range []string{"grey-iron", "ductile-iron", "copper", "mild-steel"} {
		for _, mm := range []float64{4, 6, 8, 12} {
			for _, joint := range []string{"butt", "tee", "overlay"} {
				heavy = append(heavy, calc.Job{Metal: metal, Thickness: calc.Some(mm), Joint: joint})
			}
		}
	}
	for _, j := range append(heavy[:2:2], deep.Of(t, heavy[2:], 1)...) {
		p, err := Next(t.Context(), []Try{{j, "rolled-edge"}})
		if err != nil {
			t.Fatal(err)
		}
		if c := p.Correction.Change; c == nil && p.Correction.Do == "" ||
			c != nil && c.What != "preheat" && c.What != "wire_feed" && c.What != "travel" {
			t.Errorf("%s %g mm %s: %+v", j.Metal, j.Thickness.V, j.Joint, c)
		}
	}
	for _, long := range []float64{18, 20, 25} {
		for _, mm := range deep.Of(t, []float64{0.8, 1.5, 8}, 1) {
			j := calc.Job{Metal: "galvanized", Thickness: calc.Some(mm), StickOut: calc.Some(long),
				Feed: calc.Some(5), Travel: calc.Some(9)}
			p, err := Next(t.Context(), []Try{{j, "rolled-edge"}})
			if err != nil {
				t.Fatal(err)
			}
			k := p.Correction // 5 m/min does not wet 8 mm at any stick-out: Do then names another way too
			if c := k.Change; c != nil && c.What != "stickout" || c == nil && k.GoodBefore < 50 &&
				!(strings.HasPrefix(k.Do, "stick-out back to ") && strings.Contains(k.Do, " (good in ")) {
				t.Errorf("%g mm at %g mm stick-out: %+v, %s: %s", mm, long, c, k.Why, k.Do)
			}
		}
	}
}

// Looks that a job cannot have are refused, and only those.
func TestImpossibleLooks(t *testing.T) {
	for _, x := range deep.Of(t, []struct {
		job  calc.Job
		seen string
		ok   bool
	}{
		{calc.Job{Metal: "galvanized", Thickness: calc.Some(1)}, "spots-apart", false},
		{calc.Job{Metal: "galvanized", Thickness: calc.Some(1), Mode: "pulsed"}, "spots-apart,pores", false},
		{calc.Job{Metal: "galvanized", Thickness: calc.Some(1), Joint: "butt", Mode: "timed"}, "spots-apart", true},
		{calc.Job{Metal: "mild-steel", Thickness: calc.Some(1)}, "zinc-gone-behind", false},
		{calc.Job{Metal: "mild-steel", Metal2: "galvanized", Thickness: calc.Some(1)}, "zinc-gone-behind", true},
		{calc.Job{Metal: "mild-steel", Thickness: calc.Some(12), Joint: "overlay"}, "edges-melted", false},
		{calc.Job{Metal: "mild-steel", Thickness: calc.Some(1), Joint: "butt"}, "drops-through", true},
	}, 4) {
		_, err := Next(t.Context(), []Try{{x.job, x.seen}})
		if m := mistake.Of(err); (err == nil) != x.ok || err != nil && (m == nil || m.Hint == "") {
			t.Errorf("%+v, %s: %v", x.job, x.seen, err)
		}
	}
}
