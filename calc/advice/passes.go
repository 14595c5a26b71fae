package advice

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/tables"
)

const (
	grooveSource = "geometry of the groove"
	holdSource   = "line sources in a wide plate that loses heat to the air (Rosenthal, memory high), one for each pass"
)

// Passes is the page of a joint that one bead does not fill: its groove, the beads that fill it at the card's
// own feed and travel, the height after each of them, and how long the plate cools between them.
func Passes(card *calc.Card) (Page, error) {
	p := Page{Name: "passes", Card: *card}
	bead, ok := card.Figure("bead_area")
	t := calc.MinCore(card.Setup.Joined())
	butt := card.Used.Joint == "butt"
	switch most := tables.GrooveMost; {
	case card.Used.Joint == "plug":
		p.Because(ownJob, "not judged, because a plug is filled in one go and not in passes; try the page plug")
	case card.Used.Joint == "overlay":
		p.Because(ownJob, "not judged, because an overlay is laid in layers and not in a groove; try the page overlay")
	case !ok || card.Used.Mode == "timed":
		p.Because(ownJob, "not judged, because a timed arc lays spots and no bead of one section; try the mode dip")
	case butt && t > most.V:
		p.Because(most.Origin, "not judged, because grooves are planned up to %.0f mm and this plate has %.1f mm: "+
			"a root that deep is welded, or the joint is bolted; try a lap or a fillet on it", most.V, t)
	default:
		p.plan(card, bead)
	}
	return p, nil
}

// plan adds the groove and its beads.
func (p *Page) plan(card *calc.Card, bead calc.Figure) {
	p.asIfSound(card)
	fill := calc.FillOf(card)
	if fill.Groove.Depth > 0 {
		p.groove(card, &fill)
	} else {
		p.add("joint_area", "mm2", fill.Section, fill.Low, fill.High, calc.OwnBasis(
			"what the joint takes: a fillet of the leg that was asked for or as high as the sheet, or the closed "+
				"root", "geometry"))
	}
	if short(card, &fill, bead) {
		p.take(bead)
		p.Because(tables.OnePass.Origin, "not planned, because one bead lays well what this joint takes, %.1f mm², "+
			"and this one lays %.1f mm²: more wire feed or less travel; the window shows where it holds", fill.Section,
			bead.Value)
		return
	}
	n := p.take(fill.Passes(bead.Value, bead.Low, bead.High))
	for _, name := range [...]string{"wire_feed", "travel"} {
		if f, ok := card.Figure(name); ok {
			p.take(f)
		}
	}
	p.take(bead)
	p.laid(card, n)
	if n.Value == 1 {
		p.Because(tables.OnePass.Origin, "one bead is enough: the card is the plan")
		p.wetsGroove(card, &fill)
		return
	}
	p.heights(&fill, bead.Value, n.Value)
	p.between(card, n.Value)
	p.wetsGroove(card, &fill)
	p.Because(practice, "stringers side by side, no weaving: each is brushed clean before the next, and its start "+
		"and stop lie elsewhere than those below")
}

// short reports whether one bead should fill the joint but lays less metal than the joint takes.
func short(card *calc.Card, fill *calc.Fill, bead calc.Figure) bool {
	if fill.Section > tables.OnePass.V || bead.Value >= fill.Section {
		return false
	}
	// The edge is judged by how far metal runs into the gap.
	return fill.Groove.Depth > 0 || !meets(card, "joint filled")
}

// meets reports whether a card is judged by the named edge and meets it.
func meets(card *calc.Card, edge string) bool {
	return slices.ContainsFunc(card.Edges, func(e calc.Edge) bool { return e.Name == edge && e.Met })
}

// laid adds the arc time for the job's seam.
func (p *Page) laid(card *calc.Card, n calc.Figure) {
	length := p.seamLength(card)
	if v, ok := card.Figure("travel"); ok && v.Value > 0 {
		p.add("arc_time", "s", n.Value*length/v.Value, n.Low*length/v.High, n.High*length/v.Low,
			calc.OwnBasis("{n}·{L}/{v}", "definition; one seam, starts and stops left out", n.As("n"),
				calc.In("L", "seam", length, "mm"), v.As("v")))
	}
}

// almostNothing is the share of a bead: if the last pass has to lay less than this, the passes before it can lay it
// too.
const almostNothing = 0.1

