// Package plate is the exact heat flow of a Gaussian source on a plate: constant properties, no melting, no
// loss from the faces, thickness from that of a sheet to a half-space. It corrects the cross-section, which
// ignores the heat along the seam, and is a reference for its tests.
//
// Everything is dimensionless, so that two or three numbers describe a case: lengths over the source's standard
// deviation σ, times over σ²/a, with a = k/ρc. Source of the integrals: the instantaneous point source of
// Carslaw and Jaeger, Conduction of Heat in Solids, 10.2 and 10.3, spread over a Gaussian and summed over time;
// its reflections in the two faces are 14.10 there.
package plate

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
)

// Face is the side of the plate at which a rise is computed.
type Face int

// The source is on the front.
const (
	Front Face = iota
	Back
)

// through is the rise of a face a time u after a unit of heat was deposited on the front face, relative to an
// infinite thin sheet, times the thickness: images for early times, cosines for late ones, both exact. delta is
// the thickness, +Inf for a half-space.
func through(u, delta float64, face Face) float64 {
	early := u < delta*delta/4
	sum := 0.0
	for n := 1.0; n < 40; n++ {
		var term float64
		switch {
		case early && face == Front:
			term = 2 * math.Exp(-n*n*delta*delta/u)
		case early: // seen from the back, the images are at odd multiples of the thickness
			odd := 2*n - 1
			term = 2 * math.Exp(-odd*odd*delta*delta/(4*u))
		default:
			term = 2 * math.Exp(-n*n*math.Pi*math.Pi*u/(delta*delta))
			if face == Back && int(n)%2 == 1 {
				term = -term
			}
		}
		sum += term
		if math.Abs(term) < 1e-17*math.Abs(sum) || term == 0 {
			break
		}
	}
	switch {
	case early && face == Front:
		return (1 + sum) / math.Sqrt(math.Pi*u)
	case early:
		return sum / math.Sqrt(math.Pi*u)
	}
	return (1 + sum) / delta
}

// Moving returns the rise at a point of a plate under a moving source that has come from far away, over q/(kσ):
// p = vσ/2a, delta = d/σ, xi ahead of the source over σ (negative behind), eta beside it over σ.
func Moving(p, delta, xi, eta float64, face Face) float64 {
	// The trapezoidal rule in ln u: the integrand vanishes at both ends, as √u at the early one.
	const h = 0.125
	top := math.Log(200 + 120/(p*p) + 4*math.Abs(xi)/p)
	sum := 0.0
	for x := -36.0; x < top; x += h {
		u := math.Exp(x)
		w := 1 + 2*u
		ahead := xi + 2*p*u
		e := math.Exp(-(ahead*ahead + eta*eta) / (2 * w))
		if e > 0 {
			sum += u * e / w * through(u, delta, face)
		}
	}
	return sum * h / (2 * math.Pi)
}

// MovingPeak is the highest rise that passes at a distance eta beside the moving source's line.
func MovingPeak(p, delta, eta float64, face Face) float64 {
	// Thick or thin, the peak lags behind the source by no more than this.
	far := 4 + 2*eta + 4*p*(1+eta*eta)
	if face == Back {
		far += 4 * p * min(delta, 20) * min(delta, 20)
	}
	return highest(-far, 0.5, func(xi float64) float64 { return Moving(p, delta, xi, eta, face) })
}

// Fast returns the rise at time t under a source that lies along the whole line at once and burns as a Gaussian
// in time of variance m about 0, over its heat per length over σ·k/a·σ: this is what the cross-section
// computes. t and m in σ²/a and its square.
func Fast(m, delta, t, eta float64, face Face) float64 {
	s := math.Sqrt(m)
	low, high := math.Max(0, t-9*s), t+9*s
	if high <= 0 {
		return 0
	}
	// In the root of u the integrand has no singularity at 0.
	from, to := math.Sqrt(low), math.Sqrt(high)
	f := func(r float64) float64 {
		u := r * r
		w := 1 + 2*u
		g := (u - t) / s
		e := math.Exp(-g*g/2 - eta*eta/(2*w))
		if u == 0 {
			return e / math.Sqrt(w) * startOf(face)
		}
		return 2 * r * e / math.Sqrt(w) * through(u, delta, face)
	}
	const panels = 16
	sum, h := 0.0, (to-from)/panels
	for i := range panels {
		sum += quad.Fixed(f, from+float64(i)*h, from+float64(i+1)*h, 10, quad.Legendre{}, 1)
	}
	return sum / (2 * math.Pi * s)
}

// startOf is 2r·through at r = 0.
func startOf(face Face) float64 {
	if face == Back {
		return 0
	}
	return 2 / math.Sqrt(math.Pi)
}

// FastPeak is the highest rise of a fast source at a distance eta.
func FastPeak(m, delta, eta float64, face Face) float64 {
	late := 4 + 3*math.Sqrt(m) + 2*eta*eta
	if face == Back {
		late += 4 * min(delta, 20) * min(delta, 20)
	}
	return highest(-3*math.Sqrt(m), late, func(t float64) float64 { return Fast(m, delta, t, eta, face) })
}

// highest finds the maximum of a function with one hill: the best of some points, then golden section around
// it.
func highest(low, high float64, f func(float64) float64) float64 {
	const points = 12
	at, most := 0, math.Inf(-1)
	for i := range points + 1 {
		if v := f(low + (high-low)*float64(i)/points); v > most {
			at, most = i, v
		}
	}
	step := (high - low) / points
	a, b := low+step*float64(max(0, at-1)), low+step*float64(min(points, at+1))
	golden := (math.Sqrt(5) - 1) / 2
	c, d := b-golden*(b-a), a+golden*(b-a)
	fc, fd := f(c), f(d)
	for range 34 {
		if fc > fd {
			b, d, fd = d, c, fc
			c = b - golden*(b-a)
			fc = f(c)
		} else {
			a, c, fc = c, d, fd
			d = a + golden*(b-a)
			fd = f(d)
		}
		most = max(most, fc, fd)
	}
	return most
}

// Rise is the peak rise that passes at a distance y beside a moving Gaussian source on a plate, K. q W; sigma,
// d, y mm (d may be +Inf); k W/mmK; rhoC J/mm3K; travel mm/s.
func Rise(q, sigma, k, rhoC, travel, d, y float64) float64 {
	p := travel * sigma * rhoC / (2 * k)
	return q / (k * sigma) * MovingPeak(p, d/sigma, y/sigma, Front)
}
