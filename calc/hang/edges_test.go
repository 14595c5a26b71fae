package hang

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// usualJoint is a joint of 1 mm sheet at a setting that one would use.
func usualJoint(t testing.TB, kind, position string) Joint {
	j := Joint{Kind: kind, Position: position, Mode: "dip", Thick: [2]float64{1, 1}, Gap: 0.4, Leg: 1, Bead: 4,
		Wet: [2]float64{2.6, 2.5}, Back: [2]float64{2.3, 2.2}, Front: 0.5, Pool: 9, Wire: 0.889, Amps: 85, Deposition: 0.45,
		Liquid: liquid(t, "cusi3"), Assumed: Usual("dip"), Phi: 0.7, Chord: 5.5, Under: 0.4}
	return j
}

var (
	kinds  = []string{"lap", "tee", "butt", "corner", "overlay"}
	places = []string{"flat", "horizontal", "vertical-up", "vertical-down", "overhead"}
)

func TestHangCheckValues(t *testing.T) {
	// Check 12 was interpolated in a straight line between printed areas: a tenth of a per cent.
	for _, c := range []struct {
		kind, position string
		want           float64
	}{{"butt", "overhead", 6.5708}, {"tee", "overhead", 6.9063}, {"butt", "horizontal", 9.6372}, {"tee", "horizontal", 10.0441}} {
		j := usualJoint(t, c.kind, c.position)
		j.Chord, j.Under = 6, 0
		e, err := LargestBead(&j)
		if err != nil {
			t.Fatal(err)
		}
		check(t, c.kind+" "+c.position, e.V*j.Liquid.Swell, c.want, 0.001*c.want)
	}
	for chord, want := range map[float64][2]float64{4: {3.59, 5.16}, 6: {6.57, 9.64}, 8: {9.01, 13.7}} {
		j := usualJoint(t, "overlay", "overhead")
		j.Chord, j.Under = chord, 0
		over, err := LargestBead(&j)
		if err != nil {
			t.Fatal(err)
		}
		j.Position = "horizontal"
		wall, err := LargestBead(&j)
		if err != nil {
			t.Fatal(err)
		}
		// Half the last digit, and the tenth of a per cent above.
		check(t, fmt.Sprintf("overhead, chord %g", chord), over.V*j.Liquid.Swell, want[0], 0.005+0.001*want[0])
		check(t, fmt.Sprintf("wall, chord %g", chord), wall.V*j.Liquid.Swell, want[1], 0.05)
	}
	up := Joint{Pool: 10, Chord: 6, Liquid: liquid(t, "cusi3"), Assumed: Usual("dip")} // check 13
	check(t, "vertical-up", up.up(), .2821, 0.5e-4)
	down := up
	down.Bead, down.Phi = 6/down.Liquid.Swell, math.Pi/4
	down.Assumed.ArcForce, down.Assumed.DropSpeed = 200*2*math.Pi*1.2*1.2e-6/(1.2*1.2), 0 // 200 Pa at 1 A
	down.Amps = 1
	check(t, "its arc", down.ArcPressure(), 200, 1e-9)
	check(t, "vertical-down", down.downhill(), .8004, 1e-4) // by the printed steps 0.80046
}

// TestLinearRules: the straight lines that the curves amount to, within 3 % from three quarters of a capillary length.
func TestLinearRules(t *testing.T) {
	for c := 0.75; c <= 2.5; c += 0.125 {
		between(t, fmt.Sprintf("overhead at %g", c), overheadCurve.at(c)/(0.440-0.122*c), 0.97, 1.03)
		between(t, fmt.Sprintf("wall at %g", c), wallCurve.at(c)/(0.430-0.110*c), 0.97, 1.03)
	}
}

