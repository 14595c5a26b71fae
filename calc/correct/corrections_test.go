package correct

import (
	"brazebooth/calc"
	"context"
	"math"
	"testing"
)

// laidAt are beads of one job at several travels; the last is the one to correct.
func laidAt(job calc.Job, seen []string, travels ...float64) []Try {
	var list []Try
	for i, v := range travels {
		job.Travel = calc.Some(v)
		list = append(list, Try{Job: job, Seen: seen[i]})
	}
	return list
}

// The nearest bead on the other side that showed the opposite limits a step, in whatever order they were laid.
func TestOppositeIsTheNearest(t *testing.T) {
	job := calc.Job{Metal: "mild-steel", Gauge: 18, Feed: calc.Some(5)}
	l := &levers[leverTravel]
	for _, order := range [][]float64{{6, 7, 8, 10, 9}, {7, 6, 8, 10, 9}, {7.5, 7, 8, 10, 9}} {
		v := &posterior{laid: laidAt(job, []string{"burn-through", "burn-through", "rolled-edge", "rolled-edge",
			"rolled-edge"}, order...)}
		at := &v.laid[4]
		if x, ok := v.opposite(at, l, -1); !ok || x != math.Max(order[0], order[1]) {
			t.Errorf("%v: below 9 the nearest opposite is %g, %v", order, x, ok)
		}
		if x, ok := v.opposite(at, l, 1); ok {
			t.Errorf("%v: above 9 nothing is opposite, yet %g", order, x)
		}
	}
	v := &posterior{laid: laidAt(job, []string{"burn-through", "rolled-edge"}, 7, 9)}
	v.laid[0].Job.Feed = calc.Some(6)
	if x, ok := v.opposite(&v.laid[1], l, -1); ok {
		t.Errorf("a bead of another feed bounds the travel at %g", x)
	}
	hot := &posterior{laid: laidAt(job, []string{"rolled-edge", "rolled-edge", "burn-through"}, 12, 11.5, 9)}
	if x, ok := hot.opposite(&hot.laid[2], l, 1); !ok || x != 11.5 {
		t.Errorf("above 9 the nearest opposite is %g, %v", x, ok)
	}
}

// Travel is set in tenths of a mm/s and changed by at most 30 % in one step: from 9 up to 11.7. If the opposite
// was seen at 10, a step goes no further than halfway there; if it was seen at 14, beyond one step, it is not
// limited.
func TestNotchesStopShort(t *testing.T) {
	job := calc.Job{Metal: "mild-steel", Gauge: 18, Feed: calc.Some(5)}
	l := &levers[leverTravel]
	for _, x := range []struct {
		opposite    float64
		count       int
		first, last float64
	}{{0, 27, 9.1, 11.7}, {10, 5, 9.1, 9.5}, {11.7, 13, 9.1, 10.3}, {14, 27, 9.1, 11.7}, {9.2, 1, 9.1, 9.1}, {9.3, 2,
		9.1, 9.2}} {
		v := &posterior{off: true, laid: laidAt(job, []string{"rolled-edge", "burn-through"}, x.opposite, 9)}
		list := v.notches(&v.laid[1], l, 1)
		if len(list) != x.count || list[0] != x.first || list[len(list)-1] != x.last {
			t.Errorf("opposite at %g: %v", x.opposite, list)
		}
	}
	v := &posterior{off: true, laid: laidAt(job, []string{"burn-through"}, 9)}
	if down := v.notches(&v.laid[0], l, -1); len(down) != 27 || down[0] != 8.9 || down[26] != 6.3 {
		t.Errorf("downward: %v", down)
	}
	fast := &posterior{off: true, laid: laidAt(job, []string{"rolled-edge"}, 12.5)}
	// A hand holds 14 mm/s at most.
	if up := fast.notches(&fast.laid[0], l, 1); len(up) != 15 || up[14] != 14 {
		t.Errorf("upward from 12.5: %v", up)
	}
	if none := v.notches(&v.laid[0], l, 0); none != nil {
		t.Errorf("neither way: %v", none)
	}
}

// The causes' shares sum to at most 100, and to nearly 100 after the unlikely ones are left out.
func TestCauseSharesAddUp(t *testing.T) {
	p, err := Next(context.Background(), []Try{{Job: calc.Job{Metal: "mild-steel", Thickness: calc.Some(8),
		Joint: "plug", Feed: calc.Some(6)}, Seen: "pores"}})
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for _, c := range p.Correction.Causes {
		sum += c.Likelihood
	}
	if sum > 100.001 || sum < 80 {
		t.Errorf("%g in all: %+v", sum, p.Correction.Causes)
	}
}
