package calc

import (
	"fmt"
	"math"

	"brazebooth/calc/formula"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// wholePart is the whole part, known where its width or mass was given: it warms up while its seam is laid.
type wholePart struct {
	formula.Part
	known   bool
	density float64 // g/cm3, mean of the members
}

func newPart(b *board, card *Card) wholePart {
	u := &card.Used
	if b.partStays || !(u.PartWidth.Set || u.PartMass.Set) || !b.chain.sectionModelled() {
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

const partSource = "images of a moving line source in the edges of a strip, heat even through the whole part, free " +
	"convection and radiation from its faces; own computation"

// partFigures are what a seam does to a part that warms: by how much its end is hotter than its start, how hot the next
// bead would start at once, and how long to wait before it.
func (b *board) partFigures(card *Card, s *spread) []Figure {
	p := newPart(b, card)
	net, travel := s.value[oNet], s.value[oTravel]
	if !p.known {
		return nil
	}
	share := tables.StripShare
	var found [5][3]float64 // rise, after and hold: as they are, and with heat and share at each end of its interval
	for i, x := range [5][2]float64{{net, share.V}, {s.low[oNet], share.V}, {s.high[oNet], share.V}, {net, share.Low},
		{net, share.High}} {
		q := p
		q.EdgeShare = x[1]
		rise, err := q.Rise(x[0]*travel, travel)
		after, err2 := q.After(x[0]*travel, travel)
		if err != nil || err2 != nil {
			return nil
		}
		found[i] = [3]float64{rise, after, q.Hold(after)}
	}
	figure := func(k int, name, unit, formula string) Figure {
		v := found[0][k]
		down := math.Hypot(found[1][k]-v, found[3][k]-v)
		up := math.Hypot(found[2][k]-v, found[4][k]-v)
		return NewFigure(name, unit, v, max(0, v-down), v+up, OwnBasis(formula, partSource,
			Derived("", "net power", net*travel, "W"), In("", "seam", p.Length, "mm"),
			Derived("", "mass of the part", p.Volume*p.density*1e-6, "kg"),
			In("", "free convection", tables.FreeConvection.V, "W/m2K")))
	}
	rise := figure(0, "seam_rise", "K", "what the edges throw back or what the whole part takes up, the larger")
	after := figure(1, "next_start", "C", "the whole part when the seam is done and its heat has spread")
	after.Low = max(after.Low, min(p.Start, after.Value))
	figures := []Figure{rise, after}
	hold := figure(2, "next_hold", "s", "until the part is down to "+Number(math.Round(p.Coolest))+" °C")
	if hold.High > 0 { // else the next bead may follow at once
		figures = append(figures, hold)
	}
	return figures
}

// heavierThanBead refuses a part that weighs less than a strip as wide as its bead (width, mm) and as long as its seam.
func (b *board) heavierThanBead(card *Card, width float64) error {
	p := newPart(b, card)
	least := width * p.Thick * p.Length * p.density * 1e-6
	if !p.known || !card.Used.PartMass.Set || card.Used.PartMass.V >= least {
		return nil
	}
	return mistake.In("part_mass", fmt.Sprintf("a strip of this sheet as wide as its bead (%.1f mm) and as long as "+
		"the seam (%.0f mm) weighs %s kg already", width, p.Length, Digits(least, 2)),
		fmt.Sprintf("type the mass of the whole part, at least %s kg, or a shorter seam", Digits(1.05*least, 2)))
}

// seamEnds says how a seam that warms its part was judged at both ends, and which end counts.
func (w *warnings) seamEnds(v *verdict) {
	if !v.modelled || !(v.ends.rise > 0) {
		return
	}
	const basis = "cross-section at both ends of the seam, own computation"
	e := &v.ends
	where, severity := "here the start", Info
	switch {
	case e.start.Worst() < 0 && e.end.Worst() < 0:
		where = "neither is good"
	case e.atEnd():
		where = "here the end"
	}
	from, to := e.start.Verdict(), e.end.Verdict()
	if from != to {
		severity = Caution
	}
	w.tell("part-warms", severity, basis, "The part warms while this seam is laid: its end is about %.0f K hotter "+
		"than its start. The start is %s, the end %s; the card judges by the worse of each edge: %s.", e.rise, from, to,
		where)
}
