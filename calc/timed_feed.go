package calc

import (
	"math"

	"brazebooth/calc/effort"
	"brazebooth/calc/thinsheet"
	"brazebooth/tables"
)

// bestTimed runs the job at its feed. Where feed is open it takes the feed nearest to the middle of the arc's range
// with which there is a rhythm that a hand repeats. It searches for the exact feed, not the first of a few, so that the
// feed changes evenly with sheet and gap. A job that takes very long is tried at one feed only. The run has its range
// of on.
func bestTimed(e *effort.Account, job Job) (*timedRun, error) {
	first, err := runTimed(e, job)
	if err != nil || job.Feed.Set || job.Amps.Set || first.side() == 0 {
		return first, err
	}
	return first.better(e, job)
}

// better is the run at the nearest feed that has a rhythm for a hand; g itself where no feed has one.
func (g *timedRun) better(e *effort.Account, job Job) (*timedRun, error) {
	s := feedSearch{e: e, job: job, first: g, from: g.o[oFeed], dearest: g.work()}
	s.low, s.high = g.board.steadyFeeds()
	found, err := s.nearest()
	switch {
	case err != nil:
		return nil, err
	case found == nil && s.least != nil: // not even the least feed has a rhythm
		return s.least, nil
	case found == nil:
		return g, nil
	}
	return found, nil
}

// side is which way the feed must go: −1 less, 1 more, 0 where the feed is fine or no feed helps.
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

// quick is the lesser of two logarithms: how far a suggested on is above the shortest that every hand repeats, and how
// much of its range is left by a puddle that may fall. Below zero less feed is better.
func (g *timedRun) quick() float64 {
	const enough = 0.6 // of the range
	forHand := math.Log(g.times.OnMin*g.times.OnMax)/2 - math.Log(tables.ShortestOn.High)
	return min(forHand, math.Log(g.times.Kept/enough))
}

// feedSearch looks for a feed with a rhythm; feeds in mm/s.
type feedSearch struct {
	e         *effort.Account
	job       Job
	first     *timedRun
	from      float64
	low, high float64
	least     *timedRun // the run with the least feed, if that is still too hot
	dearest   int64     // units of effort that the longest run took
}

// more reports whether there is work left for another run as long as the longest so far.
func (s *feedSearch) more() bool {
	done := s.e.Work()
	return done < effort.Most && done+s.dearest < effort.Most+timedWork
}

// nearest goes from the middle until a feed has a rhythm, then closes in on the edge between. nil where no feed of the
// arc's range has one.
func (s *feedSearch) nearest() (*timedRun, error) {
	way := s.first.side()
	bad, badAt := s.first, s.from
	for n := 0; n < 8 && s.more(); n++ {
		at := min(max(bad.next(badAt, way), s.low), s.high)
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
		case side != way: // from too cold to too hot, or back: a narrow rhythm may lie between
			return s.between(way, bad, badAt, at)
		}
		if at == s.low && g.rhythmic() { // too quick for every hand even with the least feed that the arc holds
			return g, nil
		}
		if at == s.low {
			s.least, g.atLeast = g, true
		}
		if g.worse(bad) {
			break
		}
		bad, badAt = g, at
	}
	return nil, nil
}

// next is the feed to try after one without a rhythm. Where only on is too short for a hand it is the feed that gives
// the hand its time, since on goes with a power of the feed; else a quarter more or a fifth less.
func (g *timedRun) next(feed, way float64) float64 {
	const power = 1.6
	if short := g.quick(); way < 0 && g.times.Kept == 1 && short < 0 && short > -power*math.Ln2 {
		return feed * math.Exp((short-near/2)/power)
	}
	return feed * math.Pow(1.25, way)
}

// near is how close to an edge a search ends, as a logarithm.
const near = 0.004

func (s *feedSearch) at(feed float64) (*timedRun, error) {
	j := s.job
	j.Feed = Some(feed * 0.06)
	g, err := runTimed(s.e, j)
	if err == nil {
		s.dearest = max(s.dearest, g.work())
	}
	return g, err
}

// work is the units of effort that the run took in the plane.
func (g *timedRun) work() int64 {
	if g.run == nil {
		return 0
	}
	return effort.OfPlane(g.run.Times.Work)
}

// worse reports whether a run further on the way is clearly worse than the one before, so that going on does not help:
// the puddle falls sooner the longer the arc must burn.
func (g *timedRun) worse(before *timedRun) bool {
	const clearly = 0.05
	return g.times.Kept < 1 && g.quick() < before.quick()-clearly && !math.IsInf(g.quick(), 0)
}

// room is quick, or, if that is less, how far the longest on is above the shortest, as a logarithm.
func (g *timedRun) room() float64 {
	return min(g.quick(), math.Log(g.times.OnMax/g.times.OnMin))
}

// edge closes in on the feed at which a rhythm begins, between one without and one with: by straight lines in the
// logarithms where on decides, else by halves.
func (s *feedSearch) edge(bad, good *timedRun, badAt, goodAt float64) (*timedRun, error) {
	for n := 0; n < 7 && math.Abs(math.Log(goodAt/badAt)) > near && s.more(); n++ {
		part := 0.5
		if a, b := good.room(), bad.room(); a > 0 && b < 0 && !math.IsInf(b, 0) {
			if a < near {
				break
			}
			if n > 3 {
				a, b = 1, near-1 // bent too much for a straight line: by halves
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

// between looks for a rhythm between a feed that is too cold and one that is too hot, and then for where it begins.
func (s *feedSearch) between(way float64, bad *timedRun, badAt, otherAt float64) (*timedRun, error) {
	for math.Abs(math.Log(badAt/otherAt)) > narrowest && s.more() {
		at := math.Sqrt(badAt * otherAt)
		g, err := s.at(at)
		if err != nil {
			return nil, err
		}
		switch side := g.side(); {
		case side == 0, way > 0 && g.rhythmic():
			return s.edge(bad, g, badAt, at)
		case side == way && g.worse(bad):
			return nil, nil
		case side == way:
			bad, badAt = g, at
		default:
			otherAt = at
		}
	}
	return nil, nil
}

// narrowest is the least distance of two feeds, a logarithm, between which a rhythm is looked for.
const narrowest = 0.015
