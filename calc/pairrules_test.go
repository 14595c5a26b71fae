package calc

import (
	"math"
	"strings"
	"testing"

	"brazebooth/tables"
)

// Unequal sheets get the note about them from twice the thickness, not before.
func TestTwiceAsThickIsUnequal(t *testing.T) {
	for thick, want := range map[float64]bool{1: false, 1.9: false, 2: true, 2.4: true} {
		c := card(t, Job{Metal: "mild-steel", Thickness: Some(1), Metal2: "mild-steel", Thickness2: Some(thick),
			Joint: "lap", Feed: Some(5), Travel: Some(8)})
		if c.Warned("unequal") != want {
			t.Errorf("1 mm on %g mm: unequal %v", thick, !want)
		}
	}
}

func TestMembersAreNamed(t *testing.T) {
	for name, got := range map[string]string{"The part": memberName(0, 1), "The first member": memberName(0, 2),
		"The second member": memberName(1, 2)} {
		if got != name {
			t.Errorf("%s is called %s", name, got)
		}
	}
}

// The arc points to the thicker sheet, whichever is named first, by the same distance.
func TestAimIsMirrored(t *testing.T) {
	job := Job{Metal: "mild-steel", Thickness: Some(0.8), Metal2: "mild-steel", Thickness2: Some(2), Joint: "butt",
		Feed: Some(5), Travel: Some(8)}
	thin := card(t, job).Used.Aim.V
	job.Thickness, job.Thickness2 = job.Thickness2, job.Thickness
	thick := card(t, job).Used.Aim.V
	if !(thin > 0) || thick != -thin {
		t.Errorf("thin first %g mm, thick first %g mm toward the second", thin, thick)
	}
}

// Two sheets of one thickness are aimed at in the middle, two that differ by a calliper's error nearly so. As the
// second one grows the aim moves bit by bit; for a lap only toward its lower sheet.
func TestAimMovesWithoutASnap(t *testing.T) {
	for _, joint := range []string{"lap", "tee", "butt", "corner"} {
		last := aimOff(joint, 1, 0.3)
		for thick := 0.3; thick <= 3; thick += 0.01 {
			off := aimOff(joint, 1, thick)
			if off < last-1e-12 || off > last+0.06 || math.Abs(off) > tables.AimOff.V || joint == "lap" && off < 0 {
				t.Errorf("%s, 1 mm to %.2f mm: %.3f mm off after %.3f", joint, thick, off, last)
			}
			last = off
		}
		if off := aimOff(joint, 1, 1); off != 0 {
			t.Errorf("%s of equal sheets: %g mm off", joint, off)
		}
		if off := aimOff(joint, 1, 1.05); off > LeastAim {
			t.Errorf("%s of nearly equal sheets: %g mm off", joint, off)
		}
	}
}

// Between two metals the aim moves bit by bit, as one of them grows, to the one that carries more heat away, and the
// card names it. Next to copper and its alloys the card says that the aim is not judged.
func TestAimFollowsTheHeat(t *testing.T) {
	aimed := func(joint, first, second string, thick float64) (float64, string) {
		var c Card
		err := resolve(Job{Metal: first, Metal2: second, Joint: joint, Thickness: Some(1), Thickness2: Some(thick)}, &c)
		if err != nil {
			t.Fatal(err)
		}
		for _, a := range c.Assumed {
			if a.Field == "aim" {
				return c.Used.Aim.V, a.Why
			}
		}
		return c.Used.Aim.V, ""
	}
	ferrous := []string{"mild-steel", "galvanized", "stainless-304", "grey-iron"}
	for _, joint := range []string{"lap", "tee", "butt", "corner"} {
		for _, first := range ferrous {
			for _, second := range append(ferrous, "copper", "brass") {
				last, _ := aimed(joint, first, second, 0.3)
				for thick := 0.3; thick <= 6; thick *= 1.02 {
					off, why := aimed(joint, first, second, thick)
					if off < last-1e-12 || off > last+0.06 {
						t.Errorf("%s of 1 mm %s and %.2f mm %s: %.3f mm off after %.3f", joint, first, thick, second,
							off,
							last)
					}
					if last = off; second == "copper" || second == "brass" {
						if off != 0 || !strings.Contains(why, "not judged") {
							t.Errorf("%s on %s: %g mm off, %q", first, second, off, why)
						}
					} else if math.Abs(off) >= LeastAim && !strings.Contains(why, "toward the ") {
						t.Errorf("%s on %s: %g mm off, %q", first, second, off, why)
					}
				}
			}
		}
	}
	off, why := aimed("butt", "stainless-304", "mild-steel", 1)
	if !(off > LeastAim) || !strings.Contains(why, "mild steel") {
		t.Errorf("%g mm off toward mild steel beside stainless, %q", off, why)
	}
}

