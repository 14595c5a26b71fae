package correct

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// leastGain is the least rise of the chance of a good bead for which a change is advised: one in a hundred, as both
// chances are shown.
const leastGain = 0.01

// impossible returns an error if a bead of this job cannot look like this.
func impossible(seen string, card *calc.Card) error {
	u := &card.Used
	for _, s := range strings.Split(seen, ",") {
		switch {
		case s == "zinc-gone-behind" && !calc.Applies("zinc", card):
			return mistake.In("seen", "zinc gone behind cannot be seen where neither member carries zinc",
				"give the coating, as G60, or type what else it shows")
		case s == "drops-through" && (u.Joint == "overlay" || u.Joint == "plug"):
			return mistake.In("seen", "metal drops through a gap, and this joint ("+u.Joint+") has none",
				"type burn-through for a hole, or what else it shows")
		case s == "edges-melted" && u.Joint == "overlay":
			return mistake.In("seen", "an overlay has no sheet's edge that could melt away", "type what else it shows")
		}
	}
	return nil
}

// done reports whether the job already has this part of a cure.
func (v *posterior) done(piece string) bool {
	u := &v.card.Used
	switch piece {
	case "aluminium-bearing wire":
		return calc.AluminiumWire(u.Filler)
	case "close the gap":
		return v.card.Job.Gap.Set && u.Gap.V == 0
	case "timed arc":
		return u.Mode == "timed"
	case "vent gap between the sheets, up to 0.1 mm": // only sheets that lie on each other hold the vapour
		return u.Gap.V > 0 || u.Joint != "lap" && u.Joint != "tee"
	}
	return false
}

// whenDone is what remains to do when all of a cause's cure is done.
var whenDone = map[string]string{
	tables.CauseVapour: "grind the zinc off along the seam, both sheets and both faces",
}

// cure is a cause's cure without the parts that the job already has.
func (v *posterior) cure(c *tables.Cause) string {
	separator := ", "
	if strings.Contains(c.Do, "; ") || strings.HasPrefix(c.Do, "vent gap") {
		separator = "; "
	}
	all := strings.Split(c.Do, separator)
	left := slices.DeleteFunc(slices.Clone(all), v.done)
	if other, ok := whenDone[c.ID]; ok && len(left) == 0 {
		return other
	}
	return strings.Join(left, separator)
}

// beyond looks further than one step if a change alone does not raise the chance: along the same lever to its
// end, and at the setting that the card would suggest. It describes a better setting in words, or returns "".
func (v *posterior) beyond(t *Try, m *move, before float64) string {
	l := m.lever
	to := m.job
	at, next := l.opt(&t.Job).V, l.opt(&to).V
	low, high := l.ends(&t.Job)
	end := high
	if next < at {
		end = low
	}
	const looks = 6
	for i := 1; i <= looks; i++ {
		x := next + (end-next)*float64(i)/looks
		if (x-next)*(next-at) <= 0 {
			break
		}
		*l.opt(&to) = calc.Some(x)
		if g := v.good(&to); g > before+leastGain {
			return fmt.Sprintf("This is the first of several steps the same way: by the window and what was seen, at "+
				"%.3g %s the bead is good in %.0f of 100, here in %.0f.", x, l.unit, 100*g, 100*before)
		}
	}
	if g, j := v.suggested(opened(t.Job)); g > before+leastGain {
		return fmt.Sprintf("No one setting is enough: this is the first of several steps. By the window and what was "+
			"seen, with %.1f m/min and %.1f mm/s the bead is good in %.0f of 100, here in %.0f.", j.Feed.V, j.Travel.V,
			100*g,
			100*before)
	}
	return ""
}

// opened is a job without the settings that the card suggests.
func opened(j calc.Job) calc.Job {
	j.Feed, j.Volts, j.Travel = calc.Opt{}, calc.Opt{}, calc.Opt{}
	return j
}

// unaimed is opened without the aim either.
func unaimed(j calc.Job) calc.Job {
	j.Aim = calc.Opt{}
	return opened(j)
}

// own is the setting that the card suggests for a job; false if there is none, or its card does not fit.
func (v *posterior) own(open calc.Job, fits func(*calc.Card) bool) (calc.Job, bool) {
	c, err := calc.SolveContext(v.ctx, open)
	if err != nil || !fits(&c) {
		return open, false
	}
	return calc.Laid(&c), true
}

