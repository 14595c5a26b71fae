package calc

import (
	"math"
	"sync"

	"brazebooth/calc/formula"
	"brazebooth/calc/section"
	"brazebooth/tables"
)

// heatState is what a feed and a travel do to the joint.
type heatState struct {
	o [outs]float64
	heated
	toes     section.Toes
	stood    section.Toes // the toes that steepest is taken from
	bridged  bool         // the bead has a section: it wets both members, and one arc can span it
	steepest float64      // larger toe angle, rad, of a bead that wets each member by barelyWets at least
	warmth   float64      // logarithm of the colder member's peak rise over the toe's
}

// workspaces are reused: one takes more memory than a card.
var workspaces = sync.Pool{New: func() any { return new(section.Workspace) }}

// sectionModelled reports whether the cross-section model applies: an arc that travels and burns without pause, on a
// joint that the model has arms for.
func (c *chain) sectionModelled() bool { return !c.plug && !c.timed }

var sectionJoints = map[string]section.Joint{
	"lap": section.LapJoint, "tee": section.TeeJoint, "butt": section.ButtJoint, "corner": section.CornerJoint,
	"overlay": section.OverlayJoint,
	"edge":    section.ButtJoint, // two paths away from one line: folding a butt moves no heat
}

// sectionInput is the cross-section's input from the board, without heat, bead and travel.
func (b *board) sectionInput(card *Card) section.Input {
	f, k := &card.Setup.Filler, &b.inputs
	in := section.Input{
		Joint: sectionJoints[Lies(card)],
		Filler: section.Filler{K: tables.SolidFillerConductivity.V, Stir: tables.Stirring.V,
			RhoC: (f.HeatCold.V + f.HeatHot.V) / 2 * f.Density.V * 1e-3, Latent: f.Latent.V * f.Density.V * 1e-3,
			Solidus: f.Solidus.V, Liquidus: f.Liquidus.V, Toe: k[inToe]},
		Sigma: k[inSpread], Gap: k[inGap], Loss: k[inLoss] * 1e-6, Start: k[inRoom], Aim: card.Used.Aim.V,
		Thick: [2]float64{k[inThick1], k[inThick2]},
		Base:  [2]section.Material{material(&card.Setup.Members[0].Metal, k[inConduct1], k[inHeatCap1])},
	}
	if !card.Setup.One {
		in.Base[1] = material(&card.Setup.Members[1].Metal, k[inConduct2], k[inHeatCap2])
	}
	if in.Joint == section.TeeJoint && card.Used.Joint == "lap" {
		in.High = in.Thick[0]
	}
	b.behind(&in, card.Used.backed())
	return in
}

func material(m *tables.Metal, conductivity, heatCapacity float64) section.Material {
	return section.Material{K: conductivity, RhoC: heatCapacity, Solidus: m.Solidus.V,
		Liquidus: max(m.Liquidus.V, m.Solidus.V+1),
		Latent:   m.Latent.V * m.Density.V * 1e-3, Steel: m.Family == tables.Steel}
}

// heatField finds the heat states of one job, and its limits, at any feed and travel.
type heatField struct {
	b    *board
	in   section.Input
	part wholePart
	margins
}

func (b *board) heatField(card *Card) heatField {
	return heatField{b, b.sectionInput(card), newPart(b, card), newMargins(b, card)}
}

// at finds the state at a feed and travel, mm/s, with the section altered; with zinc it follows the isotherms of zinc
// outward too.
func (h *heatField) at(feed, travel float64, zinc bool, alter ...func(*section.Input)) (heatState, error) {
	in, o, err := h.fed(feed, travel)
	if err != nil {
		return heatState{o: o}, err
	}
	for _, change := range alter {
		change(&in)
	}
	return h.solve(&in, &o, zinc)
}

// fed is the section's input at a feed and travel, mm/s, with the outputs of wire and arc there.
func (h *heatField) fed(feed, travel float64) (in section.Input, o [outs]float64, err error) {
	k, c := h.b.inputs, h.b.chain
	k[inFeed], k[inTravel] = feed, travel
	c.ampsGiven = false // else the amps would override the feed that is asked for
	if err := c.travelling(&k, &o); err != nil {
		return in, o, err
	}
	in = h.in
	in.Heat, in.Bead, in.Travel = o[oNet], o[oBead], o[oTravel]
	return in, o, nil
}

// solve finds the state of a section's input; o are the outputs of wire and arc.
func (h *heatField) solve(from *section.Input, o *[outs]float64, zinc bool) (heatState, error) {
	s, in := heatState{o: *o}, *from
	if err := h.b.effort.Over(); err != nil {
		return s, err
	}
	if zinc && (h.b.chain.zinc[0] || h.b.chain.zinc[1]) {
		in.Lowest = tables.ZincMelts.V
	}
	asked := sectionAsked{in, h.liquid.toe, h.solid, h.members}
	found, err := cachedSections.answer(asked, (*sectionAsked).solve)
	if err != nil {
		return s, err
	}
	h.b.effort.AddSection(found.work)
	s.heated = found
	if math.IsNaN(s.wet[0]) || math.IsNaN(s.wet[1]) {
		return s, formula.Outside("wetted width", s.o[oNet], "this heat wets further than the model's grid")
	}
	if l := &h.liquid; l.gap && l.joint.Kind == "butt" && l.joint.Backing == "" {
		if through := l.through(&in); !(s.front < through) { // NaN too
			s.front = through
		}
	}
	if in.Joint == section.StripJoint {
		s.onStrip()
	}
	if h.members == 1 {
		s.wet[1], s.skin[1] = s.wet[0], s.skin[0]
	}
	h.stand(&s, &in)
	return s, nil
}

// barelyWets is the least wetted width, mm, with which the toe angle of a bead is judged: without any width there is no
// bead, and a margin would jump where a member stops being wetted.
const barelyWets = 0.05

// stand finds the toe angles of the bead on its members.
func (h *heatField) stand(s *heatState, in *section.Input) {
	s.steepest = math.Pi
	toes, err := h.wanted.toes(s.o[oBead], max(s.wet[0], barelyWets), max(s.wet[1], barelyWets))
	if err == nil {
		s.steepest, s.stood = toes.Larger(), toes
	}
	if s.wet[0] > 0 && s.wet[1] > 0 && err == nil {
		s.bridged, s.toes = true, toes
	}
	s.warmth = math.Log((min(s.skin[0], s.skin[1]) - in.Start) / (in.Filler.Toe - in.Start))
}

// travelling computes wire, arc and heat of a travelling arc, without the closed forms of the bands beside it.
func (c *chain) travelling(k *[inputCount]float64, o *[outs]float64) error {
	if err := c.electric(k, o); err != nil {
		return err
	}
	return c.lineHeat(k, o)
}

// coldAngle is the toe angle, rad, above which the bead of a joint counts as a cold lap.
func coldAngle(joint string) float64 {
	switch joint {
	case "lap", "tee", "corner":
		return tables.ColdAngleFillet.V * math.Pi / 180
	}
	return tables.ColdAngleButt.V * math.Pi / 180
}
