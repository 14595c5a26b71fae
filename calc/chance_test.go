package calc

import (
	"math"
	"slices"
	"testing"

	"brazebooth/calc/limit"
	"brazebooth/internal/deep"
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

// The chance of three heats is within five points of the sampled chance in the mean of the jobs, and for any job within
// what the samples can tell: two standard errors, and five points.
func TestChanceAgreesWithSamples(t *testing.T) {
	jobs := deep.Of(t, chanceJobs, 5)
	r, samples, sum := deep.Rand(t), deep.Many(200, 4000), 0.0
	for _, j := range jobs {
		j, c, _ := atSuggestion(t, j)
		want, got := sampled(t, r, j, samples), c.Chance.Good
		t.Logf("%s %s: chance %.0f, sampled %.0f, missed %s", j.Metal, j.Joint, got, want, c.Chance.Words())
		p := want / 100
		if limit := 5 + 200*math.Sqrt(p*(1-p)/float64(samples)); math.Abs(got-want) > limit {
			t.Errorf("%+v: chance %.0f, sampled %.0f, more than %.0f apart", j, got, want, limit)
		}
		sum += got - want
	}
	if mean := sum / float64(len(jobs)); math.Abs(mean) > 5 {
		t.Errorf("over %d jobs the chance is %.1f too high in the mean", len(jobs), mean)
	}
}

// The samples draw every input that moves a limit at either end of its interval, and no other.
func TestChanceDrawsAllThatMovesALimit(t *testing.T) {
	for _, j := range deep.Of(t, chanceJobs, 3) {
		_, c, b := atSuggestion(t, j)
		m := newMargins(b, c)
		drawn := b.varied(c)
		at := func(b *board) limit.All {
			h := b.heatField(c)
			s, err := h.at(b.inputs[inFeed], b.inputs[inTravel], true)
			if err != nil {
				return limit.All{}
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
	}
}

func chanceFor(j Job) (Chance, error) {
	c, err := Solve(j)
	return c.Chance, err
}

// Where an edge other than the heat's is nearly reached, here the least current of a steady arc, that edge is the one
// missed.
func TestChanceCountsEveryEdge(t *testing.T) {
	j, _, b := atSuggestion(t, Job{Metal: "mild-steel", Gauge: 18, Joint: "corner"})
	low, _ := b.steadyFeeds()
	good, err := chanceFor(j)
	if err != nil {
		t.Fatal(err)
	}
	j.Feed, j.Travel = Some(low*1.01*0.06), Some(j.Travel.V*low*0.06/j.Feed.V) // as much metal for each millimetre
	weak, err := chanceFor(j)
	if err != nil {
		t.Fatal(err)
	}
	if weak.Missed != "arc steady" || weak.Good > 70 || weak.Good >= good.Good ||
		weak.Spoiler != "calibration voltage" {
		t.Errorf("at the least current %+v, at the suggestion %+v", weak, good)
	}
	if want := "“arc steady”, moved most by calibration voltage"; weak.Words() != want {
		t.Errorf("%q, want %q", weak.Words(), want)
	}
}

// A better known input makes a good setting more certain.
func TestReadingsMakeSurer(t *testing.T) {
	j, _, _ := atSuggestion(t, Job{Metal: "mild-steel", Gauge: 18, Joint: "lap"})
	before, err1 := chanceFor(j)
	j.StickOut = Some(12)
	j.Phi, j.PhiSigma, j.VoltFactor, j.VoltFactorSigma = Some(usualPhi(t, j)), Some(0.05), Some(1), Some(0.005)
	after, err2 := chanceFor(j)
	if err1 != nil || err2 != nil || after.Good < before.Good+5 {
		t.Errorf("before %+v, after %+v (%v, %v)", before, after, err1, err2)
	}
}

// usualPhi is the calibration voltage that the job is computed with.
func usualPhi(t *testing.T, j Job) float64 {
	c := card(t, j)
	return c.Setup.Filler.Phi.V
}
