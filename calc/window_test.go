package calc_test

import (
	"context"
	"errors"
	"math"
	"runtime"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

func window(t testing.TB, j calc.Job, size calc.WindowSize) calc.Window {
	t.Helper()
	m, err := calc.WindowOf(context.Background(), j, size, nil)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func count(m *calc.Window, zone string) (n int) {
	for _, z := range m.Zones {
		if z == zone {
			n++
		}
	}
	return n
}

// Common practice, no source: 250 in/min makes a good lap on 60-thousandths galvanized at some hand speed.
func TestPracticeLapIsGoodAtSomeHandSpeed(t *testing.T) {
	good := false
	for v := 4.0; v <= 14; v += 0.5 {
		j := practiceLap()
		j.Travel = calc.Some(v)
		card := mustSolve(t, j)
		good = good || card.Zone == "good"
	}
	if !good {
		t.Error("no hand speed from 4 to 14 mm/s is in the good zone")
	}
}

// Common practice, no source: 290 in/min makes a good fillet of 60-thousandths mild steel to 1/4 in stainless: the
// thin member stays solid and is wetted at some hand speed.
func TestPracticeFilletIsGoodOnTheThinMember(t *testing.T) {
	good := false
	for v := 4.0; v <= 14; v += 0.5 {
		j := calc.Job{Metal: "mild-steel", Thickness: calc.Some(1.524), Metal2: "stainless-304",
			Thickness2: calc.Some(6.35), Joint: "tee",
			Filler: "cusi3", Wire: calc.Some(0.889), Mode: "dip", Feed: calc.Some(290 * 0.0254),
			StickOut: calc.Some(12), Travel: calc.Some(v)}
		card := mustSolve(t, j)
		wet, ok := card.Figure("wetted_width_1")
		peak, ok2 := card.Figure("base_peak_temperature")
		good = good || ok && ok2 && wet.Value > 1 && peak.Value < card.Setup.Members[0].Metal.Solidus.V
	}
	if !good {
		t.Error("no hand speed from 4 to 14 mm/s brazes the thin member")
	}
}

// Published trend (doi 10.1515/ijmr-2022-0045, abstract read): from 61 to 113 J/mm on a lap of galvannealed sheet width
// and leg grow, the wetting angle falls, zinc damage grows.
func TestPublishedTrendWithHeat(t *testing.T) {
	last := map[string]float64{}
	for i, v := range []float64{16, 13, 11, 9} { // 61 to 113 J/mm of heat input at the same arc
		j := calc.Job{Metal: "galvannealed", Thickness: calc.Some(0.8), Joint: "lap", Filler: "cusi3",
			Wire: calc.Some(0.889),
			Feed: calc.Some(5), Travel: calc.Some(v), StickOut: calc.Some(12)}
		card := mustSolve(t, j)
		for name, sign := range map[string]float64{"bead_width": 1, "wetted_width_2": 1, "zinc_boiled_halfwidth": 1,
			"zinc_melted_halfwidth": 1, "wetting_angle": -1} {
			f := figure(t, &card, name)
			if i > 0 && sign*(f.Value-last[name]) <= 0 {
				t.Errorf("%g mm/s: %s %g after %g", v, name, f.Value, last[name])
			}
			last[name] = f.Value
		}
	}
}

// Published (TWI Job Knowledge 134, read): sheet of 0.2 to about 3 mm can be arc brazed. A 6 mm butt has a window when
// it is closed; whether an open root in 6 mm is bridged is judged by nothing.
func TestThinSheetHasAWindow(t *testing.T) {
	for _, gauge := range deep.Of(t, []int{24, 20, 18, 16}, 2) {
		m := window(t, calc.Job{Metal: "galvanized", Gauge: gauge, Joint: "lap"}, calc.CoarseWindow)
		if !m.Card.Met() || count(&m, "good") == 0 {
			t.Errorf("%d gauge has no window", gauge)
		}
	}
	butt := calc.Job{Metal: "mild-steel", Thickness: calc.Some(6), Joint: "butt"}
	if m := window(t, butt, calc.CoarseWindow); !m.Card.Met() || count(&m, "good") == 0 { // marginal by its chance
		t.Error("a closed 6 mm butt has no window")
	}
	butt.Gap = calc.Some(1)
	if _, err := calc.WindowOf(context.Background(), butt, calc.CoarseWindow, nil); err == nil {
		t.Error("an open 6 mm butt has a window")
	}
}

func TestWindowIsWhole(t *testing.T) {
	m := window(t, calc.Job{Metal: "galvanized", Gauge: 20}, calc.CoarseWindow)
	n := len(m.Feeds) * len(m.Travels)
	if len(m.Zones) != n || len(m.Margins) != n || len(m.Nearest) != n {
		t.Fatalf("%d zones, %d margins, %d names for %d points", len(m.Zones), len(m.Margins), len(m.Nearest), n)
	}
	if count(&m, "good") == 0 || count(&m, "cold") == 0 {
		t.Errorf("zones: %d good, %d cold of %d", count(&m, "good"), count(&m, "cold"), n)
	}
	if m.Card.Zone != "good" || m.Suggestion.Margin <= 0 {
		t.Errorf("suggestion %+v is %s", m.Suggestion, m.Card.Zone)
	}
	if m.Chance.Good <= 0 || m.Chance.Good > 100 {
		t.Errorf("chance %+v", m.Chance)
	}
}

// The suggestion's margin is the nearest edge's, also where that is missed by far and the card has no such figure.
func TestSuggestionsMarginIsTheNearestEdges(t *testing.T) {
	deep.Turn(t)
	for _, gap := range []float64{0, 2} {
		m := window(t, calc.Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: calc.Some(gap)}, calc.CoarseWindow)
		near := m.Card.DecidingEdge()
		if got := m.Suggestion.Margin; math.Abs(got) != near.Margin || near.Met != (got >= 0) {
			t.Errorf("gap %g: %g, and the nearest edge is %+v", gap, got, near)
		}
		if _, shown := m.Card.Figure("margin"); gap > 0 && (shown || m.Suggestion.Margin != -999) {
			t.Errorf("gap %g is not missed by far: %g", gap, m.Suggestion.Margin)
		}
	}
}

// Any job has a window without NaN, or an error that says what would have one.
func TestAnyJobHasAWindowOrAReason(t *testing.T) {
	if testing.Short() {
		t.Skip("a map for each job")
	}
	first := 4 * int(deep.Seed()-1)
	for seed := range deep.Many(3, 40) { // FuzzWindow tries others
		j := anyJob().Example(first + seed)
		m, err := calc.WindowOf(context.Background(), j, calc.WindowSize{Feeds: 4, Travels: 3}, nil)
		if err != nil {
			var f *mistake.Error
			if !errors.As(err, &f) || f.Hint == "" {
				t.Fatalf("%+v: error %v says not what to type", j, err)
			}
			continue
		}
		for k := range m.Zones {
			if m.Zones[k] == "" || math.IsNaN(m.Margins[k]) || math.IsInf(m.Margins[k], 0) {
				t.Fatalf("%+v: point %d is %q, %g %%", j, k, m.Zones[k], m.Margins[k])
			}
		}
	}
}

// A card and the window of the same job have one suggestion, which meets every edge where the window's zone is wide:
// thin zones, ridges with two tops, unlike members.
func TestCardAndWindowHaveOneSuggestion(t *testing.T) {
	jobs := []calc.Job{{Metal: "galvanized", Gauge: 20}, {Metal: "mild-steel", Gauge: 18, Joint: "tee"},
		{Metal: "galvanized", Gauge: 16, Mode: "pulsed"}}
	for _, mm := range []float64{1, 1.75, 2, 2.5, 2.75, 3} {
		jobs = append(jobs, calc.Job{Metal: "mild-steel", Thickness: calc.Some(mm), Joint: "lap"})
	}
	size := calc.WindowSize{Feeds: 8, Travels: 6}
	if deep.Run() { // where little is good every remedy is tried, with a window each
		onSteel := calc.Job{Metal: "copper", Thickness: calc.Some(2), Metal2: "mild-steel", Thickness2: calc.Some(1.5),
			Joint: "lap"}
		thinner, other := onSteel, onSteel
		thinner.Thickness, other.Filler = calc.Some(1), "cusn6"
		jobs, size = append(jobs, onSteel, thinner, other), calc.WindowSize{Feeds: 32, Travels: 20}
	}
	for _, j := range deep.Of(t, jobs, 1) {
		m := window(t, j, size)
		card := mustSolve(t, j)
		feed, travel, margin := figure(t, &card, "wire_feed"), figure(t, &card, "travel"), figure(t, &card, "margin")
		if m.Suggestion.Feed != feed.Value || m.Suggestion.Travel != travel.Value ||
			m.Good != (card.Verdict() == "good") {
			t.Errorf("%+v: the card has %g at %g, %s; the map %+v, good %v", j, feed.Value, travel.Value,
				card.Verdict(), m.Suggestion, m.Good)
		}
		best := math.Inf(-1)
		for k, v := range m.Margins {
			if m.Zones[k] == "good" {
				best = max(best, v)
			}
		}
		if best > 2*tables.HandRepeats.V && !card.Met() {
			t.Errorf("%+v: margin %.1f %%, the map's best point has %.1f %%", j, margin.Value, best)
		}
	}
}

func TestNoWindowTriesRemedies(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("a map for each remedy")
	}
	m := window(t, calc.Job{Metal: "copper", Thickness: calc.Some(3), Joint: "lap"},
		calc.WindowSize{Feeds: 6, Travels: 4})
	if m.Good || m.Suggestion.Feed <= 0 {
		t.Fatalf("3 mm of copper draw more heat than a hand's arc brings: a window at %+v would be a surprise",
			m.Suggestion)
	}
	tried := 0
	for _, r := range m.Remedies {
		if r.Tried {
			tried++
		}
	}
	if tried < 3 || tried < len(m.Remedies) { // bare copper has no vapour that a vent gap would let out
		t.Errorf("remedies %+v", m.Remedies)
	}
}

