package calc

import (
	"context"
	"math"

	"brazebooth/calc/formula"
	"brazebooth/calc/thinsheet"
	"brazebooth/internal/keep"
	"brazebooth/tables"
)

// TimedTrial is a seam of spots that was laid and looked at: the job with its on, off and step, and what it showed, ids
// of tables.Sights with commas: good (washed through), edges-melted, drops-through (fell), rolled-edge (cold),
// spots-apart (frozen between).
type TimedTrial struct {
	Job  Job
	Seen string
}

// TimedEnds are the ends of a timed arc's times as computed, s, at the on and step that were set.
type TimedEnds struct {
	OnMin, OnMax, OffMin, OffMax float64
	Power                        float64 // one standard deviation of the logarithm of the power
}

// Ends are the ends of a trial by the plane's heat at the usual stirring and spread; false where it has none.
func (t *TimedTrial) Ends(ctx context.Context) (TimedEnds, bool) {
	job := t.Job
	job.Rhythm = Rhythm{}
	e, err := TimedEndsOf(ctx, job)
	return e, err == nil && e.OnMin > 0 && e.OnMax > 0 && e.OffMin > 0 && e.OffMax > 0
}

// TimedEndsOf are the ends of a job's times as SolveTimed has them, all 0 where there is no rhythm, without what else
// that computes. Those of off do not depend on the off given. They are kept for a while.
func TimedEndsOf(ctx context.Context, job Job) (TimedEnds, error) {
	job.Mode, job.Travel, job.ArcOff = "timed", Opt{}, Opt{}
	return keptEnds.Answer(ctx, job, nil, func(ctx context.Context, _ func(float64)) (TimedEnds, error) {
		own := &effort{ctx: ctx}
		g, err := bestTimed(own, job)
		if err == nil {
			err = g.goOn(own, (*thinsheet.Run).Settle, (*thinsheet.Run).Off)
		}
		if err != nil || !(g.times.OnOff.On > 0) {
			return TimedEnds{}, err
		}
		x := &g.times
		weak, strong := g.board.readPower(&g.card)
		power := math.Hypot(math.Log(strong/weak)/4, g.board.etaPart())
		return TimedEnds{x.OnMin, x.OnMax, x.OffMin, x.OffMax, power}, nil
	})
}

var keptEnds = keep.Answers[Job, TimedEnds]{Most: 64}

// etaPart is one standard deviation of the arc's efficiency, as a share of it.
func (b *board) etaPart() float64 {
	i := b.intervals[inEta]
	return (i.high - i.low) / 4 / b.inputs[inEta]
}

// LearnRhythm finds stirring, spread and power on a grid over their logarithms, with normal priors: how often each
// cause under a point of the grid shows what was seen, trial by trial. What only causes beside heat explain teaches
// next to nothing. The newest trials count, at most rhythmTrials; one whose job has no computed times teaches nothing.
// The context's error once it is cancelled.
func LearnRhythm(ctx context.Context, list []TimedTrial, filler string, wire float64) (Rhythm, error) {
	list = list[max(0, len(list)-rhythmTrials):]
	var laid []laidTrial
	for i := range list {
		t := &list[i]
		if t.Seen == "" || !t.Job.ArcOn.Set {
			continue
		}
		ends, ok := t.Ends(ctx)
		if err := ctx.Err(); err != nil {
			return Rhythm{}, err
		}
		if ok {
			laid = append(laid, laidTrial{ends, t.Job.ArcOn.V, t.Job.ArcOff, t.Seen})
		}
	}
	return learnRhythm(laid, LearnedKey(filler, wire, "timed")), nil
}

const rhythmTrials = 12

// laidTrial is a trial with its ends as computed.
type laidTrial struct {
	ends TimedEnds
	on   float64 // s, as the arc burnt
	off  Opt
	seen string
}

