package calc

import (
	"math"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// wholePart is the whole part, where its width or its mass was given: it warms up while its seam is laid.
type wholePart struct {
	known    bool
	width    float64 // mm, of a flat joint, in which a seam's heat comes back from the two edges; 0 for none
	volume   float64 // mm3; 0 where nobody knows it
	surface  float64 // mm2
	length   float64 // of the seam, mm
	thick    float64 // mm, mean of the members
	k, rhoC  float64 // W/mmK, J/mm3K, means of the members
	density  float64 // g/cm3
	emits    float64 // emissivity
	start    float64 // C
	coolest  float64 // C: what it must be down to before the next bead
	perShare float64 // of what the edges throw back
}

func newPart(b *board, card *Card) wholePart {
	u := &card.Used
	if !(u.PartWidth.Set || u.PartMass.Set) || !b.chain.sectionModelled() {
		return wholePart{}
	}
	p := wholePart{known: true, length: u.Length.V, start: b.inputs[inRoom], perShare: tables.StripShare.V}
	members := card.Setup.Joined()
	for i, m := range members {
		n := 1 / float64(len(members))
		own := ofMember[i]
		p.thick += n * b.inputs[own.thick]
		p.k, p.rhoC = p.k+n*b.inputs[own.conduct], p.rhoC+n*b.inputs[own.capacity]
		p.density, p.emits = p.density+n*m.Metal.Density.V, p.emits+n*m.Metal.Emissivity.V
	}
	if u.Joint != "tee" && u.Joint != "corner" {
		p.width = u.PartWidth.V
	}
	if p.volume = u.PartWidth.V * p.thick * p.length; u.PartMass.Set {
		p.volume = u.PartMass.V * 1e6 / p.density
	}
	p.surface = 2 * p.volume / p.thick
	if u.ShaftDia.Set && card.Setup.One {
		p.surface = 4 * p.volume / u.ShaftDia.V
	}
	limit := tables.InterpassAluminium.V
	if card.Setup.Filler.ID == "cusi3" {
		limit = tables.InterpassSilicon.V
	}
	p.coolest = max(limit, p.start)
	return p
}

// rise is by how much the metal before the arc is hotter at the seam's end than at its start, K: what the edges of a
// strip throw back, or what the whole part has taken up, whichever is more. power W net; travel mm/s.
func (p *wholePart) rise(power, travel float64) (float64, error) {
	if !p.known {
		return 0, nil
	}
	strip := 0.0
	if p.width > 0 {
		var err error
		if strip, err = formula.StripRise(power, travel, p.k, p.rhoC, p.thick, p.width, p.perShare); err != nil {
			return 0, err
		}
	}
	after, err := p.after(power, travel)
	return max(strip, after-p.start), err
}

// after is how hot the whole part is when the seam is done and its heat has spread, C.
func (p *wholePart) after(power, travel float64) (float64, error) {
	return p.then(p.start, power, p.length/travel)
}

// then is how hot the whole part is after s seconds from a start, C, power going in. What it loses is that at the mean
// of start and end, so that the end is sought: taken from an end without loss, a light part would seem to stay colder
// than a heavy one.
func (p *wholePart) then(start, power, s float64) (float64, error) {
	at := func(end float64) (float64, error) {
		return formula.PartTemperature(tables.RoomTemperature.V, start, power, p.loss((end+start)/2), p.surface,
			p.volume, p.rhoC, s)
	}
	low, high := start, max(start, start+power*s/(p.rhoC*p.volume))
	for range 50 { // halvings, down to less than a nanokelvin
		mid := (low + high) / 2
		t, err := at(mid)
		if err != nil {
			return 0, err
		}
		if t > mid {
			low = mid
		} else {
			high = mid
		}
	}
	return at((low + high) / 2)
}

// loss is what a part at t C gives to still air and a room around it, W/m2K.
func (p *wholePart) loss(t float64) float64 {
	const stefan, ice = 5.67e-8, 273.15
	a, b := t+ice, tables.RoomTemperature.V+ice
	return tables.FreeConvection.V + p.emits*stefan*(a*a+b*b)*(a+b)
}

// hold is how long the part takes until it is down to what it may be before the next bead, s; 0 where it is. A part
// that was warmed waits until it is within a few kelvin of that.
func (p *wholePart) hold(after float64) float64 {
	const near = 5 // K
	limit := p.coolest
	if limit <= p.start {
		limit = p.start + near
	}
	air := tables.RoomTemperature.V
	if after <= limit {
		return 0
	}
	tau := p.rhoC * p.volume / (p.loss((after+limit)/2) * 1e-6 * p.surface)
	return tau * math.Log((after-air)/(limit-air))
}