func TestWindowCancels(t *testing.T) {
	before := runtime.NumGoroutine()
	ctx, cancel := context.WithCancel(context.Background())
	first := true
	_, err := calc.WindowOf(ctx, calc.Job{Metal: "hsla", Gauge: 17}, calc.FullWindow, func(float64) {
		if first {
			first = false
			cancel()
		}
	})
	if !errors.Is(err, context.Canceled) {
		t.Fatalf("%v, want cancelled", err)
	}
	if deep.Comes(t, func() bool { return runtime.NumGoroutine() <= before }) {
		return
	}
	t.Errorf("%d goroutines before, %d after", before, runtime.NumGoroutine())
}

func TestProgressEndsAtOne(t *testing.T) {
	last := 0.0
	_, err := calc.WindowOf(context.Background(), calc.Job{Metal: "hsla", Gauge: 19}, calc.CoarseWindow,
		func(done float64) { last = max(last, done) })
	if err != nil || last != 1 {
		t.Errorf("progress ended at %g (%v)", last, err)
	}
}

func BenchmarkWindow(b *testing.B) { benchmarkWindow(b, calc.Job{Metal: "galvanized", Gauge: 18}) }

func BenchmarkWindowUnequal(b *testing.B) {
	benchmarkWindow(b, calc.Job{Metal: "galvanized", Gauge: 18, Gauge2: 14})
}

