package calc

import (
	"context"
	"errors"
	"maps"
	"math"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"brazebooth/calc/effort"
	"brazebooth/calc/thinsheet"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
)

// timedJobs are the usual jobs of a timed arc: three steels, five thicknesses, two gaps.
func timedJobs() []Job {
	var list []Job
	for _, metal := range []string{"mild-steel", "galvanized", "stainless-304"} {
		for _, thick := range []float64{0.8, 1, 1.2, 1.5, 2} {
			for _, gap := range []float64{1, 2} {
				list = append(list, Job{Metal: metal, Thickness: Some(thick), Joint: "butt", Gap: Some(gap),
					Mode: "timed"})
			}
		}
	}
	return list
}

func timedOf(t *testing.T, job Job) Timed {
	t.Helper()
	s, err := SolveTimed(context.Background(), job, nil)
	if err != nil {
		t.Fatalf("%+v: %v", job, err)
	}
	return s
}

// rangeOfOn is the run behind a job's times, up to its range of on.
func rangeOfOn(t *testing.T, job Job) *timedRun {
	t.Helper()
	job.Mode = "timed"
	g, err := runTimed(effort.New(t.Context()), job)
	if err != nil {
		t.Fatalf("%+v: %v", job, err)
	}
	return g
}

// wholeRun is the run behind a job's times, with both ends of on and off.
func wholeRun(t *testing.T, job Job) *timedRun {
	t.Helper()
	e := effort.New(t.Context())
	g, err := bestTimed(e, job)
	if err == nil {
		err = g.goOn(e, (*thinsheet.Run).Settle, (*thinsheet.Run).Off)
	}
	if err != nil {
		t.Fatalf("%+v: %v", job, err)
	}
	return g
}

func figure(t *testing.T, s *Timed, name string) Figure {
	t.Helper()
	f, ok := FigureNamed(s.Figures, name)
	if !ok {
		t.Fatalf("no figure %s in %d", name, len(s.Figures))
	}
	return f
}

// Every usual job has times in order, or a reason.
func TestTimedJobs(t *testing.T) {
	for _, j := range deep.Of(t, timedJobs(), 1) {
		s := timedOf(t, j)
		if s.Why == "" {
			t.Errorf("%+v: no sentence", j)
		}
		if !s.Good {
			if s.Reason == "" || len(s.Remedies) < 3 {
				t.Errorf("%+v: reason %q, %d remedies", j, s.Reason, len(s.Remedies))
			}
			continue
		}
		for _, f := range s.Figures {
			if !(f.Low <= f.Value && f.Value <= f.High && f.Low > 0) || math.IsNaN(f.High) || math.IsInf(f.High, 0) {
				t.Errorf("%s %g of %+v: %g (%g to %g)", j.Metal, j.Thickness.V, j.Gap.V, f.Value, f.Low, f.High)
			}
		}
		least, most := figure(t, &s, "arc_on_min"), figure(t, &s, "arc_on_max")
		if on := figure(t, &s, "arc_on"); math.Abs(on.Value/math.Sqrt(least.Value*most.Value)-1) > 1e-9 {
			t.Errorf("arc on %g between %g and %g", on.Value, least.Value, most.Value)
		}
		if s.Card.Zone != "good" || len(s.Limits) != 5 || len(s.Trace) < 20 {
			t.Errorf("%+v: zone %s, %d limits, %d points", j, s.Card.Zone, len(s.Limits), len(s.Trace))
		}
	}
}

