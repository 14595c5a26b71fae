package calc

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc/limit"
	"brazebooth/internal/deep"
)

// copperPreheat is the preheat of a copper butt, C: 20 where the card asks for none, infinite for another process.
func copperPreheat(t *testing.T, mm, wire float64, mode string) (float64, *Card) {
	t.Helper()
	c := card(t, Job{Metal: "copper", Thickness: Some(mm), Joint: "butt", Filler: "cusi3", Wire: Some(wire),
		Mode: mode})
	if f, ok := c.Figure("least_preheat"); ok {
		if !(f.Low <= f.Value && f.Value <= f.High && f.Low >= 20) {
			t.Errorf("%g mm: %g (%g to %g) °C", mm, f.Value, f.Low, f.High)
		}
		return f.Value, c
	}
	if tells(c, "another-process") || tells(c, "preheat-needed") {
		return math.Inf(1), c
	}
	return 20, c
}

func tells(c *Card, code string) bool {
	return slices.ContainsFunc(c.Warnings, func(w Warning) bool { return w.Code == code })
}

// Thicker copper never needs less preheat.
func TestPreheatOfCopperRises(t *testing.T) {
	for _, x := range deep.Of(t, []struct {
		wire float64
		mode string
	}{{1.2, "dip"}, {1.6, "pulsed"}, {1.6, "dip"}, {1.2, "pulsed"}}, 2) {
		last := 20.0
		for _, mm := range []float64{0.5, 1, 2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25} {
			b := warmthOf(t, Job{Metal: "copper", Thickness: Some(mm), Joint: "butt", Filler: "cusi3",
				Wire: Some(x.wire), Mode: x.mode})
			p := b.find()
			t.Logf("%s %g mm wire, copper butt %g mm: wets from %.0f °C, every edge met from %.0f, not met “%s”",
				x.mode, x.wire, mm, p.wets, p.least, p.spoils)
			wets := p.wets
			if math.IsNaN(wets) {
				wets = math.Inf(1)
			}
			if wets < last-preheatStep {
				t.Errorf("%v: %g °C for %g mm after %g", x, wets, mm, last)
			}
			last = max(last, wets)
		}
	}
}

// Grey iron and steel need no preheat for the heat, at any thickness, with the strongest arc of any usual wire.
func TestIronNeedsNoPreheatForTheHeat(t *testing.T) {
	for _, metal := range [...]string{"grey-iron", "mild-steel", "stainless-304"} {
		for _, mm := range []float64{2, 6, 12, 25} {
			p := warmthOf(t, Job{Metal: metal, Thickness: Some(mm), Joint: "butt", Filler: "cusi3",
				Wire: Some(0.889)}).find()
			if p.needed() {
				t.Errorf("%s %g mm: %.0f °C", metal, mm, p.wets)
			}
		}
	}
}

func warmthOf(t *testing.T, job Job) *warmth {
	t.Helper()
	var c Card
	if err := resolve(job, &c); err != nil {
		t.Fatal(err)
	}
	w := newBoard(&c).newWarmth(&c)
	return &w
}

// Handbooks of copper under gas metal arc in argon, 250 to 400 A (memory medium): about 95 °C at 6 mm, 200 at 10, 315
// at 13. The strongest pulsed arc of 1.6 mm wire, 270 A, lies within 100 K of them.
func TestPreheatOfCopperBesideHandbooks(t *testing.T) {
	for mm, book := range map[float64]float64{6: 95, 10: 200, 13: 315} {
		p := warmthOf(t, Job{Metal: "copper", Thickness: Some(mm), Joint: "butt", Filler: "cusi3", Wire: Some(1.6),
			Mode: "pulsed"}).find()
		if math.Abs(p.wets-book) > 100 {
			t.Errorf("%g mm: %g °C, handbooks %g", mm, p.wets, book)
		}
	}
}

// A preheat that a card names is enough: with a little more some feed and travel meet every edge, and with 60 K less
// than the least the strongest arc wets at no travel.
func TestWhatACardSaysOfPreheatHolds(t *testing.T) {
	for _, x := range deep.Of(t, []struct{ mm, wire float64 }{{4, 0.889}, {6, 1.2}, {10, 1.2}, {25, 1.2}, {8, 1.6},
		{16, 1.6}}, 3) {
		least, c := copperPreheat(t, x.mm, x.wire, "dip")
		if math.IsInf(least, 0) || least == 20 {
			t.Errorf("%v: %g °C", x, least)
			continue
		}
		if !tells(c, "preheat-needed") || !tells(c, "preheat-never") {
			t.Errorf("%v: nothing is said", x)
		}
		job := c.Job
		job.Preheat = Some(least + littleMore)
		p := warmthOf(t, c.Job).find()
		job.Feed, job.Travel = Some(p.feed*0.06), Some(p.travel)
		if warm := card(t, job); !warm.Met() {
			t.Errorf("%v warmed to %.0f °C: %s", x, job.Preheat.V, warm.Verdict())
		}
		w := warmthOf(t, c.Job)
		for travel := w.h.slow; travel < w.h.fast; travel *= 1.2 {
			l, s, known := w.at(travel, least-60)
			if known && l[limit.Wets] >= 0 && s.o[oBead] >= w.h.wanted.at(nil) {
				t.Errorf("%v: wets at %.0f °C and %.1f mm/s, the card says %.0f °C", x, least-60, travel, least)
			}
		}
	}
}

