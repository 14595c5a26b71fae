package calc

import (
	"context"
	"math"

	"brazebooth/calc/effort"
	"brazebooth/calc/limit"
	"brazebooth/calc/limit/grid"
	"brazebooth/internal/keep"
	"brazebooth/internal/mistake"
)

// Window is the operating window of a job: what every feed and travel would do, whatever the job's own setting. Unlike
// a card it shows how much room there is.
type Window struct {
	Job     Job
	Feeds   []float64 // m/min, rising
	Travels []float64 // mm/s, rising
	Zones   []string  // feed outer, travel inner
	Margins []float64 // % of feed or travel to the nearest edge; below zero where it is not met
	Nearest []string  // name of that edge

	Good       bool       // the suggestion's verdict is good
	Suggestion Suggestion // the card's own
	Card       Card       // the card at the suggestion

	Chance   Chance
	Remedies []Remedy // tried where the suggestion is not good

	Coarser bool // fewer points than were asked for, since the job takes long to compute; see CoarserWords

	work int64 // units of effort that it took
}

// At returns the window's point nearest to a setting, by ratio.
func (w *Window) At(feed, travel float64) (i, j int) {
	return closest(w.Feeds, feed), closest(w.Travels, travel)
}

func closest(list []float64, v float64) int {
	best := 0
	for i := range list {
		if math.Abs(math.Log(list[i]/v)) < math.Abs(math.Log(list[best]/v)) {
			best = i
		}
	}
	return best
}

// Suggestion is the suggested setting of a window.
type Suggestion struct {
	Feed   float64 `json:"wire_feed"` // m/min
	Travel float64 `json:"travel"`    // mm/s
	Margin float64 `json:"margin"`    // %, negative where the nearest edge is missed, -999 by far
}

// WindowSize is how many feeds and travels a window has.
type WindowSize struct{ Feeds, Travels int }

// FullWindow is fine enough to look at; CoarseWindow is for tests and small screens.
var (
	FullWindow   = WindowSize{48, 24}
	CoarseWindow = WindowSize{12, 8}
)

// WindowOf computes the operating window of a job at so many feeds and travels. progress, if not nil, is called with
// the share done, from one goroutine at a time. Once the context is cancelled it stops with the context's error and
// leaves nothing running. Windows are kept: the same job is answered at once.
func WindowOf(ctx context.Context, job Job, size WindowSize, progress func(done float64)) (Window, error) {
	return kept.Answer(ctx, windowKey{job, size}, progress,
		func(ctx context.Context, progress func(float64)) (Window, error) {
			return window(ctx, job, size, progress)
		})
}

func window(ctx context.Context, job Job, size WindowSize, progress func(float64)) (Window, error) {
	used, err := Complete(job)
	if err != nil {
		return Window{}, err
	}
	open := job
	open.learnReadings(&used)
	open.Feed, open.Travel, open.Amps = Opt{}, Opt{}, Opt{}
	if job.Feed.Set && job.Amps.Set { // the volts were read at that feed
		open.Volts = Opt{}
	}
	w := survey{Window: Window{Job: job}, effort: effort.New(ctx)}
	b, card, err := laidOut(w.effort, open)
	if err != nil {
		return Window{}, err
	}
	if why := b.notModelled(card); why != "" {
		return Window{}, mistake.In("window", "none is computed for this job ("+why+")", windowHint(card))
	}
	if err := w.suggest(open); err != nil {
		return Window{}, err
	}
	if err := w.draw(b, card, size, progress); err != nil {
		return Window{}, err
	}
	w.Chance = w.Card.Chance
	if !w.Good && !w.Card.Stopped() {
		w.Remedies, err = remedies(w.effort, w.search, open, &w.Card)
	}
	w.work = w.effort.Work()
	return w.Window, err
}

// survey is a window while it is computed.
type survey struct {
	Window
	effort *effort.Account
	search int64 // units of effort that the search for the suggestion took
}

// suggest puts the card's own suggestion on the window.
func (w *survey) suggest(open Job) error {
	found, err := solve(w.effort, open)
	if err != nil {
		return err
	}
	w.search = w.effort.Work()
	at := open
	at.Feed, at.Travel = found.Used.Feed, found.Used.Travel
	if w.Card, err = solve(w.effort, at); err != nil {
		return err
	}
	w.Suggestion = Suggestion{Feed: at.Feed.V, Travel: at.Travel.V}
	if f, ok := w.Card.Figure("margin"); ok {
		w.Suggestion.Margin = f.Value
	} else if near := w.Card.DecidingEdge(); near != nil && !near.Met {
		w.Suggestion.Margin = within999(math.Inf(-1))
	}
	w.Good = w.Card.Verdict() == "good"
	return nil
}

// describe turns the limits of every point into zone, margin and nearest edge.
func (w *Window) describe(c *grid.Limits) {
	feeds, travels := c.Feeds, c.Travels
	w.Feeds, w.Travels = feeds.Points(0.06), travels.Points(1)
	for i := range w.Feeds {
		for j := range w.Travels {
			k := i*travels.N + j
			zone, margin, nearest := "not-modelled", 0.0, ""
			if l := &c.Points[k]; *l != limit.Hopeless {
				f, g := c.Slopes(float64(i), float64(j), 1)
				edge, worst := limit.Nearest(limit.Reaches(l, &f, &g))
				zone, margin, nearest = l.Zone(), math.Copysign(limit.Percent(worst), worst), edge.Edge()
			}
			w.Zones, w.Margins, w.Nearest = append(w.Zones, zone), append(w.Margins, margin), append(w.Nearest, nearest)
		}
	}
}

type windowKey struct {
	job  Job
	size WindowSize
}

var kept = keep.Answers[windowKey, Window]{Most: 128}
