package hang

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// usualJoint is a joint of 1 mm sheet at a usual setting.
func usualJoint(t testing.TB, kind, position string) Joint {
	j := Joint{Kind: kind, Position: position, Mode: "dip", Thick: [2]float64{1, 1}, Gap: 0.4, Bead: 4,
		Wet: [2]float64{2.6, 2.5}, Back: [2]float64{2.3, 2.2}, Front: 0.5, Pool: 9, Wire: 0.889, Amps: 85,
		Deposition: 0.45, Liquid: liquid(t, "cusi3"), Assumed: Usual("dip"), Phi: 0.7, Chord: 5.5, Under: 0.4}
	return j
}

var (
	kinds  = []string{"lap", "tee", "butt", "corner", "overlay"}
	places = []string{"flat", "horizontal", "vertical-up", "vertical-down", "overhead"}
)

// TestEdgesHaveNoJump moves every figure of every joint in every position through its range and past its ends.
func TestEdgesHaveNoJump(t *testing.T) {
	for _, kind := range kinds {
		for _, position := range places {
			base := usualJoint(t, kind, position)
			for _, c := range []struct {
				what string
				at   func(*Joint) *float64
				a, b float64
			}{
				{"gap", func(j *Joint) *float64 { return &j.Gap }, 0, 6},
				{"bead", func(j *Joint) *float64 { return &j.Bead }, 0.01, 30},
				{"width", func(j *Joint) *float64 { return &j.Wet[0] }, 0, 12},
				{"other width", func(j *Joint) *float64 { return &j.Wet[1] }, 0, 12},
				{"chord", func(j *Joint) *float64 { return &j.Chord }, 0, 20},
				{"under", func(j *Joint) *float64 { return &j.Under }, -5, 15},
				{"pool", func(j *Joint) *float64 { return &j.Pool }, 0, 60},
				{"angle", func(j *Joint) *float64 { return &j.Phi }, -3, 3},
				{"current", func(j *Joint) *float64 { return &j.Amps }, 0, 300},
				{"molten edge", func(j *Joint) *float64 { return &j.Molten[0] }, 0, 2},
				{"wire", func(j *Joint) *float64 { return &j.Wire }, 0.5, 2},
				{"thickness", func(j *Joint) *float64 { return &j.Thick[0] }, 0.5, 3},
			} {
				for i := range 2 {
					what := fmt.Sprintf("%s %s, edge %d over %s", kind, position, i, c.what)
					continuous(t, what, func(v float64) float64 {
						j := base
						*c.at(&j) = v
						bridges, hangs, err := Edges(&j)
						if err != nil {
							t.Fatal(err)
						}
						return [2]float64{bridges.Margin, hangs.Margin}[i]
					}, c.a, c.b, 80)
				}
			}
		}
	}
}

// TestWhatIsNotAsked: a joint has only its own edges; a flat bead cannot fall, only a butt has a root, and so
// on.
func TestWhatIsNotAsked(t *testing.T) {
	for _, kind := range kinds {
		j := usualJoint(t, kind, "flat")
		bridges, hangs, err := Edges(&j)
		if err != nil {
			t.Fatal(err)
		}
		gap := kind == "butt" || kind == "lap" || kind == "tee"
		if gap != (bridges.Margin != Most) || hangs.Margin != Most {
			t.Errorf("%s: %+v, %+v", kind, bridges, hangs)
		}
		for _, e := range []Edge{bridges, hangs} {
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
		{"plug", func(j *Joint) { j.Kind = "plug" }, 1, "plug"},
		{"timed overhead", func(j *Joint) { j.Mode = "timed" }, 1, "pauses"},
	} {
		j := usualJoint(t, "butt", "overhead")
		c.job(&j)
		bridges, hangs, err := Edges(&j)
		if err != nil {
			t.Fatal(err)
		}
		e := []Edge{bridges, hangs}[c.edge]
		if !strings.Contains(e.Why, c.word) || strings.HasSuffix(e.Why, ".") || e.Chance() != 1 {
			t.Errorf("%s: %+v", c.what, e)
		}
	}
	for _, thick := range []float64{0.5, 3} { // the ends belong to the range
		j := usualJoint(t, "butt", "flat")
		j.Thick = [2]float64{thick, thick}
		if bridges, _, err := Edges(&j); err != nil || bridges.Why != "" {
			t.Errorf("%g mm: %+v, %v", thick, bridges, err)
		}
	}
}

func TestEdgesRefuse(t *testing.T) {
	for i, spoil := range []func(*Joint){
		func(j *Joint) { j.Gap = math.NaN() }, func(j *Joint) { j.Gap = -1 }, func(j *Joint) { j.Wet[1] = math.Inf(1) },
		func(j *Joint) { j.Bead = -1 }, func(j *Joint) { j.Position = "upside down" }, func(j *Joint) { j.Phi = 4 },
		func(j *Joint) { j.Front = math.NaN() }, func(j *Joint) { j.Pool = math.NaN() },
		func(j *Joint) { j.Assumed = Assumed{} }, func(j *Joint) { j.Thick[1] = 0 },
	} {
		j := usualJoint(t, "butt", "flat")
		spoil(&j)
		if _, _, err := Edges(&j); !errors.Is(err, formula.ErrRange) {
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
	// 95 % lie within a factor of 1.75 (as printed; here 1.73).
	check(t, "doubt as a factor", math.Exp(1.96*e.Doubt), 1.75, 0.025)
	// A paper on dual-phase sheet bridged 0.6 mm without a pause: the first row must find it likely.
	o := rowOpening(t, 0)
	b := o.Bridge()
	e.Margin = b.Least()
	between(t, "0.6 mm in 1 mm sheet", e.Chance(), 0.85, 0.97)
}

// TestEveryJointHasItsEdges: every accepted joint has margins within their bounds, and a chance.
func TestEveryJointHasItsEdges(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	of := func(most float64) float64 { // the ends as often as the values between
		switch rng.IntN(4) {
		case 0:
			return 0
		case 1:
			return most
		}
		return most * math.Pow(10, -4*rng.Float64())
	}
	pair := func(most float64) [2]float64 { return [2]float64{of(most), of(most)} }
	accepted := 0
	for range 20000 {
		j := usualJoint(t, kinds[rng.IntN(len(kinds))], places[rng.IntN(len(places))])
		j.Thick, j.Gap, j.Bead, j.Wet, j.Back = pair(200), of(100), of(1000), pair(200), pair(200)
		j.Molten, j.Front, j.Pool, j.Chord = pair(50), of(500)-of(500), of(1000), of(500)
		j.Under, j.Phi = of(2000)-of(2000), of(math.Pi)-of(math.Pi)
		j.Wire, j.Amps, j.Deposition = of(10), of(1000), of(20)
		if rng.IntN(2) == 0 {
			j.Thick = [2]float64{0.5 + of(2.5), 0.5 + of(2.5)}
		}
		bridges, hangs, err := Edges(&j)
		if err != nil {
			continue
		}
		accepted++
		for _, e := range []Edge{bridges, hangs} {
			if !(e.Margin >= -Most && e.Margin <= Most) || !(e.Chance() >= 0 && e.Chance() <= 1) {
				t.Fatalf("%+v of %+v", e, j)
			}
		}
	}
	between(t, "accepted", float64(accepted), 8000, 20000)
}
