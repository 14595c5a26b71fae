package practice_test

import (
	"context"
	"errors"
	"math"
	"slices"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"brazebooth/calc"
	"brazebooth/calc/correct"
	"brazebooth/calc/practice"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

func TestMain(m *testing.M) { deep.Main(m, 7) }

func practised(t interface{ Fatalf(string, ...any) }, level int, seed uint64) practice.Booth {
	p, err := practice.New(context.Background(), level, seed)
	if err != nil {
		t.Fatalf("level %d, seed %d: %v", level, seed, err)
	}
	return p
}

// booth is a level and a seed. laid caches the jobs already drawn: with one fixed seed the random tests draw
// the same ones again.
type booth struct {
	level int
	seed  uint64
}

var laid sync.Map

// anyPractice draws levels with a steady arc: a timed one is followed spot by spot, which is slow.
func anyPractice(t *rapid.T) practice.Booth {
	// few booths, each set up once
	b := booth{rapid.IntRange(1, 4).Draw(t, "level"), rapid.Uint64Range(0, uint64(deep.Many(2, 1000))).Draw(t, "seed")}
	if p, ok := laid.Load(b); ok {
		return p.(practice.Booth)
	}
	p := practised(t, b.level, b.seed)
	laid.Store(b, p)
	return p
}

// The same level and seed give the same booth, another seed another one; its truth lies in the cards' own
// intervals.
func TestPracticeSeeds(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("jobs of every level")
	}
	looked := map[booth]bool{}
	rapid.Check(t, func(t *rapid.T) {
		p := anyPractice(t)
		b := booth{p.Level, p.Seed}
		if looked[b] {
			return
		}
		looked[b] = true
		if q := practised(t, p.Level, p.Seed); p != q {
			t.Fatalf("%+v and %+v", p, q)
		}
		if q := practised(t, p.Level, p.Seed+1); q.Truth == p.Truth {
			t.Fatalf("seeds %d and the next have one truth: %+v", p.Seed, p.Truth)
		}
		f, _ := tables.Fillers.ByID(p.Start.Filler)
		for v, d := range map[float64]tables.Datum{p.Truth.Phi: f.Phi, p.Truth.Eta: tables.ArcEfficiency,
			p.Truth.StickOut: tables.DefaultStickOut} {
			if v < d.Low || v > d.High {
				t.Fatalf("%g is outside %g to %g", v, d.Low, d.High)
			}
		}
	})
}

// The setting suggested with the truth lays a good bead, the start a bad one that shows a fault.
func TestPracticeCanBeDone(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("slow, and other tests cover its concurrency")
	}
	check := func(t interface{ Fatalf(string, ...any) }, p practice.Booth) {
		best, err := p.Bead(context.Background(), p.Best)
		if err != nil || best.Verdict != practice.BeadGood || best.Seen != "good" || len(best.Unmet) > 0 {
			t.Fatalf("%+v: its best bead is %+v (%v)", p, best, err)
		}
		start, err := p.Bead(context.Background(), p.Start)
		if err != nil || start.Verdict != practice.BeadBad || start.Seen == "good" || len(start.Unmet) == 0 {
			t.Fatalf("%+v: its first bead is %+v (%v)", p, start, err)
		}
	}
	rapid.Check(t, func(t *rapid.T) { check(t, anyPractice(t)) })
	for seed := range uint64(deep.Many(1, 6)) {
		check(t, practised(t, 5, seed))
	}
}

