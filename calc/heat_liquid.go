package calc

import (
	"brazebooth/calc/hang"
	"brazebooth/calc/limit"
	"brazebooth/calc/section"
	"brazebooth/tables"
)

// liquid is what a setting must do with the liquid filler: bridge the gap, and stay where it was laid.
type liquid struct {
	joint         hang.Joint // of the job; bead, widths and pool come with a setting
	gap, position bool       // which of the two the job asks for
	filler        *tables.Filler
	toe           float64 // C
}

func newLiquid(b *board, card *Card) liquid {
	u := &card.Used
	judged := u.Gap.V > 0 && u.Gap.V <= 2*tables.ArcWidth.V // beyond it no section is computed
	l := liquid{gap: judged && u.Joint != "overlay" && u.Joint != "plug" && u.Joint != "corner" &&
		u.Joint != "edge",
		position: u.Position != "" && u.Position != "flat",
		filler:   &card.Setup.Filler, toe: b.inputs[inToe]}
	l.joint = hang.Joint{Kind: Lies(card), Position: u.Position, Mode: u.Mode, Gap: u.Gap.V, Wire: b.inputs[inWire],
		Backing: u.backed(), Assumed: hang.Usual(u.Mode)}
	if u.Joint == "edge" { // its bead hangs like a bead on a face, by the chord from toe to toe
		l.joint.Kind = "overlay"
	}
	l.joint.Liquid, _ = hang.LiquidOf(&card.Setup.Filler)
	for i, m := range card.Setup.Joined() {
		l.joint.Thick[i] = m.Core
	}
	if card.Setup.One {
		l.joint.Thick[1] = l.joint.Thick[0]
	}
	return l
}

// at is the joint with the bead of a state.
func (l *liquid) at(s *heatState) hang.Joint {
	j, o := l.joint, &s.o
	j.Bead, j.Amps, j.Deposition = o[oBead], o[oAmps], o[oBead]*o[oTravel]*l.filler.Density.V/1000
	j.Wet, j.Back, j.Molten, j.Front, j.Pool = s.wet, s.back, s.molten, known(s.front), s.pool
	j.Chord, j.Phi = s.stood.Chord, s.stood.Phi
	j.Under = j.Bead - j.Chord*j.Chord/4*section.Segment(j.Phi)
	if j.Kind == "corner" { // the bead wraps the edge: its chord cuts off steel, not metal that hangs
		j.Under = max(0, j.Under)
	}
	return j
}

// edges are the logarithms of bridging and staying at a state; limit.Far where the job does not ask for them or nothing
// judges them. They have values also where limit.All.Unjudged finds that they mean nothing: a bead that is good
// although its state, as computed, is burnt or cold had other heat, and it then bridges about what is found at that
// border.
func (l *liquid) edges(s *heatState) (bridges, stays float64) {
	bridges, stays = limit.Far, limit.Far
	if !l.gap && !l.position {
		return bridges, stays
	}
	j := l.at(s)
	gap, hangs, err := hang.Edges(&j)
	if err != nil { // a state that no joint can have: far too hot or too cold
		gap.Margin, hangs.Margin = -hang.Most, -hang.Most
	}
	if l.gap && gap.Why == "" && gap.Margin < hang.Most {
		bridges = gap.Margin
	}
	if l.position && hangs.Why == "" {
		stays = hangs.Margin
	}
	return bridges, stays
}

// notJudged says why bridging is not judged though the job asks for it; "" else.
func (l *liquid) notJudged() string {
	if l.joint.Kind == "corner" && l.joint.Gap > tables.SteadyGap.V {
		return "nothing here computes whether the metal bridges an open corner; close it"
	}
	gap, _, err := hang.Edges(&l.joint)
	if err != nil || !l.gap {
		return ""
	}
	return gap.Why
}

// staysNotJudged says the same of whether the metal stays where it is laid.
func (l *liquid) staysNotJudged() string {
	_, hangs, err := hang.Edges(&l.joint)
	if err != nil || !l.position {
		return ""
	}
	return hangs.Why
}

// doubt is one standard deviation of the logarithm of filling, bridging or staying.
func (l *liquid) doubt(at limit.Limit) float64 {
	bridges, hangs, _ := hang.Edges(&l.joint)
	switch at {
	case limit.Filled:
		return hang.FillsDoubt(l.joint.Gap)
	case limit.Stays:
		return hangs.Doubt
	}
	return bridges.Doubt
}

// through is how far ahead of the arc the sheet gets as hot as the toe, mm, in the mean over its thickness: the puddle
// in a root lies against the whole edge, and in thick sheet only the skin is hot there. It is computed by the exact
// moving source on a plate like the mean of both sheets, without the heat that stays in the filler.
func (l *liquid) through(in *section.Input) float64 {
	m, thick := meanSheet(in)
	return (&hang.Spot{Power: in.Travel * max(in.Heat-in.Bead*in.Filler.Enthalpy(), 0.02*in.Heat), K: m.K, RhoC: m.RhoC,
		Thick: thick, Width: in.Sigma, Travel: in.Travel, Start: in.Start}).Front(l.toe)
}

// meanSheet is a plate like the mean of both sheets, with their properties at brazing heat.
func meanSheet(in *section.Input) (m section.Material, thick float64) {
	for i := range 2 {
		k, rhoC := in.Base[i].K, in.Base[i].RhoC
		if in.Base[i].Steel {
			k, rhoC = steelK*k/section.SteelMean.K, steelRhoC*rhoC/section.SteelMean.RhoC
		}
		m.K, m.RhoC, thick = m.K+k/2, m.RhoC+rhoC/2, thick+in.Thick[i]/2
	}
	return m, thick
}

// Steel between room and brazing temperature, means of the curves of EN 1993-1-2: W/mmK and J/mm3K.
const steelK, steelRhoC = 0.038, 0.0056

// estimate is a figure of the liquid at a state; false where none is computed.
func (l *liquid) estimate(s *heatState, of func(*hang.Joint) (hang.Estimate, error)) (hang.Estimate, bool) {
	j := l.at(s)
	e, err := of(&j)
	return e, err == nil
}

// bridgesUpTo is the largest gap that a setting bridges, mm; false where none is computed. Each gap takes a
// cross-section of its own.
func (h *heatField) bridgesUpTo(feed, travel float64) (hang.Estimate, bool) {
	l := &h.liquid
	if !l.gap || l.joint.Kind != "butt" {
		return hang.Estimate{}, false
	}
	if d := tables.ArcWidth; l.joint.Backing != "" {
		return hang.Estimate{V: hang.Backed(d.V), Low: hang.Backed(d.Low), High: hang.Backed(d.High)}, true
	}
	wider, most := *h, 2*tables.ArcWidth.V
	e, err := hang.LargestGap(func(gap float64) (hang.Joint, error) {
		wider.in.Gap = gap
		s, err := wider.at(feed, travel, false)
		if err != nil {
			return hang.Joint{}, err
		}
		there := *l
		there.joint.Gap = gap
		return there.at(&s), nil
	}, most)
	return e, err == nil
}
