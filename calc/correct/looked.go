package correct

import (
	"math"

	"brazebooth/calc"
	"brazebooth/calc/limit"
)

// Results are cached: the levers are tried from one setting, and different levers reach the same settings.

// nodes are a setting's limits at every perNode-th shift; known says where they could be computed.
type nodes struct {
	limits []limit.All
	known  []bool
}

// depth is the arguments of a call of calc.Probe's Inside.
type depth struct {
	job         calc.Job
	heat, shift float64
}

// nodesOf computes a setting's nodes once; false if the job cannot be computed.
func (v *posterior) nodesOf(job *calc.Job) (at nodes, ok bool) {
	if at, ok = v.nodes[*job]; ok {
		return at, true
	}
	var p *calc.Probe
	if p, v.err = calc.ProbeOf(v.ctx, job); v.err != nil {
		return at, false
	}
	shifts := make([]float64, nodeCount)
	for n := range shifts {
		shifts[n] = v.shifts[n*perNode]
	}
	at.limits, at.known = p.LimitsOf(shifts)
	v.nodes[*job] = at
	return at, true
}

// inside is calc.Probe's Inside, cached; false if the job cannot be computed.
func (v *posterior) inside(j *calc.Job, heat, shift float64) (float64, bool) {
	key := depth{*j, heat, shift}
	d, looked := v.depths[key]
	if !looked {
		d = math.NaN()
		if p, err := calc.ProbeOf(v.ctx, j); err == nil {
			if in, ok := p.Inside(heat, shift); ok {
				d = in
			}
		}
		v.depths[key] = d
	}
	return d, !math.IsNaN(d)
}