// The card takes its times from the run, and heat over a step is power times on.
func TestTimedCard(t *testing.T) {
	s := timedOf(t, Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: Some(2)})
	for _, name := range []string{"arc_on", "arc_off", "spot_step"} {
		got, _ := s.Card.Figure(name)
		if want := figure(t, &s, name); got.Value != want.Value || got.Low != want.Low {
			t.Errorf("card's %s %g, run's %g", name, got.Value, want.Value)
		}
	}
	amps, _ := s.Card.Figure("current")
	volts, _ := s.Card.Figure("volts")
	heat, on, step := figure(t, &s, "net_heat"), figure(t, &s, "arc_on"), figure(t, &s, "spot_step")
	if want := 0.84 * amps.Value * volts.Value * on.Value / step.Value; math.Abs(heat.Value/want-1) > 1e-6 {
		t.Errorf("net heat %g J/mm, power gives %g", heat.Value, want)
	}
	card, _ := s.Card.Figure("net_heat")
	if duty := on.Value / (on.Value + figure(t, &s, "arc_off").Value); math.Abs(card.Value/heat.Value-1) > 1e-6 ||
		math.Abs(card.Low/heat.Low-1) > 1e-6 || math.Abs(card.High/heat.High-1) > 1e-6 || !(heat.Low < heat.Value &&
		heat.Value < heat.High) {
		t.Errorf("the card's heat %g (%g to %g), the run's %g (%g to %g), duty %g", card.Value, card.Low, card.High,
			heat.Value, heat.Low, heat.High, duty)
	}
	if s.Wider == nil || !(s.Wider.On[1] < figure(t, &s, "arc_on_max").Value) {
		t.Errorf("a wider gap gives the arc less to land on at the edges' middle, more heat to each: %+v", s.Wider)
	}
	for _, w := range s.Card.Warnings {
		if w.Code == "timed-estimate" {
			t.Error("the line-source estimate is still spoken of")
		}
	}
}

// Given times are kept, and the card says what they do.
func TestTimedGiven(t *testing.T) {
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	for _, given := range deep.Of(t, []struct {
		on   float64
		zone string
	}{{0.15, "cold"}, {0.9, "hot"}}, 1) {
		s := timedOf(t, Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: Some(2), ArcOn: Some(given.on),
			ArcOff: Some(0.8)})
		if on := figure(t, &s, "arc_on"); math.Abs(on.Value-given.on) > 1e-9 || s.Card.Zone != given.zone {
			t.Errorf("on %g in zone %s, want %s", on.Value, s.Card.Zone, given.zone)
		}
	}
}

func TestTimedReasons(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	jobs := map[string]Job{
		"wide-gap":    {Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: Some(5)},
		"too-thick":   {Metal: "mild-steel", Thickness: Some(6), Joint: "butt", Gap: Some(2)},
		"plug":        {Metal: "mild-steel", Gauge: 16, Joint: "plug"},
		"open-fillet": {Metal: "mild-steel", Gauge: 16, Joint: "lap", Gap: Some(1)},
		"never-wets":  {Metal: "copper", Thickness: Some(3), Joint: "butt", Gap: Some(1), Feed: Some(5)},
		"too-hot":     {Metal: "mild-steel", Thickness: Some(0.3), Joint: "butt", Gap: Some(0.5), Feed: Some(6)},
	}
	for _, want := range deep.Of(t, slices.Sorted(maps.Keys(jobs)), 1) {
		s := timedOf(t, jobs[want])
		if s.Good || s.Reason != want || s.Why == "" || s.Why == want {
			t.Errorf("%s: good %v, %q, %q", want, s.Good, s.Reason, s.Why)
		}
	}
	if s := timedOf(t, Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: Some(0)}); !s.Good {
		t.Errorf("a closed butt: %s", s.Why)
	}
	if _, err := SolveTimed(context.Background(), Job{Metal: "mild-steel", Feed: Some(math.NaN())}, nil); err == nil {
		t.Error("a feed that is no number went through")
	}
}

// A strong arc melts the edge before its back is wet: the remedy is less feed, never more.
func TestTimedTooStrong(t *testing.T) {
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	for _, job := range deep.Of(t, []Job{{Metal: "mild-steel", Thickness: Some(1.5), Joint: "butt", Gap: Some(1),
		Amps: Some(500), Volts: Some(30)},
		{Metal: "stainless-304", Thickness: Some(2), Joint: "butt", Gap: Some(1)}}, 1) {
		s := timedOf(t, job)
		if s.Good || s.Reason != "too-hot" && s.Reason != "melts-first" {
			t.Errorf("%s: good %v, %q", job.Metal, s.Good, s.Reason)
		}
	}
}

