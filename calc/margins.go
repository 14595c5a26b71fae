package calc

import (
	"math"

	"brazebooth/calc/formula"
	"brazebooth/calc/limit"
	"brazebooth/tables"
)

// margins are the borders that the limits of one job are measured from.
type margins struct {
	floor, spray float64 // A; 0 where unknown
	slow, fast   float64 // mm/s
	wanted       wanted
	cold         float64 // toe angle, rad
	zinc         float64 // half-width accepted, mm; 0: none asked
	start        float64 // C
	coated       [2]bool
	solid, melt  [2]float64
	melts        [2]bool // the member's skin melts wherever the filler wets it: "base stays solid" is no edge
	members      int
	liquid       liquid
}

func newMargins(b *board, card *Card) margins {
	m := margins{slow: tables.HandSpeedLow.V, fast: tables.HandSpeedHigh.V, wanted: wantedOf(card),
		cold: coldAngle(card.Used.Joint),
		zinc: card.Used.ZincLimit.Or(0), start: b.inputs[inRoom]}
	m.floor, m.spray = SteadyRange(card.Used.Wire.V)
	m.liquid = newLiquid(b, card)
	m.coated = b.chain.zinc
	for i, member := range card.Setup.Joined() {
		m.solid[i], m.melt[i] = member.Metal.Solidus.V, member.Metal.Liquidus.V
		// Where the face of a lap melts, its upper edge melts away: there "base stays solid" counts.
		m.melts[i] = Lies(card) != "lap" && WeldBrazed(&member.Metal, &card.Setup.Filler, b.inputs[inToe])
		m.members = i + 1
	}
	return m
}

// WeldBrazed reports whether a metal's skin melts wherever a filler wets it, although the filler melts first: copper
// and grey iron begin to melt so little above the temperature at which the toe freezes, C, that no heat lies between.
// It is for parts at 20 C; warm parts change it little.
func WeldBrazed(metal *tables.Metal, filler *tables.Filler, toe float64) bool {
	const room = 20
	return metal.Solidus.V > filler.Liquidus.V && (metal.Solidus.V-room)/(toe-room) < tables.WeldBraze.V
}

// SteadyRange returns the currents, A, between which a wire, mm, runs a steady arc; 0 where none is known.
func SteadyRange(wire float64) (floor, spray float64) {
	floor, _ = formula.DipFloor(wire)
	spray, _ = formula.SprayTransition(wire)
	return floor, spray
}

// below is how far a peak stays below a temperature, both as rises from the start: a logarithm. Metal that is as hot
// before the arc comes to it, as a small part of brass may be, is as far beyond it as can be.
func below(most, peak, start float64) float64 {
	if most <= start {
		return -limit.Far
	}
	return math.Log((most - start) / (peak - start))
}

// logs returns every limit at a state. How steep the bead stands is not enough for Wets: a wetted width that is about
// to vanish would decide alone. The angle of a flat bead counts as flattest.
func (m *margins) logs(s *heatState) limit.All {
	l := limit.Every(limit.Far)
	l[limit.Warmth], l[limit.Angle] = s.warmth, math.Log(m.cold/max(s.steepest, flattest*math.Pi/180))
	l[limit.Wets] = min(l[limit.Warmth], l[limit.Angle])
	for i := range m.members {
		if !m.melts[i] {
			l[limit.Solid] = min(l[limit.Solid], below(m.solid[i], s.skin[i], m.start))
		}
		l[limit.Burn] = min(l[limit.Burn], below(m.melt[i], s.core[i], m.start))
		if m.zinc > 0 && m.coated[i] && s.boiled[i] > 0 {
			l[limit.Zinc] = min(l[limit.Zinc], math.Log(m.zinc/s.boiled[i]))
		}
	}
	l[limit.Bridges], l[limit.Stays] = m.liquid.edges(s)
	m.simple(&s.o, s, &l)
	return l
}

// whitest is the coated member that loses the wider band of zinc.
func (m *margins) whitest(s *heatState) int {
	if m.coated[1] && (!m.coated[0] || s.boiled[1] > s.boiled[0]) {
		return 1
	}
	return 0
}

// simple sets the limits that need no heat flow, except for the metal that a gap takes at a state; s is nil where no
// state is known.
func (m *margins) simple(o *[outs]float64, s *heatState, l *limit.All) {
	l[limit.Filled] = math.Log(o[oBead] / m.wanted.at(s))
	if m.floor > 0 {
		l[limit.Floor] = math.Log(o[oAmps] / m.floor)
	}
	if m.spray > 0 {
		l[limit.Spray] = math.Log(m.spray / o[oAmps])
	}
	l[limit.Slow] = math.Log(o[oTravel] / m.slow)
	l[limit.Fast] = math.Log(m.fast / o[oTravel])
}
