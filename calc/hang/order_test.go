package hang

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// anyOpening is a realistic open root: a bead that wets both edges and is not a heap on a very narrow base.
func anyOpening(t testing.TB, rng *rand.Rand) Opening {
	of := func(low, high float64) float64 { return low * math.Pow(high/low, rng.Float64()) }
	o := Opening{Thick: of(0.5, 3), Wire: of(0.6, 1.6), Wet: of(3, 12), Front: 4*rng.Float64() - 1.5, Bead: of(2, 12),
		Arc: of(60, 700), Down: float64(rng.IntN(3) - 1), Liquid: liquid(t, "cusi3"), Assumed: Usual("dip")}
	o.Back = o.Wet * (0.3 + 0.7*rng.Float64())
	return o
}

// TestWiderGapBridgesWorse: with a wider gap liquid runs less far and the wire lands worse. The whole edge gets
// worse too, unless too much metal in the root decides, because a wider gap takes some of it away.
func TestWiderGapBridgesWorse(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 600 {
		o := anyOpening(t, rng)
		last := Bridge{Most, Most, Most, Most}
		for g := 0.0; g < 4; g += 0.02 {
			o.Gap = g
			b := o.Bridge()
			if b.Span > last.Span+1e-9 {
				t.Fatalf("liquid runs further at %g mm: %g after %g, %+v", g, b.Span, last.Span, o)
			}
			if b.Land > last.Land+1e-9 {
				t.Fatalf("the wire lands better at %g mm: %g after %g, %+v", g, b.Land, last.Land, o)
			}
			if b.Least() > last.Least()+1e-9 && last.Least() != last.Hold {
				t.Fatalf("bridges better at %g mm: %+v after %+v, %+v", g, b, last, o)
			}
			last = b
		}
	}
}

// TestRootOrder moves one figure of a root at a time in a direction that must not raise a margin.
func TestRootOrder(t *testing.T) {
	hold, sag := func(b *Bridge) float64 { return b.Hold }, func(b *Bridge) float64 { return b.Sag }
	for i := range rootRows {
		for _, c := range []struct {
			what  string
			of    func(*Opening, float64)
			from  float64
			to    float64
			falls func(*Bridge) float64
		}{
			{"a harder arc, hold", func(o *Opening, v float64) { o.Arc = v }, 0, 2000, hold},
			{"a harder arc, sag", func(o *Opening, v float64) { o.Arc = v }, 0, 2000, sag},
			{"more gravity, hold", func(o *Opening, v float64) { o.Down = v }, -1, 1, hold},
			{"more gravity, sag", func(o *Opening, v float64) { o.Down = v }, -1, 1, sag},
			{"more metal, hold", func(o *Opening, v float64) { o.Bead = v }, 1, 15, hold},
			{"more metal, sag", func(o *Opening, v float64) { o.Bead = v }, 1, 15, sag},
			{"worse wetting, span", func(o *Opening, v float64) { o.Liquid.Wetting = v }, 0, 1.4,
				func(b *Bridge) float64 { return b.Span }},
			{"a front further behind, land", func(o *Opening, v float64) { o.Front = -v }, -3, 3,
				func(b *Bridge) float64 { return b.Land }},
			{"less metal, span", func(o *Opening, v float64) { o.Bead = -v }, -15, -1,
				func(b *Bridge) float64 { return b.Span }},
		} {
			o := rowOpening(t, i)
			last := math.Inf(1)
			for k := range 201 {
				c.of(&o, c.from+(c.to-c.from)*float64(k)/200)
				b := o.Bridge()
				if v := c.falls(&b); v > last+1e-9 {
					t.Errorf("row %d, %s: %g after %g at step %d", i+1, c.what, v, last, k)
					break
				} else {
					last = v
				}
			}
		}
	}
}

