package calc

import (
	"math"

	"brazebooth/tables"
)

// aims are where the arc may point, mm from the joint toward the second member: at the joint, or somewhat toward the
// thicker of two unequal sheets. None where the job gives the aim, or where no section is computed.
func (b *board) aims(card *Card) []float64 {
	members := card.Setup.Joined()
	if card.Used.Aim.Set || len(members) < 2 || b.notModelled(card) != "" {
		return nil
	}
	first, second := members[0].Core, members[1].Core
	off := tables.AimOff.V
	switch ratio := tables.UnequalFrom.V; {
	case second >= ratio*first:
		return []float64{0, off / 2, off}
	case first >= ratio*second:
		return []float64{0, -off / 2, -off}
	}
	return nil
}

// chooseAim points the arc, where the job leaves the aim open, as suits the setting that the board has by now.
func (b *board) chooseAim(card *Card) {
	u := &card.Used
	if u.Aim.Set {
		return
	}
	h, m := b.heatField(card), newMargins(b, card)
	_, at := h.aimed(&m, b.inputs[inFeed], b.inputs[inTravel])
	u.Aim = Some(at.in.Aim)
	if u.Aim.V != 0 {
		card.Assumed = append(card.Assumed,
			Assumption{"aim", Number(math.Abs(u.Aim.V)) + "mm", "toward the thicker member"})
	}
}

// thermal is the smaller of the two thermal margins, by which an aim is chosen.
func (l *Limits) thermal() float64 { return min(l[lWets], l[lSolid], l[lBurn]) }

// each is one field for each open aim; the field itself where none is open.
func (h *heatField) each() []heatField {
	if len(h.aims) == 0 {
		return []heatField{*h}
	}
	list := make([]heatField, len(h.aims))
	for i, aim := range h.aims {
		list[i] = *h
		list[i].aims, list[i].in.Aim = nil, aim
	}
	return list
}

// aimed returns the limits at a feed and travel (mm/s) with the open aim whose smaller thermal margin is largest, and
// the field that keeps this aim. Not numbers where the model does not reach.
func (h *heatField) aimed(m *margins, feed, travel float64) (l Limits, at *heatField) {
	if len(h.aims) == 0 {
		return m.beside(h, feed, travel), h
	}
	best := math.Inf(-1)
	fields := h.each()
	for i := range fields {
		here := m.beside(&fields[i], feed, travel)
		if least := here.thermal(); i == 0 || here.known() && least > best {
			l, at = here, &fields[i]
			if here.known() {
				best = least
			}
		}
	}
	return l, at
}
