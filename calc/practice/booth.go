package practice

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"

	"brazebooth/calc"
	"brazebooth/calc/correct"
	"brazebooth/internal/mistake"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// Booth is one job to practise on: a piece of work, the setting that is on the machine, and a simulated booth
// whose heat differs from the computed one as much as a real one may. The same level and seed give the same
// booth.
type Booth struct {
	Level int
	Seed  uint64
	Work  string
	Start calc.Job // with the setting of its first bead
	Truth Truth    // hidden until the job is over
	Best  calc.Job // the setting that the program suggests if it knows the truth
}

// Truth is how a simulated booth differs from what cards assume. All other inputs are those of the cards.
type Truth struct {
	Phi      float64 `json:"phi"`      // V, calibration voltage of the wire's melting
	Eta      float64 `json:"eta"`      // arc efficiency
	StickOut float64 `json:"stickout"` // mm, while the welder assumes tables.DefaultStickOut
}

// mostDraws limits the search for a booth in which the work can be done.
const mostDraws = 60

// New draws a booth from the program's own intervals, and a bad starting setting. A booth without any good
// setting is drawn again, so that every job can be done.
func New(ctx context.Context, level int, seed uint64) (Booth, error) {
	if level < 1 || level > len(levels) {
		return Booth{}, mistake.In("level", fmt.Sprintf("there is no level %d", level),
			fmt.Sprintf("type a level from 1 to %d", len(levels)))
	}
	r := dice(level, seed)
	work := drawWork(r, level)
	nominal, err := calc.Answer(ctx, work.job, nil)
	if err != nil {
		return Booth{}, err
	}
	for range mostDraws {
		p := Booth{Level: level, Seed: seed, Work: work.Name, Truth: Truth{Phi: drawn(r, nominal.Setup.Filler.Phi),
			Eta: drawn(r, tables.ArcEfficiency), StickOut: drawn(r, tables.DefaultStickOut)}}
		done, err := p.lay(ctx, r, &nominal)
		if done || err != nil {
			return p, err
		}
	}
	return Booth{}, fmt.Errorf("no booth was found in %d draws in which %s can be done", mostDraws, work.Name)
}

// WorkOf is the work of a level and seed, without setting the booth up.
func WorkOf(level int, seed uint64) Work {
	if level < 1 || level > len(levels) {
		return Work{}
	}
	return drawWork(dice(level, seed), level)
}

func dice(level int, seed uint64) *rand.Rand {
	return rand.New(rand.NewPCG(seed, uint64(level)))
}

// drawWork must be the first draw of a booth: WorkOf repeats only this one.
func drawWork(r *rand.Rand, level int) Work {
	works := levels[level-1].Works
	return works[r.IntN(len(works))]
}

// drawn is a value from an interval: normal on each side of its middle, with the interval as its 95 %, cut at
// its ends.
func drawn(r *rand.Rand, d tables.Datum) float64 {
	z := math.Sqrt2 * math.Erfinv(0.95*(2*r.Float64()-1))
	if z < 0 {
		return max(d.Low, d.V+z/1.96*(d.V-d.Low))
	}
	return min(d.High, d.V+z/1.96*(d.High-d.V))
}

// lay finds the truth's own setting and a start whose bead is bad; false if this booth lacks one of them.
func (p *Booth) lay(ctx context.Context, r *rand.Rand, nominal *calc.Card) (bool, error) {
	p.Start = calc.Laid(nominal)
	p.Start.StickOut, p.Start.Phi, p.Start.Eta = calc.Opt{}, calc.Opt{}, calc.Opt{}
	correct.RoundSetting(&p.Start)
	best, ok, err := p.suggested(ctx)
	if !ok || err != nil {
		return false, err
	}
	p.Best = best
	return p.spoil(ctx, r)
}

// suggested is the program's rounded setting when it knows the truth; false if that lays no good bead.
func (p *Booth) suggested(ctx context.Context) (calc.Job, bool, error) {
	open := p.Truth.of(&p.Start)
	open.Volts = calc.Opt{}
	if open.Mode == "timed" { // at the machine's feed
		open.ArcOn, open.ArcOff, open.Travel = calc.Opt{}, calc.Opt{}, calc.Opt{}
	} else {
		open.Feed, open.Travel = calc.Opt{}, calc.Opt{}
	}
	card, err := calc.Answer(ctx, open, nil)
	if err != nil {
		return calc.Job{}, false, err
	}
	j, laid := p.Start, calc.Laid(&card)
	j.Feed, j.Volts, j.Travel, j.ArcOn, j.ArcOff = laid.Feed, laid.Volts, laid.Travel, laid.ArcOn, laid.ArcOff
	correct.RoundSetting(&j)
	if p.settable(&j) != nil {
		return j, false, nil
	}
	b, err := p.Bead(ctx, j)
	return j, b.Verdict == BeadGood, err
}

