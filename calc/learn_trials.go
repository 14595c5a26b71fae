package calc

import (
	"context"
	"math"

	"brazebooth/calc/effort"
	"brazebooth/calc/learned"
	"brazebooth/calc/thinsheet"
	"brazebooth/internal/keep"
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

// TimedTrial is a seam of spots that was laid and looked at: the job with its on, off and step, and what it showed, ids
// of tables.Sights with commas: good (washed through), edges-melted, drops-through (fell), rolled-edge (cold),
// spots-apart (frozen between).
type TimedTrial struct {
	Job  Job
	Seen string
}

// Ends are the ends of a trial's times by the plane's heat at the usual stirring and spread; false where none are
// found.
func (t *TimedTrial) Ends(ctx context.Context) (learned.Ends, bool) {
	job := t.Job
	job.Rhythm = learned.Rhythm{}
	e, err := TimedEndsOf(ctx, job)
	return e, err == nil && e.OnMin > 0 && e.OnMax > 0 && e.OffMin > 0 && e.OffMax > 0
}

// TimedEndsOf are the ends of a job's times as SolveTimed has them, at the on and step that were set, without the rest
// of its answer; all are 0 where there is no rhythm. The ends of off do not depend on the off given. Answers are kept.
func TimedEndsOf(ctx context.Context, job Job) (learned.Ends, error) {
	job.Mode, job.Travel, job.ArcOff = "timed", Opt{}, Opt{}
	return keptEnds.Answer(ctx, job, nil, func(ctx context.Context, _ func(float64)) (learned.Ends, error) {
		own := effort.New(ctx)
		g, err := bestTimed(own, job)
		if err == nil {
			err = g.goOn(own, (*thinsheet.Run).Settle, (*thinsheet.Run).Off)
		}
		if err != nil || !(g.times.OnOff.On > 0) {
			return learned.Ends{}, err
		}
		x := &g.times
		weak, strong := g.board.readPower(&g.card)
		power := math.Hypot(math.Log(strong/weak)/4, g.board.etaPart())
		return learned.Ends{OnMin: x.OnMin, OnMax: x.OnMax, OffMin: x.OffMin, OffMax: x.OffMax, Power: power}, nil
	})
}

var keptEnds = keep.Answers[Job, learned.Ends]{Most: 64}

// etaPart is one standard deviation of the arc's efficiency, as a share of it.
func (b *board) etaPart() float64 {
	i := b.intervals[inEta]
	return (i.high - i.low) / 4 / b.inputs[inEta]
}

// LearnRhythm finds stirring, spread and power of a booth with a filler and a wire (mm), see learned.RhythmOf. The
// newest trials count, at most rhythmTrials; a trial whose job has no computed times teaches nothing. The error is the
// context's once it is cancelled.
func LearnRhythm(ctx context.Context, list []TimedTrial, filler string, wire float64) (learned.Rhythm, error) {
	list = list[max(0, len(list)-rhythmTrials):]
	var laid []learned.SpotTrial
	for i := range list {
		t := &list[i]
		if t.Seen == "" || !t.Job.ArcOn.Set {
			continue
		}
		ends, ok := t.Ends(ctx)
		if err := ctx.Err(); err != nil {
			return learned.Rhythm{}, err
		}
		if ok {
			laid = append(laid, learned.SpotTrial{Ends: ends, On: t.Job.ArcOn.V, Off: t.Job.ArcOff.Or(0), Seen: t.Seen})
		}
	}
	return learned.RhythmOf(laid, LearnedKey(filler, wire, "timed")), nil
}

const rhythmTrials = 12
