package calc

import (
	"errors"
	"fmt"
	"math"

	"brazebooth/calc/formula"
	"brazebooth/calc/limit"
	"brazebooth/calc/section"
	"brazebooth/calc/suggest"
	"brazebooth/internal/crew"
	"brazebooth/tables"
)

// verdict is what the cross-section says about a card's setting.
type verdict struct {
	state    heatState
	ends     ends                       // of the seam
	logs     limit.All                  // the worse of both ends
	courses  [limit.Count]limit.Courses // how each changes along feed and along travel
	d        limit.All                  // feed's or travel's change that reaches each limit, %; negative where not met
	zone     string
	why      string // for not-modelled
	field    heatField
	variants variants
	beside   limit.Beside // a probe below and above, along feed and along travel
	chance   Chance
	modelled bool
}

// met reports whether every edge is met.
func (v *verdict) met() bool { return v.modelled && v.logs.Worst() >= 0 }

// verdict computes the section at the setting, a little beside it, and with each thing changed that its figures depend
// on.
func (b *board) verdict(card *Card, s *spread) (verdict, error) {
	var v verdict
	if why := b.notModelled(card); why != "" {
		v.zone, v.why = "not-modelled", why
		return v, nil
	}
	v.field = b.heatField(card)
	h := &v.field
	feed, travel := s.value[oFeed], s.value[oTravel]
	var err error
	var wg crew.Crew // somebody waits for the card
	for axis := range v.beside {
		for side, sign := range sides {
			wg.Go(func() { v.beside[axis][side] = h.along(feed, travel, axis, sign) })
		}
	}
	v.variants.look(h, feed, travel, s, &wg)
	var heats [3]limit.All
	w := weights(s, &h.margins)
	factors := suggest.Factors(w.heat)
	for _, k := range [...]int{0, 2} {
		wg.Go(func() {
			heats[k], _ = h.limits(feed, travel, factors[k])
		})
	}
	if v.state, err = h.at(feed, travel, true); err == nil {
		v.ends, err = h.ends(&v.state, 1, true)
	}
	wg.Wait()
	switch {
	case errors.Is(err, formula.ErrRange) || errors.Is(err, section.ErrRange):
		v.zone, v.why = "not-modelled", "this heat is outside what the cross-section can follow"
		return v, nil
	case err != nil:
		return v, err
	case !v.beside.BothWays(), v.variants.hot == nil && v.variants.cold == nil:
		return verdict{zone: "not-modelled", why: "this heat is at the border of what the cross-section can follow"},
			nil
	}
	v.modelled = true
	v.variants.at = variant{v.state, h.in.Thick}
	v.logs = v.ends.worse()
	v.zone = v.logs.Zone()
	v.courses, v.d = v.logs.Along(&v.beside)
	v.lookFurther(feed, travel)
	if err := b.effort.Over(); err != nil { // what it did not get to would pass for far
		return v, err
	}
	heats[1] = v.logs
	v.chance = chanceOf(&heats, &w, &h.margins, travel)
	return v, nil
}

// notModelled says why the cross-section has no verdict, "" where it has one.
func (b *board) notModelled(card *Card) string {
	switch {
	case b.chain.plug:
		return "a plug is round: no travelling arc, no section"
	case b.chain.timed:
		return "a timed arc lays spots: a section of a steady bead says nothing of them"
	case card.Used.Gap.V > 2*tables.ArcWidth.V:
		return "the gap is wider than the arc's own width, which finds little sheet to land on"
	case maxCore(card.Setup.Joined()) > tables.SectionThickest.V && card.Used.Joint != "overlay":
		// Next to a member of 60 mm the grid makes a peak up to 8 % higher than next to one of 25 mm, where it should
		// be lower.
		return fmt.Sprintf("members over %[1]g mm were held against nothing here; try %[1]g mm for a start, and a "+
			"test bead on that thickness", tables.SectionThickest.V)
	}
	if card.Used.Joint == "edge" && card.Used.Gap.V > tables.SteadyGap.V {
		return "nothing here computes whether the metal bridges edges that stand apart; clamp them together"
	}
	if why := buried(card); why != "" {
		return why
	}
	if why := backingNotJudged(card); why != "" {
		return orTry(card, why, withoutBacking(card)...)
	}
	l := newLiquid(b, card)
	return l.notJudged()
}

// edgeAngle is, for a picture, the angle between an edge joint's chord, which runs from face to face under the edges,
// and the bead's surface: the edges above the chord count with the bead. The angle that is judged is another one: that
// of the wetted width, unfolded.
func edgeAngle(s *Section, bead float64) float64 {
	across, down := s.Thick[0]+s.Thick[1]+s.Gap, s.Wet[0]-s.Wet[1]
	over := bead + s.Thick[0]*s.Wet[0] + s.Thick[1]*s.Wet[1]
	phi, err := section.SegmentAngle(4 * over / (across*across + down*down))
	if err != nil {
		return 0
	}
	return phi
}

// section is the cross-section for a picture of the joint.
func (v *verdict) section(card *Card) Section {
	if !v.modelled {
		return Section{}
	}
	st := &v.state
	s := Section{Drawn: true, Joint: Lies(card),
		Thick: [2]float64{card.Setup.Members[0].Core, card.Setup.Members[1].Core},
		Gap:   card.Used.Gap.V, Wet: st.wet}
	if st.bridged {
		s.Phi = st.toes.Phi
	}
	if s.Joint == "edge" && st.bridged {
		s.Phi = edgeAngle(&s, st.o[oBead])
	}
	if s.Joint == "butt" {
		s.Root = rootDepth(s.Gap, tables.RootGrows.V, &variant{*st, s.Thick})
		s.Backing = drawnBacking(card.Used.backed(), s.Thick[0])
	}
	for i, m := range card.Setup.Joined() {
		if !m.Coating.Zinc {
			continue
		}
		s.Boiled[i], s.Melted[i] = known(st.boiled[i]), known(st.melted[i])
		s.BoiledBack[i], s.MeltedBack[i] = known(st.boiledBack[i]), known(st.meltedBack[i])
	}
	return s
}

// known is v, or 0 for a NaN, where the grid did not reach.
func known(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}
