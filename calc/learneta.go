package calc

import (
	"context"
	"math"
	"slices"
	"strings"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// Verdict is what a bead that was laid and judged says of the heat.
type Verdict struct {
	Job  Job
	Heat string // "cold", "good", "hot"
}

// VerdictOf is the heat that a trial's look suggests, "" where it suggests none.
func VerdictOf(seen, verdict string) string {
	if verdict == "good" {
		return "good"
	}
	if seen == "" {
		return ""
	}
	switch HeatSign(WithoutZinc(seen)) { // whether zinc was to go is not computed here
	case -1:
		return "cold"
	case 1:
		return "hot"
	}
	return ""
}

// Efficiency is the posterior of a booth's arc efficiency, with the evidence of each verdict.
type Efficiency struct {
	Mean, Sigma float64
	Used        int
	Evidence    []Evidence
}

// Evidence is one verdict's probability before it was known. A verdict that was certain teaches nothing.
type Evidence struct {
	Heat     string
	Expected float64 // %, by prior and section
}

// How a bead is judged: it is called what it is with the first probability, else one of the other two.
const (
	calledRight = 0.85
	calledWrong = (1 - calledRight) / 2
)

// LearnEta finds the arc efficiency on a grid over it and over the section's own uncertainty of its peaks, both with
// normal priors. That uncertainty is the same for all beads, since the same model judges them. So verdicts tell the
// two apart only as far as the priors do, and no number of verdicts narrows the efficiency below what that leaves. A
// job that is not modelled teaches nothing.
func LearnEta(list []Verdict) Efficiency {
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
		zoneAt, ok := zonesBy(v.Job)
		if !ok {
			continue
		}
		total := 0.0
		for i, eta := range etas {
			for d, s := range shifts {
				w := &weights[i*peaks+d]
				*w *= said(v.Heat, zoneAt(math.Log(eta/prior)+s))
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

// said is the probability that a bead in a zone gets a verdict.
func said(heat, zone string) float64 {
	if zone == "burn-through" {
		zone = "hot"
	}
	if heat == zone {
		return calledRight
	}
	return calledWrong
}

// zonesBy finds a job's zone at any shift of its heat, from a few that are computed once.
func zonesBy(job Job) (func(shift float64) string, bool) {
	card, err := Solve(job)
	if err != nil || card.Zone == "" || card.Zone == "not-modelled" {
		return nil, false
	}
	laid := Laid(&card)
	laid.Eta, laid.EtaSigma = Opt{}, Opt{} // shifts are from the efficiency before anything was learned
	p, err := ProbeOf(context.Background(), &laid)
	if err != nil {
		return nil, false
	}
	const reach, steps = 0.4, 32
	var zones [steps + 1]string
	for i := range zones {
		zones[i] = "burn-through"
		if l, ok := p.Limits(reach * (2*float64(i)/steps - 1)); ok {
			zones[i] = l.Zone()
		}
	}
	return func(shift float64) string {
		i := int(math.Round((shift/reach + 1) / 2 * steps))
		return zones[max(0, min(steps, i))]
	}, true
}

// Put writes a learned efficiency into a job.
func (e *Efficiency) Put(j *Job) {
	if e.Used > 0 {
		j.Eta, j.EtaSigma = Some(e.Mean), Some(e.Sigma)
	}
}

// HeatSign is −1 for a bead that looks cold, 1 for one that looks hot, 0 for neither or both.
func HeatSign(seen string) float64 {
	sum := 0.0
	for _, s := range strings.Split(seen, ",") {
		cold := max(tables.ShareSeen(s, tables.CauseCold), tables.ShareSeen(s, tables.CauseOnShort),
			tables.ShareSeen(s, tables.CauseOffLong))
		hot := max(tables.ShareSeen(s, tables.CauseHot), tables.ShareSeen(s, tables.CauseMelts),
			tables.ShareSeen(s, tables.CauseOnLong), tables.ShareSeen(s, tables.CauseOffShort))
		const telling = 0.3 // what shows seldom with either tells nothing
		switch {
		case hot >= telling && hot > 3*cold:
			sum++
		case cold >= telling && cold > 3*hot:
			sum--
		}
	}
	return max(-1, min(1, sum))
}

// WithoutZinc is what was seen without ZincBehind.
func WithoutZinc(seen string) string {
	list := slices.DeleteFunc(strings.Split(seen, ","), func(s string) bool { return s == ZincBehind })
	return strings.Join(list, ",")
}

// ZincBehind is the observation that zinc is gone on the face away from the bead.
const ZincBehind = "zinc-gone-behind"