// Where the strongest arc melts what it wets, the weaker arc that the card names, with hotter parts, meets every edge.
func TestWeakerArcOnHotterCopper(t *testing.T) {
	for _, x := range [][2]float64{{3, 0.889}, {4, 1.2}, {5, 1.6}} {
		c := card(t, Job{Metal: "copper", Thickness: Some(x[0]), Joint: "butt", Filler: "cusi3", Wire: Some(x[1])})
		var warm float64
		for _, w := range c.Warnings {
			if _, text, ok := strings.Cut(w.Text, "a preheat to "); ok {
				fmt.Sscan(text, &warm)
			}
		}
		job := c.Job
		w := warmthOf(t, c.Job)
		p := w.weaker()
		if math.Abs(p.least-warm) > 10 { // said in tens
			t.Errorf("%v: %.0f °C, the card says %g", x, p.least, warm)
		}
		job.Preheat = Some(p.least)
		job.Feed, job.Travel = Some(p.feed*0.06), Some(p.travel)
		if hot := card(t, job); warm == 0 || !hot.Met() {
			t.Errorf("%v at %g °C: %s", x, job.Preheat.V, hot.Verdict())
		}
	}
}

// Sheet and iron need no preheat for the heat: no figure, and iron keeps its rule against cracks.
func TestPreheatIsNotAskedWhereTheArcWets(t *testing.T) {
	for _, j := range []Job{{Metal: "mild-steel", Thickness: Some(12), Joint: "butt"}, {Metal: "grey-iron",
		Thickness: Some(8), Joint: "butt"},
		{Metal: "mild-steel", Thickness: Some(12), Joint: "butt", Feed: Some(3)}, {Metal: "galvanized", Gauge: 18}} {
		c := card(t, j)
		if f, ok := c.Figure("least_preheat"); ok {
			t.Errorf("%s: %+v", j.short(), f)
		}
		iron := j.Metal == "grey-iron"
		if tells(c, "preheat-never") != iron || iron && c.Used.Preheat.V != 80 {
			t.Errorf("%s: preheat %g °C, warned %v", j.short(), c.Used.Preheat.V, tells(c, "preheat-never"))
		}
	}
}

// The order of the remedies: a preheat alone up to 350 °C, with a thicker wire up to 600 °C, beyond that the wire or
// another process; zinc is never warmed.
func TestTheOrderOfWhatCuresCold(t *testing.T) {
	text := func(j Job) string {
		c := card(t, j)
		for _, w := range c.Warnings {
			if w.Code == "preheat-needed" || w.Code == "another-process" || w.Code == "preheat-no-cure" {
				return w.Text
			}
		}
		return ""
	}
	copper := func(mm, wire float64, joint string) Job {
		return Job{Metal: "copper", Thickness: Some(mm), Joint: joint, Filler: "cusi3", Wire: Some(wire)}
	}
	for _, x := range []struct {
		job      Job
		has, not string
	}{
		{copper(8, 1.6, "butt"), "Preheat to", "wire at about"}, {copper(8, 1.2, "butt"),
			", or 1.6 mm (1/16 in) wire", "process"},
		{copper(12, 0.889, "butt"), "take 1.6 mm (1/16 in) wire", "Preheat to"}, {copper(6, 0.889, "tee"),
			"nother process", "Preheat to"},
		{Job{Metal: "copper", Metal2: "galvanized", Thickness: Some(12), Thickness2: Some(12), Joint: "butt",
			Filler: "cusi3"}, "zinc must not be preheated", "Preheat to"},
	} {
		if got := text(x.job); !strings.Contains(got, x.has) || strings.Contains(got, x.not) {
			t.Errorf("%s: %q, want %q", x.job.short(), got, x.has)
		}
	}
}

func BenchmarkThickCards(b *testing.B) {
	for name, job := range map[string]Job{
		"butt": {Metal: "copper", Thickness: Some(8), Joint: "butt"}, "tee": {Metal: "copper", Thickness: Some(8),
			Joint: "tee"},
		"steel tee": {Metal: "mild-steel", Thickness: Some(8), Joint: "tee"},
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				cachedSections.forget()
				if _, err := Solve(job); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// A search that only asks whether the parts must be warmed agrees with the whole search about that, and about
// everything else where they must be.
func TestOnlyNeededIsTheWholeSearch(t *testing.T) {
	needed := map[bool]int{}
	for _, job := range []Job{
		{Metal: "mild-steel", Thickness: Some(1), Joint: "lap"},
		{Metal: "mild-steel", Thickness: Some(12), Joint: "butt", Wire: Some(0.8)},
		{Metal: "copper", Thickness: Some(1), Joint: "lap"},
		{Metal: "copper", Thickness: Some(4), Joint: "butt"},
		{Metal: "copper", Thickness: Some(12), Joint: "tee", Wire: Some(1.2)},
	} {
		whole, brief := warmthOf(t, job), warmthOf(t, job)
		brief.onlyNeeded = true
		a, b := whole.find(), brief.find()
		needed[a.needed()]++
		if a.needed() != b.needed() || a.needed() && fmt.Sprint(a) != fmt.Sprint(b) {
			t.Errorf("%+v: whole %+v, brief %+v", job, a, b)
		}
	}
	if needed[true] == 0 || needed[false] == 0 {
		t.Errorf("%d jobs need a preheat, %d need none: the test proves nothing", needed[true], needed[false])
	}
}
