package calc

import (
	"context"
	"errors"
	"reflect"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"brazebooth/calc/effort"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
)

// slowJobs are the kinds that take longest: foil on a thick metal that conducts well, with thick wire, whose heat is
// followed out to where zinc melts, or which starts hot and has no good setting; thick members; copper that no heat
// wets; parts that warm, whose seam has two ends.
func slowJobs() []Job {
	return []Job{
		{Metal: "copper", Gauge: 14, Metal2: "galvanized", Thickness2: Some(0.15), Joint: "lap", Wire: Some(2.4),
			ZincLimit: Some(20)},
		{Metal: "copper", Gauge: 14, Metal2: "dp600", Thickness2: Some(0.0754), Joint: "butt", Wire: Some(2.4),
			Preheat: Some(400)},
		{Metal: "dp800", Thickness: Some(1.13), Metal2: "galvanized", Thickness2: Some(0.1), Joint: "lap",
			Wire: Some(2.1), Filler: "cual10fe", Preheat: Some(280)},
		{Metal: "copper", Thickness: Some(8), Joint: "tee"},
		{Metal: "mild-steel", Thickness: Some(12), Thickness2: Some(20), Joint: "tee", PartMass: Some(20)},
	}
}

// veryFine is a window that takes too long for any of the slow jobs; none was found for which a window of usual size
// does.
var veryFine = WindowSize{6 * FullWindow.Feeds, 6 * FullWindow.Travels}

var fullWindows deep.Known[Job, Window]

// fullWindow is the window of a job; several tests ask for the same ones.
func fullWindow(job Job) (Window, error) {
	return fullWindows.Of(job, func() (Window, error) { return window(context.Background(), job, FullWindow, untold) })
}

// mostWindow is what a window may take at most: effort.Most, and what was estimated too low. Two seconds of an idle
// core.
const mostWindow = 38e6

// No job's window takes more work than it may. Work is counted, so that the test holds on every machine.
func TestAnyWindowIsBounded(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("many maps")
	}
	slow := slowJobs()
	if !deep.Run() { // another test asks for this one too
		slow = slow[4:]
	}
	jobs := append(slow, odd(oddJob)...)
	coarser, most := 0, int64(0)
	for n, job := range jobs {
		m, err := fullWindow(job)
		if err != nil {
			var f *mistake.Error
			if !errors.As(err, &f) {
				t.Errorf("%+v: %v", job, err)
			}
			continue
		}
		most = max(most, m.work)
		if m.work > mostWindow {
			t.Errorf("job %d, %+v: %.1f million, at most %.1f", n, job, float64(m.work)/1e6, mostWindow*1e-6)
		}
		if full := len(m.Feeds) == FullWindow.Feeds && len(m.Travels) == FullWindow.Travels; full == m.Coarser ||
			m.Coarser != strings.HasPrefix(m.CoarserWords(), "drawn coarser: ") {
			t.Errorf("job %d: %d by %d points, coarser %v, %q", n, len(m.Feeds), len(m.Travels), m.Coarser,
				m.CoarserWords())
		}
		if len(m.Zones) != len(m.Feeds)*len(m.Travels) || len(m.Feeds) < smallest.Feeds ||
			len(m.Travels) < smallest.Travels {
			t.Errorf("job %d: %d zones for %d by %d points", n, len(m.Zones), len(m.Feeds), len(m.Travels))
		}
		if m.Coarser {
			coarser++
		}
	}
	t.Logf("%d jobs: %d drawn coarser, the most work %.1f million", len(jobs), coarser, float64(most)/1e6)
}

// A timed arc's answer is bounded too.
func TestAnyTimedArcIsBounded(t *testing.T) {
	if testing.Short() {
		t.Skip("many beats")
	}
	jobs := odd(oddTimed)
	if deep.Run() { // times of many seconds, whose cycles do not repeat
		jobs = append(jobs, Job{Metal: "galvanized", Thickness: Some(0.64), Joint: "tee", Wire: Some(0.45),
			ArcOn: Some(5.9), ArcOff: Some(7.8), Mode: "timed"},
			Job{Metal: "copper", Thickness: Some(0.24), Joint: "tee", ArcOn: Some(6), ArcOff: Some(1), Mode: "timed"})
	}
	most := int64(0)
	for n, job := range jobs {
		s, err := solveTimed(t.Context(), job, untold)
		if err != nil {
			continue // not every job has a rhythm
		}
		most = max(most, s.work)
		if s.work > 2*effort.Most {
			t.Errorf("job %d, %+v: %.1f million, at most %.1f", n, job, float64(s.work)/1e6, 2e-6*effort.Most)
		}
	}
	t.Logf("%d jobs, the most work %.1f million", len(jobs), float64(most)/1e6)
}

// What windows of the slow kinds and of a usual job take in time and in work.
func BenchmarkSlowWindows(b *testing.B) {
	for _, job := range append(slowJobs(), Job{Metal: "galvanized", Gauge: 18}) {
		b.Run(job.Metal+" "+job.Metal2, func(b *testing.B) {
			for b.Loop() {
				cachedSections.forget()
				m, err := window(b.Context(), job, FullWindow, untold)
				if err != nil {
					b.Fatal(err)
				}
				b.ReportMetric(float64(m.work)/1e6, "Mwork")
			}
		})
	}
}

