package learned

import (
	"math"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// Reading is a meter's reading while the arc ran; a value that was not read is 0.
type Reading struct {
	Feed, StickOut float64 // m/min; mm, tip to arc
	Amps, Volts    float64
	Confirmed      bool // a reading far off the others that somebody checked
}

// Posterior is the normal distribution of a quantity after a booth's readings.
type Posterior struct {
	Mean, Sigma float64
	Used        int   // readings that narrowed it
	Flagged     []int // indices of readings beyond three predictive deviations, left out until confirmed
}

// Meter is what was learned from the readings of one power source with one wire.
type Meter struct {
	For        string    // the readings' filler, wire and mode
	Phi, Volts Posterior // of the calibration voltage, V, and of measured over modelled volts
}

// Take updates both posteriors in closed form with one reading, whose index in the list is i: normal prior, normal
// likelihood. A reading more than three deviations from the prediction of the earlier ones is flagged and left out,
// unless it was confirmed. wire is the diameter, mm; factor is the mode's factor on the load line.
func (l *Meter) Take(i int, r *Reading, f *tables.Filler, wire, factor float64) {
	if r.Amps > 0 && r.Feed > 0 {
		phi, sigma := phiSeen(f, wire, r)
		l.Phi.take(i, phi, sigma, r.Confirmed)
	}
	if r.Volts > 0 && r.Amps > 0 {
		seen := r.Volts / (factor * formula.LoadLine(r.Amps))
		l.Volts.take(i, seen, seen*tables.ReadingSigma.V, r.Confirmed)
	}
}

// phiSeen is the calibration voltage, V, that one reading shows, P/I − I·R, and its deviation, which is that of the
// amps: feed and stick-out are taken as exact.
func phiSeen(f *tables.Filler, wire float64, r *Reading) (phi, sigma float64) {
	power := formula.WireArea(wire) * r.Feed * 1000 / 60 * f.Density.V * 1e-3 * f.HLiq.V
	drop := r.Amps * f.Resistivity.V * r.StickOut / formula.WireArea(wire)
	return power/r.Amps - drop, (power/r.Amps + drop) * tables.ReadingSigma.V
}

// take updates the posterior with one observation, or flags it.
func (p *Posterior) take(i int, seen, sigma float64, confirmed bool) {
	if math.Abs(seen-p.Mean) > 3*math.Hypot(p.Sigma, sigma) && !confirmed {
		p.Flagged = append(p.Flagged, i)
		return
	}
	a, b := 1/(p.Sigma*p.Sigma), 1/(sigma*sigma)
	p.Mean = (p.Mean*a + seen*b) / (a + b)
	p.Sigma = 1 / math.Sqrt(a+b)
	p.Used++
}
