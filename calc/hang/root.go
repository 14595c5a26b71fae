package hang

import "math"

// Opening is an open butt root under a running arc.
type Opening struct {
	Gap, Thick float64 // mm
	Bead       float64 // liquid section, mm2
	Wet        float64 // sum of the wetted widths on the face, mm
	Back       float64 // sum of those on the back, mm
	Front      float64 // how far ahead of the arc the toe's temperature is reached, mm
	Wire       float64 // mm
	Down       float64 // share of gravity that pulls into the root, -1 to 1
	Arc        float64 // pressure, Pa
	Liquid     Liquid
	Assumed    Assumed
}

// Root is the liquid in an opening at rest: two caps, on the face and under the root, and the slot between
// them.
type Root struct {
	Chord, RootChord float64 // mm
	Face, Under      float64 // curvatures of the two caps, 1/mm
	Pressure         float64 // in the middle of the slot, Pa
	Slot             float64 // the widest gap that liquid runs along by itself, mm
	Puddle           float64 // how far ahead of the arc the puddle reaches in the gap, mm
	Sag              float64 // height of the root's bead, mm
}

// opening is the joint's root; where the base metal's edges melt, the gap is wider by that much.
func (j *Joint) opening() Opening {
	return Opening{
		Gap: j.Gap + j.Molten[0] + j.Molten[1], Thick: j.thin(), Bead: j.liquidBead(), Wet: j.Wet[0] + j.Wet[1],
		Back: j.Back[0] + j.Back[1], Front: j.Front, Wire: j.Wire, Down: j.down(), Arc: j.ArcPressure(),
		Liquid: j.Liquid, Assumed: j.Assumed,
	}
}

// segment is the area of a circular segment over a quarter of its chord squared; phi is the angle between chord
// and arc, rad, within ±π.
func segment(phi float64) float64 {
	if math.Abs(phi) < 0.02 { // the difference loses digits: use the quotient's series
		return phi * (2.0/3 + phi*phi*4/45)
	}
	sin, cos := math.Sincos(phi)
	return (phi - sin*cos) / (sin * sin)
}

// capArea is the area, mm2, of a circular segment over a chord, mm, with a curvature in 1/mm; negative is
// concave. No circle over the chord is more curved than a half circle. Beyond that the area grows in proportion
// to the curvature, so that a root with too much metal gets gradually worse instead of having no answer.
func capArea(curvature, chord float64) float64 {
	x, quarter := curvature*chord/2, chord*chord/4
	if math.Abs(x) > 1 {
		return quarter * math.Pi / 2 * x
	}
	return quarter * segment(math.Asin(x))
}

// capHeight is the height, mm, of that segment: tan(φ/2) of half the chord, and in proportion beyond a half
// circle.
func capHeight(curvature, chord float64) float64 {
	x := curvature * chord / 2
	if math.Abs(x) > 1 {
		return chord / 2 * x
	}
	return chord / 2 * x / (1 + math.Sqrt(1-x*x))
}

// leastChord keeps curvatures finite where nothing is wetted yet, mm.
const leastChord = 0.05

// Root returns the shape of the liquid: both caps under the same pressure, with the volume conserved.
func (o *Opening) Root() Root {
	l := &o.Liquid
	r := Root{
		Chord:     max(o.Gap+o.Wet, leastChord),
		RootChord: o.rootChord(),
	}
	column := l.Density * gravity * o.Thick / 1000 * o.Down
	load := l.curvature(column + o.Arc)
	r.Face = o.balance(&r, load)
	r.Under = r.Face + load
	r.Pressure = 1000*l.Tension*r.Face + column/2
	r.Slot = o.slot(r.Pressure)
	wetting := math.Pi/4 - l.Wetting/2
	r.Puddle = o.Front - math.Tan(wetting)*o.Gap*o.Gap/(2*r.Slot)
	r.Sag = capHeight(r.Under, r.RootChord)
	return r
}

// rootChord is the width of the root's bead, mm: the gap and the share of the back width that it wets.
func (o *Opening) rootChord() float64 {
	a := &o.Assumed
	return max(o.Gap+a.RootWetted*o.Back*-math.Expm1(-o.Gap/a.RootGrows), leastChord/10)
}

// balance finds the face's curvature that gives the right volume. Both caps grow with it.
func (o *Opening) balance(r *Root, load float64) float64 {
	fill := o.Bead - o.Gap*o.Thick
	bent := 2 + math.Abs(fill)/(r.Chord*r.Chord*math.Pi/8)
	most := 2*bent/r.Chord + math.Abs(load)
	return zero(func(face float64) float64 {
		return capArea(face, r.Chord) + capArea(face+load, r.RootChord) - fill
	}, -most, most)
}

// slot is the widest gap, mm, that liquid under a pressure, Pa, runs along by itself: there the energy of the
// free surfaces above and below equals the gain from wetting both edges and from the pressure. Without pressure
// it is t·cos θ: the free perimeter over the wetted one must be below cos θ (Berthier 2014, doi
// 10.1007/s10404-013-1270-1). The pressure's share is limited to one half, beyond which the surfaces are no
// longer nearly flat.
func (o *Opening) slot(pressure float64) float64 {
	share := pressure * o.Thick / (2000 * o.Liquid.Tension)
	return o.Thick * math.Cos(o.Liquid.Wetting) / (1 - math.Max(-0.5, math.Min(0.5, share)))
}
