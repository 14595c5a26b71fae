package calc

import (
	"math"

	"brazebooth/tables"
)

// eyes gives the filter shade for the current while the arc is on, and for a pulsed arc for its peak.
func (w *warnings) eyes(amps, peak float64) {
	const basis = "29 CFR 1910.133(a)(5); ANSI Z49.1 shade guide as reproduced (read)"
	if peak > amps { // NaN without pulses
		w.pulsedEyes(basis, peak)
		return
	}
	row, ok := tables.ShadeFor(amps)
	switch {
	case !ok:
		w.tell("eyes", Caution, basis, "Over %.0f A no shade is listed: ask who plans such work. Cover all skin.",
			tables.Shades[len(tables.Shades)-1].UpTo)
	case row.Suggested.V == 0:
		w.tell("eyes", Caution, basis, "Eyes: start dark, shade 10 or 11, go lighter until you see the puddle, never "+
			"under %.0f. Cover all skin.", row.Minimum.V)
	default:
		w.tell("eyes", Caution, basis, "Eyes: shade %.0f to start, never under %.0f at this current. Cover all skin: "+
			"bright bronze in argon burns it.", row.Suggested.V, row.Minimum.V)
	}
}

// pulsedEyes gives the shade for the peak, which is what strikes the eyes. It is dark for the mean, so the welder goes
// lighter from there, as the guide allows, but never under the minimum for the peak.
func (w *warnings) pulsedEyes(basis string, peak float64) {
	row, ok := tables.ShadeFor(peak)
	if !ok {
		w.tell("eyes", Caution, basis, "Over %.0f A no shade is listed, and the pulses peak at about %.0f A: ask who "+
			"plans such work. Cover all skin.", tables.Shades[len(tables.Shades)-1].UpTo, peak)
		return
	}
	w.tell("eyes", Caution, basis, "Eyes: start dark, shade %.0f by the pulses' peak of about %.0f A, go lighter "+
		"until you see the puddle, never under %.0f. Cover all skin.", max(row.Suggested.V, row.Minimum.V),
		math.Round(peak/10)*10,
		row.Minimum.V)
}
