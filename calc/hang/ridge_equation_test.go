package hang

import (
	"fmt"
	"math"

	"brazebooth/calc/formula"
)

// Pull is gravity as seen from the chord between a bead's toes: Along points from the first toe to the second,
// Out away from the metal. Full gravity has length 1; {} is none.
type Pull struct{ Along, Out float64 }

// The pulls in the four ways in which a bead hangs. The first toe is where the equation starts.
var (
	overheadPull   = Pull{Out: 1}
	overheadFillet = Pull{Along: math.Sqrt2 / 2, Out: math.Sqrt2 / 2}
	wallPull       = Pull{Along: -1} // from the lower toe upward
	lyingFillet    = Pull{Along: -math.Sqrt2 / 2, Out: -math.Sqrt2 / 2}
)

// Ridge is the cross-section of a long liquid bead between two toes that are pinned by freezing: the
// two-dimensional Young-Laplace equation, x' = cos ψ, z' = sin ψ, ψ' = −(P + along·x + out·z) over the arc
// length, from z = 0 to z = 0 again. Lengths are in capillary lengths, pressures in tension over capillary
// length, angles in rad.
type Ridge struct {
	Chord    float64
	Pressure float64 // at the first toe
	First    float64 // toe angle, inside the bead
	Second   float64
	Surface  float64 // length of the surface
	Area     float64 // over the chord
	Height   float64 // of the surface's highest point over the chord
	steeper  float64 // d Pressure / d First at the same chord
}

// ridgeSteps is the number of fourth-order Runge-Kutta steps: area to 1e-8 up to four capillary lengths.
const ridgeSteps = 100

// shot is the end of a surface: place, slope, area below, highest point, and the derivatives of place and slope
// by the pressure (p) and by the first toe's angle (t).
type shot struct {
	x, z, psi, area    float64
	xp, zp, psip       float64
	xt, zt, psit, high float64
}

// slope is the derivative of a shot by the arc length.
func (s *shot) slope(g Pull, pressure float64) shot {
	sin, cos := math.Sincos(s.psi)
	return shot{
		x: cos, z: sin, psi: -(pressure + g.Along*s.x + g.Out*s.z), area: s.z * cos,
		xp: -sin * s.psip, zp: cos * s.psip, psip: -(1 + g.Along*s.xp + g.Out*s.zp),
		xt: -sin * s.psit, zt: cos * s.psit, psit: -(g.Along*s.xt + g.Out*s.zt),
	}
}

// moved returns s + h·d.
func (s shot) moved(d *shot, h float64) shot {
	s.x, s.z, s.psi, s.area = s.x+h*d.x, s.z+h*d.z, s.psi+h*d.psi, s.area+h*d.area
	s.xp, s.zp, s.psip = s.xp+h*d.xp, s.zp+h*d.zp, s.psip+h*d.psip
	s.xt, s.zt, s.psit = s.xt+h*d.xt, s.zt+h*d.zt, s.psit+h*d.psit
	return s
}

// shoot follows a surface of this length from the first toe.
func shoot(g Pull, toe, pressure, length float64) shot {
	s := shot{psi: toe, psit: 1}
	h := length / ridgeSteps
	for range ridgeSteps {
		a := s.slope(g, pressure)
		sb := s.moved(&a, h/2)
		b := sb.slope(g, pressure)
		sc := s.moved(&b, h/2)
		c := sc.slope(g, pressure)
		sd := s.moved(&c, h)
		d := sd.slope(g, pressure)
		s = s.moved(&a, h/6)
		s = s.moved(&b, h/3)
		s = s.moved(&c, h/3)
		s = s.moved(&d, h/6)
		s.high = max(s.high, s.z)
	}
	return s
}

