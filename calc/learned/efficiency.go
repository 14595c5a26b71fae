package learned

import (
	"math"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// Efficiency is the posterior of a booth's arc efficiency, with the evidence of each verdict.
type Efficiency struct {
	Mean, Sigma float64
	Used        int
	Evidence    []Evidence
}

// Evidence is the probability of one verdict before it was known. A verdict that was certain adds no knowledge.
type Evidence struct {
	Heat     string
	Expected float64 // %, from what was known before and the section's result
}

// A bead's verdict is right with the first probability, and each of the other two with the second.
const (
	calledRight = 0.85
	calledWrong = (1 - calledRight) / 2
)

// Bead is a judged bead: its heat by the verdict, "cold", "good" or "hot", and the zone that the model finds if the
// heat is exp(shift) times that computed without anything learned.
type Bead struct {
	Heat   string
	ZoneAt func(shift float64) string
}

// EfficiencyOf finds the arc efficiency on a grid over it and over the section's own uncertainty of its peaks, both
// with normal priors. That uncertainty is the same for all beads, since the same model judges them. So verdicts tell
// the two apart only as far as the priors do, and no number of verdicts narrows the efficiency below what that leaves.
func EfficiencyOf(list []Bead) Efficiency {
	const points, peaks = 61, 13
	prior, sigma := tables.ArcEfficiency.V, tables.EtaSigma.V
	form := math.Log(tables.SectionRiseEnding.High/tables.SectionRiseEnding.Low) / 4
	etas, shifts, weights := make([]float64, points), make([]float64, peaks), make([]float64, points*peaks)
	for d := range shifts {
		shifts[d] = form * 3 * (2*float64(d)/(peaks-1) - 1)
	}
	for i := range etas {
		z := 4 * (2*float64(i)/(points-1) - 1)
		etas[i] = prior + z*sigma
		for d, s := range shifts {
			weights[i*peaks+d] = math.Exp(-z*z/2 - s*s/(2*form*form))
		}
	}
	formula.Normalize(weights)
	e := Efficiency{}
	for _, v := range list {
		total := 0.0
		for i, eta := range etas {
			for d, s := range shifts {
				w := &weights[i*peaks+d]
				*w *= said(v.Heat, v.ZoneAt(math.Log(eta/prior)+s))
				total += *w
			}
		}
		formula.Normalize(weights)
		e.Used++
		e.Evidence = append(e.Evidence, Evidence{v.Heat, 100 * total})
	}
	for i := range weights {
		e.Mean += weights[i] * etas[i/peaks]
	}
	for i := range weights {
		by := etas[i/peaks] - e.Mean
		e.Sigma += weights[i] * by * by
	}
	e.Sigma = math.Sqrt(e.Sigma)
	return e
}

// said is the probability that a bead in a zone is judged to be of a heat.
func said(heat, zone string) float64 {
	if zone == "burn-through" {
		zone = "hot"
	}
	if heat == zone {
		return calledRight
	}
	return calledWrong
}