// A bead agrees with the edges of its true job: its look is that of the zone on the card with the truth in it,
// and package correct knows the look.
func TestPracticeBeadsAgreeWithTheModel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPractice(t)
		j := p.Start
		j.Travel = calc.Some(rapid.Float64Range(4, 14).Draw(t, "travel"))
		j.StickOut = calc.Some(rapid.Float64Range(8, 18).Draw(t, "stickout"))
		b, err := p.Bead(context.Background(), j)
		if err != nil {
			t.Fatalf("%v", err)
		}
		if ids, err := correct.SeenIDs(b.Seen); err != nil || ids != b.Seen {
			t.Fatalf("seen %q: %q, %v", b.Seen, ids, err)
		}
		booth := j
		booth.Phi, booth.Eta = calc.Some(p.Truth.Phi), calc.Some(p.Truth.Eta)
		booth.StickOut = calc.Some(j.StickOut.V + p.Truth.StickOut - 12)
		card, err := calc.Solve(booth)
		if err != nil {
			t.Fatalf("%v", err)
		}
		falls := slices.ContainsFunc(card.Edges, func(e calc.Edge) bool { return e.Name == "gap bridged" && !e.Met })
		// A tee may be cold at its toes and melt in its corner at once: then both are seen. Metal that falls
		// through an open root also leaves a hole.
		for zone, sight := range map[string]string{"cold": "rolled-edge", "hot": "thin-wide",
			"burn-through": "burn-through"} {
			shown := slices.Contains(strings.Split(b.Seen, ","), sight)
			if card.Zone == zone && !shown || card.Zone == "good" && shown && !(falls && sight == "burn-through") {
				t.Fatalf("zone %s shows %s", card.Zone, b.Seen)
			}
		}
		amps, _ := card.Figure("current")
		if got := b.Meter[0]; got.Name != "current" || got.Value != amps.Value || !(got.Low < got.Value &&
			got.Value < got.High) {
			t.Fatalf("the meter shows %+v, the arc has %g", got, amps.Value)
		}
	})
}

// Volts far from the usual for the current stub the wire or burn it back.
func TestPracticeVolts(t *testing.T) {
	p := practised(t, 2, 3)
	for volts, sight := range map[float64]string{p.Best.Volts.V - 4: "stubbing", p.Best.Volts.V + 5: "burn-back"} {
		j := p.Best
		j.Volts = calc.Some(volts)
		if b, err := p.Bead(context.Background(), j); err != nil || !strings.Contains(b.Seen, sight) ||
			b.Verdict != practice.BeadBad {
			t.Errorf("%g V, best %g: %+v, %v", volts, p.Best.Volts.V, b, err)
		}
	}
}

// Times that are far off show the looks of a timed arc.
func TestPracticeTimed(t *testing.T) {
	if testing.Short() {
		t.Skip("follows the heat")
	}
	p := timedPractice(t)
	for _, x := range []struct {
		on, off float64 // factors
		sight   string
	}{{4, 1, "drops-through"}, {0.2, 1, "rolled-edge"}, {1, 4, "spots-apart"}, {1, 0.1, "drops-through"}} {
		j := p.Best
		j.ArcOn.V, j.ArcOff.V = j.ArcOn.V*x.on, j.ArcOff.V*x.off
		if b, err := p.Bead(context.Background(), j); err != nil || b.Seen != x.sight ||
			b.Verdict != practice.BeadBad || b.Section.Drawn {
			t.Errorf("on times %g, off times %g: %+v, %v", x.on, x.off, b, err)
		}
	}
}

func timedPractice(t *testing.T) practice.Booth {
	t.Helper()
	for seed := range uint64(40) {
		if p := practised(t, 5, seed); p.Start.Mode == "timed" {
			return p
		}
	}
	t.Fatal("no timed job in forty")
	return practice.Booth{}
}

// A setting of another job, or one that a hand cannot hold, is refused with a hint.
func TestPracticeRefuses(t *testing.T) {
	p := practised(t, 1, 1)
	var fe *mistake.Error
	for _, level := range []int{-1, 0, 6} {
		if _, err := practice.New(context.Background(), level, 1); !errors.As(err, &fe) || fe.Hint == "" {
			t.Errorf("level %d: %v", level, err)
		}
	}
	for name, change := range map[string]func(*calc.Job){
		"metal": func(j *calc.Job) { j.Metal = "copper" }, "travel": func(j *calc.Job) { j.Travel = calc.Some(40) },
		"stickout": func(j *calc.Job) { j.StickOut = calc.Some(3) }, "arc " +
			"on": func(j *calc.Job) { j.ArcOn = calc.Some(0.3) },
		"nan":        func(j *calc.Job) { j.Feed = calc.Some(math.NaN()) },
		"feed":       func(j *calc.Job) { j.Feed = calc.Some(1000) },
		"travel nan": func(j *calc.Job) { j.Travel = calc.Some(math.NaN()) },
	} {
		j := p.Start
		change(&j)
		if b, err := p.Bead(context.Background(), j); !errors.As(err, &fe) || fe.Hint == "" {
			t.Errorf("%s: %+v, %v", name, b, err)
		}
	}
}