// continuous looks for a jump: it halves the steepest of n steps between a and b thirty times, each time
// keeping the half that changes more. A jump keeps its height; a steep rise, even a vertical one, loses it.
func continuous(t *testing.T, what string, f func(float64) float64, a, b float64, n int) {
	t.Helper()
	from, to, most := a, a, -1.0
	x, y := a, f(a)
	for i := 1; i <= n; i++ {
		nx := a + (b-a)*float64(i)/float64(n)
		ny := f(nx)
		if math.IsNaN(ny) || math.IsInf(ny, 0) {
			t.Fatalf("%s: %g at %g", what, ny, nx)
		}
		if d := math.Abs(ny - y); d > most {
			from, to, most = x, nx, d
		}
		x, y = nx, ny
	}
	low, high := f(from), f(to)
	for range 30 {
		mid := (from + to) / 2
		v := f(mid)
		if math.Abs(v-low) > math.Abs(high-v) {
			to, high = mid, v
		} else {
			from, low = mid, v
		}
	}
	if math.Abs(high-low) > 1e-3 {
		t.Errorf("%s jumps by %g at %g", what, high-low, from)
	}
}

func TestRootHasNoJump(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for range 40 {
		base := anyOpening(t, rng)
		base.Gap = 2 * rng.Float64()
		for _, c := range []struct {
			what string
			at   func(*Opening) *float64
			a, b float64
		}{
			{"gap", func(o *Opening) *float64 { return &o.Gap }, 0, 8},
			{"thickness", func(o *Opening) *float64 { return &o.Thick }, 0.05, 6},
			{"width", func(o *Opening) *float64 { return &o.Wet }, 0, 20},
			{"back", func(o *Opening) *float64 { return &o.Back }, 0, 20},
			{"bead", func(o *Opening) *float64 { return &o.Bead }, 0, 40},
			{"front", func(o *Opening) *float64 { return &o.Front }, -6, 6},
			{"wire", func(o *Opening) *float64 { return &o.Wire }, 0.3, 2},
			{"gravity", func(o *Opening) *float64 { return &o.Down }, -1, 1},
			{"arc", func(o *Opening) *float64 { return &o.Arc }, 0, 3000},
			{"tension", func(o *Opening) *float64 { return &o.Liquid.Tension }, 0.3, 3},
			{"wetting", func(o *Opening) *float64 { return &o.Liquid.Wetting }, 0, 1.5},
		} {
			for name, of := range map[string]func(*Bridge) float64{"span": func(b *Bridge) float64 { return b.Span },
				"land": func(b *Bridge) float64 { return b.Land }, "hold": func(b *Bridge) float64 { return b.Hold },
				"sag": func(b *Bridge) float64 { return b.Sag }, "least": (*Bridge).Least} {
				continuous(t, name+" over "+c.what, func(v float64) float64 {
					o := base
					*c.at(&o) = v
					b := o.Bridge()
					return of(&b)
				}, c.a, c.b, 60)
			}
		}
	}
}

// TestCapArea covers the half circle at both ends and the series.
func TestCapArea(t *testing.T) {
	for _, chord := range []float64{0.1, 3, 9} {
		continuous(t, "area of a cap", func(x float64) float64 { return capArea(2*x/chord, chord) }, -3, 3, 400)
		continuous(t, "height of a cap", func(x float64) float64 { return capHeight(2*x/chord, chord) }, -3, 3, 400)
		last := math.Inf(-1)
		for x := -3.0; x < 3; x += 0.001 {
			v := capArea(2*x/chord, chord)
			if v <= last {
				t.Fatalf("no larger at %g", x)
			}
			last = v
		}
		check(t, "half a circle", capArea(2/chord, chord), math.Pi*chord*chord/8, 1e-12)
		check(t, "hollow", capArea(-1/chord, chord), -capArea(1/chord, chord), 1e-15)
	}
	for _, phi := range []float64{0.0199, 0.02, 0.0201} {
		exact := (phi - math.Sin(phi)*math.Cos(phi)) / (math.Sin(phi) * math.Sin(phi))
		check(t, fmt.Sprintf("segment at %g", phi), segment(phi), exact, 1e-9)
	}
}
