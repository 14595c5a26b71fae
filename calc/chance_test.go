package calc

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"brazebooth/internal/deep"
	"brazebooth/tables"
)

var chanceJobs = []Job{
	{Metal: "mild-steel", Gauge: 18, Joint: "lap"},
	{Metal: "mild-steel", Gauge: 20, Joint: "lap"},
	{Metal: "galvanized", Gauge: 18, Joint: "lap", ZincLimit: Some(5)},
	{Metal: "galvanized", Gauge: 16, Joint: "tee", StickOut: Some(12)},
	{Metal: "stainless-304", Gauge: 18, Joint: "butt"},
	{Metal: "mild-steel", Gauge: 22, Joint: "butt"},
	{Metal: "mild-steel", Gauge: 18, Joint: "corner"},
	{Metal: "mild-steel", Thickness: Some(1.5), Metal2: "stainless-304", Thickness2: Some(1), Joint: "lap"},
	{Metal: "mild-steel", Gauge: 14, Joint: "lap", Mode: "pulsed", VoltFactor: Some(1.05), VoltFactorSigma: Some(0.03)},
	{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: Some(3.2), Travel: Some(4)},
}

// atSuggestion is a job with its card's feed and travel as given.
func atSuggestion(t *testing.T, j Job) (Job, *Card, *board) {
	t.Helper()
	c := card(t, j)
	j.Feed, j.Travel = c.Used.Feed, c.Used.Travel
	c = card(t, j)
	b := newBoard(c)
	return j, c, b
}

// plainly is the share of good ones among n samples drawn at random over every input with an open interval, with its
// standard error, both in per cent. It does not know which inputs the chance draws.
func plainly(b *board, c *Card, n int) (good, sigma float64) {
	r := rand.New(rand.NewPCG(11, 17))
	m := newMargins(b, c)
	var all []varied
	for k := range inputCount {
		all = append(all, varied{input: k})
	}
	all = append(all, varied{input: drawnStir}, varied{input: drawnAim})
	for range n {
		z := make([]float64, len(all))
		for i := range z {
			z[i] = r.NormFloat64()
		}
		if s := b.sample(c, &m, all, z); s.good() {
			good++
		}
	}
	p := good / float64(n)
	return 100 * p, 100 * math.Sqrt(p*(1-p)/float64(n))
}

// The lattice against plain sampling of everything. A plain sample of as many points as the lattice has would have a
// standard error of 100·√(p(1−p)/101), 4.7 where one in three is bad. For a job the lattice must keep within two of
// that, joined with that of the sample it is compared with; in the mean of all jobs within 2.5 percentage points.
func TestChanceAgreesWithPlainSampling(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of sections")
	}
	n, sum := 1500, 0.0
	jobs := deep.Of(t, chanceJobs, 3)
	for _, j := range jobs {
		j, c, b := atSuggestion(t, j)
		want, sigma := plainly(b, c, n)
		got, err := ChanceGood(context.Background(), j)
		if err != nil {
			t.Fatal(err)
		}
		own := 100 * math.Sqrt(want/100*(1-want/100)/chanceSamples)
		t.Logf("%s %s: chance %.0f, plain %.1f ± %.1f, missed %s by %s", j.Metal, j.Joint, got.Good, want, sigma, got.Missed, got.Spoiler)
		if limit := 2 * math.Hypot(own, sigma); math.Abs(got.Good-want) > limit {
			t.Errorf("%+v: chance %.0f, plain sampling %.1f, more than %.1f apart", j, got.Good, want, limit)
		}
		sum += got.Good - want
	}
	if mean := sum / float64(len(jobs)); len(jobs) == len(chanceJobs) && math.Abs(mean) > 2.5 {
		t.Errorf("over %d jobs the chance is %.1f too high in the mean", len(jobs), mean)
	}
}

// What moves a limit at either end of its interval is drawn, whatever it is; what moves none is not.
func TestChanceDrawsAllThatMovesALimit(t *testing.T) {
	for _, j := range deep.Of(t, chanceJobs, 3) {
		_, c, b := atSuggestion(t, j)
		m := newMargins(b, c)
		drawn := b.varied(c)
		at := func(b *board) Limits {
			h := b.heatField(c)
			s, err := h.at(b.inputs[inFeed], b.inputs[inTravel], true)
			if err != nil {
				return Limits{}
			}
			return m.logs(&s)
		}
		base := at(b)
		for k := range inputCount {
			moves := false
			for _, v := range [2]float64{b.intervals[k].low, b.intervals[k].high} {
				x := *b
				x.inputs[k] = v
				moves = moves || b.intervals[k].low != b.intervals[k].high && at(&x) != base
			}
			has := slices.ContainsFunc(drawn, func(s varied) bool { return s.input == k })
			if moves && !has {
				t.Errorf("%s %s: %q moves a limit and is not drawn", j.Metal, j.Joint, inputNames[k].name)
			}
		}
		for _, k := range []input{inPhi, inHLiq, inStick, inEta, inForm, inThick1, inLoss} {
			if !slices.ContainsFunc(drawn, func(s varied) bool { return s.input == k }) {
				t.Errorf("%s %s: %q is not drawn", j.Metal, j.Joint, inputNames[k].name)
			}
		}
		for _, k := range []input{inTimedForm, inZoneForm, inReinforce, inTravel} {
			if slices.ContainsFunc(drawn, func(s varied) bool { return s.input == k }) {
				t.Errorf("%s %s: %q is drawn and moves nothing", j.Metal, j.Joint, inputNames[k].name)
			}
		}
		if len(drawn) > latticeInputs {
			t.Errorf("%s %s: %d inputs, the lattice has %d", j.Metal, j.Joint, len(drawn), latticeInputs)
		}
	}
}

