package calc

import "testing"

// Where the cold end leaves a member dry and the model does not reach the hot end, the band ends at the mirror image of
// the cold end: as far above the value as that is below.
func TestHighEndWithoutAHotEnd(t *testing.T) {
	r := reading{of: func(x *variant) float64 { return x.wet[0] }}
	for _, wet := range []float64{0.01, 1, 3.5} {
		v := verdict{variants: variants{cold: &variant{}}}
		v.variants.at.wet[0] = wet
		l := sectionList{b: &board{}, card: &Card{}, s: new(spread), v: &v}
		if f := l.figure("wetted_width_1", "mm", "", r); f.Low != 0 || f.High != 2*wet {
			t.Errorf("%g mm: from %g to %g", wet, f.Low, f.High)
		}
	}
}