func BenchmarkWindowThick(b *testing.B) {
	benchmarkWindow(b, calc.Job{Metal: "mild-steel", Thickness: calc.Some(6), Joint: "butt"})
}

// windows counts the benchmarks' jobs: each must be another one, or -count would time windows that are kept.
var windows int

func benchmarkWindow(b *testing.B, j calc.Job) {
	b.ReportAllocs()
	for b.Loop() {
		windows++
		j.StickOut = calc.Some(10 + float64(windows)*1e-6)
		if _, err := calc.WindowOf(context.Background(), j, calc.FullWindow, nil); err != nil {
			b.Fatal(err)
		}
	}
}

// Flat stretches of the window are interpolated: compared with a window whose every point is computed, zones differ
// only at a border, and few do.
func TestFlatPointsAgreeWithTheFullWindow(t *testing.T) {
	if testing.Short() {
		t.Skip("computes a whole map")
	}
	j := calc.Job{Metal: "galvanized", Gauge: 20} // whose map other tests ask for too
	m := window(t, j, calc.FullWindow)
	wrong, far := 0, 0
	every, first := 53, deep.Rand(t).IntN(53) // a third of the points is enough to see
	if deep.Run() {
		every, first = 3, 0
	}
	for i, feed := range m.Feeds {
		for k, travel := range m.Travels {
			if (i*len(m.Travels)+k)%every != first {
				continue
			}
			point := j
			point.Feed, point.Travel = calc.Some(feed), calc.Some(travel)
			card := mustSolve(t, point)
			n := i*len(m.Travels) + k
			if card.Zone == m.Zones[n] {
				continue
			}
			wrong++
			if math.Abs(m.Margins[n]) > 6 {
				far++
			}
		}
	}
	if wrong > 4 || far > 0 {
		t.Errorf("%d zones differ, %d of them away from a border", wrong, far)
	}
}

// Every point of a window is what a card says there, for unequal sheets too.
func TestWindowIsTheCards(t *testing.T) {
	if testing.Short() {
		t.Skip("a card for each point of a map")
	}
	for _, j := range deep.Of(t, []calc.Job{{Metal: "mild-steel", Thickness: calc.Some(0.8), Thickness2: calc.Some(2),
		Metal2: "mild-steel", Joint: "lap"},
		{Metal: "galvanized", Thickness: calc.Some(1.5), Thickness2: calc.Some(1), Metal2: "galvanized",
			Joint: "tee"}, {Metal: "stainless-304", Thickness: calc.Some(1), Joint: "butt"}}, 2) {
		m := window(t, j, calc.CoarseWindow)
		for a, feed := range m.Feeds {
			for b, travel := range m.Travels {
				if !deep.Run() && (a+b)%6 != 0 {
					continue
				}
				at := j
				at.Feed, at.Travel = calc.Some(feed), calc.Some(travel)
				card, err := calc.Solve(at)
				if err != nil {
					t.Fatal(err)
				}
				if z := m.Zones[a*len(m.Travels)+b]; card.Zone != "not-modelled" && z != card.Zone {
					t.Errorf("%s %g, %g m/min at %g mm/s: %s on the map, %s on the card", j.Metal, j.Thickness.V,
						feed, travel, z, card.Zone)
				}
			}
		}
	}
}