// Windows that a shop asks for are never drawn coarser, and all their remedies are tried.
func TestUsualWindowsAreFull(t *testing.T) {
	deep.Turn(t)
	jobs := []Job{{Metal: "galvanized", Gauge: 20}, {Metal: "mild-steel", Thickness: Some(0.8), Thickness2: Some(2),
		Joint: "lap"}, {Metal: "mild-steel", Thickness: Some(1.5), Metal2: "mild-steel", Thickness2: Some(6),
		Joint: "tee"}}
	if !testing.Short() {
		jobs = append(jobs, Job{Metal: "stainless-304", Gauge: 18, Joint: "butt", Mode: "pulsed"},
			Job{Metal: "mild-steel", Thickness: Some(0.5), Joint: "butt", Gap: Some(0.5)},
			Job{Metal: "copper", Thickness: Some(3), Joint: "lap"})
	}
	for _, job := range deep.Of(t, jobs, 1) {
		m, err := fullWindow(job)
		if err != nil {
			t.Fatal(err)
		}
		late := false
		for _, r := range m.Remedies {
			late = late || r.Late
		}
		if m.Coarser || late || m.CoarserWords() != "" {
			t.Errorf("%+v: %d by %d points, something not tried %v, %.1f million", job, len(m.Feeds), len(m.Travels),
				late, float64(m.work)/1e6)
		}
		t.Logf("%.1f million: %s %s, good %v", float64(m.work)/1e6, job.Metal, m.Card.Used.Joint, m.Good)
	}
}

// A window that is drawn coarser is the same every time, on all processors or on one.
func TestCoarserWindowsAreTheSameEachTime(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("a slow map, twice")
	}
	job := slowJobs()[1]
	first, err := window(t.Context(), job, veryFine, untold)
	if err != nil {
		t.Fatal(err)
	}
	for range effort.Places() - 1 { // the other places are taken
		if err := effort.Acquire(t.Context()); err != nil {
			t.Fatal(err)
		}
		defer effort.Release()
	}
	cachedSections.forget()
	again, err := window(t.Context(), job, veryFine, untold)
	if err != nil || !first.Coarser || !reflect.DeepEqual(first, again) {
		t.Errorf("coarser %v, %d by %d points for %d, then %d by %d for %d (%v)", first.Coarser, len(first.Feeds),
			len(first.Travels), first.work, len(again.Feeds), len(again.Travels), again.work, err)
	}
	if first.work > mostWindow {
		t.Errorf("%.1f million, at most %.1f", float64(first.work)/1e6, mostWindow*1e-6)
	}
}

// leaving is a context whose caller leaves when it is looked at for the n-th time; it counts the looks.
type leaving struct {
	context.Context
	Looks atomic.Int64
	At    int64
}

func (l *leaving) Err() error {
	if l.Looks.Add(1) > l.At {
		return context.Canceled
	}
	return nil
}

// It is noticed that a caller has left before the next section is computed, wherever the answer is by then: no work is
// done after that.
func TestNoSectionForWhoLeft(t *testing.T) {
	job := Job{Metal: "mild-steel", Thickness: Some(0.5), Thickness2: Some(1.5), Joint: "butt", Gap: Some(0.5)}
	given := job
	given.Feed, given.Travel = Some(4), Some(8)
	for name, answer := range map[string]func(e *effort.Account) error{
		"card": func(e *effort.Account) error { _, err := solve(e, job); return err },
		"remedies": func(e *effort.Account) error {
			c, err := Solve(given)
			if err == nil {
				_, err = remedies(e, 0, job, &c)
			}
			return err
		},
		"window": func(e *effort.Account) error {
			w := survey{effort: e}
			var card Card
			err := resolve(job, &card)
			if err == nil {
				b := newBoard(&card)
				b.effort = e
				err = w.draw(b, &card, CoarseWindow, untold)
			}
			return err
		},
	} {
		for _, at := range []int64{0, 1, 7, 30, 80} {
			e := effort.New(&leaving{Context: context.Background(), At: at})
			if err := answer(e); !errors.Is(err, context.Canceled) || e.Sections() > at {
				t.Errorf("%s, left at look %d: %v, %d sections", name, at, err, e.Sections())
			}
		}
	}
}

// Once the caller has left there is no card, and the error does not name a choice.
func TestSolveContextStops(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if c, err := SolveContext(ctx, Job{Metal: "galvanized", Gauge: 18}); !errors.Is(err, context.Canceled) ||
		c.Zone != "" {
		t.Errorf("%v, zone %q", err, c.Zone)
	}
	late, stop := context.WithTimeout(t.Context(), time.Nanosecond)
	defer stop()
	<-late.Done()
	if _, err := SolveContext(late, Job{Metal: "galvanized", Gauge: 18}); !errors.Is(err, context.DeadlineExceeded) {
		t.Error(err)
	}
}
