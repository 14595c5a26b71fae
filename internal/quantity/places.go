package quantity

import "math"

// places are the most decimals that a value has in metric and in inch units.
type places [2]int

// finest are the most decimals of what a person sets or counts: no hand and no timer keeps thousandths of a second,
// however narrow a band is. Values under a few of these steps have as many as they need.
var finest = map[string]places{"s": {2, 2}, "mm2": {1, 4}}

// read are the most decimals of a value whose band is wider than a step of them: no crayon tells tenths of a degree and
// no hand those of an angle, no meter on an arc tenths of an amp or hundredths of a volt, no caliper thousandths of a
// millimetre, no kitchen scale hundredths of a gram.
var read = map[string]places{"C": {0, 0}, "deg": {0, 0}, "A": {0, 0}, "V": {1, 1}, "mm": {2, 3}, "mm3": {1, 5},
	"g/m": {1, 1}, "%": {0, 0}}

// of are the decimals of a system.
func (p places) of(w *view, sys System) int {
	if w.inches(sys) {
		return p[1]
	}
	return p[0]
}

// step is a step of the last of them.
func (p places) step(w *view, sys System) float64 { return math.Pow(10, -float64(p.of(w, sys))) }

// few is how many steps a value has at least that needs no more decimals.
const few = 2

// most is so many decimals, or the fewer that a person can use of a value.
func (w *view) most(v float64, decimals int, sys System) int {
	if most, ok := finest[w.unit]; ok && math.Abs(v) >= few*most.step(w, sys) {
		return min(decimals, most.of(w, sys))
	}
	return decimals
}
