package calc

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"brazebooth/tables"
)

// Try is one test bead: how it was laid and what it showed, ids of tables.Sights in their order with commas.
type Try struct {
	Job  Job
	Seen string
}

// Likely is a cause with how likely it is, of all that were thought of, in %.
type Likely struct {
	ID         string  `json:"id"`
	Name       string  `json:"name"`
	Likelihood float64 `json:"likelihood"`
	Do         string  `json:"do"`
	Known      string  `json:"known"`
	Source     string  `json:"source"`

	unlooked float64 // how likely it was before one looked at the bead
}

// Change is the one setting to change for the next test bead. What is stickout, volts, wire_feed, travel, arc_on,
// arc_off or mode; a mode has words in place of numbers.
type Change struct {
	What             string
	From, To         float64
	FromMode, ToMode string
	Unit             string
}

// MarshalJSON writes from and to as numbers, or as a mode's ids.
func (c Change) MarshalJSON() ([]byte, error) {
	from, to := any(c.From), any(c.To)
	if c.What == "mode" {
		from, to = c.FromMode, c.ToMode
	}
	return json.Marshal(struct {
		What string `json:"what"`
		From any    `json:"from"`
		To   any    `json:"to"`
		Unit string `json:"unit"`
	}{c.What, from, to, c.Unit})
}

// Correction is what a test bead's look comes to.
type Correction struct {
	Causes []Likely `json:"causes"`
	Change *Change  `json:"change,omitzero"` // nil where no setting is at fault, or none has room left
	Do     string   `json:"do,omitempty"`    // then what is done in place of a setting; "" where all is well
	Why    string   `json:"why"`
	// GoodBefore and GoodAfter are how likely the next bead is good by the computed window and all that was seen, %:
	// without and with the change. 0 where no window is computed; after a change of the mode nothing is said.
	GoodBefore float64 `json:"chance_before,omitzero"`
	GoodAfter  float64 `json:"chance_after,omitzero"`
	Next       Job     `json:"-"` // the job with the change, for the next try
}

// SeenIDs turns what a hand says it sees into ids in the order of tables.Sights, each once. The error of an unknown
// word names what may be typed.
func SeenIDs(text string) (string, error) {
	given := map[string]bool{}
	for _, word := range strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return r == ',' || r == ' ' || r == ';' }) {
		if _, ok := tables.SightByID(word); !ok {
			return "", &FieldError{"seen", "nothing that a bead shows is called " + strconv.QuoteToASCII(word), "type any of " + strings.Join(sightIDs(), ", ") + ", with commas"}
		}
		given[word] = true
	}
	var ids []string
	for _, id := range sightIDs() {
		if given[id] {
			ids = append(ids, id)
		}
	}
	switch {
	case len(ids) == 0:
		return "", &FieldError{"seen", "nothing is named", "type what the bead shows, as rolled-edge or burn-through,pores"}
	case given["good"] && len(ids) > 1:
		return "", &FieldError{"seen", "good stands beside a fault", "type the faults alone, or good alone"}
	}
	return strings.Join(ids, ","), nil
}

func sightIDs() []string {
	var ids []string
	for _, s := range tables.Sights() {
		ids = append(ids, s.ID)
	}
	return ids
}

// Correct ranks what may lie behind the last bead's look, by the computed window at its setting and by what earlier
// beads of the same job showed, and finds the smallest change of one setting that is more likely than not to make the
// next bead good; where no setting is at fault it says what cures it. tries come oldest first and differ in their settings only. Each try narrows what the window leaves
// open, so that the next setting is a bisection of it. Errors as Solve and Gap.
func Correct(ctx context.Context, tries []Try) (Part, error) {
	if len(tries) == 0 {
		return Part{}, &FieldError{"seen", "no bead is laid", "lay a test bead and say what it shows"}
	}
	tries = slices.Clone(tries)
	for i := range tries {
		seen, err := SeenIDs(tries[i].Seen)
		if err != nil {
			return Part{}, err
		}
		tries[i].Seen = seen
	}
	v, err := newView(ctx, tries)
	if err != nil {
		return Part{}, err
	}
	if p, stopped := v.stopped(); stopped {
		return p, nil
	}
	if err := v.recall(ctx); err != nil {
		return Part{}, err
	}
	now := &v.laid[len(v.laid)-1]
	c := Correction{}
	if c.Causes, err = v.rank(ctx, now); err != nil {
		return Part{}, err
	}
	if err := v.learn(ctx, now); err != nil {
		return Part{}, err
	}
	if contradicts(now.Seen) {
		c.Why = "It looks cold and hot at once: no one setting does both. Look at gap and fit-up, at the aim and at an even travel first; then lay another bead with the same settings."
	} else if err := v.choose(ctx, now, &c); err != nil {
		return Part{}, err
	}
	if err := v.effort.over(); err != nil { // what nobody waited for was not looked at
		return Part{}, err
	}
	c.Next = v.next(tries[len(tries)-1].Job, now, &c)
	p := Part{Name: "correct", Card: v.card, Correction: &c}
	p.correctWords(&c, v)
	return p, nil
}

// stopped is the page of a job that is not to be done at all: no setting mends it.
func (v *view) stopped() (Part, bool) {
	p, ok := stoppedPart("correct", &v.card)
	if ok {
		p.Correction = &Correction{Causes: []Likely{}, Why: "Stop: no setting mends this."}
	}
	return p, ok
}

// correctWords are the reasons and cautions of a correction.
func (p *Part) correctWords(c *Correction, v *view) {
	for _, l := range c.Causes {
		p.because(fmt.Sprintf("%s (%.0f in 100): %s", l.Name, l.Likelihood, l.Do), l.Known, l.Source)
	}
	p.because("how often a cause shows as what is seen is a hand's judgement: it ranks, it does not count", string(tables.SeldomSeen.Known), tables.SeldomSeen.Source)
	if len(c.Causes) > 0 && ofHeat(c.Causes[0].ID) && c.Causes[0].unlooked < 0.1 && v.modelled() {
		p.because("the window alone would not expect this bead: before you change anything measure stick-out, sheet and wire feed (a 6 s pull), and read the meter", ownCalc, sectionSource)
	}
	if !v.modelled() {
		p.because("no window is computed for this job: the step is the usual one of a hand", string(tables.StepTravel.Known), tables.StepTravel.Source)
	}
	for _, t := range v.laid[:len(v.laid)-1] {
		if now := v.laid[len(v.laid)-1]; t.Job == now.Job && t.Seen != now.Seen {
			p.because("a bead of the very same settings showed something else: fit-up, gap, sheet or aim changed; look for that first", ownCalc, "the beads")
			break
		}
	}
	if c.Change != nil || c.Do != "" {
		p.Warnings = append(p.Warnings, Warning{"one-at-a-time", Info, "Change this one thing, lay another test bead on scrap of the same sheet, look at both faces, peel it.", "common practice, no source"})
	}
	seen := v.laid[len(v.laid)-1].Seen
	if slices.ContainsFunc(strings.Split(seen, ","), func(s string) bool { return s == "crack" }) {
		p.Warnings = append(p.Warnings, Warning{"crack-stop", Caution, "A cracked bead carries nothing: do not braze over it. Cut it out, find the cause, and ask who may decide where a part could hurt somebody.", "common practice, no source"})
	}
}
