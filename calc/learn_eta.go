package calc

import (
	"context"
	"math"

	"brazebooth/calc/learned"
)

// Verdict is a bead that was laid and judged.
type Verdict struct {
	Job  Job
	Heat string // "cold", "good", "hot"; see learned.HeatOf
}

// LearnEta finds the arc efficiency from verdicts, see learned.EfficiencyOf. A job that is not modelled teaches
// nothing.
func LearnEta(list []Verdict) learned.Efficiency {
	var beads []learned.Bead
	for _, v := range list {
		if zoneAt, ok := zonesBy(v.Job); ok {
			beads = append(beads, learned.Bead{Heat: v.Heat, ZoneAt: zoneAt})
		}
	}
	return learned.EfficiencyOf(beads)
}

// zonesBy finds a job's zone at any shift of its heat, a logarithm, from a few that are computed once. False where the
// job is not modelled.
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