// spoil moves the start step by step toward cold or hot until its bead is bad, and a little further. It returns
// false if neither direction has a bad bead within a hand's range.
func (p *Booth) spoil(ctx context.Context, r *rand.Rand) (bool, error) {
	const steps, step = 14, 0.07
	first, share, further := p.Start, r.Float64(), 0.15*r.Float64()
	heat := float64(1 - 2*r.IntN(2))
	for _, way := range [...]float64{heat, -heat} {
		for n := 1; n <= steps; n++ {
			by := way * step * float64(n)
			p.Start = off(first, by, share)
			b, err := p.Bead(ctx, p.Start)
			if err != nil {
				return false, err
			}
			if b.Verdict != BeadBad {
				continue
			}
			if j := off(first, by+way*further, share); j != p.Start {
				if b, err := p.Bead(ctx, j); err == nil && b.Verdict == BeadBad {
					p.Start = j
				}
			}
			return true, nil
		}
	}
	return false, nil
}

// off is a setting with more heat by this much, logarithmic: one share by feed, the rest by travel; for a timed
// arc by the on or the off time. The volts are the usual ones for it.
func off(j calc.Job, heat, share float64) calc.Job {
	within := func(o *calc.Opt, by, low, high float64) { o.V = max(low, min(high, o.V*math.Exp(by))) }
	switch {
	case j.Mode == "timed" && share < 0.5:
		within(&j.ArcOn, heat, tables.LeastOnOff.V, calc.LongestOnOff)
	case j.Mode == "timed":
		within(&j.ArcOff, -heat, tables.LeastOnOff.V, calc.LongestOnOff)
	default:
		low, high := calc.SteadyFeeds(&j)
		within(&j.Feed, heat*share, low, high)
		within(&j.Travel, -heat*(1-share), tables.HandSpeedLow.V, tables.HandSpeedHigh.V)
	}
	volts, _ := calc.UsualVolts(&j)
	j.Volts = calc.Some(volts)
	correct.RoundSetting(&j)
	return j
}

// of is the job with the booth's true values.
func (t *Truth) of(j *calc.Job) calc.Job {
	booth := *j
	booth.Phi, booth.Eta = calc.Some(t.Phi), calc.Some(t.Eta)
	booth.StickOut = calc.Some(j.StickOut.Or(tables.DefaultStickOut.V) + t.StickOut - tables.DefaultStickOut.V)
	return booth
}

// settable refuses a setting of another job, or one that a hand cannot hold.
func (p *Booth) settable(j *calc.Job) error {
	if !correct.SameBead(*j, p.Start) || j.SpotStep != p.Start.SpotStep {
		return mistake.In("setting", "more than a setting was changed",
			"change feed, travel, volts, stick-out, arc on or arc off only")
	}
	if j.Mode == "timed" && j.Travel.Set {
		return mistake.In("travel", "a timed arc has none of its own: it follows from arc on, arc off and the step",
			"leave it out")
	}
	if j.Mode != "timed" && (j.ArcOn.Set || j.ArcOff.Set) {
		return mistake.In("arc_on", "this job's arc burns without pause", "leave arc on and arc off out")
	}
	for _, s := range [...]struct {
		name      string
		o         calc.Opt
		low, high float64
		unit, why string
	}{
		{"travel", j.Travel, tables.HandSpeedLow.V, tables.HandSpeedHigh.V, "mm/s", ", what a hand holds"},
		{"stickout", j.StickOut, tables.DefaultStickOut.Low, tables.DefaultStickOut.High, "mm", ""},
	} {
		if s.o.Set && !(s.o.V >= s.low-1e-9 && s.o.V <= s.high+1e-9) {
			return mistake.In(s.name, calc.Number(s.o.V)+" "+s.unit+" is out of range",
				"type a value "+quantity.Limits(s.low, s.high, s.unit)+s.why)
		}
	}
	return nil
}

// Caution is on every page of a practice job.
var Caution = calc.Warning{Code: "simulated", Severity: calc.Caution,
	Text: "A simulated bead teaches the order of a correction, and is no licence: at the booth lay test beads on " +
		"scrap of the same sheet, look at both faces, peel them.",
	Basis: "common practice, no source"}
