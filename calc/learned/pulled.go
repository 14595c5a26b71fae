package learned

import (
	"fmt"
	"math"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// Pulled is the result of a shop's own pull tests of one kind of joint.
type Pulled struct {
	For         string // the pieces' metals, thicknesses, joint and filler
	Count       int
	Mean, Sigma float64 // of the logarithm of the load over the seam's length, N/mm; Sigma is 0 for fewer than two
}

// PulledBy summarizes the loads of pulled pieces, N for each mm of seam. Loads that are not above zero are left out.
func PulledBy(key string, carried []float64) Pulled {
	p := Pulled{For: key}
	sum, squares := 0.0, 0.0
	for _, v := range carried {
		if v > 0 {
			p.Count, sum = p.Count+1, sum+math.Log(v)
		}
	}
	if p.Count == 0 {
		return p
	}
	p.Mean = sum / float64(p.Count)
	for _, v := range carried {
		if v > 0 {
			squares += (math.Log(v) - p.Mean) * (math.Log(v) - p.Mean)
		}
	}
	if p.Count > 1 {
		p.Sigma = math.Sqrt(squares / float64(p.Count-1))
	}
	return p
}

// Bound is the lower tolerance bound of the load over length, N/mm, which 95 of 100 pieces carry, with a confidence of
// 95 in 100, by a lognormal sample; k is its tolerance factor. The error says that there are too few pieces.
func (p *Pulled) Bound() (bound, k float64, err error) {
	if least := int(tables.PulledLeast.V); p.Count < least {
		return 0, 0, formula.Outside("pulled pieces", float64(p.Count), fmt.Sprintf("at least %d", least))
	}
	k, err = formula.ToleranceFactor(p.Count, tables.PulledCoverage.V/100, tables.PulledConfidence.V/100)
	return math.Exp(p.Mean - k*p.Spread()), k, err
}

// Spread is the standard deviation used for the bound. It is at least half of tables.LearnedFloor, because pieces that
// all broke at the same load are hardly independent.
func (p *Pulled) Spread() float64 { return max(p.Sigma, tables.LearnedFloor.V/2) }
