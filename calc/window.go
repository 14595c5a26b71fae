package calc

import (
	"context"
	"math"
	"runtime"
	"sync"
)

// Map is the operating window of a job: what every feed and travel would do, the present setting left
// aside. It is the answer that a single card cannot give: how much room there is.
type Map struct {
	Job     Job
	Feeds   []float64 // m/min, rising
	Travels []float64 // mm/s, rising
	Zones   []string  // feed outer, travel inner
	Margins []float64 // %, to the nearest edge by feed or travel; below zero where one is not met
	Nearest []string  // name of that edge

	Good       bool       // some point meets every edge
	Suggestion Suggestion // the point furthest from every edge, or the nearest miss
	Card       Card       // the card at the suggestion

	Chance   Chance
	Remedies []Remedy // what was tried where no point is good
}

// Suggestion is a setting on a map.
type Suggestion struct {
	Feed   float64 `json:"wire_feed"` // m/min
	Travel float64 `json:"travel"`    // mm/s
	Margin float64 `json:"margin"`    // %
}

// MapSize is how many feeds and travels a map has.
type MapSize struct{ Feeds, Travels int }

// FullMap is a map fine enough to look at; CoarseMap is for tests and small screens.
var (
	FullMap   = MapSize{48, 24}
	CoarseMap = MapSize{12, 8}
)

// Window computes the operating window of a job on a full map. progress, if not nil, hears the share done, from
// one goroutine at a time. It stops with the context's error when that is cancelled, and leaves nothing
// running. Maps are kept: the same job is answered at once.
func Window(ctx context.Context, job Job, progress func(done float64)) (Map, error) {
	return WindowOf(ctx, job, FullMap, progress)
}

// WindowOf is Window on a map of another size.
func WindowOf(ctx context.Context, job Job, size MapSize, progress func(done float64)) (Map, error) {
	if m, ok := kept.get(job, size); ok {
		return m, ctx.Err()
	}
	m, err := window(ctx, job, size, progress)
	if err == nil {
		kept.put(job, size, m)
	}
	return m, err
}

func window(ctx context.Context, job Job, size MapSize, progress func(float64)) (Map, error) {
	open := job
	open.Feed, open.Travel, open.Amps = Opt{}, Opt{}, Opt{}
	var card Card
	if err := resolve(open, &card); err != nil {
		return Map{}, err
	}
	b := newBoard(&card)
	if why := b.notModelled(&card); why != "" {
		return Map{}, &FieldError{"joint", why + ": this window", "give a lap, tee, butt, corner or overlay of sheet up to 3 mm, in dip or pulsed mode"}
	}
	lm := newMargins(b, &card)
	low, high := b.steadyFeeds(&lm)
	c := limitMap{axis{low * 0.8, high * 1.15, size.Feeds}, axis{lm.slow * 0.75, lm.fast * 1.25, size.Travels},
		make([][limitCount]float64, size.Feeds*size.Travels)}
	h := b.heatField(&card)
	if err := c.fill(ctx, &h, &lm, progress); err != nil {
		return Map{}, err
	}
	m := c.describe(job)
	sug := c.furthest()
	m.Good = sug.found
	at := open
	at.Feed, at.Travel = Some(sug.feed*0.06), Some(sug.travel)
	var err error
	if m.Card, err = Solve(at); err != nil {
		return Map{}, err
	}
	m.Suggestion = Suggestion{Feed: sug.feed * 0.06, Travel: sug.travel}
	if f, ok := m.Card.Figure("margin"); ok {
		m.Suggestion.Margin = f.Value
	}
	if m.Chance, err = ChanceGood(ctx, at); err != nil {
		return Map{}, err
	}
	if !m.Good {
		m.Remedies, err = remedies(ctx, open)
	}
	return m, err
}

// limiter lets as many sections be worked at once as there are processors less none, whoever asks: a
// hundred viewers share what one has.
var limiter = make(chan struct{}, max(1, runtime.GOMAXPROCS(0)))

// fill computes every point of the map, rows of one feed side by side on all processors.
func (c *limitMap) fill(ctx context.Context, h *heatField, m *margins, progress func(float64)) error {
	var wg sync.WaitGroup
	rows := make(chan int)
	var mu sync.Mutex
	done := 0
	for range cap(limiter) {
		wg.Go(func() {
			for i := range rows {
				select {
				case limiter <- struct{}{}:
				case <-ctx.Done():
					continue
				}
				c.row(ctx, h, m, i)
				<-limiter
				mu.Lock()
				done++
				if progress != nil && ctx.Err() == nil {
					progress(float64(done) / float64(c.feeds.n))
				}
				mu.Unlock()
			}
		})
	}
	for i := range c.feeds.n {
		rows <- i
	}
	close(rows)
	wg.Wait()
	return ctx.Err()
}

func (c *limitMap) row(ctx context.Context, h *heatField, m *margins, i int) {
	for j := range c.travels.n {
		if ctx.Err() != nil {
			return
		}
		s, err := h.at(c.feeds.at(float64(i)), c.travels.at(float64(j)), m.zinc > 0)
		if err != nil {
			c.logs[i*c.travels.n+j] = hopeless
			continue
		}
		c.logs[i*c.travels.n+j] = m.logs(&s)
	}
}

// describe turns the limits of every point into zone, margin and nearest edge.
func (c *limitMap) describe(job Job) Map {
	m := Map{Job: job, Feeds: make([]float64, c.feeds.n), Travels: make([]float64, c.travels.n)}
	for i := range m.Feeds {
		m.Feeds[i] = c.feeds.at(float64(i)) * 0.06
	}
	for j := range m.Travels {
		m.Travels[j] = c.travels.at(float64(j))
	}
	for i := range m.Feeds {
		for j := range m.Travels {
			l := &c.logs[i*c.travels.n+j]
			if *l == hopeless {
				m.Zones, m.Margins, m.Nearest = append(m.Zones, "not-modelled"), append(m.Margins, 0), append(m.Nearest, "")
				continue
			}
			f, g := c.slopes(float64(i), float64(j), 1)
			var d [limitCount]float64
			for k := range d {
				d[k] = reach(l[k], f[k], g[k])
			}
			at, worst := nearest(&d)
			m.Zones = append(m.Zones, zone(l))
			m.Margins = append(m.Margins, math.Copysign(percent(worst), worst))
			m.Nearest = append(m.Nearest, edgeNames[at])
		}
	}
	return m
}

// keep holds the last maps by job, the oldest leaving first.
type keep struct {
	mu    sync.Mutex
	order []keepKey
	maps  map[keepKey]Map
}

type keepKey struct {
	job  Job
	size MapSize
}

var kept = keep{maps: map[keepKey]Map{}}

const keptMaps = 32

func (k *keep) get(job Job, size MapSize) (Map, bool) {
	k.mu.Lock()
	defer k.mu.Unlock()
	m, ok := k.maps[keepKey{job, size}]
	return m, ok
}

func (k *keep) put(job Job, size MapSize, m Map) {
	k.mu.Lock()
	defer k.mu.Unlock()
	key := keepKey{job, size}
	if _, ok := k.maps[key]; !ok {
		k.order = append(k.order, key)
	}
	k.maps[key] = m
	if len(k.order) > keptMaps {
		delete(k.maps, k.order[0])
		k.order = k.order[1:]
	}
}
