package hang

import (
	"math"

	"brazebooth/tables"
)

// Most limits a margin: a ratio of twenty. Anything further inside or outside is practically certain.
const Most = 3

// margin is the logarithm of have over need, within ±Most. A need of zero is met.
func margin(have, need float64) float64 {
	const tiny = 1e-12
	return math.Max(-Most, math.Min(Most, math.Log(math.Max(have, tiny)/math.Max(need, tiny))))
}

// Liquid is a filler near its liquidus.
type Liquid struct {
	Tension float64 // N/m
	Density float64 // kg/m3
	Swell   float64 // volume over the solid's volume at 20 C
	Wetting float64 // angle on clean hot steel, rad
}

const gravity = 9.80665 // m/s2, standard

// LiquidOf returns a filler's liquid; false if no row covers it.
func LiquidOf(f *tables.Filler) (Liquid, bool) {
	m, ok := tables.Melts.ByID(f.ID)
	if !ok {
		return Liquid{}, false
	}
	return Liquid{m.Tension.V, m.Density.V, 1000 * f.Density.V / m.Density.V, m.Wetting.V * math.Pi / 180}, true
}

// Length is the capillary length, mm: below this width surface tension outweighs gravity.
func (l *Liquid) Length() float64 { return 1000 * math.Sqrt(l.Tension/(l.Density*gravity)) }

// curvature turns a pressure, Pa, into the curvature that balances it, 1/mm.
func (l *Liquid) curvature(pressure float64) float64 { return pressure / l.Tension / 1000 }

// known reports a melt that is in a table.
func (l *Liquid) known() bool { return l.Tension > 0 && l.Density > 0 }

// Assumed holds those figures that nobody measures at a booth which a band varies. Usual takes them from tables.
type Assumed struct {
	ArcForce      float64 // N/A2
	RMS           float64 // of the current, over its mean
	PressureWidth float64 // mm
	RootWetted    float64 // share of the back width
	RootGrows     float64 // mm
}

// Usual returns the middle of every assumption for a mode of transfer: dip or pulsed.
func Usual(mode string) Assumed {
	return Assumed{
		ArcForce: tables.ArcForce.V, RMS: rmsOf(mode).V, PressureWidth: tables.ArcPressureWidth.V,
		RootWetted: tables.RootWetted.V, RootGrows: tables.RootGrows.V,
	}
}

// rmsOf is the root mean square of a mode's current over its mean.
func rmsOf(mode string) tables.Datum {
	if mode == "pulsed" {
		return tables.RMSPulsed
	}
	return tables.RMSDip
}

// Joint is one joint at one setting; the package comment says where each figure comes from. Index 0 is the
// member that ends at the joint: a lap's upper sheet, a tee's standing sheet.
type Joint struct {
	Kind     string // lap butt tee corner overlay
	Position string // flat horizontal vertical-up vertical-down overhead
	Mode     string // dip pulsed timed
	Backing  string // copper-bar steel-strip, "" for none

	Thick  [2]float64
	Gap    float64
	Bead   float64
	Wet    [2]float64
	Back   [2]float64
	Molten [2]float64
	Front  float64
	Pool   float64
	Chord  float64
	Under  float64
	Phi    float64

	Wire       float64
	Amps       float64
	Deposition float64

	Liquid  Liquid
	Assumed Assumed
}

// thin is the thickness of the thinner member, mm.
func (j *Joint) thin() float64 { return min(j.Thick[0], j.Thick[1]) }

// liquidBead is the section of the bead while it is liquid, mm2.
func (j *Joint) liquidBead() float64 { return j.Bead * j.Liquid.Swell }

// down is the share of gravity that pulls into the root: 1 flat, 0 beside, -1 overhead.
func (j *Joint) down() float64 {
	switch j.Position {
	case "flat", "":
		return 1
	case "overhead":
		return -1
	}
	return 0
}

// ArcPressure is the pressure of arc and drops on the middle of the pool, Pa: their force spread as a Gaussian.
func (j *Joint) ArcPressure() float64 {
	a := &j.Assumed
	current := a.RMS * j.Amps
	force := a.ArcForce*current*current + j.Deposition/1000*tables.DropSpeed.V
	return force / (2 * math.Pi * a.PressureWidth * a.PressureWidth * 1e-6)
}
