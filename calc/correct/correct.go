package correct

import (
	"context"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// Next ranks the causes that may explain the last bead's look, by the computed window at its setting and by the
// looks of earlier beads of the same job. It finds the smallest change of one setting that makes the next bead
// good with a probability of more than one half; if no setting is at fault it says what cures the cause. tries
// are oldest first and differ in their settings only. Each try narrows what is still possible, so that the next
// setting is a bisection. Errors are those of calc.Answer.
func Next(ctx context.Context, tries []Try) (advice.Page, error) {
	if len(tries) == 0 {
		return advice.Page{}, mistake.In("seen", "no bead is laid", "lay a test bead and say what it shows")
	}
	tries = slices.Clone(tries)
	for i := range tries {
		seen, err := SeenIDs(tries[i].Seen)
		if err != nil {
			return advice.Page{}, err
		}
		if err := Possible(seen, tries[i].Job.Mode); err != nil {
			return advice.Page{}, err
		}
		tries[i].Seen = seen
	}
	v, err := newPosterior(ctx, tries)
	if err != nil {
		return advice.Page{}, err
	}
	if p, stopped := v.stopped(); stopped {
		return p, nil
	}
	if err := impossible(tries[len(tries)-1].Seen, &v.card); err != nil {
		return advice.Page{}, err
	}
	v.recall()
	now := v.last()
	c := advice.Correction{Causes: v.rank(now), Next: tries[len(tries)-1].Job}
	v.learn(now)
	if contradicts(now.Seen) {
		c.Why = "It looks cold and hot at once: no one setting does both. Look at gap and fit-up, at the aim and at " +
			"an even travel first; then lay another bead with the same settings."
	} else {
		v.choose(now, &c)
	}
	if v.over() {
		return advice.Page{}, v.err
	}
	p := advice.Page{Name: "correct", Card: v.card, Correction: &c}
	correctWords(&p, &c, v)
	p.PreheatCautions(&v.card)
	return p, nil
}

// stopped is the page of a job that must not be done at all.
func (v *posterior) stopped() (advice.Page, bool) {
	p, ok := advice.Stopped("correct", &v.card)
	if ok {
		p.Correction = &advice.Correction{Causes: []advice.Likely{}, Why: "Stop: no setting mends this."}
	}
	return p, ok
}

// correctWords adds the reasons and warnings of a correction.
func correctWords(p *advice.Page, c *advice.Correction, v *posterior) {
	for _, l := range c.Causes {
		o := tables.Origin{Source: l.Source, Known: tables.Known(l.Known)}
		p.Because(o, "%s (%.0f in 100): %s", l.Name, l.Likelihood, l.Do)
	}
	if len(c.Causes) > 1 {
		p.Because(tables.SeldomSeen.Origin, "the numbers in 100 are a welder's judgement: go by their order")
	}
	if len(c.Causes) > 0 && OfHeat(c.Causes[0].ID) && c.Causes[0].Prior < 0.1 && !v.off && !v.disputed {
		p.Because(advice.Own(calc.SectionSource), "the window alone would not expect this bead: before you change "+
			"anything measure stick-out, sheet and wire feed (a 6 s pull), and read the meter")
	}
	if v.off {
		p.Because(tables.StepTravel.Origin, "no window is computed for this job: the step is the usual one of a hand")
	}
	now := v.last()
	if slices.ContainsFunc(v.laid, func(t Try) bool { return t.Job == now.Job && t.Seen != now.Seen }) {
		p.Because(advice.Own("the beads"), "a bead of the very same settings showed something else: fit-up, gap, "+
			"sheet or aim changed; look for that first")
	}
	if !v.disputed && (c.Change != nil || c.Do != "") {
		p.Warnings = append(p.Warnings, calc.Warning{Code: "one-at-a-time", Severity: calc.Info,
			Text: "Change this one thing, lay another test bead on scrap of the same sheet, look at both " +
				"faces, peel it.", Basis: practice})
	}
	if slices.Contains(strings.Split(now.Seen, ","), "crack") {
		p.Warn("crack-stop", practice, "A cracked bead carries nothing: do not braze over it. Cut it out, find the "+
			"cause, and ask who may decide where a part could hurt somebody.")
	}
}

const practice = "common practice, no source"