// TestHangOrder: what makes a bead fall sooner.
func TestHangOrder(t *testing.T) {
	for _, kind := range kinds {
		for _, position := range places[1:] {
			for _, c := range []struct {
				what     string
				at       func(*Joint) *float64
				from, to float64
				whole    bool // for all positions; else overhead and horizontal only
				vertical bool // for both verticals only
			}{
				{"less tension", func(j *Joint) *float64 { return &j.Liquid.Tension }, 1.6, 0.5, true, false},
				{"heavier metal", func(j *Joint) *float64 { return &j.Liquid.Density }, 5000, 9000, true, false},
				{"more metal", func(j *Joint) *float64 { return &j.Bead }, 1, 20, false, false},
				{"a longer pool", func(j *Joint) *float64 { return &j.Pool }, 1, 40, false, true},
			} {
				vertical := strings.HasPrefix(position, "vertical")
				if !c.whole && vertical != c.vertical {
					continue
				}
				j, last := usualJoint(t, kind, position), math.Inf(1)
				for i := range 101 {
					*c.at(&j) = c.from + (c.to-c.from)*float64(i)/100
					v := j.hangs()
					if v > last+1e-9 {
						t.Errorf("%s %s, %s: %g after %g", kind, position, c.what, v, last)
						break
					}
					last = v
				}
			}
		}
	}
}

// TestHangingIsHarderOverhead: the same bead, the share of the hand left out.
func TestHangingIsHarderOverhead(t *testing.T) {
	for chord := 0.5; chord < 14; chord += 0.1 {
		for _, kind := range []string{"butt", "tee"} {
			over, wall := Holds(kind, "overhead", chord, 4.09), Holds(kind, "horizontal", chord, 4.09)
			if chord > 7 && over >= wall { // narrower ones go by pressure overhead, by the toe on a wall: nearly the same
				t.Errorf("%s over %g mm: %g overhead, %g horizontal", kind, chord, over, wall)
			}
			between(t, "nothing holds more than half a circle", over, 0, math.Pi/8*chord*chord)
			between(t, "nor on a wall", wall, 0, math.Pi/8*chord*chord)
		}
	}
	// Without gravity a bead is half a circle everywhere: the capillary length without end.
	for _, position := range []string{"overhead", "horizontal"} {
		check(t, "no gravity "+position, Holds("butt", position, 6, 1e6)/36, math.Pi/8, 1e-6)
	}
}

// TestEdgesHaveNoJump moves every figure of every joint in every position through its range and past its borders.
func TestEdgesHaveNoJump(t *testing.T) {
	for _, kind := range kinds {
		for _, position := range places {
			base := usualJoint(t, kind, position)
			for _, c := range []struct {
				what string
				at   func(*Joint) *float64
				a, b float64
			}{
				{"gap", func(j *Joint) *float64 { return &j.Gap }, 0, 6}, {"bead", func(j *Joint) *float64 { return &j.Bead }, 0.01, 30},
				{"width", func(j *Joint) *float64 { return &j.Wet[0] }, 0, 12}, {"other width", func(j *Joint) *float64 { return &j.Wet[1] }, 0, 12},
				{"chord", func(j *Joint) *float64 { return &j.Chord }, 0, 20}, {"under", func(j *Joint) *float64 { return &j.Under }, -5, 15},
				{"pool", func(j *Joint) *float64 { return &j.Pool }, 0, 60}, {"angle", func(j *Joint) *float64 { return &j.Phi }, -3, 3},
				{"current", func(j *Joint) *float64 { return &j.Amps }, 0, 300}, {"leg", func(j *Joint) *float64 { return &j.Leg }, 0.1, 5},
				{"molten edge", func(j *Joint) *float64 { return &j.Molten[0] }, 0, 2}, {"wire", func(j *Joint) *float64 { return &j.Wire }, 0.5, 2},
				{"thickness", func(j *Joint) *float64 { return &j.Thick[0] }, 0.5, 3},
			} {
				for i := range 4 {
					continuous(t, fmt.Sprintf("%s %s, edge %d over %s", kind, position, i, c.what), func(v float64) float64 {
						j := base
						*c.at(&j) = v
						list, err := Edges(&j)
						if err != nil {
							t.Fatal(err)
						}
						return list[i].Margin
					}, c.a, c.b, 80)
				}
			}
		}
	}
}

