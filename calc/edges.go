package calc

import (
	"math"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// limit is a border of the operating window: the logarithm of a ratio that is zero on it and positive inside.
type limit int

const (
	lWets limit = iota
	lSolid
	lBurn
	lFilled
	lBridges
	lStays
	lFloor
	lSpray
	lZinc
	lSlow
	lFast
	limitCount
)

// warm is a place behind the limits: how much hotter than its toe must be the colder member's skin gets. It is part of
// “wets” and no edge of its own; below zero the bead lies on a member without wetting it.
const warm = limitCount

// edgeNames groups the limits into the edges that a card shows, in the order of the list below.
var edgeNames = [limitCount]string{
	lWets: "wets", lSolid: "base stays solid", lBurn: "no burn-through", lFilled: "joint filled",
	lBridges: "gap bridged", lStays: "metal stays up",
	lFloor: "arc steady", lSpray: "arc steady", lZinc: "zinc band", lSlow: "hand speed", lFast: "hand speed",
}

// edgeSource says what each limit is and where it comes from.
var edgeSource = [limitCount]struct{ formula, source string }{
	lWets:   {"larger toe angle at most {limit}", "ISO 5817 no. 505 level C, written for fusion welds (memory high)"},
	lSolid:  {"peak of each member's skin at most {limit}", "low end of the base metal's solidus: brazing, not fusion"},
	lBurn:   {"core over the width of the arc at most {limit}", "liquidus of the base metal"},
	lFilled: {"bead area at least {limit}", "gap, leg or throat of the joint"},
	lBridges: {"what the liquid bridges over the gap at least {limit}",
		"span, land, hold and sag of an open root, or the height of the metal over a gap; own computation, untested"},
	lStays: {"what hangs over the metal that is there at least {limit}",
		"balance of surface tension, weight and the arc's push; own computation, untested"},
	lFloor: {"current at least {limit}", "steady short arc by wire size; common practice, no source"},
	lSpray: {"current at most {limit}", "AWS Welding Handbook, 8th ed. vol. 2, spray transition (memory high)"},
	lZinc:  {"zinc boiled half-width at most {limit}", "given"},
	lSlow:  {"travel at least {limit}", "what a hand holds; common practice, no source"},
	lFast:  {"travel at most {limit}", "what a hand holds; common practice, no source"},
}

// margins are the limits of one job.
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
	m.floor, m.spray = SteadyRange(card)
	m.liquid = newLiquid(b, card)
	m.coated = b.chain.zinc
	for i, member := range card.Setup.Joined() {
		m.solid[i], m.melt[i] = member.Metal.Solidus.V, member.Metal.Liquidus.V
		// A lap's upper edge melts away where its face only melts: there the edge stays one.
		m.melts[i] = Lies(card) != "lap" && WeldBrazed(&member.Metal, &card.Setup.Filler, b.inputs[inToe])
		m.members = i + 1
	}
	return m
}

// WeldBrazed reports whether a metal's skin melts wherever a filler wets it, though the filler melts first: copper and
// grey iron begin to melt so little over the temperature at which the toe freezes, C, that no heat lies between. Parts
// at 20 C; warm ones change it little.
func WeldBrazed(metal *tables.Metal, filler *tables.Filler, toe float64) bool {
	const room = 20
	return metal.Solidus.V > filler.Liquidus.V && (metal.Solidus.V-room)/(toe-room) < tables.WeldBraze.V
}

// SteadyRange returns the currents, A, between which the mode's arc runs steadily; 0 where none is known.
func SteadyRange(card *Card) (floor, spray float64) {
	wire := card.Used.Wire.V
	floor, _ = formula.DipFloor(wire)
	spray, _ = formula.SprayTransition(wire)
	return floor, spray
}

// far is the logarithm of a limit that does not apply.
const far = 20

