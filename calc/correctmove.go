package calc

import (
	"context"
	"math"
	"strings"

	"brazebooth/tables"
)

// move is a change that was looked at.
type move struct {
	lever *lever
	job   Job
	good  float64
	gain  float64 // of the limit that the change is meant to widen, logarithmic
}

// choose finds the change for the likeliest cause: a setting, or where none is at fault or none helps, its cure in words.
func (v *view) choose(ctx context.Context, t *Try, c *Correction) error {
	before, err := v.good(ctx, &t.Job)
	if err != nil {
		return err
	}
	top := &c.Causes[0]
	if !v.off {
		c.GoodBefore, c.GoodAfter = 100*before, 100*before
	}
	if v.mended {
		return v.repairZinc(ctx, t, c)
	}
	best, err := v.remedy(ctx, t, top.ID, before)
	if err != nil {
		return err
	}
	if best == nil {
		v.noChange(top, c)
		return nil
	}
	if !v.off {
		c.GoodAfter = 100 * best.good
	}
	put(c, t, best)
	c.Why = v.why(top, c)
	return nil
}

// put writes a move as the change.
func put(c *Correction, t *Try, m *move) {
	if m.lever == nil {
		c.Change = &Change{What: "mode", FromMode: t.Job.Mode, ToMode: m.job.Mode}
		return
	}
	was := t.Job
	c.Change = &Change{What: m.lever.what, From: m.lever.opt(&was).V, To: m.lever.opt(&m.job).V, Unit: m.lever.unit}
}

// remedy is the move against a cause, nil where no setting helps.
func (v *view) remedy(ctx context.Context, t *Try, cause string, before float64) (*move, error) {
	switch cause {
	case tables.CauseCold:
		return v.hunt(ctx, t, before, 1, leverStickOut, leverVolts, leverFeed, leverTravel)
	case tables.CauseHot:
		if v.off {
			return v.hunt(ctx, t, before, -1, leverTravel, leverVolts, leverFeed)
		}
		return v.hunt(ctx, t, before, -1, leverStickOut, leverVolts, leverFeed, leverTravel)
	case tables.CauseMelts:
		m, err := v.hunt(ctx, t, before, -1, leverTravel, leverFeed) // a hole first: quicker, or less wire
		if err != nil || v.off || t.Job.Mode == "timed" {
			return m, err
		}
		if hope, err := v.hope(ctx, t); err != nil || m != nil && hope {
			return m, err
		}
		return v.pauses(t, m), nil
	case tables.CauseOnLong:
		return v.along(ctx, t, &levers[leverOn], -1)
	case tables.CauseOnShort:
		return v.along(ctx, t, &levers[leverOn], 1)
	case tables.CauseOffLong:
		return v.along(ctx, t, &levers[leverOff], -1)
	case tables.CauseOffShort:
		return v.along(ctx, t, &levers[leverOff], 1)
	}
	return v.treat(ctx, t, cause, before)
}

// hope reports whether a steady arc may be good somewhere between this travel and the fastest of a hand, or this feed and
// the least that burns steadily; or where a card would put both.
func (v *view) hope(ctx context.Context, t *Try) (bool, error) {
	fast, low := t.Job, t.Job
	_, high := travelEnds(v, &t.Job)
	fast.Travel = Some(max(high, t.Job.Travel.V))
	least, _ := feedEnds(v, &t.Job)
	low.Feed = Some(min(least, t.Job.Feed.V))
	for _, end := range [...]Job{fast, low} {
		half := end
		half.Travel, half.Feed = Some(math.Sqrt(end.Travel.V*t.Job.Travel.V)), Some(math.Sqrt(end.Feed.V*t.Job.Feed.V))
		for _, j := range [...]Job{end, half} {
			if g, err := v.good(ctx, &j); err != nil || g > hopeful {
				return g > hopeful, err
			}
		}
	}
	open := t.Job
	open.Feed, open.Volts, open.Travel = Opt{}, Opt{}, Opt{}
	c, err := Solve(open)
	if err != nil || c.Warned("no-good-setting") {
		return false, nil // what was laid stays answered
	}
	j := Laid(&c)
	g, err := v.good(ctx, &j)
	return g > hopeful, err
}

// hopeful is the chance of a good bead from which a steady arc is not given up.
const hopeful = 0.25

