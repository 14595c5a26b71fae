package calc

import (
	"cmp"
	"context"
	"errors"
	"fmt"

	"brazebooth/calc/effort"
	"brazebooth/calc/thinsheet"
	"brazebooth/internal/crew"
	"brazebooth/internal/keep"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// Timed is what a timed arc needs on a joint: its times, its step, what ends each range, and the temperatures over
// time. All of it is this program's own computation: published on and off times for arc brazing were not found.
type Timed struct {
	Job    Job
	Card   Card   // with the times in it
	Good   bool   // there is a rhythm
	Reason string // code of what prevents a rhythm or must be known; "" for nothing
	Why    string // the reason as a sentence

	Figures  []Figure // arc_on, arc_off, their ends, first_spot_on, spot_step, fill_per_spot, seam_time, net_heat
	Limits   []RangeLimit
	Trace    []HeatPoint // of the suggested times, from the first warm spot until the cycle repeats
	Count    int         // spots in the seam
	Seam     float64     // mm
	Wider    *Wider      // nil without a gap or where nothing is found
	Remedies []Remedy    // what was tried where there is no rhythm

	Solidus, Liquidus, BaseSolidus float64 // C: the lines of a trace

	work int64 // units of effort that it took
}

// RangeLimit says what ends a range.
type RangeLimit struct {
	Figure string `json:"figure"`
	End    string `json:"end"` // low or high
	Reason string `json:"reason"`
	Text   string `json:"text"`
}

// HeatPoint is one moment of a trace.
type HeatPoint struct {
	Time   float64 `json:"time"` // s
	On     bool    `json:"arc"`
	Edge   float64 `json:"root_edge"` // C, mean through the sheet
	Centre float64 `json:"centre"`    // C
	Back   float64 `json:"back_face"` // C, at the root edge
}

// Wider is what becomes of the ranges when the gap is a quarter wider.
type Wider struct {
	Gap    float64    `json:"gap"`       // mm
	Feed   float64    `json:"wire_feed"` // m/min; less than the answer's feed if that would be too hot
	Reason string     `json:"reason,omitzero"`
	Why    string     `json:"why,omitzero"`
	On     [2]float64 `json:"arc_on"` // s, low and high
	Off    [2]float64 `json:"arc_off"`
	Step   float64    `json:"spot_step"` // mm
}

const wider = 1.25

// SolveTimed computes on, off and step of a timed arc for a job, whose mode is taken as timed. Where feed is open it
// takes the feed nearest to the middle of the arc's range with which there is a rhythm. progress, if not nil, is called
// with the share done, from one goroutine at a time. Once the context is cancelled it stops with the context's error
// and leaves nothing running. Answers are kept.
func SolveTimed(ctx context.Context, job Job, progress func(done float64)) (Timed, error) {
	job.Mode = "timed"
	return keptTimed.Answer(ctx, job, progress, func(ctx context.Context, progress func(float64)) (Timed, error) {
		return solveTimed(ctx, job, progress)
	})
}

var keptTimed = keep.Answers[Job, Timed]{Most: 128}

func solveTimed(ctx context.Context, job Job, progress func(float64)) (Timed, error) {
	e := effort.New(ctx)
	g, err := bestTimed(e, job)
	if err != nil {
		return Timed{}, err
	}
	progress(0.4)
	wider, err := g.follow(e, job)
	if err != nil {
		return Timed{}, err
	}
	progress(0.9)
	s := Timed{Job: job, Reason: string(g.times.Reason)}
	s.Good = g.rhythmic()
	f := &g.card.Setup.Filler
	s.Solidus, s.Liquidus, s.BaseSolidus = f.Solidus.V, f.Liquidus.V, MeltsFirst(&g.card).Solidus.V
	if g.times.OnOff.On > 0 {
		g.fill(&s)
		s.Wider = wider
	}
	s.Why = g.sentence()
	if !s.Good {
		if s.Remedies, err = timedRemedies(e, &g.card, g.times.Reason); err != nil {
			return s, err
		}
		s.Remedies = append(steadyWays(e, job), s.Remedies...)
		leastHeatFirst(s.Remedies)
	}
	if s.Card, err = g.timedCard(e, job, &s); err != nil {
		return s, err
	}
	if !g.read() {
		s.sameInterval("net_heat")
	}
	s.work = e.Work()
	progress(1)
	return s, nil
}

// follow computes the rest of a run, and beside it what a wider gap does.
func (g *timedRun) follow(e *effort.Account, job Job) (wider *Wider, err error) {
	if !g.found() {
		return nil, nil
	}
	own, before := e.Branch(), e.Work() // the work of one must not end the search of the other
	var errs [2]error
	var wg crew.Crew
	wg.Go(func() { wider, errs[0] = g.widen(own, job) })
	errs[1] = g.goOn(e, (*thinsheet.Run).Rest)
	wg.Wait()
	e.Take(own.Work() - before)
	return wider, cmp.Or(errs[1], errs[0])
}

// found reports whether the run has times to go on from.
func (g *timedRun) found() bool { return g.run != nil && !g.atLeast && g.run.Found() }

// timedRun is one job's run in the plane.
type timedRun struct {
	card  Card
	board *board
	o     [outs]float64
	in    thinsheet.Rhythm
	run   *thinsheet.Run // nil where the plane has no answer
	times thinsheet.Times

	atLeast bool // the search went down to the least feed that the arc holds
}

// rhythmic reports whether there are times: with one timer setting, or with a longer first spot.
func (g *timedRun) rhythmic() bool {
	if !(g.times.OnMax > 0) {
		return false
	}
	return g.times.Reason == "" || g.times.Reason == thinsheet.TwoSettings || g.times.Reason == thinsheet.NoCycle
}

// runTimed finds a job's range of on; goOn computes the rest.
func runTimed(e *effort.Account, job Job) (*timedRun, error) {
	g := new(timedRun)
	open := job
	open.Travel, open.ArcOn, open.ArcOff, open.SpotStep = Opt{}, Opt{}, Opt{}, Opt{}
	if err := resolve(open, &g.card); err != nil {
		return nil, err
	}
	g.card.Job = job
	if job.ArcOn.V > LongestOnOff || job.ArcOff.V > LongestOnOff {
		return nil, mistake.In("arc_on", Number(max(job.ArcOn.V, job.ArcOff.V))+" s is too long for a timed arc",
			fmt.Sprintf("give at most %d s on and off, or leave them out for a suggestion", LongestOnOff))
	}
	g.board = newBoard(&g.card)
	g.board.effort = e
	sug, err := g.board.suggest(&g.card)
	if err != nil {
		return nil, settingError(err, &g.card)
	}
	g.board.take(&g.card, &sug)
	if g.o, err = g.board.electric(); err != nil {
		return nil, settingError(err, &g.card)
	}
	g.card.Used.Feed = Some(g.o[oFeedMin])
	if g.read() {
		g.o[oAmps] = job.Amps.V
	}
	if g.times.Reason = OutsideTimed(&g.card); g.times.Reason != "" {
		return g, nil
	}
	g.in = g.board.rhythm(&g.card, &g.o)
	g.in.Stays = g.stays()
	g.run = new(thinsheet.Run)
	err = e.Plane(g.run, func(n *thinsheet.Run) error { return n.Begin(&g.in, func() bool { return e.Over() != nil }) })
	g.times = g.run.Times
	if errors.Is(err, thinsheet.ErrRange) {
		return nil, mistake.In("gap", "its heat is not followed here ("+err.Error()+")",
			"give sheet of 0.2 to 3 mm and an ordinary feed, or leave feed and travel out")
	}
	return g, err
}

// goOn takes further steps of the plane's run, if it found times.
func (g *timedRun) goOn(e *effort.Account, steps ...func(*thinsheet.Run) error) error {
	if !g.found() {
		return nil
	}
	for _, step := range steps {
		if err := e.Plane(g.run, step); err != nil {
			return err
		}
	}
	g.times = g.run.Times
	return nil
}

// The reasons that are known before a run.
const (
	roundHole  thinsheet.Reason = "plug"
	openFillet thinsheet.Reason = "open-fillet"
	onBacking  thinsheet.Reason = "backing"
)

// OutsideTimed says why the plane's model does not reach a card's joint under a timed arc, "" where it does.
func OutsideTimed(card *Card) thinsheet.Reason {
	u := &card.Used
	switch {
	case u.Joint == "plug":
		return roundHole
	case u.backed() != "":
		return onBacking
	case maxCore(card.Setup.Joined()) > tables.SheetThickest.V:
		return thinsheet.TooThick
	case u.Gap.V > tables.ClosedGap.V && u.Joint != "butt" && u.Joint != "corner":
		return openFillet
	}
	return ""
}
