package calc

import (
	"fmt"
	"math"
	"strings"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// SmoothFlow is the most gas that the nozzle carries without drawing air in, L/min; by the usual bore where none was
// given.
func SmoothFlow(j *Job, g *tables.Gas) float64 {
	most, err := formula.LaminarFlow(j.NozzleBore.Or(tables.UsualBore.V), g.Density.V, tables.ArgonViscosity.V,
		tables.LaminarReynolds.V)
	if err != nil {
		return math.Inf(1)
	}
	return most
}

// usualGas is the suggested flow: the usual one, but no more than the nozzle carries.
func usualGas(j *Job, g *tables.Gas) Figure {
	f := RowFigure("gas_flow", g.Flow, "usual for "+g.Name)
	most := SmoothFlow(j, g)
	if most >= f.High {
		return f
	}
	f.High, f.Value, f.Low = most, min(f.Value, most), min(f.Low, most)
	f.Basis.Formula += ", at most what a nozzle of {d} carries smoothly"
	f.Basis.Source += "; high end: " + tables.LaminarReynolds.Source
	f.Basis.Inputs = []Input{{Symbol: "d", Name: "nozzle's bore", Value: j.NozzleBore.Or(tables.UsualBore.V),
		Unit: "mm", Assumed: !j.NozzleBore.Set}}
	return f
}

// notes are the settings that are words, not numbers: polarity, gun angle, inductance.
func notes(card *Card, s *spread) []Note {
	list := make([]Note, 0, 5)
	for _, code := range [...]string{"polarity", "gun-angle", inductance(card, s)} {
		l, ok := tables.Notes.ByID(code)
		if !ok {
			continue
		}
		n := Note{l.Name, l.Text, l.Source, string(l.Known)}
		if code == "gun-angle" && card.Used.Position != defaultPosition {
			list = append(list, held(card, n)...)
			continue
		}
		list = append(list, n)
	}
	return list
}

// held is how the gun is held and moved out of the flat position: the note on its angle, and a note on the technique.
func held(card *Card, n Note) []Note {
	h, ok := tables.Holds.ByID(card.Used.Position)
	if !ok {
		return []Note{n}
	}
	n.Text = fmt.Sprintf("%s %.0f–%.0f°: %s", h.Way, h.Lean.Low, h.Lean.High, h.Why)
	return []Note{n, {"technique", Technique(card), h.Lean.Source, string(h.Lean.Known)}}
}

// Technique says where the gun points across a card's seam and how it is moved.
func Technique(card *Card) string {
	h, _ := tables.Holds.ByID(card.Used.Position)
	return strings.TrimSpace(tables.AimOn(card.Used.Joint, card.Used.Position) + " " + h.Move)
}

// inductance chooses the note on inductance: more where the bead must wash into a fillet or a thick member, less
// where the current is low and the wire may stub, else the middle.
func inductance(card *Card, s *spread) string {
	floor, _ := SteadyRange(card.Used.Wire.V)
	switch {
	case card.Used.Mode == "pulsed":
		return "inductance-pulsed"
	case floor > 0 && s.value[oAmps] < 1.15*floor:
		return "inductance-less"
	case card.Used.Joint == "tee" || card.Used.Joint == "overlay" ||
		maxCore(card.Setup.Joined()) > tables.SheetThickest.V:
		return "inductance-more"
	}
	return "inductance-middle"
}
