package thinsheet

import (
	"errors"
	"math"
	"testing"
)

// usualPlug is a usual hole in 1.3 mm steel on 1.3 mm steel.
func usualPlug() Plug {
	steel := Plain(7.85e-3, 0.035, 0.6, 260, 1470, 1520)
	return Plug{Hole: 9.3, Upper: 1.3, Lower: 1.3, Top: steel, Below: steel,
		Filler: Plain(8.53e-3, 0.055, 0.43, 210, 970, 1025), Stir: 2, Power: 800, Spread: 1.8, Led: 2.3,
		Seconds: 1.5, Contact: 0.001, Start: 20}
}

// All the arc's heat is in sheets and bronze when the hole is full.
func TestPlugConservesHeat(t *testing.T) {
	for _, change := range []func(*Plug){func(*Plug) {}, func(p *Plug) { p.Power = 1400 },
		func(p *Plug) { p.Contact = 0.01 }, func(p *Plug) { p.Crown, p.Seconds = 1.3, 3 },
		func(p *Plug) { p.Start = 200 }, func(p *Plug) { p.Lower = 5 }} {
		in := usualPlug()
		change(&in)
		p := newPool(&in)
		before := p.heat()
		p.fill()
		if got, want := p.heat()-before, in.Power*in.Seconds; math.Abs(got/want-1) > 1e-9 {
			t.Errorf("%+v: %g J of %g", in, got, want)
		}
	}
}

// heat is the heat of sheets and bronze over 20 C, J.
func (p *pool) heat() float64 {
	sum := 0.0
	for i, area := range p.area {
		sum += p.below.ring[i].e * area
		if i >= p.hole {
			sum += p.top.ring[i].e * area
		}
	}
	return sum
}

// Without bronze and upper sheet it is an arc at rest on a thin sheet: instantaneous sources summed over time,
// P/(2π·ρct)·∫exp(−r²/2(σ²+2as))/(σ²+2as) ds (Carslaw and Jaeger 10.3, memory high).
func TestPlugAgainstClosedForm(t *testing.T) {
	for _, seconds := range []float64{0.3, 1, 3, 8} {
		for _, k := range []float64{0.02, 0.035, 0.3} {
			bare := Plain(7.85e-3, k, 0.6, 1e-6, 5000, 5001)
			in := Plug{Hole: 40, Upper: 1e-6, Lower: 1.3, Top: bare, Below: bare, Filler: bare, Stir: 1, Power: 500,
				Spread: 2, Seconds: seconds, Start: 20}
			f, err := in.Fill()
			if err != nil {
				t.Fatal(err)
			}
			ct := 7.85e-3 * 0.6
			rise := func(r float64) float64 {
				sum := 0.0
				const n = 2000
				for i := range n {
					wide := 4 + 2*k/ct*seconds*(float64(i)+0.5)/n
					sum += math.Exp(-r*r/(2*wide)) / wide * seconds / n
				}
				return in.Power / (2 * math.Pi * ct * in.Lower) * sum
			}
			for _, r := range []float64{0, 2, 4} {
				want := 20 + rise(r)
				if r == 0 {
					if math.Abs(f.Middle/want-1) > 0.02 {
						t.Errorf("%g s, k %g: %.1f C in the middle, closed form %.1f", seconds, k, f.Middle, want)
					}
				} else if got := f.Within(want, in.Hole); math.Abs(got/2-r) > 0.1 { // rings are 0.67 mm wide
					t.Errorf("%g s, k %g: %.1f C at %g mm, closed form at %g mm", seconds, k, want, got/2, r)
				}
			}
		}
	}
}

// More power, more time for a crown or more preheat makes rim and middle hotter, a thicker sheet below makes
// them colder; the rim is never hotter than the middle, and the wetted diameter is within the hole and grows
// with the rim's heat.
func TestPlugFollowsItsInputs(t *testing.T) {
	toe := 970.0
	scan := func(what string, hotter bool, set func(p *Plug, x float64)) {
		var last Filled
		for i := range 9 {
			in := usualPlug()
			set(&in, float64(i)/8)
			f, err := in.Fill()
			if err != nil {
				t.Fatal(what, err)
			}
			if i > 0 && (f.Rim > last.Rim) != hotter {
				t.Errorf("%s: rim %.1f after %.1f", what, f.Rim, last.Rim)
			}
			if d := f.Within(toe, in.Hole) - last.Within(toe, in.Hole); i > 0 && (d < 0 && hotter || d > 0 && !hotter) {
				t.Errorf("%s: wetted diameter changes by %g", what, d)
			}
			if f.Rim > f.Middle || f.Within(toe, in.Hole) > in.Hole {
				t.Errorf("%s: rim %.0f, middle %.0f, %g mm", what, f.Rim, f.Middle, f.Within(toe, in.Hole))
			}
			last = f
		}
	}
	scan("power", true, func(p *Plug, x float64) { p.Power = 600 + 1500*x })
	scan("crown", true, func(p *Plug, x float64) { p.Crown, p.Seconds = 2.6*x, 1.5*(1+2*x) })
	// If nothing melts, 200 K of preheat reach the rim except for the part that the cold wire takes.
	in := usualPlug()
	for _, m := range []*Material{&in.Top, &in.Below, &in.Filler} {
		*m = Plain(m.Density, 0.04, 0.5, 1e-6, 4000, 4001)
	}
	in.Stir, in.Power = 1, 3*in.melting()
	cold, _ := in.Fill()
	in.Start += 200
	if warm, err := in.Fill(); err != nil || warm.Rim-cold.Rim < 100 || warm.Rim-cold.Rim >= 200 {
		t.Errorf("200 K of warmth give %g K at the rim (%v)", warm.Rim-cold.Rim, err)
	}
	scan("warmth", true, func(p *Plug, x float64) { p.Start = 20 + 400*x })
	scan("sheet below", false, func(p *Plug, x float64) { p.Lower = 0.6 + 3*x })
}

// Input that is no plug is refused.
func TestPlugRefuses(t *testing.T) {
	for _, change := range []func(*Plug){func(p *Plug) { p.Hole = 0 }, func(p *Plug) { p.Upper = math.NaN() },
		func(p *Plug) { p.Power = math.Inf(1) }, func(p *Plug) { p.Power = 200 }, func(p *Plug) { p.Contact = -1 },
		func(p *Plug) { p.Start = 2000 }, func(p *Plug) { p.Stir = 0 }, func(p *Plug) { p.Led = -1 },
		func(p *Plug) { p.Filler = Material{} }} {
		in := usualPlug()
		change(&in)
		if _, err := in.Fill(); !errors.Is(err, ErrRange) {
			t.Errorf("%+v: %v", in, err)
		}
	}
}

func BenchmarkPlug(b *testing.B) {
	in := usualPlug()
	for b.Loop() {
		if _, err := in.Fill(); err != nil {
			b.Fatal(err)
		}
	}
}