// pauses is a timed arc in place of a steady one, where the joint takes one; else the move that was found.
func (v *view) pauses(t *Try, found *move) *move {
	if t.Job.Joint == "overlay" || t.Job.Joint == "plug" {
		return found
	}
	j := t.Job
	j.Mode = "timed"
	j.Feed, j.Volts, j.Travel, j.Aim = Opt{}, Opt{}, Opt{}, Opt{} // the timed arc's own are suggested anew
	return &move{job: j}
}

// hunt goes through the levers in a hand's order for the first whose smallest change is more likely than not to make
// a good bead; of none such, the change that makes it likeliest, or that widens the limit most.
func (v *view) hunt(ctx context.Context, t *Try, before, heat float64, order ...int) (*move, error) {
	var bracketed *move
	for _, i := range order {
		sign := v.sense(t, &levers[i], heat)
		if _, known := v.opposite(t, &levers[i], sign); known && sign != 0 { // both sides of this one were seen
			m, err := v.pull(ctx, t, &levers[i], heat)
			if m != nil && (v.off || m.good >= before) || err != nil {
				return m, err
			}
			if bracketed == nil {
				bracketed = m
			}
		}
	}
	var best *move
	for _, i := range order {
		if v.timed && i == leverTravel {
			continue // a timed arc's follows from its beat
		}
		m, err := v.pull(ctx, t, &levers[i], heat)
		if err != nil {
			return nil, err
		}
		switch {
		case m == nil, !v.off && m.good < before-1e-9: // it would make it worse
		case m.good >= 0.5 || v.off:
			return m, nil
		case best == nil || m.good > best.good+0.01 || best.good < 0.01 && m.gain > best.gain:
			best = m
		}
	}
	if best == nil {
		best = bracketed // what two beads showed goes before what is computed
	}
	return best, nil
}

// pull looks along one lever for the smallest change that is more likely than not to be good. nil where the lever has
// no room or no effect that way.
func (v *view) pull(ctx context.Context, t *Try, l *lever, heat float64) (*move, error) {
	sign := v.sense(t, l, heat)
	list := v.notches(t, l, sign)
	if sign == 0 || len(list) == 0 {
		return nil, nil
	}
	job := func(i int) Job { j := t.Job; *l.opt(&j) = Some(list[i]); return j }
	first, last := 0, len(list)-1
	for first < last && math.Abs(list[first]-l.opt(&t.Job).V) < l.usual(l.opt(&t.Job).V)-1e-9 {
		first++
	}
	if v.off { // the usual step
		return &move{lever: l, job: job(first)}, nil
	}
	for last >= 0 && !v.keeps(&t.Job, job(last)) {
		last--
	}
	if last < first {
		return nil, nil
	}
	best := -1
	bestGood := 0.0
	low, high := first-1, -1 // the smallest good one lies in (low, high]
	for n := range 5 {
		i := first + (last-first)*n/4
		g, err := v.good(ctx, ptr(job(i)))
		if err != nil {
			return nil, err
		}
		if best < 0 || g > bestGood {
			best, bestGood = i, g
		}
		if g >= 0.5 {
			high = i
			break
		}
		low = i
	}
	for high >= 0 && high-low > 1 {
		i := (low + high) / 2
		g, err := v.good(ctx, ptr(job(i)))
		if err != nil {
			return nil, err
		}
		if g >= 0.5 {
			high, bestGood = i, g
		} else {
			low = i
		}
	}
	switch {
	case high >= 0:
		best = high
	case bestGood < 0.01: // nothing along it is good: as far as it helps without losing another limit
		best = last
	}
	j := job(best)
	if v.widened(&t.Job, &j, heat) <= 0 { // past where it helps
		return nil, nil
	}
	return &move{l, j, bestGood, v.widened(&t.Job, &j, heat)}, nil
}

func ptr[T any](v T) *T { return &v }

// sense is the sign of a lever's change that widens the limit: more heat (heat 1) or less (−1); 0 where it does
// neither. The window says; a hand's rule where none is computed.
func (v *view) sense(t *Try, l *lever, heat float64) float64 {
	if v.off || v.timed {
		return l.hotter * heat
	}
	at := l.opt(&t.Job).V
	for _, sign := range [...]float64{1, -1} {
		j := t.Job
		*l.opt(&j) = Some(at + sign*l.usual(at))
		if v.widened(&t.Job, &j, heat) > 0.002 {
			return sign
		}
	}
	return 0
}

