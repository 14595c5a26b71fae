package calc

import (
	"fmt"
	"math"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// Pulled is what a shop's own pulled pieces of one kind of joint carried.
type Pulled struct {
	For         string // the pieces' metals, thicknesses, joint and filler, by PulledKey
	Count       int
	Mean, Sigma float64 // of the logarithm of the load over the seam's length, N/mm; Sigma 0 of fewer than two
}

// LearnPulled is what pieces carried, N for each mm of seam; those that are not above zero are left out.
func LearnPulled(key string, carried []float64) Pulled {
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

// Bound is the lower tolerance bound of the load over length, N/mm: 95 of 100 pieces carry it, with a confidence of 95
// in 100, by a lognormal sample. The error says that there are too few pieces.
func (p *Pulled) Bound() (bound, k float64, err error) {
	if least := int(tables.PulledLeast.V); p.Count < least {
		return 0, 0, formula.Outside("pulled pieces", float64(p.Count), fmt.Sprintf("at least %d", least))
	}
	k, err = formula.ToleranceFactor(p.Count, tables.PulledCoverage.V/100, tables.PulledConfidence.V/100)
	return math.Exp(p.Mean - k*p.Spread()), k, err
}

// Spread is the deviation that the bound counts with: no less than half of what every reading is taken to share, since
// pieces that carry all the same were hardly pulled each for itself.
func (p *Pulled) Spread() float64 { return max(p.Sigma, tables.LearnedFloor.V/2) }

// Put writes what was learned into a job.
func (p *Pulled) Put(j *Job) {
	if p.Count > 0 {
		j.Pulled, j.PulledMean, j.PulledSigma = Some(float64(p.Count)), Some(p.Mean), Some(p.Sigma)
		j.PulledFor = p.For
	}
}

// PulledOf is what a completed job was taught by pulled pieces; false where it was not, or by pieces of another joint.
func PulledOf(c *Card) (Pulled, bool) {
	u := &c.Used
	if !u.Pulled.Set || u.PulledFor != PulledKey(c) {
		return Pulled{}, false
	}
	return Pulled{u.PulledFor, int(u.Pulled.V), u.PulledMean.V, u.PulledSigma.V}, true
}

// PulledKeyOf is PulledKey of a job. Errors as Solve.
func PulledKeyOf(j Job) (string, error) {
	var card Card
	err := resolve(j, &card)
	return PulledKey(&card), err
}

// PulledKey names the joint that pieces are alike by: joint, filler, each member's metal and thickness to a tenth of
// a millimetre, and, where there is one, the gap to a tenth and what lies behind a butt. A closed joint teaches nothing
// of an open one.
func PulledKey(c *Card) string {
	key := c.Used.Joint + " " + c.Used.Filler
	for _, m := range c.Setup.Joined() {
		key += fmt.Sprintf(" %s %.1f", m.Metal.ID, m.Core)
	}
	if c.Used.Gap.V >= 0.05 {
		key += fmt.Sprintf(" gap %.1f", c.Used.Gap.V)
	}
	if b := c.Used.Backing; b != "" && b != "none" {
		key += " " + b
	}
	return key
}