// isGood reports whether the heat of a card is good.
func isGood(c *calc.Card) bool { return c.Zone == "good" }

// suggested returns the setting that the card would suggest for a job and its chance of a good bead, given what
// was seen; 0 if there is none.
func (v *posterior) suggested(open calc.Job) (float64, calc.Job) {
	judged := func(c *calc.Card) bool { return c.Zone != "not-modelled" && c.Zone != "" }
	j, ok := v.own(open, judged)
	if v.timed || !ok {
		return 0, open
	}
	return v.good(&j), j
}

// cannot is the answer if no setting raises the chance: it says so, and what would help, as far as that is
// computed. A stick-out that is too long is corrected first, before anything else is bought or changed.
func (v *posterior) cannot(t *Try, top *advice.Likely, c *advice.Correction) {
	c.Why = fmt.Sprintf("Likeliest: %s. The window cannot cure this: no one setting raises the chance, the next bead "+
		"is good in %.0f of 100 with the settings as they are.", top.Name, c.GoodBefore)
	if c.GoodBefore >= 50 {
		c.Why += " Lay a second bead before you change anything: what was seen may lie in fit-up, aim or the sheet."
	}
	first, at := "", *t
	if m := v.shorten(t, c.GoodBefore/100); m != nil && top.ID == tables.CauseCold {
		first, at.Job = fmt.Sprintf("stick-out back to %.0f mm; then ", m.job.StickOut.V), m.job
	}
	best := v.wouldHelp(&at, top.ID, c.GoodBefore/100)
	c.Do = first + strings.Join(append(best, insteadOf(top.ID, &v.card)), "; else ")
	if top.Do != "" {
		c.Do += "; " + top.Do
	}
}

// insteadOf is what a shop does if no setting helps and nothing better is computed. It names nothing that the
// job already has.
func insteadOf(cause string, card *calc.Card) string {
	if cause != tables.CauseCold {
		bar := ""
		if u := &card.Used; u.Joint == "butt" && (u.Backing == "" || u.Backing == "none") {
			bar = "a copper backing bar, "
		}
		return "a smaller wire, " + bar + "thicker sheet, or another process"
	}
	ways := "a larger wire, "
	if card.Used.Mode != "pulsed" {
		ways += "the pulsed mode, "
	}
	if calc.Applies("zinc", card) {
		return ways + "or another process; for warmer parts " + calc.StripZinc(card)
	}
	return "warmer parts" + calc.NoHotter(card) + ", " + ways + "or another process"
}

// alternative is a change of the job, not of a setting, with the chance that it brings.
type alternative struct {
	text string
	good float64
}

// wouldHelp lists the changes of the job that make a good bead likelier, best first: another wire, mode,
// preheat, a closed gap. Each is computed with the settings that the card would then suggest.
func (v *posterior) wouldHelp(t *Try, cause string, before float64) (list []string) {
	if v.timed {
		return nil
	}
	open := unaimed(t.Job)
	var ways []alternative
	try := func(text string, j calc.Job) {
		if g, _ := v.suggested(j); g > before+0.05 {
			ways = append(ways, alternative{fmt.Sprintf("%s (good in %.0f of 100)", text, 100*g), g})
		}
	}
	for _, w := range calc.OtherWires(open.Wire.V) {
		j := open
		j.Wire = calc.Some(w.Diameter.V)
		try("wire of "+w.ID+" in", j)
	}
	j := open
	if j.Mode = "pulsed"; open.Mode == "pulsed" {
		j.Mode = "dip"
	}
	try("mode "+j.Mode, j)
	if cause == tables.CauseCold && !calc.Applies("zinc", &v.card) {
		low, high := preheatEnds(&t.Job)
		j = open
		if j.Preheat = calc.Some(high); open.Preheat.V < high && high > low {
			try(fmt.Sprintf("preheat of %.0f °C", high), j)
		}
	}
	if j = open; open.Gap.V > 0 {
		j.Gap = calc.Some(0)
		try("the gap closed", j)
	}
	slices.SortStableFunc(ways, func(a, b alternative) int { return cmp.Compare(b.good, a.good) })
	for _, w := range ways[:min(2, len(ways))] {
		list = append(list, w.text)
	}
	return list
}
