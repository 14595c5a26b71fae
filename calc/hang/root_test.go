package hang

import (
	"fmt"
	"math"
	"testing"

	"brazebooth/tables"
)

func liquid(t testing.TB, filler string) Liquid {
	t.Helper()
	f, _ := tables.Fillers.ByID(filler)
	l, ok := LiquidOf(&f)
	if !ok {
		t.Fatalf("%s has no melt", filler)
	}
	return l
}

func TestCapillaryLength(t *testing.T) { // check 1
	for filler, want := range map[string]float64{"cusi3": 4.0873, "cual8": 4.1255, "cusn6": 3.7681} {
		l := liquid(t, filler)
		check(t, filler, l.Length(), want, 0.5e-4)
	}
	l := liquid(t, "cusi3")
	check(t, "pi times that of CuSi3", math.Pi*l.Length(), 12.8405, 0.5e-4)
	check(t, "liquid over solid volume of CuSi3", l.Swell, 1.118, 0.5e-3)
}

func TestArcPressure(t *testing.T) { // check 7
	j := Joint{Amps: 90, Deposition: 0.5, Assumed: Usual("dip")}
	check(t, "90 A, 0.5 g/s", j.ArcPressure(), 403.33, 0.5e-2)
	pulsed := j
	pulsed.Assumed = Usual("pulsed")
	if !(pulsed.ArcPressure() > j.ArcPressure()) {
		t.Error("pulses push no harder than the mean")
	}
}

func TestSlot(t *testing.T) { // check 8
	o := Opening{Thick: 1.5, Liquid: liquid(t, "cusi3")}
	check(t, "1.5 mm", o.slot(0), 1.2990, 0.5e-4)
	check(t, "1.5 mm at 300 Pa", o.slot(300), 1.5842, 0.5e-4)
	// Two plates and a liquid that wets them perfectly: the gap is as wide as the plates are thick.
	o.Liquid.Wetting = 0
	check(t, "wetted perfectly", o.slot(0), 1.5, 1e-12)
}

// rootRows are the rows of check 14, CuSi3, wire 0.889 mm, arc 200 Pa: inputs, then results.
var rootRows = []struct {
	gap, thick, bead, wet, back, front, down float64
	face, under, pressure, slot, puddle      float64
	span, land, hold, sag                    float64
}{
	{.6, 1, 3.84, 2.56, 2.30, .51, 1, .1796, .3995, 261.93, .9674, .4026, .4777, .3954, .5849, 1.5947},
	{1.5, 1.5, 7, 3, 2, 1.5, 1, .1106, .3604, 194.34, 1.4705, 1.0583, -.0199, .1771, .3270, 1.2005},
	{3, 1.5, 6.16, 2.68, 2.22, .86, 1, -.0159, .2338, 36.19, 1.3279, -1.0966, -.8150, -1.2163, .1686, 1.0602},
	{1.5, 1.5, 7, 3, 2, 1.5, -1, .1278, .1981, 103.69, 1.3852, 1.0311, -.0796, .1632, 1.0635, 1.8855},
}

func rowOpening(t testing.TB, i int) Opening {
	l, r := liquid(t, "cusi3"), &rootRows[i]
	return Opening{Gap: r.gap, Thick: r.thick, Bead: r.bead * l.Swell, Wet: 2 * r.wet, Back: 2 * r.back, Front: r.front,
		Wire: .889, Down: r.down, Arc: 200, Liquid: l, Assumed: Usual("dip")}
}

func TestRootCheckValues(t *testing.T) {
	for i, r := range rootRows {
		o := rowOpening(t, i)
		root, b := o.Root(), o.Bridge()
		for _, c := range []struct {
			name            string
			got, want, half float64
		}{
			{"face", root.Face, r.face, 0.5e-4}, {"under", root.Under, r.under, 0.5e-4},
			{"pressure", root.Pressure, r.pressure, 0.5e-2}, {"slot", root.Slot, r.slot, 0.5e-4},
			{"puddle", root.Puddle, r.puddle, 0.5e-4}, {"span", b.Span, r.span, 0.5e-4},
			{"land", b.Land, r.land, 0.5e-4},
			{"hold", b.Hold, r.hold, 0.5e-4}, {"sag", b.Sag, r.sag, 0.5e-4},
		} {
			check(t, fmt.Sprintf("row %d, %s", i+1, c.name), c.got, c.want, c.half)
		}
	}
	o := rowOpening(t, 2)
	b := o.Bridge()
	e := Edge{Margin: b.Least(), Doubt: tables.BridgesDoubt.V}
	check(t, "chance of the third row, %", 100*e.Chance(), 0.0, 0.05)
}

