package calc

import (
	"context"
	"math"
	"runtime"
	"sync"

	"brazebooth/internal/mistake"
)

// Window is the operating window of a job: what every feed and travel would do, the present setting left
// aside. It is the answer that a single card cannot give: how much room there is.
type Window struct {
	Job     Job
	Feeds   []float64 // m/min, rising
	Travels []float64 // mm/s, rising
	Zones   []string  // feed outer, travel inner
	Margins []float64 // %, to the nearest edge by feed or travel; below zero where one is not met
	Nearest []string  // name of that edge
	Aims    []float64 // mm toward the second member: each point has the one of these that suits it; none where the aim is one

	Good       bool       // the suggestion meets every edge
	Suggestion Suggestion // the card's own: the point furthest from every edge, or the nearest miss
	Card       Card       // the card at the suggestion

	Chance   Chance
	Remedies []Remedy // what was tried where no point is good

	Coarser bool // fewer points than were asked for, since the job takes long to compute; see CoarserWords

	work int64 // what it took, see effort
}

// At returns the map's point nearest to a setting, in relative terms.
func (m *Window) At(feed, travel float64) (i, j int) {
	return closest(m.Feeds, feed), closest(m.Travels, travel)
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

// Suggestion is a setting on a map.
type Suggestion struct {
	Feed   float64 `json:"wire_feed"` // m/min
	Travel float64 `json:"travel"`    // mm/s
	Margin float64 `json:"margin"`    // %
}

// WindowSize is how many feeds and travels a map has.
type WindowSize struct{ Feeds, Travels int }

// FullWindow is fine enough to look at; CoarseWindow is for tests and small screens.
var (
	FullWindow   = WindowSize{48, 24}
	CoarseWindow = WindowSize{12, 8}
)

// WindowOf computes the operating window of a job at so many feeds and travels. progress, if not nil, hears the share done,
// from one goroutine at a time. It stops with the context's error when that is cancelled, and leaves nothing running.
// Windows are kept: the same job is answered at once.
func WindowOf(ctx context.Context, job Job, size WindowSize, progress func(done float64)) (Window, error) {
	return kept.answer(ctx, windowKey{job, size}, progress, func(ctx context.Context, progress func(float64)) (Window, error) {
		return window(ctx, job, size, progress)
	})
}

func window(ctx context.Context, job Job, size WindowSize, progress func(float64)) (Window, error) {
	open := job
	open.Feed, open.Travel, open.Amps = Opt{}, Opt{}, Opt{}
	var card Card
	if err := resolve(open, &card); err != nil {
		return Window{}, err
	}
	b := newBoard(&card)
	if why := b.notModelled(&card); why != "" {
		return Window{}, mistake.In("window", "none is computed for this job ("+why+")", "give a lap, tee, butt, corner or overlay of sheet up to 3 mm, in dip or pulsed mode")
	}
	m := survey{Window: Window{Job: job}, effort: &effort{ctx: ctx}}
	b.effort = m.effort
	if err := m.suggest(open); err != nil {
		return Window{}, err
	}
	if err := m.draw(b, &card, size, progress); err != nil {
		return Window{}, err
	}
	err := m.weigh(open)
	m.work = m.effort.work.Load()
	return m.Window, err
}

// survey is a map on its way.
type survey struct {
	Window
	effort *effort
	search int64 // what looking for the suggestion took, in the effort's units
}

// suggest puts the card's own suggestion on the map.
func (m *survey) suggest(open Job) error {
	found, err := solve(m.effort, open)
	if err != nil {
		return err
	}
	m.search = m.effort.work.Load()
	at := open
	at.Feed, at.Travel = found.Used.Feed, found.Used.Travel
	if m.Card, err = solve(m.effort, at); err != nil {
		return err
	}
	m.Suggestion = Suggestion{Feed: at.Feed.V, Travel: at.Travel.V}
	if f, ok := m.Card.Figure("margin"); ok {
		m.Suggestion.Margin = f.Value
	}
	m.Good = m.Card.Zone == "good" && allMet(m.Card.Edges)
	return nil
}

// weigh finds how likely the suggestion is good, and where it is not what would open a zone.
func (m *survey) weigh(open Job) error {
	at := open
	at.Feed, at.Travel = Some(m.Suggestion.Feed), Some(m.Suggestion.Travel)
	if err := acquire(m.effort.ctx); err != nil {
		return err
	}
	var err error
	m.Chance, err = chanceGood(m.effort, at)
	release()
	if err == nil && !m.Good {
		m.Remedies, err = remedies(m.effort, m.search, open, &m.Card)
	}
	return err
}

// limiter lets only as many rows of maps be worked at once as there are processors, whoever asks: a hundred
// viewers share what one has.
var limiter = make(chan struct{}, runtime.GOMAXPROCS(0))

var spared sync.Once

// Spare keeps maps and beats off one processor, where there are several, for good: a server has keys to answer
// meanwhile, a single terminal has not.
func Spare() {
	spared.Do(func() {
		if cap(limiter) > 1 {
			limiter <- struct{}{}
		}
	})
}

// acquire waits for a place among those that work, or for the caller to give up.
func acquire(ctx context.Context) error {
	select {
	case limiter <- struct{}{}:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

func release() { <-limiter }

// flat fills a point from its computed neighbours where they agree, and reports whether they did.
func (c *limitMap) flat(first []bool, i, j int) bool {
	i0, j0 := i&^1, j&^1
	i1, j1 := min(i0+2, c.feeds.n-1), min(j0+2, c.travels.n-1)
	corners := [4]int{i0*c.travels.n + j0, i0*c.travels.n + j1, i1*c.travels.n + j0, i1*c.travels.n + j1}
	z := ""
	for _, k := range corners {
		if !first[k] || c.logs[k] == hopeless {
			return false
		}
		for _, l := range [...]limit{lWets, lSolid, lBurn, lZinc} {
			if math.Abs(c.logs[k][l]) < flatFrom {
				return false
			}
		}
		if here := zone(&c.logs[k]); z != "" && here != z {
			return false
		} else {
			z = here
		}
	}
	fx, fy := part(i, i0, i1), part(j, j0, j1)
	out := &c.logs[i*c.travels.n+j]
	for l := range out {
		out[l] = (c.logs[corners[0]][l]*(1-fy)+c.logs[corners[1]][l]*fy)*(1-fx) +
			(c.logs[corners[2]][l]*(1-fy)+c.logs[corners[3]][l]*fy)*fx
	}
	return true
}

// flatFrom is how far, as a logarithm, a point must be from the heat's edges to count as flat.
const flatFrom = 0.15

func part(i, low, high int) float64 {
	if high == low {
		return 0
	}
	return float64(i-low) / float64(high-low)
}

// limited does work in one of the limiter's places and reports whether it got one.
func limited(ctx context.Context, work func()) bool {
	if acquire(ctx) != nil {
		return false
	}
	defer release()
	work()
	return true
}

// describe turns the limits of every point into zone, margin and nearest edge: those of the aim that a card has there.
func (m *Window) describe(c coarse) {
	feeds, travels := c[0].feeds, c[0].travels
	m.Feeds, m.Travels = make([]float64, feeds.n), make([]float64, travels.n)
	for i := range m.Feeds {
		m.Feeds[i] = feeds.at(float64(i)) * 0.06
	}
	for j := range m.Travels {
		m.Travels[j] = travels.at(float64(j))
	}
	for i := range m.Feeds {
		for j := range m.Travels {
			k := i*travels.n + j
			at := c.aimed(k)
			l := &at.logs[k]
			if *l == hopeless {
				m.Zones, m.Margins, m.Nearest = append(m.Zones, "not-modelled"), append(m.Margins, 0), append(m.Nearest, "")
				continue
			}
			f, g := at.slopes(float64(i), float64(j), 1)
			var d [limitCount]float64
			for k := range d {
				d[k] = reach(l[k], f[k], g[k])
			}
			edge, worst := nearest(&d)
			m.Zones = append(m.Zones, zone(l))
			m.Margins = append(m.Margins, math.Copysign(percent(worst), worst))
			m.Nearest = append(m.Nearest, edgeNames[edge])
		}
	}
}

// aimed is the map of the aim that suits a point, as the field's is.
func (c coarse) aimed(k int) *limitMap {
	best := &c[0]
	for n := range c {
		if (*Limits)(&c[n].logs[k]).thermal() > (*Limits)(&best.logs[k]).thermal() {
			best = &c[n]
		}
	}
	return best
}

type windowKey struct {
	job  Job
	size WindowSize
}

var kept = keep[windowKey, Window]{most: 128}