// logs returns every limit's logarithm at a state.
func (m *margins) logs(s *heatState) (l Limits) {
	for i := range l {
		l[i] = far
	}
	l[lWets], l[warm] = m.wets(s), s.warmth
	for i := range m.members {
		if !m.melts[i] {
			l[lSolid] = min(l[lSolid], math.Log((m.solid[i]-m.start)/(s.skin[i]-m.start)))
		}
		l[lBurn] = min(l[lBurn], math.Log((m.melt[i]-m.start)/(s.core[i]-m.start)))
		if m.zinc > 0 && m.coated[i] && s.boiled[i] > 0 {
			l[lZinc] = min(l[lZinc], math.Log(m.zinc/s.boiled[i]))
		}
	}
	l[lBridges], l[lStays] = m.liquid.edges(s)
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

// simple are the limits that need no heat flow, but for what a gap takes at a state; nil where none is known.
func (m *margins) simple(o *[outs]float64, s *heatState, l *Limits) {
	l[lFilled] = math.Log(o[oBead] / m.wanted.at(s))
	if m.floor > 0 {
		l[lFloor] = math.Log(o[oAmps] / m.floor)
	}
	if m.spray > 0 {
		l[lSpray] = math.Log(m.spray / o[oAmps])
	}
	l[lSlow] = math.Log(o[oTravel] / m.slow)
	l[lFast] = math.Log(m.fast / o[oTravel])
}

// wets is the cold limit: how steep the bead stands, and whether both members get as hot as the toe must be; without
// the second a wetted width that is about to vanish would decide alone. A flat bead has next to no toe angle.
func (m *margins) wets(s *heatState) float64 {
	return min(math.Log(m.cold/max(s.steepest, flattest*math.Pi/180)), s.warmth)
}

// Zone is the thermal zone: cold, good, hot or burn-through.
func (l *Limits) Zone() string {
	switch {
	case l[lBurn] < 0:
		return "burn-through"
	case l[lSolid] < 0:
		return "hot"
	case l[lWets] < 0:
		return "cold"
	}
	return "good"
}

// reach is the smallest relative change of feed or travel, as a logarithm, that brings a limit to zero: its own
// logarithm over the steeper of its two slopes.
func reach(l, byFeed, byTravel float64) float64 {
	slope := max(math.Abs(byFeed), math.Abs(byTravel))
	if l >= far {
		return far
	}
	if slope < 0.02 {
		return math.Copysign(far, l) // no change of the two settings reaches it
	}
	return l / slope
}

// reaches are the changes that bring each limit to zero.
func reaches(l, byFeed, byTravel *Limits) *Limits {
	var d Limits
	for k := range limitCount {
		d[k] = reach(l[k], byFeed[k], byTravel[k])
		if l.unjudged(k) != "" {
			d[k] = far
		}
	}
	return &d
}

// nearest is the limit that the smallest change reaches; unmet ones come first.
func nearest(d *Limits) (limit, float64) {
	at := limit(0)
	for i := range limitCount {
		if d[i] < d[at] {
			at = i
		}
	}
	return at, d[at]
}

// percent turns a logarithmic change into per cent, at most 999.
func percent(d float64) float64 { return min(999, 100*math.Expm1(math.Abs(d))) }

// course is how the logarithm of a limit changes along one setting, near where it was computed: l + slope·x +
// bend·x², x the logarithm of the setting's change.
type course struct{ slope, bend float64 }

// probe is how far to each side a limit is computed: wide against the grid's noise, about as far as the nearest edge.
const probe = 0.15

// courseOf fits a course to a limit here and a probe below and above; straight where one side has no value.
func courseOf(here, below, above float64) course {
	switch {
	case math.IsNaN(below):
		return course{slope: (above - here) / probe}
	case math.IsNaN(above):
		return course{slope: (here - below) / probe}
	}
	return course{(above - below) / (2 * probe), (above + below - 2*here) / (2 * probe * probe)}
}

// reach is the smallest change, a logarithm, that brings a limit of l to zero; infinite where none does. Far from
// where it was computed the course is taken as straight: its bend is not known that well.
func (c course) reach(l float64) float64 {
	if x := c.bent(l); math.Abs(x) <= 3*probe {
		return x
	}
	if math.Abs(c.slope) < 0.02 {
		return math.Inf(1)
	}
	x := -l / c.slope
	return math.Copysign(max(3*probe, math.Abs(x)), x)
}

// bent is the nearer root of the parabola, infinite where it has none.
func (c course) bent(l float64) float64 {
	root := math.Sqrt(c.slope*c.slope - 4*c.bend*l) // NaN without roots
	if den := math.Abs(c.slope) + root; den > 0 {
		return math.Copysign(2, -c.slope) * l / den
	}
	return math.Inf(1)
}

// courses are those of one limit along feed and along travel.
type courses [2]course

// reach is the smallest change of feed or travel, %, that brings a limit of l to zero; below zero where the limit is
// not met, infinite where no change reaches it.
func (c courses) reach(l float64) float64 {
	if l >= far {
		return math.Inf(1)
	}
	change := func(c course) float64 { return 100 * math.Abs(math.Expm1(c.reach(l))) }
	return math.Copysign(min(change(c[0]), change(c[1])), l)
}