// The program's own run is short, and if it does not reach a good bead it says why. Its first bead is the
// booth's start, and each change is made for the next bead.
func TestPracticePar(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("slow, and other tests cover its concurrency")
	}
	for level := 1; level <= len(practice.Levels()); level++ {
		reached, beads, all := 0, 0, uint64(deep.Many(1, 5))
		for seed := range all {
			p := practised(t, level, seed+1)
			run, err := p.Par(context.Background())
			if err != nil {
				t.Fatalf("level %d, seed %d: %v", level, seed+1, err)
			}
			last := run.Steps[len(run.Steps)-1]
			if run.Steps[0].Bead.Job != p.Start || run.Good != (last.Bead.Verdict == practice.BeadGood) ||
				run.Good != (run.Why == "") {
				t.Errorf("level %d, seed %d: %+v", level, seed+1, run)
			}
			for i := range run.Steps[1:] {
				c, next := run.Steps[i].Change, run.Steps[i+1].Bead.Job
				if cured := run.Steps[i].Do != ""; cured == (c != nil) || cured != (next == run.Steps[i].Bead.Job) {
					t.Errorf("level %d, seed %d: bead %d follows no change", level, seed+1, i+2)
				}
			}
			if run.Good {
				reached, beads = reached+1, beads+len(run.Steps)
			}
		}
		t.Logf("level %d: %d of %d reached a good bead, in %.1f beads", level, reached, all,
			float64(beads)/float64(reached))
		if deep.Run() && (float64(reached) < 0.75*float64(all) || float64(beads) > 4*float64(reached)) {
			t.Errorf("level %d: %d of %d, %d beads", level, reached, all, beads)
		}
	}
}

// The truth moves the figures by the laws of physics: the efficiency changes the net heat in proportion and
// leaves the current alone.
func TestPracticeReveals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPractice(t)
		r, err := p.Reveal(context.Background(), p.Best)
		if err != nil {
			t.Fatalf("%v", err)
		}
		if got := [3]float64{r.Hidden[0].True, r.Hidden[1].True, r.Hidden[2].True}; got != [3]float64{p.Truth.Phi,
			p.Truth.Eta, p.Truth.StickOut} {
			t.Fatalf("%v is told of %+v", got, p.Truth)
		}
		for _, m := range r.Moved {
			switch m.Name {
			case "current":
				if m.Alone[1] != m.Value || (m.Alone[0] < m.Value) != (p.Truth.Phi > r.Hidden[0].Value) ||
					(m.Alone[2] < m.Value) != (p.Truth.StickOut > 12) {
					t.Fatalf("%+v with %+v", m, p.Truth)
				}
			case "net_heat":
				if want := m.Value * p.Truth.Eta / r.Hidden[1].Value; math.Abs(m.Alone[1]-want) > 1e-6*want {
					t.Fatalf("efficiency alone: %g, want %g", m.Alone[1], want)
				}
			}
		}
		if len(r.Moved) < 3 {
			t.Fatalf("only %d figures", len(r.Moved))
		}
	})
}

// WorkOf names the same work as the booth that is set up.
func TestPracticeWorkOf(t *testing.T) {
	if testing.Short() {
		t.Skip("the same job solved many times")
	}
	seen := map[string]bool{}
	for level := 1; level <= len(practice.Levels()); level++ {
		for seed := range uint64(deep.Many(1, 5)) {
			p, err := practice.New(t.Context(), level, seed)
			if err != nil {
				t.Fatal(err)
			}
			w := practice.WorkOf(level, seed)
			if w.Name != p.Work || strings.HasSuffix(w.Line(), ", timed arc") != (p.Start.Mode == "timed") {
				t.Errorf("level %d, booth %d: %q, %s is %q", level, seed, w.Line(), p.Start.Mode, p.Work)
			}
			seen[w.Name] = true
		}
	}
	if len(seen) < len(practice.Levels()) || practice.WorkOf(0, 1).Name != "" || practice.WorkOf(6, 1).Name != "" {
		t.Errorf("works %v", seen)
	}
}
