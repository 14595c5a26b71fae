package joint

import "testing"

// The fuller a bead, the more of the drawing it takes; a hollow one stays below the chord from toe to toe.
func TestBeadGrows(t *testing.T) {
	dots := func(phi float64) (n int) {
		s := Shape{Kind: Tee, Thick: [2]float64{1.5, 2}, Wet: [2]float64{4, 4}, Phi: phi}
		c := s.Bead()
		for x := range 100 {
			for y := range 100 {
				if c.Holds(Point{float64(x)/10 + 0.05, float64(y)/10 + 0.05}) {
					n++
				}
			}
		}
		return n
	}
	hollow, flat, full := dots(-0.4), dots(0), dots(0.4)
	if flat < 780 || flat > 820 { // half of 4 by 4 mm, in dots of 0.01 mm²
		t.Errorf("a flat bead has %d dots, want 800", flat)
	}
	if hollow >= flat || full <= flat {
		t.Errorf("hollow %d, flat %d, full %d", hollow, flat, full)
	}
}
