package calc

import (
	"brazebooth/calc/hang"
	"brazebooth/calc/section"
	"brazebooth/tables"
	"strings"
)

// liquid is what the liquid filler asks of a setting: it must bridge the gap and stay where it was laid.
type liquid struct {
	joint         hang.Joint // of the job; bead, widths and pool follow from a setting
	gap, position bool       // which of the two are asked
	filler        *tables.Filler
	toe           float64    // C
	solid         [2]float64 // C
	members       int
}

// newLiquid lays out a job's liquid.
func newLiquid(b *board, card *Card) liquid {
	u := &card.Used
	judged := u.Gap.V > 0 && u.Gap.V <= 2*tables.ArcWidth.V // beyond, no section is
	l := liquid{gap: judged && u.Joint != "overlay" && u.Joint != "plug" && u.Joint != "corner" &&
		u.Joint != "edge",
		position: u.Position != "" && u.Position != "flat",
		filler:   &card.Setup.Filler, toe: b.inputs[inToe]}
	l.joint = hang.Joint{Kind: Lies(card), Position: u.Position, Mode: u.Mode, Gap: u.Gap.V, Wire: b.inputs[inWire],
		Backing: u.backed(), Leg: legWanted(card), Assumed: hang.Usual(u.Mode)}
	if u.Joint == "edge" { // its bead hangs as one on a face does, by the chord from toe to toe
		l.joint.Kind = "overlay"
	}
	l.joint.Liquid, _ = hang.LiquidOf(&card.Setup.Filler)
	for i, m := range card.Setup.Joined() {
		l.joint.Thick[i], l.solid[i], l.members = m.Core, m.Metal.Solidus.V, i+1
	}
	if card.Setup.One {
		l.joint.Thick[1] = l.joint.Thick[0]
	}
	return l
}

// at is the joint at a state.
func (l *liquid) at(s *heatState) hang.Joint {
	j, o := l.joint, &s.o
	j.Bead, j.Amps, j.Deposition = o[oBead], o[oAmps], o[oBead]*o[oTravel]*l.filler.Density.V/1000
	j.Wet, j.Back, j.Molten, j.Front, j.Pool = s.wet, s.back, s.molten, known(s.front), s.pool
	j.Chord, j.Phi = s.stood.Chord, s.stood.Phi
	j.Under = j.Bead - j.Chord*j.Chord/4*section.Segment(j.Phi)
	if j.Kind == "corner" { // the bead wraps the edge: what its chord cuts off is steel, not metal that hangs
		j.Under = max(0, j.Under)
	}
	return j
}

// edges are the logarithms of bridging and staying at a state; far where they are not asked or nothing judges them for
// this job. They go on past the borders of what Limits.unjudged tells: a bead that is good in spite of a burnt or a
// cold state as computed has other heat, and what it bridges then is near what is found at the border.
func (l *liquid) edges(s *heatState) (bridges, stays float64) {
	bridges, stays = far, far
	if !l.gap && !l.position {
		return bridges, stays
	}
	j := l.at(s)
	list, err := hang.Edges(&j)
	if err != nil { // a state that no joint has: far too hot or too cold
		list[0].Margin, list[1].Margin, list[3].Margin = -hang.Most, -hang.Most, -hang.Most
	}
	if l.gap {
		for _, e := range list[:2] { // bridges, touches
			if e.Why == "" && e.Margin < hang.Most {
				bridges = min(bridges, e.Margin)
			}
		}
	}
	if e := &list[3]; l.position && e.Why == "" {
		stays = e.Margin
	}
	return bridges, stays
}

// notJudged says why bridging or staying is asked of the job and not judged, "" where it is.
func (l *liquid) notJudged() (bridges, stays string) {
	if l.joint.Kind == "corner" && l.joint.Gap > tables.SteadyGap.V {
		return "nothing here computes whether the metal bridges an open corner; close it", ""
	}
	if !l.gap && !l.position {
		return "", ""
	}
	j := l.joint
	list, err := hang.Edges(&j)
	if err != nil {
		return "", ""
	}
	if l.gap {
		bridges = clause(list[0].Why)
		if l.joint.Kind != "butt" {
			bridges = clause(list[1].Why)
		}
	}
	if l.position {
		stays = clause(list[3].Why)
	}
	return bridges, stays
}

// clause is the reason inside a sentence that says “not judged” itself.
func clause(why string) string {
	return strings.TrimSuffix(strings.TrimPrefix(why, "Not judged, because "), ".")
}

// doubt is how far the logarithm of filling, bridging or staying may be off, as one standard deviation.
func (l *liquid) doubt(at limit) float64 {
	j := l.joint
	list, _ := hang.Edges(&j)
	switch {
	case at == lFilled:
		return list[2].Doubt
	case at == lStays:
		return list[3].Doubt
	case j.Kind == "butt":
		return list[0].Doubt
	}
	return list[1].Doubt
}

// through is how far ahead of the arc the sheet gets as hot as the toe in the mean over its thickness, mm: the puddle
// in a root lies against the whole edge, and in thick sheet its skin alone is hot there. The exact moving source on a
// plate like both sheets in the mean, without the heat that the filler keeps.
func (l *liquid) through(in *section.Input) float64 {
	m, thick := meanSheet(in)
	return (&hang.Spot{Power: in.Travel * max(in.Heat-in.Bead*in.Filler.Enthalpy(), 0.02*in.Heat), K: m.K, RhoC: m.RhoC,
		Thick: thick, Width: in.Sigma, Travel: in.Travel, Start: in.Start}).Front(l.toe)
}

// meanSheet is a plate that stands for both sheets, its properties those of brazing heat.
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

// Steel on its way to brazing heat, means of the curves of EN 1993-1-2: W/mmK and J/mm3K.
const steelK, steelRhoC = 0.038, 0.0056

// sag is the height of the root's bead under an open butt with its interval, mm; false where none is computed.
func (l *liquid) sag(s *heatState) (hang.Estimate, bool) {
	if !l.gap || l.joint.Kind != "butt" || l.joint.Backing != "" {
		return hang.Estimate{}, false
	}
	j := l.at(s)
	e, err := hang.SagHeight(&j, l.filler)
	return e, err == nil
}

// largestBead is the largest bead that hangs in the job's position with its interval, mm2; false where none is
// computed.
func (l *liquid) largestBead(s *heatState) (hang.Estimate, bool) {
	if !l.position {
		return hang.Estimate{}, false
	}
	j := l.at(s)
	e, err := hang.LargestBead(&j)
	return e, err == nil
}

// longestPool is the longest puddle that stays in a vertical position with its interval, mm; false where none is
// computed.
func (l *liquid) longestPool(s *heatState) (hang.Estimate, bool) {
	if !l.position {
		return hang.Estimate{}, false
	}
	j := l.at(s)
	e, err := hang.LongestPool(&j)
	return e, err == nil
}

// bridgesUpTo is the largest gap that a setting bridges with its interval, mm; false where none is computed. Each gap
// is a cross-section of its own.
func (h *heatField) bridgesUpTo(l *liquid, feed, travel float64) (hang.Estimate, bool) {
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