// close finds the pressure and length with which a surface that leaves at its first toe's angle ends at the
// other end of the chord, by Newton's rule from a guess; false if that does not converge.
func (r *Ridge) close(g Pull) bool {
	for range 30 {
		s := shoot(g, r.First, r.Pressure, r.Surface)
		sin, cos := math.Sincos(s.psi)
		dx, dz := r.Chord-s.x, -s.z
		det := s.xp*sin - s.zp*cos
		dp, dl := (dx*sin-dz*cos)/det, (s.xp*dz-s.zp*dx)/det
		if !(math.Abs(dp) < 5 && math.Abs(dl) < r.Surface/2) {
			return false
		}
		r.Pressure, r.Surface = r.Pressure+dp, r.Surface+dl
		if math.Abs(dp)+math.Abs(dl) < 1e-12 {
			r.Second, r.Area, r.Height = -s.psi, s.area, s.high
			r.steeper = -(s.xt*sin - s.zt*cos) / det
			return true
		}
	}
	return false
}

// fill finds the toe's angle at which the pressure over the chord is greatest, by the secant rule.
func (r *Ridge) fill(g Pull) bool {
	const first, widest = -0.02, 0.2
	before, here := *r, *r
	here.First += first
	if !before.close(g) || !here.close(g) {
		return false
	}
	for range 20 {
		step := -here.steeper * (here.First - before.First) / (here.steeper - before.steeper)
		if !(math.Abs(step) < widest) {
			return false
		}
		before = here
		here.First += step
		here.Pressure += step * here.steeper
		if !here.close(g) {
			return false
		}
		if math.Abs(step) < 1e-10 {
			*r = here
			return true
		}
	}
	return false
}

// addGravity adds gravity in small steps to the circular arc without it, solving again each time. A step that
// changes the surface much is halved, because Newton's rule may jump to a surface with more than one wave.
func addGravity(g Pull, chord, toe float64, solve func(*Ridge, Pull) bool) (Ridge, error) {
	sin := math.Sin(toe)
	at := Ridge{Chord: chord, First: toe, Second: toe, Pressure: 2 * sin / chord, Surface: chord * toe / sin}
	share, step := 0.0, 0.25
	for share < 1 {
		next, to := at, min(1, share+step)
		if solve(&next, Pull{g.Along * to, g.Out * to}) && math.Abs(next.Surface-at.Surface) < at.Surface/10 &&
			math.Abs(next.Second-at.Second) < 0.4 && math.Abs(next.First-at.First) < 0.4 {
			at, share, step = next, to, step*1.5
			continue
		}
		if step /= 2; step < 1e-4 {
			return Ridge{}, fmt.Errorf("%w: no ridge closes over %g capillary lengths", formula.ErrRange, chord)
		}
	}
	return at, nil
}

// GivenToe returns the ridge over a chord, in capillary lengths, whose first toe has this angle, rad, above 0
// and up to 2.2. It returns ErrRange if no surface closes.
func GivenToe(g Pull, chord, toe float64) (Ridge, error) {
	if err := checkRidge(g, chord); err != nil {
		return Ridge{}, err
	}
	if !(toe > 0 && toe <= 2.2) {
		return Ridge{}, fmt.Errorf("%w: toe of %g rad, above 0 and up to 2.2", formula.ErrRange, toe)
	}
	return addGravity(g, chord, toe, (*Ridge).close)
}

// Fullest returns the ridge of the greatest pressure over a chord, in capillary lengths. In a fuller ridge the
// pressure falls, so that a long ridge gathers into drops. It returns ErrRange if gravity leaves none.
func Fullest(g Pull, chord float64) (Ridge, error) {
	if err := checkRidge(g, chord); err != nil {
		return Ridge{}, err
	}
	return addGravity(g, chord, math.Pi/2, (*Ridge).fill)
}

func checkRidge(g Pull, chord float64) error {
	if !(chord > 0 && chord <= 10 && math.Hypot(g.Along, g.Out) <= 1.001) {
		return fmt.Errorf("%w: chord of %g capillary lengths, up to 10, pull %+v", formula.ErrRange, chord, g)
	}
	return nil
}
