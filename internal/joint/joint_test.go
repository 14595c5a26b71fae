package joint

import (
	"math"
	"testing"
)

// The larger the bead's angle, the larger its area; a concave bead stays below the chord from toe to toe.
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

// The metal begins at the toes: a step into the metal is in the member, a step out is in none, and the frame shows
// both.
func TestToesLieOnTheMembers(t *testing.T) {
	for kind := range Kind(Kinds) {
		s := Shape{Kind: kind, Thick: [2]float64{1.2, 2}, Gap: 0.4, Wet: [2]float64{3, 2.5}, Phi: 0.4}
		frame := s.Frame(func(i int) float64 { return s.Wet[i] + 1 })
		for i, f := range s.sides() {
			toe, member := f.from.plus(f.along, s.wet()[i]), i
			if kind == Overlay {
				member = 0
			}
			if at, depth, along, ok := s.Member(toe.plus(f.in, 0.1)); !ok || at != member ||
				math.Abs(depth-0.1) > 1e-9 || math.Abs(along-s.wet()[i]) > 1e-9 {
				t.Errorf("joint %d, toe %d: member %d, %g deep, %g along, %t", kind, i, at, depth, along, ok)
			}
			if at, _, _, ok := s.Member(toe.plus(f.in, -0.1)); ok {
				t.Errorf("joint %d: outside of toe %d is member %d", kind, i, at)
			}
			if toe.X < frame.Left || toe.X > frame.Right || toe.Y < frame.Low || toe.Y > frame.Top {
				t.Errorf("joint %d: toe %d at %v is not in %v", kind, i, toe, frame)
			}
		}
	}
}

// Only a butt has a backing, and it is as thick as given.
func TestBehind(t *testing.T) {
	s := Shape{Thick: [2]float64{1, 2}, Gap: 1, Backing: 1.5}
	for y, want := range map[float64]bool{-1.9: false, -2.1: true, -3.4: true, -3.6: false} {
		if s.Behind(Point{0, y}) != want {
			t.Errorf("%g behind the joint: %t", y, !want)
		}
	}
	if s.Kind = Lap; s.Behind(Point{0, -2.1}) {
		t.Error("a bar behind a lap")
	}
}

func TestKindOf(t *testing.T) {
	if k, ok := KindOf("tee"); k != Tee || !ok {
		t.Errorf("tee is %d, %t", k, ok)
	}
	if k, ok := KindOf("plug"); k != Butt || ok {
		t.Errorf("plug is %d, %t", k, ok)
	}
}

// area measures the bead outside the members, mm2, in dots of 0.03 by 0.03 mm.
func area(s *Shape) float64 {
	const dot = 0.03
	n, c := 0, s.Bead()
	for x := -9.0 + dot/2; x < 9; x += dot {
		for y := -9.0 + dot/2; y < 9; y += dot {
			p := Point{x, y}
			if _, _, _, ok := s.Member(p); !ok && c.Holds(p) {
				n++
			}
		}
	}
	return float64(n) * dot * dot
}

// The bead of an edge joint has the area that belongs to its angle, for any thickness of the sheets, and lies in the
// frame.
func TestEdgeHasItsArea(t *testing.T) {
	for _, s := range []Shape{
		{Thick: [2]float64{0.45, 0.45}, Wet: [2]float64{3.4, 3.4}, Phi: 2.8},
		{Thick: [2]float64{1.6, 1.6}, Wet: [2]float64{2.5, 2.5}, Phi: 2.32},
		{Thick: [2]float64{1, 2}, Wet: [2]float64{3, 2}, Phi: 2.3},
		{Thick: [2]float64{1.5, 1.5}, Gap: 0.1, Wet: [2]float64{2, 2}, Phi: 2.2},
	} {
		s.Kind = Edge
		chord := math.Hypot(s.Thick[0]+s.Thick[1]+s.Gap, s.Wet[0]-s.Wet[1])
		radius := chord / 2 / math.Sin(s.Phi)
		want := radius*radius*(s.Phi-math.Sin(2*s.Phi)/2) - s.Thick[0]*s.Wet[0] - s.Thick[1]*s.Wet[1]
		if got := area(&s); want < 0.5 || math.Abs(got-want) > 0.05*want+0.2*s.Gap {
			t.Errorf("%+v: %.2f mm2, want %.2f", s, got, want)
		}
		top, frame := s.Bead().crown.top, s.Frame(func(int) float64 { return 4 })
		if left, right := s.outer(); top <= 0 || frame.Top < top || frame.Left > left-top || frame.Right < right+top {
			t.Errorf("%+v: %.2f mm high in %v", s, top, frame)
		}
	}
}

// A bead of more than 90° bulges out over its toes: the whole segment of the circle is drawn.
func TestBulge(t *testing.T) {
	s := Shape{Kind: Overlay, Thick: [2]float64{2}, Wet: [2]float64{1.5}}
	for _, s.Phi = range []float64{0.3, 1.2, 2, 2.5} {
		radius := 1.5 / math.Sin(s.Phi)
		want := radius * radius * (s.Phi - math.Sin(2*s.Phi)/2)
		if got := area(&s); math.Abs(got-want) > 0.03*want {
			t.Errorf("%g rad: %.2f mm2, want %.2f", s.Phi, got, want)
		}
	}
}

// The bead of a corner lies outside the corner, however far its toes reach.
func TestCornerIsEmptyInside(t *testing.T) {
	for _, wet := range []float64{0.5, 2, 5, 9} {
		for _, phi := range []float64{-0.3, 0, 0.6, 1.9} {
			s := Shape{Kind: Corner, Thick: [2]float64{2.7, 2.7}, Wet: [2]float64{wet, wet}, Phi: phi}
			c := s.Bead()
			for x := -8.05; x < 0; x += 0.1 {
				for y := -12.05; y < -2.7; y += 0.1 {
					if c.Holds(Point{x, y}) {
						t.Fatalf("wetted %g mm, %g rad: bead at %.2f, %.2f, inside the corner", wet, phi, x, y)
					}
				}
			}
		}
	}
}