// learnRhythm is the posterior of trials with their ends.
func learnRhythm(list []laidTrial, key string) Rhythm {
	if len(list) == 0 {
		return Rhythm{}
	}
	power := list[0].ends.Power
	for i := range list {
		power = min(power, list[i].ends.Power)
	}
	sigma := [3]float64{tables.StirringSigma.V, math.Log(tables.ArcWidth.High/tables.ArcWidth.Low) / 4, power}
	points, weights := rhythmGrid(sigma)
	for i := range list {
		shows := list[i].shows()
		for n := range points {
			weights[n] *= shows(&points[n])
		}
		formula.Normalize(weights)
	}
	r := Rhythm{Trials: len(list), For: key}
	var mean [3]float64
	for n, w := range weights {
		for i := range mean {
			mean[i] += w * points[n][i]
		}
	}
	for n, w := range weights {
		for i := range mean {
			for k := range i + 1 {
				r.Cov[i*(i+1)/2+k] += w * (points[n][i] - mean[i]) * (points[n][k] - mean[k])
			}
		}
	}
	r.Stir, r.Spread = tables.Stirring.V*math.Exp(mean[0]), tables.ArcWidth.V*math.Exp(mean[1])
	r.Power = math.Exp(mean[2])
	return r
}

// rhythmGrid is the grid over the three logarithms with its normal prior.
func rhythmGrid(sigma [3]float64) (points [][3]float64, weights []float64) {
	const n, reach = 11, 3.0
	at := func(i int) float64 { return reach * (2*float64(i)/(n-1) - 1) }
	for i := range n * n * n {
		z := [3]float64{at(i / n / n), at(i / n % n), at(i % n)}
		points = append(points, [3]float64{z[0] * sigma[0], z[1] * sigma[1], z[2] * sigma[2]})
		weights = append(weights, math.Exp(-(z[0]*z[0]+z[1]*z[1]+z[2]*z[2])/2))
	}
	formula.Normalize(weights)
	return points, weights
}

// shows returns how likely a trial shows what it did, where the three logarithms are at a point.
func (t *laidTrial) shows() func(at *[3]float64) float64 {
	var share [5]float64
	for i, cause := range [...]string{tables.CauseOnShort, tables.CauseOnLong, tables.CauseOffShort,
		tables.CauseOffLong, tables.CauseFine} {
		share[i] = tables.ShareAllSeen(t.seen, cause)
	}
	other := otherCauses(t.seen)
	return func(at *[3]float64) float64 {
		p, sum := t.causes(at), 0.0
		mean := 0.0
		for i, v := range p {
			mean += v * share[i]
			sum += v
		}
		return mean/sum + other
	}
}

// causes are how likely each cause is at a point: on too short or too long, off too short or too long, none.
func (t *laidTrial) causes(at *[3]float64) [5]float64 {
	over := func(x float64) float64 { return math.Erfc(-x/tables.RhythmDoubt.V/math.Sqrt2) / 2 }
	var end [4]float64
	for i, v := range [...]float64{t.ends.OnMin, t.ends.OnMax, t.ends.OffMin, t.ends.OffMax} {
		s := slopes(i)
		end[i] = math.Log(v) + s[0]*at[0] + s[1]*at[1] + s[2]*at[2]
	}
	on := math.Log(t.on)
	p := [5]float64{over(end[0] - on), over(on - end[1])}
	if t.off.Set {
		off := math.Log(t.off.V)
		p[2], p[3] = over(end[2]-off), over(off-end[3])
	}
	p[4] = (1 - p[0]) * (1 - p[1]) * (1 - p[2]) * (1 - p[3])
	return p
}

// otherCauses is how likely causes beside heat show what was seen.
func otherCauses(seen string) (p float64) {
	for _, c := range tables.Causes {
		if c.Base > 0 && c.Base < 1 {
			p += c.Base * tables.ShareAllSeen(seen, c.ID)
		}
	}
	return p
}

// taught puts what trials taught into the plane's input.
func (r *Rhythm) taught(in *thinsheet.Rhythm) {
	if r.set() {
		in.Stir = r.Stir
	}
}
