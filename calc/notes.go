package calc

import "brazebooth/tables"

// notes are the settings that are words: polarity, gun angle, inductance.
func notes(card *Card, s *spread) []Note {
	list := make([]Note, 0, 4)
	for _, code := range [...]string{"polarity", "gun-angle", inductance(card, s)} {
		if l, ok := tables.NoteByCode(code); ok {
			list = append(list, Note{l.Name, l.Text, l.Source, string(l.Known)})
		}
	}
	return list
}

// inductance chooses the note on inductance: more where the bead must wash into a fillet or a thick member, less
// where the current is low and the wire may stub, else the middle.
func inductance(card *Card, s *spread) string {
	floor, _ := SteadyRange(card)
	members := card.Setup.Joined()
	thickest := 0.0
	for _, m := range members {
		thickest = max(thickest, m.Core)
	}
	switch {
	case card.Used.Mode == "pulsed":
		return "inductance-pulsed"
	case floor > 0 && s.value[oAmps] < 1.15*floor:
		return "inductance-less"
	case card.Used.Joint == "tee" || card.Used.Joint == "overlay" || thickest > tables.SheetThickest.V:
		return "inductance-more"
	}
	return "inductance-middle"
}
