package hang

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// fixed is a joint whose widths do not change with the gap.
func fixed(j Joint) func(float64) (Joint, error) {
	return func(gap float64) (Joint, error) { j.Gap = gap; return j, nil }
}

func bridgesAt(t testing.TB, j Joint, gap float64) Edge {
	t.Helper()
	j.Gap = gap
	e, _, err := Edges(&j)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

func TestLargestGap(t *testing.T) {
	for _, thick := range []float64{0.6, 1, 1.5, 3} {
		for _, wire := range []float64{0.8, 1.2} {
			j := usualJoint(t, "butt", "flat")
			j.Thick, j.Wire = [2]float64{thick, thick}, wire
			j.Bead = 3 + 1.5*thick
			e, err := LargestGap(fixed(j), 6)
			if err != nil {
				t.Fatal(err)
			}
			what := fmt.Sprintf("%g mm, wire %g: %+v", thick, wire, e)
			// Found to a thousandth: 12 halvings of a step of 22 %.
			for chance, gap := range map[float64]float64{0.5: e.V, 0.975: e.Low, 0.025: e.High} {
				in, out := bridgesAt(t, j, gap*0.999), bridgesAt(t, j, gap*1.001)
				if !(in.Chance() >= chance && out.Chance() <= chance) {
					t.Errorf("%s: at %g the chance falls from %g to %g", what, gap, in.Chance(), out.Chance())
				}
			}
			// A rule of thumb from searching over settings: 0.9 of the sheet, 1.0 to 1.6 of the wire. A setting
			// that is not the best stays below it, within a tenth.
			between(t, what, e.V, 0.3*min(thick, wire), 1.1*min(0.95*thick, 1.6*wire))
			// Where liquid running along the gap decides, the low end is exp(−1.96·0.28) = 0.58 of the value;
			// it is less where the metal in the root decides, which hardly depends on the gap.
			between(t, what+": low end", e.Low/e.V, 0.2, 0.65)
		}
	}
}

func TestLargestGapAtItsLimits(t *testing.T) {
	j := usualJoint(t, "butt", "flat")
	if e, err := LargestGap(fixed(j), 0.3); err != nil || e.V != 0.3 || e.High != 0.3 {
		t.Errorf("never further than asked: %+v, %v", e, err)
	}
	flood := j
	flood.Bead, flood.Wet, flood.Amps = 60, [2]float64{0.2, 0.2}, 300
	if e, err := LargestGap(fixed(flood), 5); err != nil || e.Low != 0 {
		t.Errorf("a flooded root: %+v, %v", e, err)
	}
	broken := errors.New("no section")
	if _, err := LargestGap(func(float64) (Joint, error) { return Joint{}, broken }, 5); !errors.Is(err, broken) {
		t.Error(err)
	}
	for _, spoil := range []func(*Joint){func(j *Joint) { j.Kind = "lap" }, func(j *Joint) { j.Thick[0] = 5 }} {
		k := j
		spoil(&k)
		if _, err := LargestGap(fixed(k), 5); !errors.Is(err, formula.ErrRange) {
			t.Error(err)
		}
	}
	for _, most := range []float64{0, -1, math.NaN(), 1e9} {
		if _, err := LargestGap(fixed(j), most); !errors.Is(err, formula.ErrRange) {
			t.Error(most, err)
		}
	}
	// On a bar the gap depends on the arc: twice its width.
	j.Backing = "copper-bar"
	e, err := LargestGap(fixed(j), 6)
	if err != nil {
		t.Fatal(err)
	}
	check(t, "on a bar", e.V, 3.6, 0.004)
	between(t, "its band is the arc width's, 1.6 to 2.0 mm", e.High-e.Low, 0.7, 0.9)
}

// flatBetween reports whether the metal in the root decides on all gaps between two, with every one of them on
// the edge: then any of these gaps may be the widest.
func flatBetween(t *testing.T, j Joint, a, b float64) bool {
	t.Helper()
	for i := range 21 {
		j.Gap = max(narrowest, a) + (b-max(narrowest, a))*float64(i)/20
		o := j.opening()
		if b := o.Bridge(); i < 20 && b.Hold > b.Least()+0.02 || math.Abs(b.Least()) > 0.05 {
			return false
		}
	}
	return true
}

// TestLargestGapHasNoJump: over thickness, wire, bead and width.
func TestLargestGapHasNoJump(t *testing.T) {
	j := usualJoint(t, "butt", "flat")
	for _, c := range []struct {
		at   func(*Joint, float64)
		a, b float64
	}{
		{func(j *Joint, v float64) { j.Thick = [2]float64{v, v} }, 0.5, 3},
		{func(j *Joint, v float64) { j.Wire = v }, 0.6, 1.6},
		{func(j *Joint, v float64) { j.Bead = v }, 1, 9},
		{func(j *Joint, v float64) { j.Wet = [2]float64{v, v} }, 0.5, 5},
	} {
		last := math.NaN()
		const n = 400
		for i := range n + 1 {
			k := j
			c.at(&k, c.a+(c.b-c.a)*float64(i)/n)
			e, err := LargestGap(fixed(k), 6)
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(e.V-last) > 0.05 && !flatBetween(t, k, last, e.V) {
				t.Errorf("from %g to %g mm at step %d: %+v", last, e.V, i, k)
			}
			last = e.V
			if !(e.Low <= e.V && e.V <= e.High) {
				t.Errorf("%+v", e)
			}
		}
	}
}

func TestSagHeight(t *testing.T) {
	f, _ := tables.Fillers.ByID("cusi3")
	j := usualJoint(t, "butt", "flat")
	e, err := SagHeight(&j, &f)
	if err != nil {
		t.Fatal(err)
	}
	o := j.opening()
	r := o.Root()
	check(t, "the root's own", e.V, r.Sag, 1e-12)
	// A factor of two each way for the arc's force alone.
	hard, soft := j, j
	hard.Assumed.ArcForce, soft.Assumed.ArcForce = 6e-7, 1.5e-7
	ho, so := hard.opening(), soft.opening()
	hr, sr := ho.Root(), so.Root()
	between(t, "high end", e.High, hr.Sag, e.V+4*(hr.Sag-e.V))
	between(t, "low end", e.Low, e.V-5*(e.V-sr.Sag), sr.Sag)
	steel, _ := tables.Fillers.ByID("steel")
	if _, err := SagHeight(&j, &steel); !errors.Is(err, formula.ErrRange) {
		t.Error(err)
	}
	j.Kind = "lap"
	if _, err := SagHeight(&j, &f); !errors.Is(err, formula.ErrRange) {
		t.Error(err)
	}
}

// TestLargestBeadIsOnTheEdge lays the largest bead: it is exactly on the edge; its band's ends are 1.96 doubts
// away.
func TestLargestBeadIsOnTheEdge(t *testing.T) {
	for _, kind := range kinds {
		for _, position := range []string{"overhead", "horizontal"} {
			j := usualJoint(t, kind, position)
			e, err := LargestBead(&j)
			if err != nil {
				t.Fatal(err)
			}
			for bead, z := range map[float64]float64{e.V: 0, e.Low: 1.96, e.High: -1.96} {
				k := j
				k.Bead = bead
				_, hangs, err := Edges(&k)
				if err != nil {
					t.Fatal(err)
				}
				check(t, kind+" "+position, hangs.Margin/hangs.Doubt, z, 1e-3)
			}
			if _, err := LongestPool(&j); !errors.Is(err, formula.ErrRange) {
				t.Error(err)
			}
			hollow := j
			hollow.Under = -100
			if e, err := LargestBead(&hollow); err != nil || e != (Estimate{}) {
				t.Errorf("a chord that lies far inside the metal carries %+v, %v", e, err)
			}
			// A melt of less tension hangs less.
			j.Liquid.Tension *= 0.8
			if less, err := LargestBead(&j); err != nil || less.V >= e.V {
				t.Errorf("%+v with less tension, %+v with more, %v", less, e, err)
			}
		}
	}
}

func TestLongestPoolIsOnTheEdge(t *testing.T) {
	for _, position := range []string{"vertical-up", "vertical-down"} {
		j := usualJoint(t, "lap", position)
		e, err := LongestPool(&j)
		if err != nil {
			t.Fatal(err)
		}
		for pool, z := range map[float64]float64{e.V: 0, e.Low: 1.96, e.High: -1.96} {
			k := j
			k.Pool = pool
			_, hangs, err := Edges(&k)
			if err != nil {
				t.Fatal(err)
			}
			check(t, position, hangs.Margin/hangs.Doubt, z, 1e-3)
		}
		if _, err := LargestBead(&j); !errors.Is(err, formula.ErrRange) {
			t.Error(err)
		}
		j.Mode = "timed"
		if _, err := LongestPool(&j); !errors.Is(err, formula.ErrRange) {
			t.Error(err)
		}
	}
}
