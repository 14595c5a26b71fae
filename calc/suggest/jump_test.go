package suggest

import (
	"math"
	"testing"

	"brazebooth/internal/deep"
)

// steps changes a joint gradually and returns the largest step of feed and of travel, in logarithms.
func steps(t *testing.T, n int, change func(*joint, float64)) (feed, travel float64, from, to Place) {
	t.Helper()
	var last Place
	for i := range n + 1 {
		j := usual
		change(&j, float64(i)/float64(n))
		at := find(t, j.problem())
		if math.IsNaN(at.Feed + at.Travel) {
			t.Fatalf("%+v", at)
		}
		if i == 0 {
			from = at
		} else {
			feed = max(feed, math.Abs(math.Log(at.Feed/last.Feed)))
			travel = max(travel, math.Abs(math.Log(at.Travel/last.Travel)))
		}
		last = at
	}
	return feed, travel, from, last
}

// TestPlaceDoesNotJump changes a joint gradually; with five times as many steps the longest is at most a third
// as long, while a jump would keep its length. Where no setting has a chance of 1 % the place may move fast.
func TestPlaceDoesNotJump(t *testing.T) {
	deep.Turn(t)
	for name, change := range map[string]func(*joint, float64){
		"splits in travel":       func(j *joint, s float64) { j.notch = -0.3 + 0.8*s },
		"splits in feed":         func(j *joint, s float64) { j.feedNotch = -0.3 + 0.8*s },
		"both":                   func(j *joint, s float64) { j.notch, j.feedNotch = -0.2+0.6*s, 0.3-0.6*s },
		"a zone that closes":     func(j *joint, s float64) { j.hot = 110 - 64*s },
		"thicker sheet":          func(j *joint, s float64) { j.cold, j.hot, j.need = 30+90*s, 55+150*s, 3+12*s },
		"more heat at each feed": func(j *joint, s float64) { j.heatPerArc = 20 * math.Pow(11, s) },
		"from side to side":      func(j *joint, s float64) { j.notch, j.heatPerArc = 0.2, 45+80*s },
	} {
		f1, v1, from, to := steps(t, 60, change)
		f2, v2, _, _ := steps(t, 300, change)
		if f2 > max(f1/3, 0.01) || v2 > max(v1/3, 0.01) {
			t.Errorf("%s: steps %.4f and %.4f, five times finer %.4f and %.4f", name, f1, v1, f2, v2)
		}
		t.Logf("%s: from %+v to %+v, steps %.4f %.4f", name, from, to, f1, v1)
	}
}

// TestSplitRidge: if a band of travels is excluded in the middle, a joint with little heat goes to the slow
// side, one with much heat to the fast side.
func TestSplitRidge(t *testing.T) {
	j := usual
	j.notch = 0.35
	j.heatPerArc = 52
	slow := find(t, j.problem())
	j.heatPerArc = 110
	quick := find(t, j.problem())
	if !(slow.Travel < 7.5*math.Exp(-0.3) && quick.Travel > 7.5*math.Exp(0.3)) {
		t.Errorf("little heat: %+v; much: %+v", slow, quick)
	}
}