// Where an edge other than the heat's is nearly reached, that edge is the one missed: the least current of a steady
// arc.
func TestChanceCountsEveryEdge(t *testing.T) {
	j, _, b := atSuggestion(t, Job{Metal: "mild-steel", Gauge: 18, Joint: "corner"})
	var c Card
	if err := resolve(j, &c); err != nil {
		t.Fatal(err)
	}
	m := newMargins(b, &c)
	low, _ := b.steadyFeeds(&m)
	good, err := ChanceGood(context.Background(), j)
	if err != nil {
		t.Fatal(err)
	}
	j.Feed, j.Travel = Some(low*1.01*0.06), Some(j.Travel.V*low*0.06/j.Feed.V) // as much metal for each millimetre
	weak, err := ChanceGood(context.Background(), j)
	if err != nil {
		t.Fatal(err)
	}
	if weak.Missed != "arc steady" || weak.Good > 70 || weak.Good >= good.Good || weak.Spoiler != variedNames[inForm] {
		t.Errorf("at the least current %+v, at the suggestion %+v", weak, good)
	}
	if want := "“arc steady”, moved most by what the energy balance leaves out of the current"; weak.Words() != want {
		t.Errorf("%q, want %q", weak.Words(), want)
	}
}

// A better known input makes a good setting more certain.
func TestReadingsMakeSurer(t *testing.T) {
	j, _, _ := atSuggestion(t, Job{Metal: "mild-steel", Gauge: 18, Joint: "lap"})
	before, err1 := ChanceGood(context.Background(), j)
	j.StickOut = Some(12)
	j.Phi, j.PhiSigma, j.VoltFactor, j.VoltFactorSigma = Some(usualPhi(t, j)), Some(0.05), Some(1), Some(0.005)
	after, err2 := ChanceGood(context.Background(), j)
	if err1 != nil || err2 != nil || after.Good < before.Good+5 {
		t.Errorf("before %+v, after %+v (%v, %v)", before, after, err1, err2)
	}
}

// usualPhi is the calibration voltage that the job is computed with.
func usualPhi(t *testing.T, j Job) float64 {
	c := card(t, j)
	return c.Setup.Filler.Phi.V
}

// 13² is 169, 68 modulo 101: at point 3 the third input has its place at 3·68 + 2·(9·2 + 8) = 256, 54 modulo 101,
// whose middle is at (54 + ½)/101 of the normal distribution. No two inputs correlate by much more than 0.3: the step
// was chosen for that; most steps leave a pair that correlates by more than a half.
func TestDeviatesAreTheLattices(t *testing.T) {
	if got, want := deviate(3, 2), math.Sqrt2*math.Erfinv(2*(54.5/101)-1); math.Abs(got-want) > 1e-12 {
		t.Errorf("%g, want %g", got, want)
	}
	for k := range latticeInputs {
		seen := map[float64]bool{}
		sum, squares := 0.0, 0.0
		for i := range chanceSamples {
			z := deviate(i, k)
			seen[z], sum, squares = true, sum+z, squares+z*z
		}
		if len(seen) != chanceSamples || math.Abs(sum) > 1e-9 || math.Abs(squares/chanceSamples-1) > 0.03 {
			t.Errorf("input %d: %d places, mean %g, spread %g", k, len(seen), sum/chanceSamples, math.Sqrt(squares/chanceSamples))
		}
		for l := range k {
			both := 0.0
			for i := range chanceSamples {
				both += deviate(i, k) * deviate(i, l) / chanceSamples
			}
			if math.Abs(both) > 0.35 {
				t.Errorf("inputs %d and %d go together: %.2f", l, k, both)
			}
		}
	}
}

// The interval of a difference goes below zero as well as above it; a quantity keeps its sign.
func TestBetween(t *testing.T) {
	for _, x := range []struct {
		d       tables.Datum
		z, want float64
	}{
		{tables.Datum{V: 0, Low: -2, High: 3}, 2, 3}, {tables.Datum{V: 0, Low: -2, High: 3}, -1, -1},
		{tables.Datum{V: 2, Low: 1, High: 4}, 2, 4}, {tables.Datum{V: 2, Low: 1, High: 4}, -4, 0.5}, {tables.Datum{V: 2, Low: 1, High: 4}, 0, 2},
	} {
		if got := between(x.d, x.z); math.Abs(got-x.want) > 1e-12 {
			t.Errorf("%+v at %g: %g, want %g", x.d, x.z, got, x.want)
		}
	}
}
