package calc

import (
	"math"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// What a mode brings to a board: its volts, the share of its wire that is laid, and its pulses.

// voltsOf is a mode's factor on the load line, and the half-width of the volts' 95 % interval about it, V.
func voltsOf(mode string) (factor, band float64) {
	if mode == "pulsed" {
		return tables.PulsedVoltFactor.V, tables.PulsedVoltBand.V
	}
	return tables.DipVoltFactor.V, tables.DipVoltBand.V
}

// Deposition is the share of a mode's wire that is deposited.
func Deposition(mode string) tables.Datum {
	if mode == "pulsed" {
		return tables.DepositionPulsed
	}
	return tables.DepositionDip
}

// PulseDetach is the peak squared times time that throws one drop from a wire, mm: its row scaled from the row's own
// wire with the square of the spray transition and the drop's period.
func PulseDetach(wire float64) tables.Datum {
	d := tables.PulseDetach
	transition, _ := formula.SprayTransition(wire) // no job has a wire outside its range
	scale := math.Pow(transition/tables.PulseTransition.V, 2) * math.Pow(wire/tables.PulseWire.V, 1.5)
	d.V, d.Low, d.High = d.V*scale, d.Low*scale, d.High*scale
	return d
}

// PulsePeak is the peak current of a card's pulses, A; false where its arc has no pulses.
func PulsePeak(card *Card) (float64, bool) {
	if f, ok := card.Figure("effective_current"); ok {
		for _, in := range f.Basis.Inputs {
			if in.Symbol == "Ip" && in.Value > 0 {
				return in.Value, true
			}
		}
	}
	return 0, false
}

func (b *board) setPulse(wire float64) {
	if !b.chain.pulsed {
		return
	}
	d := PulseDetach(wire)
	b.chain.transition, _ = formula.SprayTransition(wire)
	b.chain.shortest = d.Low
	b.fromTable(inDetach, d)
	b.fromTable(inArcSlope, tables.ArcSlope)
}
