package correct

import (
	"context"
	"math"
	"slices"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/calc/limit"
	"brazebooth/tables"
)

// posterior is what is known about a booth after its test beads: a weight for each of several shifts between
// the true and the computed heat. Sections and timed ends are cached by calc, so that nothing is kept here.
type posterior struct {
	*request
	card     calc.Card // of the last try
	laid     []Try
	shifts   []float64 // logarithms: of the heat, or of a timed arc's times
	weights  []float64
	timed    bool
	off      bool            // nothing is computed: no window
	computed []float64       // the weights before any bead
	disputed bool            // the last bead showed the opposite of what is computed
	onlyZinc bool            // the last bead showed only the loss of zinc that is computed
	cured    map[string]bool // causes that a bead still showed after their cure in words
}

// request is a running request with the first error in it. After an error nothing more is computed, and the
// result is not used.
type request struct {
	ctx context.Context
	err error
}

// over reports whether there was an error or the caller has cancelled.
func (a *request) over() bool {
	if a.err == nil {
		a.err = a.ctx.Err()
	}
	return a.err != nil
}

// last is the bead to correct.
func (v *posterior) last() *Try { return &v.laid[len(v.laid)-1] }

// A window may be narrower than the uncertainty of the heat. The section is computed at nodeCount shifts and
// its limits are interpolated at perNode times as many, so that no window falls between two shifts.
const (
	nodeCount  = 13
	perNode    = 16
	shiftCount = (nodeCount-1)*perNode + 1
)

// newPosterior completes the tries' settings with what the card suggests, and sets up the prior of the heat.
func newPosterior(ctx context.Context, tries []Try) (*posterior, error) {
	v := &posterior{request: &request{ctx: ctx}, laid: make([]Try, len(tries)), cured: map[string]bool{}}
	last := len(tries) - 1
	for i := last; i >= 0; i-- {
		job := tries[i].Job
		if i < last {
			fillOpen(&job, &v.laid[last].Job)
		}
		card, err := calc.Answer(ctx, job, nil)
		if err != nil {
			return nil, err
		}
		v.laid[i] = Try{calc.Laid(&card), tries[i].Seen}
		if i == last {
			v.card = card
		}
	}
	v.timed = v.card.Used.Mode == "timed"
	sigma := v.sigma()
	v.off = sigma == 0
	for i := range shiftCount {
		z := 2.5 * (2*float64(i)/(shiftCount-1) - 1)
		v.shifts = append(v.shifts, z*sigma)
		v.weights = append(v.weights, math.Exp(-z*z/2))
	}
	formula.Normalize(v.weights)
	v.computed = slices.Clone(v.weights)
	v.expectZinc()
	return v, nil
}

// fillOpen gives an earlier try the last one's settings where it leaves them open; a suggestion would differ.
func fillOpen(j, last *calc.Job) {
	for i := range levers {
		o := levers[i].opt(j)
		if !o.Set && i != leverPreheat && !(i == leverFeed && j.Amps.Set) {
			*o = *levers[i].opt(last)
		}
	}
	if !j.Aim.Set {
		j.Aim = last.Aim
	}
}

// sigma is the standard deviation of the heat's shift: that of the heat combined with that of the section's
// peaks, or for a timed arc that of its longest on time. 0 if nothing is computed.
func (v *posterior) sigma() float64 {
	if v.timed {
		if f, ok := v.card.Figure("arc_on"); ok && f.Value > 0 {
			d := tables.GapOnMax
			return math.Log(d.High/d.Low) / 4
		}
		return 0
	}
	f, ok := v.card.Figure("net_heat")
	if !ok || v.card.Zone == "not-modelled" || v.card.Zone == "" || !(f.Low > 0) {
		return 0
	}
	form := tables.SectionRiseEnding
	return math.Hypot(math.Log(f.High/f.Low), math.Log(form.High/form.Low)) / 4
}

// causesAt is the cause of a setting's fault under each shift.
func (v *posterior) causesAt(job *calc.Job) []string {
	list := make([]string, len(v.shifts))
	switch {
	case v.over():
	case v.off:
		for i := range list { // about equally likely
			list[i] = [...]string{tables.CauseCold, tables.CauseFine, tables.CauseHot, tables.CauseMelts}[i%4]
		}
	case v.timed:
		v.timedCauses(job, list)
	default:
		for i, l := range v.steadyLimits(job) {
			list[i] = tables.CauseMelts // only too much heat leads outside the model's grid
			if l != nil {
				list[i] = causeOfZone[l.Zone()]
			}
		}
	}
	return list
}

// steadyLimits are the limits under each shift, computed from the cross-section at the nodes and interpolated
// between them; nil where the model does not reach.
func (v *posterior) steadyLimits(job *calc.Job) (list []*limit.All) {
	var p *calc.Probe
	if p, v.err = calc.ProbeOf(v.ctx, job); v.err != nil {
		return nil
	}
	shifts := make([]float64, nodeCount)
	for n := range shifts {
		shifts[n] = v.shifts[n*perNode]
	}
	limits, known := p.LimitsOf(shifts)
	for i := range v.shifts {
		n, f := i/perNode, float64(i%perNode)/perNode
		switch {
		case !known[n], f > 0 && !known[n+1]:
			list = append(list, nil)
		case f == 0:
			list = append(list, &limits[n])
		default:
			l := limit.Between(&limits[n], &limits[n+1], f)
			list = append(list, &l)
		}
	}
	return list
}

var causeOfZone = map[string]string{"cold": tables.CauseCold, "good": tables.CauseFine, "hot": tables.CauseHot,
	"burn-through": tables.CauseMelts}

// learn updates the weights of the shifts with a bead's look: how often the cause under each shift looks like
// this, plus how often a cause other than heat does. A look that such a cause explains hardly changes the
// weights.
func (v *posterior) learn(t *Try) {
	if v.off {
		return
	}
	list, other := v.causesAt(&t.Job), 0.0
	for _, c := range tables.Causes {
		if c.Base > 0 {
			other += c.Base * v.suits(c.ID, &t.Job) * tables.ShareAllSeen(t.Seen, c.ID)
		}
	}
	for i, c := range list {
		v.weights[i] *= tables.ShareAllSeen(t.Seen, c) + other
	}
	formula.Normalize(v.weights)
}

// good is the chance of a good bead: the weight of the shifts under which the setting is fine.
func (v *posterior) good(job *calc.Job) (sum float64) {
	for i, c := range v.causesAt(job) {
		if c == tables.CauseFine {
			sum += v.weights[i]
		}
	}
	return sum
}
