package calc

import (
	"math"
	"testing"

	"brazebooth/calc/effort"
	"brazebooth/internal/deep"
)

// thorough looks for the feed of bestTimed by small even steps from the middle and then by halves: slowly, and without
// knowing how on changes with the feed. 0 where no feed has a rhythm.
func thorough(t *testing.T, first *timedRun, job Job) float64 {
	t.Helper()
	const step = 0.03
	low, high := first.board.steadyFeeds()
	side := func(feed float64) float64 {
		j := job
		j.Feed = Some(feed * 0.06)
		g, err := runTimed(effort.New(t.Context()), j)
		if err != nil {
			t.Fatal(err)
		}
		if feed == low && g.rhythmic() { // less is not to be had
			return 0
		}
		return g.side()
	}
	way := first.side()
	bad := first.o[oFeed]
	for {
		at := min(max(bad*math.Exp(way*step), low), high)
		switch s := side(at); {
		case s == 0:
			for math.Abs(math.Log(at/bad)) > near/4 {
				if mid := math.Sqrt(at * bad); side(mid) == 0 {
					at = mid
				} else {
					bad = mid
				}
			}
			return at
		case s != way, at == low, at == high:
			return 0
		}
		bad = at
	}
}

// The feed that a few trials find is the one that many find.
func TestFeedIsFoundAsIfByAllFeeds(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	r := deep.Rand(t)
	metals := []string{"mild-steel", "galvanized", "stainless-304"}
	for n := 0; n < deep.Many(1, 40); {
		job := Job{Metal: metals[r.IntN(3)], Thickness: Some(0.7 + 1.3*r.Float64()), Joint: "butt", Mode: "timed",
			Gap: Some(0.2 + 2.3*r.Float64())}
		first, err := runTimed(effort.New(t.Context()), job)
		if err != nil {
			t.Fatal(err)
		}
		if first.side() == 0 || !deep.Run() && first.side() > 0 { // nothing is searched for, or with dear runs
			continue
		}
		n++
		want := thorough(t, first, job)
		g, err := bestTimed(effort.New(t.Context()), job)
		if err != nil {
			t.Fatal(err)
		}
		switch got := g.o[oFeed]; {
		case want == 0 && (g.rhythmic() && g.side() == 0), want > 0 && math.Abs(math.Log(got/want)) > 2*near:
			t.Errorf("%s %.3f mm, gap %.3f: by few trials %.1f mm/s (%s), by many %.1f", job.Metal, job.Thickness.V,
				job.Gap.V, got, g.times.Reason, want)
		default:
			t.Logf("%s %.3f mm, gap %.3f: %.1f mm/s, by many trials %.1f", job.Metal, job.Thickness.V, job.Gap.V,
				got, want)
		}
	}
}

// A search takes another run while one as long as the longest so far ends within what a window may take, and none once
// an answer has taken its share.
func TestFeedSearchEndsWithinItsWork(t *testing.T) {
	for _, x := range []struct {
		taken, dearest int64
		more           bool
	}{
		{0, timedWork, true}, {effort.Most - 1, timedWork, true}, {effort.Most, 0, false},
		{effort.Most - 1, timedWork + 1, false}, {effort.Most / 2, effort.Most, false},
	} {
		s := feedSearch{e: effort.New(t.Context()), dearest: x.dearest}
		s.e.Take(x.taken)
		if s.more() != x.more {
			t.Errorf("%+v: %v", x, s.more())
		}
	}
}
