package calc_test

import (
	"fmt"
	"math"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// At one setting a wider gap under a lap or tee leaves less throat, needs more metal and, in thin sheet, heats the
// member that ends there, all without a jump.
func TestAGapTakesThroatAndMetal(t *testing.T) {
	n := deep.Many(6, 80)
	for _, joint := range []string{"lap", "tee"} {
		for _, thick := range deep.Of(t, []float64{0.8, 1.2, 2, 3}, 1) {
			var last [3]float64
			for i := range n {
				gap := 1.5 * float64(i) / float64(n-1)
				card := solved(t, calc.Job{Metal: "mild-steel", Thickness: calc.Some(thick), Joint: joint,
					Gap: calc.Some(gap), Feed: calc.Some(3.2 + thick), Travel: calc.Some(7.5 - thick),
					Aim: calc.Some(0)})
				at := fmt.Sprintf("%s %g mm, gap %.3f", joint, thick, gap)
				throat, ok := card.Figure("throat")
				filled, asked := edgeOf(card, "joint filled")
				if !ok || !asked {
					t.Errorf("%s: throat %v, filled %v", at, ok, asked)
					continue
				}
				need := filled.Basis.Inputs[0].Value
				heat, _ := calc.HeatOf(card)
				now := [3]float64{throat.Value, need, heat[0].Skin}
				if i > 0 && (now[0] > last[0]*1.001 || now[1] < last[1]*0.999 || thick < 1.5 && now[2] < last[2]-1) {
					t.Errorf("%s: throat, need, skin %.3f after %.3f", at, now, last)
				}
				step := 1.5 / float64(n-1)
				if i > 0 && (last[0]-now[0] > 3*step || math.Abs(now[1]-last[1]) > (2*thick+6)*step) {
					t.Errorf("%s: jumps: throat, need, skin %.3f after %.3f", at, now, last)
				}
				last = now
			}
		}
	}
}

// A corner's gap needs more metal; a measured leg includes the gap, a throat does not.
func TestWhatAskedForMetalMeans(t *testing.T) {
	need := func(job calc.Job) float64 {
		e, ok := edgeOf(solved(t, job), "joint filled")
		if !ok {
			t.Fatalf("%+v: no edge", job)
		}
		return e.Basis.Inputs[0].Value
	}
	job := calc.Job{Metal: "mild-steel", Thickness: calc.Some(1.5), Joint: "corner", Feed: calc.Some(5),
		Travel: calc.Some(7)}
	closed := need(job)
	job.Gap = calc.Some(0.5)
	// Hand: 1.5²·(1/2 + 0.5/(1.5·√2)) = 1.655 against 1.125.
	if open := need(job); math.Abs(closed-1.125) > 1e-9 || math.Abs(open-1.6553) > 5e-5 {
		t.Errorf("corner closed %.4f, open %.4f mm2", closed, open)
	}
	job.Joint, job.Leg = "tee", calc.Some(3)
	leg := need(job)
	job.Leg, job.Throat = calc.Opt{}, calc.Some(2.5/math.Sqrt2)
	if throat := need(job); math.Abs(leg-throat) > 1e-9 {
		t.Errorf("a leg of 3 mm over a gap of 0.5 needs %.3f mm2, its throat %.3f", leg, throat)
	}
}
