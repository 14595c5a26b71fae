package formula

import (
	"cmp"
	"math"

	"brazebooth/tables"
)

// Part is a whole part that warms up while its seam is laid.
type Part struct {
	Width     float64 // mm, of a flat joint, from whose two edges a seam's heat comes back; 0 for none
	Volume    float64 // mm3
	Surface   float64 // mm2
	Length    float64 // of the seam, mm
	Thick     float64 // mm
	K, RhoC   float64 // W/mmK, J/mm3K
	Emits     float64 // emissivity
	Start     float64 // C
	Coolest   float64 // what it must be down to before the next bead, C
	EdgeShare float64 // how much of what the edges throw back arrives at the peak, see StripRise
}

// Rise is by how much the metal before the arc is hotter at the seam's end than at its start, K: what the edges of a
// strip throw back, or what the whole part has taken up, whichever is more. power W net; travel mm/s.
func (p *Part) Rise(power, travel float64) (float64, error) {
	strip := 0.0
	if p.Width > 0 {
		var err error
		if strip, err = StripRise(power, travel, p.K, p.RhoC, p.Thick, p.Width, p.EdgeShare); err != nil {
			return 0, err
		}
	}
	after, err := p.After(power, travel)
	return max(strip, after-p.Start), err
}

// After is how hot the whole part is when the seam is done and its heat has spread, C.
func (p *Part) After(power, travel float64) (float64, error) {
	return p.then(p.Start, power, p.Length/travel)
}

// then is how hot the whole part is s seconds after a start, C, with a power going in. Its loss is that at the mean of
// start and end, so that the end is searched for: with the loss of an end that was found without loss, a light part
// would seem to stay colder than a heavy one.
func (p *Part) then(start, power, s float64) (float64, error) {
	at := func(end float64) (float64, error) {
		return PartTemperature(tables.RoomTemperature.V, start, power, p.loss((end+start)/2), p.Surface,
			p.Volume, p.RhoC, s)
	}
	low, high := start, max(start, start+power*s/(p.RhoC*p.Volume))
	const halvings = 50 // down to less than a nanokelvin
	var failed error
	low, high = Bisect(low, high, halvings, func(end float64) bool {
		t, err := at(end)
		failed = cmp.Or(failed, err)
		return t > end
	})
	if failed != nil {
		return 0, failed
	}
	return at((low + high) / 2)
}

// loss is what a part at t C gives to still air and the room around it, W/m2K.
func (p *Part) loss(t float64) float64 {
	const stefan, ice = 5.67e-8, 273.15
	a, b := t+ice, tables.RoomTemperature.V+ice
	return tables.FreeConvection.V + p.Emits*stefan*(a*a+b*b)*(a+b)
}

// Hold is how long the part takes to cool from a temperature, C, to Coolest, s; 0 where it is colder already. A part
// that starts hotter than that waits until it is within a few kelvin of its start.
func (p *Part) Hold(after float64) float64 {
	const near = 5 // K
	limit := p.Coolest
	if limit <= p.Start {
		limit = p.Start + near
	}
	air := tables.RoomTemperature.V
	if after <= limit {
		return 0
	}
	tau := p.RhoC * p.Volume / (p.loss((after+limit)/2) * 1e-6 * p.Surface)
	return tau * math.Log((after-air)/(limit-air))
}
