package advice

import (
	"math"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// oneVerdict lists where the pages beside a card judge its setting differently from the card.
func oneVerdict(t *testing.T, c *calc.Card) (faults []string) {
	t.Helper()
	say := func(text string) { faults = append(faults, text) }
	v := c.Verdict()
	chance, judged := c.Figure("chance")
	if v == "good" && judged && chance.Value < tables.MarginalUnder.V || v == "marginal" &&
		chance.Value >= tables.MarginalUnder.V {
		say("the chance is of another verdict")
	}
	if c.Warned("marginal") != (c.Met() && c.TooHotParts() == "" && judged &&
		chance.Value < tables.MarginalUnder.V) {
		say("the caution marginal is of another verdict")
	}
	for name, of := range map[string]func(*calc.Card) (Page, error){"fit": Fit, "strength": Strength, "cost": Cost} {
		p, err := of(c)
		if err != nil {
			continue
		}
		if p.Card.Verdict() != v {
			say(name + " has another card")
		}
		if name != "fit" {
			continue
		}
		if (p.Verdict == StopWork) != c.Stopped() {
			say("fit says " + p.Verdict)
		}
		if p.Verdict == Suits && v != "good" {
			say("it suits")
		}
		for _, r := range p.Reasons {
			if strings.Contains(r.Text, "marginal") != (v == "marginal") && strings.HasPrefix(r.Text,
				"at this setting every edge") && !c.Stopped() {
				say("fit: " + r.Text)
			}
		}
	}
	return faults
}

// TestOneVerdict checks that card, window, fit, strength and cost agree about the same job.
func TestOneVerdict(t *testing.T) {
	r := deep.Rand(t)
	metals, joints, gases, coats, modes := tables.Metals, tables.Joints, tables.Gases, tables.Coatings,
		tables.Modes
	for n := range deep.Many(10, 2000) {
		j := calc.Job{Metal: metals[r.IntN(len(metals))].ID, Joint: joints[r.IntN(len(joints))].ID, Hazard: "none",
			Thickness: calc.Some(0.5 + 3*r.Float64()), Gas: gases[r.IntN(len(gases))].ID,
			Mode: modes[r.IntN(len(modes)-1)].ID}
		if r.IntN(2) == 0 {
			j.Gas = ""
		}
		if r.IntN(3) == 0 {
			j.Coating = coats[r.IntN(len(coats))].ID
		}
		if r.IntN(3) == 0 {
			j.Feed, j.Travel = calc.Some(2+8*r.Float64()), calc.Some(4+10*r.Float64())
		}
		c, err := calc.Solve(j)
		if err != nil {
			continue
		}
		for _, f := range oneVerdict(t, &c) {
			t.Errorf("%+v is %s: %s", j, c.Verdict(), f)
		}
		if j.Feed.Set || n%10 != 0 {
			continue
		}
		w, err := calc.WindowOf(t.Context(), j, calc.CoarseWindow, nil)
		if err == nil && (w.Card.Verdict() != c.Verdict() || w.Good != (c.Verdict() == "good") ||
			math.Abs(w.Chance.Good-c.Chance.Good) > 1e-6) {
			t.Errorf("%+v: the card is %s, the window's %s, good %v", j, c.Verdict(), w.Card.Verdict(), w.Good)
		}
	}
}

// A setting outside the window for another reason than its heat: an unsteady arc, and zinc that must not be warmed with
// a chance that would be marginal.
func TestFitFollowsWhatIsOutside(t *testing.T) {
	for _, j := range []calc.Job{
		{Metal: "hsla", Joint: "lap", Mode: "pulsed", Thickness: calc.Some(0.9), Feed: calc.Some(2.56),
			Travel: calc.Some(12.3), Hazard: "none"},
		{Metal: "grey-iron", Coating: "ZF100", Joint: "tee", Mode: "dip", Thickness: calc.Some(1.58), Hazard: "none"},
	} {
		c, err := calc.Solve(j)
		if err != nil || c.Verdict() != "outside" || c.Zone != "good" {
			t.Fatalf("%s is %s, its heat %s: %v", j.Metal, c.Verdict(), c.Zone, err)
		}
		for _, f := range oneVerdict(t, &c) {
			t.Errorf("%s: %s", j.Metal, f)
		}
	}
}

// stops returns a job's card and its fit page.
func stops(t *testing.T, j calc.Job) (c calc.Card, fit Page) {
	t.Helper()
	j.Feed, j.Travel, j.Hazard = calc.Some(4.5), calc.Some(8), "none"
	c, err := calc.Solve(j)
	if err != nil {
		t.Fatalf("%+v: %v", j, err)
	}
	if fit, err = Fit(&c); err != nil {
		t.Fatal(err)
	}
	return c, fit
}

// TestRefusalsOfTheTablesStopTheJob: every refused gas on every metal, every filler that a rule rules out and every
// pair of zinc and stainless stops card and fit; both mention every coat that needs a trial first.
func TestRefusalsOfTheTablesStopTheJob(t *testing.T) {
	refuse := func(j calc.Job, code string) {
		t.Helper()
		if c, fit := stops(t, j); !c.Warned(code) || c.Verdict() != "stop" || fit.Verdict != StopWork {
			t.Errorf("%+v: %s is %s on the card and %s at fit", j, code, c.Verdict(), fit.Verdict)
		}
	}
	for _, m := range deep.Of(t, tables.Metals, 4) {
		j := calc.Job{Metal: m.ID, Thickness: calc.Some(1.5), Feed: calc.Some(5), Travel: calc.Some(8)}
		for _, g := range tables.Gases {
			if j.Gas = g.ID; g.Refused {
				refuse(j, "gas-refused")
			}
		}
		j.Gas = ""
		for _, rule := range tables.FillerRules {
			if j.Filler = rule.Filler; !rule.Out {
				continue
			}
			if c, _ := stops(t, j); calc.Applies(rule.On, &c) {
				refuse(j, "filler-refused")
			}
		}
	}
	for _, coat := range tables.Coatings {
		j := calc.Job{Metal: "mild-steel", Coating: coat.ID, Thickness: calc.Some(1.5), Feed: calc.Some(5),
			Travel: calc.Some(8)}
		c, fit := stops(t, j)
		told := slices.ContainsFunc(fit.Reasons, func(r Reason) bool {
			return strings.Contains(r.Text,
				"try it first")
		})
		if first := strings.Contains(coat.Note, "try it first"); c.Warned("heavy-coat") != first || told != first {
			t.Errorf("%s: on the card %v, at fit %v", coat.ID, c.Warned("heavy-coat"), told)
		}
		if coat.Zinc {
			j.Metal2, j.Coating2 = "stainless-304", "none"
			refuse(j, "zinc-on-stainless")
		}
	}
}