// The chord of each joint by the places of its toes, from a drawing. On an outer corner the toes lie on the outer
// faces, each at its sheet's wetted width plus the other sheet's thickness from the edge where the faces would meet.
func TestBeadWidthIsTheChord(t *testing.T) {
	var k [inputCount]float64
	k[inThick1], k[inThick2], k[inGap] = 1, 2, 0.5
	const w1, w2 = 3, 4
	for joint, toes := range map[string][2][2]float64{
		"lap":     {{-w2, 0}, {w1, -1}},
		"tee":     {{w1, 0}, {0, w2}},
		"corner":  {{w1 + 2, 0}, {0, w2 + 1}},
		"butt":    {{-w1, 0}, {0.5 + w2, 0}},
		"overlay": {{-w1, 0}, {w1, 0}},
	} {
		c := chain{joint: joint}
		want := math.Hypot(toes[0][0]-toes[1][0], toes[0][1]-toes[1][1])
		if got := c.width(&k, w1, w2); math.Abs(got-want) > 1e-12 {
			t.Errorf("%s: %g mm wide, by its toes %g", joint, got, want)
		}
	}
}

// Only steel's heat follows steel's curves.
func TestSteelIsMarked(t *testing.T) {
	for _, m := range tables.Metals {
		if got := material(&m, m.Conductivity.V, 1).Steel; got != (m.Family == tables.Steel) {
			t.Errorf("%s: a steel %v", m.ID, got)
		}
	}
}

// Inputs listed beside a figure's formula move the figure by at least half a per cent.
func TestSensitivitiesTell(t *testing.T) {
	c := card(t, Job{Metal: "galvanized", Gauge: 18, Joint: "lap", Feed: Some(5), Travel: Some(8)})
	rest := 0
	for _, f := range c.Figures {
		for _, in := range f.Basis.Inputs {
			if in.Symbol != "" || in.Sensitivity == 0 {
				continue
			}
			if rest++; math.Abs(in.Sensitivity) < 0.5 {
				t.Errorf("%s leans on %s by %g %%", f.Name, in.Name, in.Sensitivity)
			}
		}
	}
	if rest < 5 {
		t.Errorf("%d inputs beside the formulas", rest)
	}
}

// The remedy offers another mode than the job's.
func TestTheOtherArcIsOffered(t *testing.T) {
	for mode, other := range map[string]string{"": "pulsed", "dip": "pulsed", "pulsed": "short arc (dip)"} {
		var names []string
		job := Job{Metal: "galvanized", Gauge: 18, Mode: mode, Feed: Some(5), Travel: Some(8)}
		for _, x := range candidates(&job, card(t, job)) {
			if strings.Contains(x.change, "pulsed") || strings.Contains(x.change, "dip") {
				names = append(names, x.change)
			}
		}
		if len(names) != 1 || names[0] != other {
			t.Errorf("%q: %q", mode, names)
		}
	}
}

// Every filler is tried except the one used, steel, and those that the trade or a melting point rules out.
func TestOtherFillersAreOffered(t *testing.T) {
	for _, x := range []struct {
		job     Job
		all     int
		without []string
	}{
		{Job{Metal: "copper", Thickness: Some(2), Metal2: "mild-steel", Thickness2: Some(1.5)}, 6, []string{"cusn1",
			"steel"}},
		{Job{Metal: "brass", Thickness: Some(1)}, 0, []string{"cusi3"}},
		{Job{Metal: "stainless-304", Thickness: Some(1), Filler: "cual8"}, 6, []string{"cual8", "steel"}},
	} {
		x.job.Feed, x.job.Travel = Some(5), Some(8)
		names := map[string]bool{}
		for _, c := range candidates(&x.job, card(t, x.job)) {
			if id, ok := strings.CutPrefix(c.change, "filler "); ok {
				names[id] = true
			}
		}
		for _, id := range x.without {
			if names[id] {
				t.Errorf("%s: %s is offered", x.job.Metal, id)
			}
		}
		if len(names) != x.all {
			t.Errorf("%s: %v", x.job.Metal, names)
		}
	}
}