// TestRootKeepsItsMetal adds up the areas of slot and caps in another way: from radius and angle.
func TestRootKeepsItsMetal(t *testing.T) {
	capOf := func(curvature, chord float64) float64 {
		r := 1 / math.Abs(curvature)
		phi := math.Asin(chord / 2 / r)
		return math.Copysign(r*r*phi-chord/2*math.Sqrt(r*r-chord*chord/4), curvature)
	}
	for i := range rootRows {
		o := rowOpening(t, i)
		for _, bead := range []float64{2, 4, 6, 8, 10} {
			o.Bead = bead
			r := o.Root()
			if r.Face*r.Chord/2 > 1 || r.Under*r.RootChord/2 > 1 {
				continue // no real shape beyond a half circle
			}
			check(t, fmt.Sprintf("row %d, %g mm2", i+1, bead),
				o.Gap*o.Thick+capOf(r.Face, r.Chord)+capOf(r.Under, r.RootChord), bead, 1e-9)
		}
	}
}

// TestRootWithoutLoads: with no gravity, no arc and equal chords the metal stands out equally on both sides.
func TestRootWithoutLoads(t *testing.T) {
	o := rowOpening(t, 0)
	o.Arc, o.Down = 0, 0
	o.Assumed.RootWetted, o.Back = 1, o.Wet/-math.Expm1(-o.Gap/o.Assumed.RootGrows)
	r := o.Root()
	check(t, "root's and face's curvature", r.Under, r.Face, 1e-12)
	check(t, "pressure", r.Pressure, 1000*o.Liquid.Tension*r.Face, 1e-9)
	check(t, "each cap", capArea(r.Face, r.Chord), (o.Bead-o.Gap*o.Thick)/2, 1e-9)
	check(t, "height of a flat bead", capHeight(1e-9, 4), 2e-9, 1e-15) // κ·c²/8
}

// TestUsualSettings compares the edge with margins that were printed for the settings which this program
// suggests for a butt of bare sheet, wire 0.889 mm. Bead, widths and arc of those settings come from its
// cross-section; a front of 0.5 mm is what the section gave for 1 mm. The print is to a hundredth, and its
// section allowed for the gap, which makes the edges hotter and the front longer: 0.02.
func TestUsualSettings(t *testing.T) {
	gaps := []float64{.3, .6, 1, 1.5, 2, 3}
	for _, c := range []struct {
		thick, bead, wet, back, front, amps, grams float64
		want                                       [6]float64
	}{
		{.8, 3.270, 2.748, 2.563, .8, 61.6, .3169, [6]float64{.92, .21, -.32, -.75, -1.05, -1.47}},
		{1, 3.839, 2.562, 2.288, .51, 64.8, .3351, [6]float64{.85, .40, -.08, -.51, -.81, -1.24}},
	} {
		last := math.Inf(1)
		for i, gap := range gaps {
			j := Joint{Kind: "butt", Mode: "dip", Thick: [2]float64{c.thick, c.thick}, Gap: gap, Bead: c.bead,
				Wet: [2]float64{c.wet, c.wet}, Back: [2]float64{c.back, c.back}, Front: c.front, Wire: .889,
				Amps: c.amps, Deposition: c.grams, Liquid: liquid(t, "cusi3"), Assumed: Usual("dip")}
			got := j.bridges()
			check(t, fmt.Sprintf("%g mm, gap %g", c.thick, gap), got, c.want[i], 0.02)
			if got >= last {
				t.Errorf("%g mm: bridges a gap of %g better than the one before", c.thick, gap)
			}
			last = got
		}
	}
}