// widened is how much further a job lies from the limit of cold (heat 1) or of melting (−1) than another,
// logarithmic: the less of what the computed heat and what the heat as it is believed by now say, as far as either has
// anything to gain. 0 where one of them is not modelled.
func (v *view) widened(from, to *Job, heat float64) float64 {
	const plenty = 0.3 // further inside than this nothing is gained or lost
	least, open := math.Inf(1), math.Inf(1)
	for _, shift := range [...]float64{0, v.middle()} {
		a, okA := v.limitOf(from, heat, shift)
		b, okB := v.limitOf(to, heat, shift)
		if !okA || !okB {
			return 0
		}
		least = min(least, b-a)
		if a, b = min(a, plenty), min(b, plenty); a < plenty || b < plenty {
			open = min(open, b-a)
		}
	}
	if !math.IsInf(open, 1) {
		return open
	}
	return least
}

func (v *view) limitOf(j *Job, heat, shift float64) (float64, bool) {
	h, m, err := v.field(j)
	if err != nil {
		return 0, false
	}
	h.b.knobs[kEta] *= math.Exp(shift)
	s, err := h.at(h.b.knobs[kFeed], h.b.knobs[kTravel], false)
	if err != nil {
		return 0, false
	}
	l := m.logs(&s)
	switch {
	case heat > 0 && s.bridged:
		return l[lWets], true
	case heat > 0: // it does not even reach both members: more heat comes first
		return math.Log(s.o[oNet]) - far, true
	}
	return min(l[lSolid], l[lBurn]), true
}

// middle is the mean shift.
func (v *view) middle() float64 {
	sum := 0.0
	for i, s := range v.shifts {
		sum += v.weights[i] * s
	}
	return sum
}

// notches are the values that a hand can set on one side of the present one: up to the most for one step, inside the
// lever's ends, and short of a value that already showed the opposite; where that lies near, the middle alone.
func (v *view) notches(t *Try, l *lever, sign float64) []float64 {
	at := l.opt(&t.Job)
	if !at.Set || sign == 0 {
		return nil
	}
	low, high := l.ends(v, &t.Job)
	if l.what == "volts" {
		low, high = v.steadyVolts(t, low, high)
	}
	stop, bracketed := v.opposite(t, l, sign)
	var list []float64
	from := math.Round(at.V/l.quantum) * l.quantum
	for n := 1; n <= 400; n++ {
		x := from + sign*float64(n)*l.quantum
		past := sign > 0 && x > high+1e-9 || sign < 0 && x < low-1e-9 // from outside one may come back
		if math.Abs(x-at.V) > l.most(at.V)+1e-9 || past || bracketed && sign*(x-stop) >= -1e-9 {
			break
		}
		if sign*(x-at.V) > l.quantum/2 {
			list = append(list, math.Round(x*1000)/1000)
		}
	}
	if bracketed && len(list) > 2 && math.Abs(stop-at.V) <= l.most(at.V)+1e-9 {
		return list[:(len(list)+1)/2] // not past the middle of what is known on both sides
	}
	return list
}

// opposite is the nearest value of a lever on that side where a bead of the same other settings showed the opposite.
func (v *view) opposite(t *Try, l *lever, sign float64) (float64, bool) {
	at := l.opt(&t.Job).V
	nearest, found := 0.0, false
	for _, other := range v.laid[:len(v.laid)-1] {
		j := other.Job
		x := l.opt(&j).V
		*l.opt(&j) = *l.opt(&t.Job)
		if j != t.Job || sign*(x-at) <= 0 || heatSign(other.Seen)*heatSign(t.Seen) >= 0 {
			continue
		}
		if !found || sign*(x-nearest) < 0 {
			nearest, found = x, true
		}
	}
	return nearest, found
}

// steadyVolts narrows the ends of the volts to what lies between those at which a bead with this feed stubbed and those at
// which the wire burnt back.
func (v *view) steadyVolts(t *Try, low, high float64) (float64, float64) {
	const clear = 0.2 // V, as near as one goes to a value that failed
	for _, other := range v.laid {
		if other.Job.Feed != t.Job.Feed || other.Job.StickOut != t.Job.StickOut {
			continue
		}
		switch at := other.Job.Volts.V; voltSign(other.Seen) {
		case -1:
			low = max(low, at+clear)
		case 1:
			high = min(high, at-clear)
		}
	}
	return low, high
}

