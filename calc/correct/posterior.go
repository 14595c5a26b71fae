package correct

import (
	"context"
	"math"
	"slices"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/calc/formula"
	"brazebooth/calc/limit"
	"brazebooth/tables"
)

// posterior is what is known of a booth after its test beads: weights on a few shifts of the true heat from the
// computed one, and what each setting does under each shift.
type posterior struct {
	*asked
	card     calc.Card // of the last try
	laid     []Try
	shifts   []float64 // logarithms: of the heat, or of a timed arc's times
	weights  []float64
	timed    bool
	times    map[calc.Job]timedLimits // those computed, by the job without its times
	nodes    map[calc.Job]nodes       // of settings that were looked at
	depths   map[depth]float64        // by Inside of calc.Probe; NaN where nothing is computed
	off      bool                     // nothing is computed: no window
	computed []float64                // the weights before any bead
	sides    map[calc.Job]float64     // by farOff
	disputed bool                     // what the last bead showed is the opposite of what its setting is computed to do
	mended   bool                     // the last bead showed only zinc gone where its setting is computed to take it
	cured    map[string]bool          // causes whose cure, no setting, was tried, and the bead still shows them
}

// asked is who waits for an answer, and the first error on the way to it. From then on nothing more is computed, and
// what comes out is not used.
type asked struct {
	ctx context.Context
	err error
}

// over reports whether there was an error, or nobody waits any more.
func (a *asked) over() bool {
	if a.err == nil {
		a.err = a.ctx.Err()
	}
	return a.err != nil
}

// last is the bead that is asked about.
func (v *posterior) last() *Try { return &v.laid[len(v.laid)-1] }

// A window may be narrower than the uncertainty of the heat: between the shifts at which the section is computed its
// limits are interpolated at more, so that no window falls between them.
const (
	nodeCount  = 13
	perNode    = 16
	shiftCount = (nodeCount-1)*perNode + 1
)

// newPosterior completes the tries' settings with what the card suggests, and lays out the prior of the heat.
func newPosterior(ctx context.Context, tries []Try) (*posterior, error) {
	v := &posterior{asked: &asked{ctx: ctx}, laid: make([]Try, len(tries)), times: map[calc.Job]timedLimits{},
		nodes: map[calc.Job]nodes{}, depths: map[depth]float64{},
		sides: map[calc.Job]float64{}}
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

// fillOpen gives an earlier try the last one's settings where it leaves them open: a suggestion would differ.
func fillOpen(j, last *calc.Job) {
	if !j.Feed.Set && !j.Amps.Set {
		j.Feed = last.Feed
	}
	to := [...]*calc.Opt{&j.Volts, &j.Travel, &j.StickOut, &j.ArcOn, &j.ArcOff, &j.SpotStep, &j.Aim}
	for i, from := range [...]calc.Opt{last.Volts, last.Travel, last.StickOut, last.ArcOn, last.ArcOff,
		last.SpotStep, last.Aim} {
		if !to[i].Set {
			*to[i] = from
		}
	}
}

// next is the job as given, with the bead's settings and the changed one; what was assumed stays open.
func (v *posterior) next(given calc.Job, t *Try, c *advice.Correction) calc.Job {
	if c.Change == nil {
		return given
	}
	if c.Change.What == "mode" {
		given.Mode = c.Change.ToMode
		given.Feed, given.Amps, given.Volts, given.Travel, given.Aim = calc.Opt{}, calc.Opt{}, calc.Opt{},
			calc.Opt{}, calc.Opt{}
		return given
	}
	j := AsSet(given, &t.Job)
	if c.Change.What == "wire_feed" { // the volts stay as they are set
		j.Volts = t.Job.Volts
	}
	for i := range levers {
		if levers[i].what == c.Change.What {
			*levers[i].opt(&j) = calc.Some(c.Change.To)
		}
	}
	return j
}

// sigma is one standard deviation of the heat's shift: that of the heat itself joined with that of the section's
// peaks; for a timed arc that of its longest on. 0 where nothing is computed.
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

// causesAt is the cause that a setting would have under each shift.
func (v *posterior) causesAt(job *calc.Job) []string {
	list := make([]string, len(v.shifts))
	switch {
	case v.over():
	case v.off:
		for i := range list { // about equally likely
			list[i] = [...]string{tables.CauseCold, tables.CauseFine, tables.CauseHot, tables.CauseMelts}[i%4]
		}
	case v.timed:
		l := v.timedLimits(job)
		for i, shift := range v.shifts {
			list[i] = l.cause(job.ArcOn.V, job.ArcOff.V, shift)
		}
	default:
		v.steadyCauses(job, list)
	}
	return list
}

// steadyCauses reads the causes off the cross-section, computed at the nodes and interpolated between them.
func (v *posterior) steadyCauses(job *calc.Job, list []string) {
	at, ok := v.nodesOf(job)
	if !ok {
		return
	}
	for i := range list {
		n, f := i/perNode, float64(i%perNode)/perNode
		switch {
		case !at.known[n], f > 0 && !at.known[n+1]:
			list[i] = tables.CauseMelts // beyond the model's grid is only more heat than sheet bears
		case f == 0:
			list[i] = causeOfZone[at.limits[n].Zone()]
		default:
			l := limit.Between(&at.limits[n], &at.limits[n+1], f)
			list[i] = causeOfZone[l.Zone()]
		}
	}
}

var causeOfZone = map[string]string{"cold": tables.CauseCold, "good": tables.CauseFine, "hot": tables.CauseHot,
	"burn-through": tables.CauseMelts}

// learn updates the weights of the shifts by what a bead showed: how often the cause under each shift shows like this,
// or a cause that has nothing to do with heat does. What such a cause explains teaches next to nothing of the heat.
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

// good is the weight of the shifts under which a setting is fine.
func (v *posterior) good(job *calc.Job) (sum float64) {
	for i, c := range v.causesAt(job) {
		if c == tables.CauseFine {
			sum += v.weights[i]
		}
	}
	return sum
}