// heights says how far each pass fills the groove, and what is left for the last pass.
func (p *Page) heights(fill *calc.Fill, bead, n float64) {
	switch last := fill.Section - (n-1)*bead; {
	case last < almostNothing*bead:
		filled := fmt.Sprintf("%.0f passes fill", n-1)
		if n == 2 {
			filled = "1 pass fills"
		}
		p.Because(Own("mass balance"), "%s all of it but %s mm²: travel %.0f %% slower and pass %.0f is not needed",
			filled, calc.Number(round2(last)), math.Ceil(100*(1-(n-1)*bead/fill.Section)), n)
	case last < 0.6*bead:
		p.Because(Own("mass balance"), "the last pass has %.0f mm² to fill and a bead lays %.0f mm²: lay it "+
			"faster, or let it stand proud", last, bead)
	}
	if fill.Groove.Depth == 0 {
		return
	}
	var list []string
	for i := 1.0; i < n; i++ {
		list = append(list, fmt.Sprintf("%.0f: %.1f mm", i, fill.Groove.FilledTo(i*bead)))
	}
	p.Because(Own(grooveSource), "height above the root after pass %s; pass %.0f fills it flush",
		strings.Join(list, ", "), n)
}

// between adds how hot the plate may be before the next pass and how long it cools until then.
func (p *Page) between(card *calc.Card, n float64) {
	limit := interpassLimit(card, n)
	if least, ok := card.Figure("least_preheat"); ok && least.Value > limit.V {
		p.Because(Own(least.Basis.Source), "between passes: no upper temperature is named, because this joint needs "+
			"%.0f °C of preheat, more than the %.0f °C that is usual between passes with this filler: each pass goes "+
			"onto metal as warm as the first; saw a test piece", math.Round(least.Value/10)*10, limit.V)
		return
	}
	p.row("interpass", limit, "hottest before the next pass")
	rise := limit.V - card.Used.Preheat.V
	net, ok := card.Figure("net_heat")
	if !ok || rise <= 0 {
		p.Because(limit.Origin, "the plate starts at %.0f °C, no cooler than the %.0f °C it may have between "+
			"passes: no hold is computed", card.Used.Preheat.V, limit.V)
		return
	}
	hold, m, ok := slowestToCool(card, net, rise, n)
	if !ok {
		p.Because(Own(holdSource), "the plate may not cool to the limit within six hours: fewer passes at a time, "+
			"or cool it with wet rags beside the seam")
		return
	}
	k, c, film := m.Metal.Conductivity, m.Metal.HeatCapacity, tables.FreeConvection
	p.add("interpass_hold", "s", hold.mid, hold.low, hold.high, calc.OwnBasis("from the start of one pass to the "+
		"start of the next at the same place, before the last of {n} passes", holdSource, net.As("q"),
		calc.Derived("n", "passes", n, "1"),
		calc.In("t", "thickness of the plate that cools slower", m.Core, "mm"), calc.In("k", "conductivity", k.V,
			"W/mmK"),
		calc.In("c", "heat capacity", c.V, "J/mm3K"), calc.In("h", "loss from each face", film.V, "W/m2K"),
		calc.Derived("", "rise up to the limit", rise, "K")))
	p.Because(Own(holdSource), "a narrow part stays hot longer than this wide plate: what counts is the plate's "+
		"temperature beside the seam, by a contact thermometer or a crayon")
}

// slowestToCool finds the plate that needs the longest wait between n passes, and that wait, s. It returns
// false if a plate may not cool within six hours.
func slowestToCool(card *calc.Card, net calc.Figure, rise, n float64) (hold ends, slowest *calc.Member, ok bool) {
	joined, film := card.Setup.Joined(), tables.FreeConvection
	for i := range joined {
		m := &joined[i]
		k, c := m.Metal.Conductivity, m.Metal.HeatCapacity
		mid, err := formula.PassPeriod(net.Value, m.Core, k.V, c.V, film.V, rise, n)
		low, err1 := formula.PassPeriod(net.Low, m.Core, k.High, c.High, film.High, rise, n)
		high, err2 := formula.PassPeriod(net.High, m.Core, k.Low, c.Low, film.Low, rise, n)
		if err != nil || err1 != nil || err2 != nil {
			return ends{}, m, false
		}
		if slowest == nil || mid > hold.mid {
			hold, slowest = ends{low, mid, high}, m
		}
	}
	return hold, slowest, true
}

// wetsGroove says whether the root is bridged, and that wetting of the groove's sides is not computed.
func (p *Page) wetsGroove(card *calc.Card, fill *calc.Fill) {
	if fill.Groove.Depth == 0 {
		return
	}
	if card.Job.Gap.Set && card.Job.Gap.V > 0 && meets(card, "gap bridged") {
		p.Because(ownSection, "root: the card's bead bridges this opening without a backing")
		return
	}
	p.Because(practice, "root: whether it is bridged is not judged here, in the open or over a backing: run a sealing "+
		"bead from the back")
	if fill.Vee {
		p.Because(ownSection, "whether each pass wets the sides of the groove is not judged, because the "+
			"cross-section knows flat faces only: saw a test piece")
	}
}