// Where a cold spot never wets, nobody is told to hold it longer.
func TestTimedColdNever(t *testing.T) {
	deep.Turn(t)
	s := timedOf(t, Job{Metal: "copper", Thickness: Some(1), Joint: "butt", Gap: Some(0), ArcOff: Some(0.1)})
	_, first := FigureNamed(s.Figures, "first_spot_on")
	if !s.Good || first || !strings.Contains(s.Why, "never wets") || !strings.Contains(s.Why, "did not settle") {
		t.Errorf("%q, a first spot is given: %v; %s", s.Reason, first, s.Why)
	}
}

// The range of off does not depend on the off given, and a given time outside its range is reported.
func TestTimedGivenOff(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	job := Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: Some(2), ArcOff: Some(0.05)}
	s := timedOf(t, job)
	off, least := figure(t, &s, "arc_off"), figure(t, &s, "arc_off_min")
	if math.Abs(off.Value-0.05) > 1e-9 || off.Low != off.Value || off.High != off.Value || !(least.Value > 0.1) {
		t.Errorf("off %+v, at least %g", off.Value, least.Value)
	}
	warned(t, &s, "timed-off-short")
	job.ArcOff, job.ArcOn, job.SpotStep = Opt{}, Some(1.5), Some(12)
	s = timedOf(t, job)
	warned(t, &s, "timed-on-long")
	warned(t, &s, "timed-step-far")
	if seam := figure(t, &s, "seam_time"); !(seam.Low <= seam.Value && seam.Value <= seam.High) {
		t.Errorf("seam time %g outside %g to %g", seam.Value, seam.Low, seam.High)
	}
	job.ArcOn = Some(30)
	var fe *mistake.Error
	if _, err := SolveTimed(context.Background(), job, nil); !errors.As(err, &fe) {
		t.Errorf("half a minute on: %v", err)
	}
}

func warned(t *testing.T, s *Timed, code string) {
	t.Helper()
	for _, w := range s.Card.Warnings {
		if w.Code == code {
			return
		}
	}
	t.Errorf("no %s among %d warnings; why: %s", code, len(s.Card.Warnings), s.Why)
}

// Edges that nearly touch are as good as closed, and no cell gets too small for the run to end.
func TestTimedAllButClosed(t *testing.T) {
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	job := Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: Some(1e-5)}
	shut := job
	shut.Gap = Some(0)
	x, y := rangeOfOn(t, job).times.FirstOn, rangeOfOn(t, shut).times.FirstOn
	if !(math.Abs(x/y-1) <= 0.02) {
		t.Errorf("first spot %g, closed %g", x, y)
	}
}

// Times follow the gap without jumps.
func TestTimedIsContinuous(t *testing.T) {
	if testing.Short() {
		t.Skip("long under the race detector")
	}
	last := 0.0
	gaps := []float64{1.5, 1.6, 1.7, 1.8, 1.9, 2}
	if !deep.Run() {
		n := deep.Rand(t).IntN(len(gaps) - 1)
		gaps = gaps[n : n+2]
	}
	for _, gap := range gaps {
		x := &rangeOfOn(t, Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: Some(gap), Feed: Some(6.04)}).times
		on := math.Sqrt(x.OnMin * x.OnMax)
		if last > 0 && !(math.Abs(on/last-1) <= 0.12) {
			t.Errorf("gap %g: on %g after %g", gap, on, last)
		}
		last = on
	}
}

// A caller who gives up does not wait for a place when all are taken.
func TestTimedWaitsNoLongerThanAsked(t *testing.T) {
	for range effort.Places() {
		if err := effort.Acquire(t.Context()); err != nil {
			t.Fatal(err)
		}
	}
	defer func() {
		for range effort.Places() {
			effort.Release()
		}
	}()
	ctx, cancel := context.WithTimeout(context.Background(), 30*time.Millisecond)
	defer cancel()
	if _, err := SolveTimed(ctx, Job{Metal: "mild-steel", Thickness: Some(1.41), Joint: "butt", Gap: Some(1.1)},
		nil); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("err %v", err)
	}
}

