package correct

import (
	"fmt"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/calc/learned"
)

// expectZinc removes zinc gone on the back from a bead's look if both its setting and the suggested one are
// computed to boil it off: then it is no sign of too much heat. A bead that showed nothing else looks good.
func (v *posterior) expectZinc() {
	if v.off || v.timed || !v.takesZinc() {
		return
	}
	for i := range v.laid {
		t := &v.laid[i]
		if !strings.Contains(t.Seen, learned.ZincBehind) || v.bandBehind(&t.Job) == 0 {
			continue
		}
		t.Seen = learned.WithoutZinc(t.Seen)
		if t.Seen == "" {
			t.Seen, v.onlyZinc = "good", i == len(v.laid)-1
		}
	}
}

// takesZinc reports whether the suggested setting, if it is good, boils the zinc off a back face.
func (v *posterior) takesZinc() bool {
	if !slices.ContainsFunc(v.laid, func(t Try) bool { return strings.Contains(t.Seen, learned.ZincBehind) }) {
		return false
	}
	j, ok := v.own(opened(v.last().Job), isGood)
	return ok && v.bandBehind(&j) > 0
}

// repairZinc is the answer to a computed loss of zinc on the back: no setting is at fault, the coat is
// repaired.
func (v *posterior) repairZinc(t *Try, c *advice.Correction) {
	c.Do = "repair the coat after, on both faces (zinc-rich paint)"
	c.Why = "Zinc gone on the back is as computed at this setting: no sign of too much heat. " +
		v.narrower(t, c.GoodBefore)
	if c.GoodBefore < 50 {
		c.Why += fmt.Sprintf(
			" By the window the next bead is like it in %.0f of 100 only: lay a second one, peel both.", c.GoodBefore)
	}
}

// narrower says what a narrower band on the back costs: a usual step of travel or of wire feed, whichever gives
// the better chance of a good bead.
func (v *posterior) narrower(t *Try, before float64) string {
	here := v.bandBehind(&t.Job)
	text, likeliest := "", -1.0
	for _, way := range [...]struct {
		lever int
		sign  float64
		words string
	}{{leverTravel, 1, "a quicker travel, %.1f mm/s in place of %.1f mm/s"},
		{leverFeed, -1, "less wire feed, %.1f m/min in place of %.1f m/min"}} {
		l := &levers[way.lever]
		m := v.usualStep(t, l, way.sign)
		if m == nil || !v.keepsOtherEdges(&t.Job, m.job) || m.good <= likeliest {
			continue
		}
		if band := v.bandBehind(&m.job); band < here-0.05 {
			likeliest = m.good
			text = fmt.Sprintf(way.words+": %.1f mm to each side in place of %.1f mm, good in %.0f of 100 by the "+
				"window, now in %.0f.",
				l.opt(&m.job).V, l.opt(&t.Job).V, band, here, 100*m.good, before)
		}
	}
	if text == "" {
		return "Narrower only by thicker sheet, or by less heat than the bead needs."
	}
	return "Narrower only by " + text
}

// bandBehind is the wider half-width of zinc that boils off a back face, mm.
func (v *posterior) bandBehind(j *calc.Job) float64 {
	p, err := calc.ProbeOf(v.ctx, j)
	if err != nil {
		return 0
	}
	return p.ZincBehind()
}