// voltSign is −1 for a bead that shows too few volts for its feed, 1 for one that shows too many, 0 for neither or both.
func voltSign(seen string) int {
	sum := 0
	for _, s := range strings.Split(seen, ",") {
		const telling = 0.5
		if tables.ShareSeen(s, tables.CauseVoltsLow) >= telling {
			sum--
		}
		if tables.ShareSeen(s, tables.CauseVoltsHi) >= telling {
			sum++
		}
	}
	return sum
}

// contradicts reports whether a bead looks cold and hot at once.
func contradicts(seen string) bool {
	cold, hot := false, false
	for _, s := range strings.Split(seen, ",") {
		cold, hot = cold || heatSign(s) < 0, hot || heatSign(s) > 0
	}
	return cold && hot
}

// heatSign is −1 for a bead that looks cold, 1 for one that looks hot, 0 for neither or both.
func heatSign(seen string) float64 {
	sum := 0.0
	for _, s := range strings.Split(seen, ",") {
		cold := max(tables.ShareSeen(s, tables.CauseCold), tables.ShareSeen(s, tables.CauseOnShort), tables.ShareSeen(s, tables.CauseOffLong))
		hot := max(tables.ShareSeen(s, tables.CauseHot), tables.ShareSeen(s, tables.CauseMelts), tables.ShareSeen(s, tables.CauseOnLong), tables.ShareSeen(s, tables.CauseOffShort))
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

// keeps reports whether a change breaks no edge that needs no heat: filled, arc steady, a hand's speed.
func (v *view) keeps(from *Job, to Job) bool {
	a, okA := v.simpleLimits(from)
	b, okB := v.simpleLimits(&to)
	if !okA || !okB {
		return false
	}
	for i := range a {
		if b[i] < 0 && b[i] < a[i]-1e-9 {
			return false
		}
	}
	return true
}

func (v *view) simpleLimits(j *Job) (l [limitCount]float64, ok bool) {
	h, m, err := v.field(j)
	if err != nil {
		return l, false
	}
	var o [outs]float64
	if h.b.chain.timed {
		return l, true
	}
	if h.b.chain.travelling(&h.b.knobs, &o) != nil {
		return l, false
	}
	m.simple(&o, &l)
	return l, true
}

// one is a usual step of one lever, or the middle of what is known on both sides.
func (v *view) one(ctx context.Context, t *Try, l *lever, sign float64) (*move, error) {
	list := v.notches(t, l, sign)
	if len(list) == 0 {
		return nil, nil
	}
	at := l.opt(&t.Job).V
	i, step := 0, l.usual(at)
	if calm, ok := v.calm(t, l, sign); ok {
		step = min(step, math.Abs(calm-at)/2) // half way back to what ran
	}
	for i < len(list)-1 && math.Abs(list[i]-at) < step-1e-9 {
		i++
	}
	j := t.Job
	*l.opt(&j) = Some(list[i])
	g, err := v.good(ctx, &j)
	return &move{lever: l, job: j, good: g}, err
}

// calm is the nearest value of the volts on that side at which a bead of the same other settings ran without stubbing or
// burning back.
func (v *view) calm(t *Try, l *lever, sign float64) (float64, bool) {
	at := l.opt(&t.Job).V
	nearest, found := 0.0, false
	for _, other := range v.laid[:len(v.laid)-1] {
		j := other.Job
		x := l.opt(&j).V
		*l.opt(&j) = *l.opt(&t.Job)
		if l.what != "volts" || j != t.Job || sign*(x-at) <= 0 || voltSign(other.Seen) != 0 {
			continue
		}
		if !found || sign*(x-nearest) < 0 {
			nearest, found = x, true
		}
	}
	return nearest, found
}

// along is the first notch of a lever that is more likely than not to be good, or the likeliest.
func (v *view) along(ctx context.Context, t *Try, l *lever, sign float64) (*move, error) {
	list := v.notches(t, l, sign)
	if v.off && len(list) > 0 {
		return v.one(ctx, t, l, sign)
	}
	var best *move
	for _, x := range list {
		j := t.Job
		*l.opt(&j) = Some(x)
		g, err := v.good(ctx, &j)
		if err != nil {
			return nil, err
		}
		if best == nil || g > best.good {
			best = &move{lever: l, job: j, good: g}
		}
		if g >= 0.5 {
			break
		}
	}
	if best != nil && best.good < 0.01 { // far off: as far as one step goes
		*l.opt(&best.job) = Some(list[len(list)-1])
	}
	return best, nil
}
