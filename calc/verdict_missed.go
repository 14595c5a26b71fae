package calc

import (
	"math"

	"brazebooth/calc/limit"
	"brazebooth/internal/crew"
)

// lookFurther computes how far away the edges are that a setting misses by more than a probe. The course through the
// probes says little of what lies beyond them, so the limits are computed there too, in steps of a probe along feed and
// along travel. An edge that no change within these steps meets is infinitely far.
func (v *verdict) lookFurther(feed, travel float64) {
	var missed []limit.Limit
	for i := range limit.Count {
		if v.logs[i] < 0 && v.logs.Unjudged(i) == "" && !v.meetsBeside(i) {
			missed = append(missed, i)
		}
	}
	if len(missed) == 0 {
		return
	}
	var way [2][2][limit.Steps]limit.All // along feed and travel, below and above, step by step
	var wg crew.Crew
	for axis := range way {
		for side, sign := range sides {
			way[axis][side][0] = v.beside[axis][side]
			for k := 1; k < limit.Steps; k++ {
				wg.Go(func() { way[axis][side][k] = v.field.along(feed, travel, axis, sign*float64(k+1)) })
			}
		}
	}
	wg.Wait()
	for _, i := range missed {
		v.d[i] = math.Inf(-1)
		for axis := range way {
			for side, sign := range sides {
				v.d[i] = max(v.d[i], -limit.Meets(v.logs[i], &way[axis][side], i, sign))
			}
		}
	}
}

// sides are the signs of a change below and above a setting.
var sides = [2]float64{-1, 1}

// along are the limits so many probes away along feed (axis 0) or travel (axis 1).
func (h *heatField) along(feed, travel float64, axis int, probes float64) limit.All {
	at := [2]float64{feed, travel}
	at[axis] *= math.Exp(probes * limit.Probe)
	return h.beside(at[0], at[1])
}

// meetsBeside reports whether a limit is met a probe below or above the setting.
func (v *verdict) meetsBeside(i limit.Limit) bool {
	for axis := range v.beside {
		for side := range v.beside[axis] {
			if v.beside[axis][side][i] >= 0 {
				return true
			}
		}
	}
	return false
}