// TestWhatIsNotAsked: a flat bead hangs on nothing, only a butt has a root, and so on.
func TestWhatIsNotAsked(t *testing.T) {
	asked := map[string]string{"butt": "bridges", "lap": "touches fills", "tee": "touches fills", "corner": "fills", "overlay": ""}
	for kind, edges := range asked {
		j := usualJoint(t, kind, "flat")
		list, err := Edges(&j)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range list {
			if asks := strings.Contains(edges, e.Name); asks != (e.Margin != Most) {
				t.Errorf("%s: %+v", kind, e)
			}
			if e.Why != "" || !(e.Doubt > 0) {
				t.Errorf("%s: %+v", kind, e)
			}
		}
	}
}

func TestNotJudged(t *testing.T) {
	for _, c := range []struct {
		what string
		job  func(*Joint)
		edge int
		word string
	}{
		{"timed", func(j *Joint) { j.Mode = "timed" }, 0, "pauses"},
		{"steel wire", func(j *Joint) { j.Liquid = Liquid{} }, 0, "filler"},
		{"thin", func(j *Joint) { j.Thick[1] = 0.49 }, 0, "0.5 to 3 mm"},
		{"thick", func(j *Joint) { j.Thick[0] = 3.01 }, 0, "0.5 to 3 mm"},
		{"patch", func(j *Joint) { j.Backing = "patch" }, 0, "laps"},
		{"plug", func(j *Joint) { j.Kind = "plug" }, 3, "plug"},
		{"timed overhead", func(j *Joint) { j.Mode = "timed" }, 3, "pauses"},
	} {
		j := usualJoint(t, "butt", "overhead")
		c.job(&j)
		list, err := Edges(&j)
		if err != nil {
			t.Fatal(err)
		}
		e := list[c.edge]
		if !strings.Contains(e.Why, c.word) || !strings.HasPrefix(e.Why, "Not judged, because ") || e.Chance() != 1 {
			t.Errorf("%s: %+v", c.what, e)
		}
	}
	for _, thick := range []float64{0.5, 3} { // the borders belong to it
		j := usualJoint(t, "butt", "flat")
		j.Thick = [2]float64{thick, thick}
		if list, err := Edges(&j); err != nil || list[0].Why != "" {
			t.Errorf("%g mm: %+v, %v", thick, list[0], err)
		}
	}
}

func TestEdgesRefuse(t *testing.T) {
	for i, spoil := range []func(*Joint){
		func(j *Joint) { j.Gap = math.NaN() }, func(j *Joint) { j.Gap = -1 }, func(j *Joint) { j.Wet[1] = math.Inf(1) },
		func(j *Joint) { j.Bead = -1 }, func(j *Joint) { j.Position = "upside down" }, func(j *Joint) { j.Phi = 4 },
		func(j *Joint) { j.Front = math.NaN() }, func(j *Joint) { j.Pool = math.NaN() },
	} {
		j := usualJoint(t, "butt", "flat")
		spoil(&j)
		if _, err := Edges(&j); !errors.Is(err, formula.ErrRange) {
			t.Errorf("%d: %v", i, err)
		}
	}
}

func TestChance(t *testing.T) {
	e := Edge{Margin: 0, Doubt: tables.BridgesDoubt.V}
	check(t, "on the edge", e.Chance(), 0.5, 1e-12)
	// Quantiles of the normal distribution: 80 and 95 %.
	for z, want := range map[float64]float64{0.841621: 0.80, 1.644854: 0.95, -1.644854: 0.05} {
		e.Margin = z * e.Doubt
		check(t, "quantile", e.Chance(), want, 1e-6)
	}
	// 95 % lie within a factor of 1.75 (printed; 1.73).
	check(t, "doubt as a factor", math.Exp(1.96*e.Doubt), 1.75, 0.025)
	// A paper on dual-phase sheet bridged 0.6 mm without a pause: the first row must think it likely.
	o := rowOpening(t, 0)
	b := o.Bridge()
	e.Margin = b.Least()
	between(t, "0.6 mm in 1 mm sheet", e.Chance(), 0.85, 0.97)
}