// A run that is given up ends with the context's error and leaves nothing running.
func TestTimedCancels(t *testing.T) {
	before := runtime.NumGoroutine()
	ctx, cancel := context.WithCancel(context.Background())
	n := 0
	_, err := SolveTimed(ctx, Job{Metal: "mild-steel", Thickness: Some(1.37), Joint: "butt", Gap: Some(1.9)},
		func(float64) {
			if n++; n == 1 {
				cancel()
			}
		})
	if !errors.Is(err, context.Canceled) {
		t.Fatalf("err %v", err)
	}
	if deep.Comes(t, func() bool { return runtime.NumGoroutine() <= before }) {
		return
	}
	t.Errorf("%d goroutines, %d before", runtime.NumGoroutine(), before)
}

// The plane must not hang, fail or give NaN, whatever the job.
func FuzzTimed(f *testing.F) {
	if testing.Short() {
		f.Skip("long under the race detector")
	}
	for _, s := range deep.Of(f, []struct {
		thick, gap, feed float64
		metal, joint     uint8
	}{{1.5, 2, 6, 0, 0}, {0.2, 0, 3, 1, 2}, {3, 3, 15, 2, 1}}, 1) {
		f.Add(s.thick, s.gap, s.feed, s.metal, s.joint)
	}
	metals := []string{"mild-steel", "stainless-304", "copper", "galvanized", "aluminium-bronze"}
	joints := []string{"butt", "lap", "tee", "corner", "overlay", "plug"}
	f.Fuzz(func(t *testing.T, thick, gap, feed float64, metal, joint uint8) {
		job := Job{Metal: metals[int(metal)%len(metals)], Thickness: Some(thick),
			Joint: joints[int(joint)%len(joints)], Gap: Some(gap), Feed: Some(feed)}
		ctx, cancel := context.WithTimeout(context.Background(), deep.Patience(t))
		defer cancel()
		s, err := SolveTimed(ctx, job, nil)
		if err != nil {
			var fe *mistake.Error
			if !errors.As(err, &fe) {
				t.Fatalf("%+v: %v", job, err)
			}
			return
		}
		for _, f := range s.Figures {
			if math.IsNaN(f.Value) || math.IsInf(f.Value, 0) || math.IsNaN(f.Low) || math.IsNaN(f.High) {
				t.Fatalf("%+v: %s %g (%g to %g)", job, f.Name, f.Value, f.Low, f.High)
			}
		}
	})
}

// BenchmarkTimedSteel runs the usual jobs one after another; the worst one is reported beside the mean.
func BenchmarkTimedSteel(b *testing.B) { benchmarkTimed(b, timedJobs()) }

func BenchmarkTimedCopper(b *testing.B) {
	benchmarkTimed(b, []Job{{Metal: "copper", Thickness: Some(1), Joint: "butt", Gap: Some(1), Mode: "timed"}})
}

func benchmarkTimed(b *testing.B, jobs []Job) {
	b.ReportAllocs()
	var worst time.Duration
	for n := 0; b.Loop(); n++ {
		at := time.Now()
		if _, err := solveTimed(context.Background(), jobs[n%len(jobs)], untold); err != nil {
			b.Fatal(err)
		}
		worst = max(worst, time.Since(at))
	}
	b.ReportMetric(float64(worst.Milliseconds()), "ms-worst")
}

// A wider gap is computed for a gap, not for a closed joint.
func TestAClosedJointHasNoWiderGap(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("a whole run of spots")
	}
	job, e := Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Mode: "timed", Gap: Some(0)}, effort.New(t.Context())
	g, err := runTimed(e, job)
	if err != nil {
		t.Fatal(err)
	}
	if w, err := g.widen(e, job); err != nil || w != nil {
		t.Errorf("%+v, %v", w, err)
	}
}
