package quantity

import "math"

// places are the most decimals that a value gets, in metric and in inch units.
type places [2]int

// finest are the most decimals of something that a person sets or counts: no hand and no timer keeps thousandths of a
// second, however narrow a band is. Values under a few steps of the last decimal get as many as they need.
var finest = map[string]places{"s": {2, 2}, "mm2": {1, 4}}

// measured are the most decimals of a value whose band is wider than one step of the last decimal. Nobody can measure
// finer: a temperature crayon and an angle by eye to a degree, a meter on an arc to an amp or a tenth of a volt, a
// caliper to a hundredth of a millimetre, a kitchen scale to a tenth of a gram.
var measured = map[string]places{"C": {0, 0}, "deg": {0, 0}, "A": {0, 0}, "V": {1, 1}, "mm": {2, 3}, "mm3": {1, 5},
	"g/m": {1, 1}, "%": {0, 0}}

func (p places) of(s *scale) int {
	if s.inch {
		return p[1]
	}
	return p[0]
}

// step is one step of the last decimal.
func (p places) step(s *scale) float64 { return math.Pow(10, -float64(p.of(s))) }

// fewSteps is the least number of steps in a value that needs no more decimals.
const fewSteps = 2

// most limits a number of decimals to those that a person can use for this value.
func (s *scale) most(v float64, decimals int) int {
	if most, ok := finest[s.unit]; ok && math.Abs(v) >= fewSteps*most.step(s) {
		return min(decimals, most.of(s))
	}
	return decimals
}
