package calc

import (
	"math"

	"brazebooth/calc/thinsheet"
	"brazebooth/tables"
)

// bestTimed runs the job at its feed, or where that is open at the feed nearest to the middle of the arc's range with
// which there is a rhythm that a hand repeats: an edge that is found, not the first of a few, so that the feed moves
// evenly with sheet and gap. A job that takes very long is not tried at others. The run has its range of on.
func bestTimed(e *effort, job Job) (*timedRun, error) {
	first, err := runTimed(e, job)
	if err != nil || job.Feed.Set || job.Amps.Set || first.side() == 0 {
		return first, err
	}
	s := feedSearch{e: e, job: job, first: first, from: first.o[oFeed]}
	m := newMargins(first.board, &first.card)
	s.low, s.high = first.board.steadyFeeds(&m)
	g, err := s.nearest()
	switch {
	case err != nil:
		return nil, err
	case g == nil && s.least != nil: // not even the least feed will do
		return s.least, nil
	case g == nil:
		return first, nil
	}
	return g, nil
}

// side is which way the feed must go: −1 less, 1 more, 0 where it need not or where no feed helps.
func (g *timedRun) side() float64 {
	switch r := g.times.Reason; {
	case r == thinsheet.TooHot, r == thinsheet.MeltsFirst, r == thinsheet.Falls:
		return -1
	case r == thinsheet.NeverWets:
		return 1
	case g.rhythmic() && g.in.FixedOn == 0 && g.quick() < 0:
		return -1
	}
	return 0
}

// quick is how far a suggested on lies over the shortest that every hand repeats, and how much of its range a puddle
// that may fall leaves, as logarithms: the lesser of the two. Below zero less feed is better.
func (g *timedRun) quick() float64 {
	const enough = 0.6 // of the range
	return min(math.Log(g.times.OnMin*g.times.OnMax)/2-math.Log(tables.ShortestOn.High), math.Log(g.times.Kept/enough))
}

// feedSearch looks for a feed, mm/s.
type feedSearch struct {
	e         *effort
	job       Job
	first     *timedRun
	from      float64
	low, high float64
	least     *timedRun // with the least feed, where that is still too hot
}

// nearest walks from the middle by fifths until the feed need not go on, then closes in on the edge between. nil where no
// feed of the arc's range has a rhythm.
func (s *feedSearch) nearest() (*timedRun, error) {
	way := s.first.side()
	bad, badAt := s.first, s.from
	for n := 0; n < 5 && s.e.work.Load() < mostWork; n++ {
		at := min(max(badAt*math.Pow(1.25, way), s.low), s.high)
		if at == badAt {
			break
		}
		g, err := s.at(at)
		if err != nil {
			return nil, err
		}
		switch side := g.side(); {
		case side == 0:
			return s.edge(bad, g, badAt, at)
		case side != way: // from too cold to too hot, or back: between both a narrow rhythm may lie
			return s.between(way, bad, badAt, at)
		}
		if at == s.low && g.rhythmic() { // quicker than every hand, with the least feed that the arc holds
			return g, nil
		}
		if at == s.low {
			s.least, g.atLeast = g, true
		}
		bad, badAt = g, at
	}
	return nil, nil
}

func (s *feedSearch) at(feed float64) (*timedRun, error) {
	j := s.job
	j.Feed = Some(feed * 0.06)
	return runTimed(s.e, j)
}

// edge closes in on where a feed that will not do begins to: straight in the logarithms where on decides, else by
// halves.
func (s *feedSearch) edge(bad, good *timedRun, badAt, goodAt float64) (*timedRun, error) {
	const near = 0.004
	for n := 0; n < 7 && math.Abs(math.Log(goodAt/badAt)) > near && s.e.work.Load() < mostWork; n++ {
		part := 0.5
		if a, b := good.quick(), bad.quick(); a > 0 && b < 0 && !math.IsInf(b, 0) {
			if a < near {
				break
			}
			part = min(max((a-near/2)/(a-b), 0.02), 0.98)
		}
		at := goodAt * math.Pow(badAt/goodAt, part)
		g, err := s.at(at)
		if err != nil {
			return nil, err
		}
		if g.side() == 0 {
			good, goodAt = g, at
		} else {
			bad, badAt = g, at
		}
	}
	return good, nil
}

// between looks for a rhythm between a feed that will not do and one that will not for the opposite reason, and then
// for where it begins.
func (s *feedSearch) between(way float64, bad *timedRun, badAt, otherAt float64) (*timedRun, error) {
	for n := 0; n < 4 && s.e.work.Load() < mostWork; n++ {
		at := math.Sqrt(badAt * otherAt)
		g, err := s.at(at)
		if err != nil {
			return nil, err
		}
		switch side := g.side(); {
		case side == 0, way > 0 && g.rhythmic():
			return s.edge(bad, g, badAt, at)
		case side == way:
			bad, badAt = g, at
		default:
			otherAt = at
		}
	}
	return nil, nil
}
