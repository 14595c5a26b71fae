package calc

import (
	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// wholePart is the whole part, where its width or its mass was given: it warms up while its seam is laid.
type wholePart struct {
	formula.Part
	known   bool
	density float64 // g/cm3, mean of the members
}

func newPart(b *board, card *Card) wholePart {
	u := &card.Used
	if !(u.PartWidth.Set || u.PartMass.Set) || !b.chain.sectionModelled() {
		return wholePart{}
	}
	p := wholePart{known: true}
	p.Length, p.Start, p.EdgeShare = u.Length.V, b.inputs[inRoom], tables.StripShare.V
	members := card.Setup.Joined()
	for i, m := range members {
		n := 1 / float64(len(members))
		own := ofMember[i]
		p.Thick += n * b.inputs[own.thick]
		p.K, p.RhoC = p.K+n*b.inputs[own.conduct], p.RhoC+n*b.inputs[own.capacity]
		p.density, p.Emits = p.density+n*m.Metal.Density.V, p.Emits+n*m.Metal.Emissivity.V
	}
	if u.Joint != "tee" && u.Joint != "corner" {
		p.Width = u.PartWidth.V
	}
	if p.Volume = u.PartWidth.V * p.Thick * p.Length; u.PartMass.Set {
		p.Volume = u.PartMass.V * 1e6 / p.density
	}
	p.Surface = 2 * p.Volume / p.Thick
	if u.ShaftDia.Set && card.Setup.One {
		p.Surface = 4 * p.Volume / u.ShaftDia.V
	}
	limit := tables.InterpassAluminium.V
	if card.Setup.Filler.ID == "cusi3" {
		limit = tables.InterpassSilicon.V
	}
	p.Coolest = max(limit, p.Start)
	return p
}
