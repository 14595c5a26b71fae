package calc

import (
	"context"
	"errors"
	"math"
	"runtime"
	"testing"
	"time"
)

// gapJobs are the usual jobs of a timed arc: three steels, five thicknesses, two gaps.
func gapJobs() []Job {
	var list []Job
	for _, metal := range []string{"mild-steel", "galvanized", "stainless-304"} {
		for _, thick := range []float64{0.8, 1, 1.2, 1.5, 2} {
			for _, gap := range []float64{1, 2} {
				list = append(list, Job{Metal: metal, Thickness: Some(thick), Joint: "butt", Gap: Some(gap), Mode: "timed"})
			}
		}
	}
	return list
}

func spots(t *testing.T, job Job) Spots {
	t.Helper()
	s, err := Gap(context.Background(), job, nil)
	if err != nil {
		t.Fatalf("%+v: %v", job, err)
	}
	return s
}

func figure(t *testing.T, s *Spots, name string) Figure {
	t.Helper()
	f, ok := find(s.Figures, name)
	if !ok {
		t.Fatalf("no figure %s in %d", name, len(s.Figures))
	}
	return f
}

// Every usual job has times in order or a reason in words.
func TestGapJobs(t *testing.T) {
	for i, j := range gapJobs() {
		if i%3 != 0 && testing.Short() {
			continue
		}
		s := spots(t, j)
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
func TestGapCard(t *testing.T) {
	s := spots(t, Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: Some(2)})
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
	if duty := on.Value / (on.Value + figure(t, &s, "arc_off").Value); math.Abs(card.Value/heat.Value-1) > 1e-6 {
		t.Errorf("the card's heat %g, the run's %g, duty %g", card.Value, heat.Value, duty)
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

// Given times are kept, and what they do is said.
func TestGapGiven(t *testing.T) {
	job := Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: Some(2), ArcOn: Some(0.15), ArcOff: Some(0.8)}
	s := spots(t, job)
	if on := figure(t, &s, "arc_on"); math.Abs(on.Value-0.15) > 1e-9 || s.Card.Zone != "cold" {
		t.Errorf("on %g in zone %s", on.Value, s.Card.Zone)
	}
	job.ArcOn = Some(0.9)
	if s := spots(t, job); s.Card.Zone != "hot" {
		t.Errorf("zone %s at .9 s", s.Card.Zone)
	}
}

func TestGapReasons(t *testing.T) {
	for want, job := range map[string]Job{
		"wide-gap":    {Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: Some(5)},
		"too-thick":   {Metal: "mild-steel", Thickness: Some(6), Joint: "butt", Gap: Some(2)},
		"plug":        {Metal: "mild-steel", Gauge: 16, Joint: "plug"},
		"open-fillet": {Metal: "mild-steel", Gauge: 16, Joint: "lap", Gap: Some(1)},
		"never-wets":  {Metal: "copper", Thickness: Some(3), Joint: "butt", Gap: Some(1), Feed: Some(5)},
		"too-hot":     {Metal: "mild-steel", Thickness: Some(0.3), Joint: "butt", Gap: Some(0.5), Feed: Some(6)},
	} {
		s := spots(t, job)
		if s.Good || s.Reason != want || s.Why == "" || s.Why == want {
			t.Errorf("%s: good %v, %q, %q", want, s.Good, s.Reason, s.Why)
		}
	}
	if s := spots(t, Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: Some(0)}); !s.Good {
		t.Errorf("a closed butt: %s", s.Why)
	}
	if _, err := Gap(context.Background(), Job{Metal: "mild-steel", Feed: Some(math.NaN())}, nil); err == nil {
		t.Error("a feed that is no number went through")
	}
}

// A run that is given up ends with the context's error and leaves nothing running.
func TestGapCancels(t *testing.T) {
	before := runtime.NumGoroutine()
	ctx, cancel := context.WithCancel(context.Background())
	n := 0
	_, err := Gap(ctx, Job{Metal: "mild-steel", Thickness: Some(1.37), Joint: "butt", Gap: Some(1.9)}, func(float64) {
		if n++; n == 1 {
			cancel()
		}
	})
	if !errors.Is(err, context.Canceled) {
		t.Fatalf("err %v", err)
	}
	for range 100 {
		if runtime.NumGoroutine() <= before {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Errorf("%d goroutines, %d before", runtime.NumGoroutine(), before)
}

// The plane must not hang, fail or give a number that is none, whatever the job.
func FuzzGap(f *testing.F) {
	f.Add(1.5, 2.0, 6.0, uint8(0), uint8(0))
	f.Add(0.2, 0.0, 3.0, uint8(1), uint8(2))
	f.Add(3.0, 3.0, 15.0, uint8(2), uint8(1))
	metals := []string{"mild-steel", "stainless-304", "copper", "galvanized", "aluminium-bronze"}
	joints := []string{"butt", "lap", "tee", "corner", "overlay", "plug"}
	f.Fuzz(func(t *testing.T, thick, gap, feed float64, metal, joint uint8) {
		job := Job{Metal: metals[int(metal)%len(metals)], Thickness: Some(thick), Joint: joints[int(joint)%len(joints)], Gap: Some(gap), Feed: Some(feed)}
		ctx, cancel := context.WithTimeout(context.Background(), 20*time.Second)
		defer cancel()
		s, err := Gap(ctx, job, nil)
		if err != nil {
			var fe *FieldError
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

// BenchmarkGapSteel runs the usual jobs one after another; the worst one is reported beside the mean.
func BenchmarkGapSteel(b *testing.B) { benchmarkGap(b, gapJobs()) }

func BenchmarkGapCopper(b *testing.B) {
	benchmarkGap(b, []Job{{Metal: "copper", Thickness: Some(1), Joint: "butt", Gap: Some(1), Mode: "timed"}})
}

func benchmarkGap(b *testing.B, jobs []Job) {
	b.ReportAllocs()
	var worst time.Duration
	for n := 0; b.Loop(); n++ {
		at := time.Now()
		if _, err := gap(context.Background(), jobs[n%len(jobs)], nil); err != nil {
			b.Fatal(err)
		}
		worst = max(worst, time.Since(at))
	}
	b.ReportMetric(float64(worst.Milliseconds()), "ms-worst")
}
