package calc

import (
	"fmt"

	"brazebooth/calc/thinsheet"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// sentence says what prevents a rhythm, or that the times are this program's own.
func (g *timedRun) sentence() string {
	r := g.times.Reason
	if g.rhythmic() && g.times.FirstOn == 0 {
		first := "A cold first spot never wets at this heat; once the sheet is warm these times do. More wire feed " +
			"for the first spot, or " + OrStrip(&g.card, "warm the parts first") + "."
		if r == thinsheet.NoCycle {
			first += " " + reasonOf(r, &g.card)
		}
		return first
	}
	if r == thinsheet.TooHot && !g.card.Job.Amps.Set && g.atLeast {
		return "Too hot for timed arc even with the least wire feed that the arc holds: the edge melts before a hand " +
			"or a timer can let go. Try " + either(append([]string{"a thinner wire"}, carriesMore(&g.card)...)) + "."
	}
	if r != "" {
		return reasonOf(r, &g.card)
	}
	if list := g.strained(); len(list) > 0 {
		return list[0].Text
	}
	if r := &g.card.Used.Rhythm; r.Set() {
		return "By this computation and " + quantity.Count(r.Trials, "trial") + " of this booth one timer setting " +
			"keeps the rhythm. Try it on scrap with the same gap."
	}
	return "By this computation one timer setting keeps the rhythm; good to about a factor of two, stirring assumed, " +
		"published times not found. Try it on scrap with the same gap."
}

// warn adds what a welder must know about these times; fume, eyes and fire come before it.
func (g *timedRun) warn(card *Card, s *Timed) {
	w := warnings{card: card, list: card.Warnings}
	on := g.times.OnOff.On
	switch r := &g.card.Used.Rhythm; {
	case on > 0 && r.Set():
		w.tell("timed-learned", Info, timedSource, "On and off times are narrowed by %s of this booth with this wire: "+
			"stirring %.1f, arc's spread %.2f mm, power %.2f of what is computed.", quantity.Count(r.Trials, "trial"),
			r.Stir, r.Spread, r.Power)
	case on > 0:
		w.tell("timed-own", Caution, timedSource, "On and off times are this program's own computation, good to about "+
			"a factor of two: reading amps and volts narrows them most, then trials kept in the book. Try them on "+
			"scrap with the same gap.")
	}
	if s.Reason != "" {
		w.tell("timed-"+s.Reason, Caution, timedSource, "%s", s.Why)
	}
	w.list = append(w.list, g.strained()...)
	g.mayFall(&w)
	if on > 0 {
		g.burns(&w, on)
	}
	if g.card.Job.Travel.Set {
		w.tell("travel-unused", Info, timedSource, "A timed arc has no travel to set: it follows from step, on and "+
			"off. The one given was left out.")
	}
	w.put()
}

// burns explains on: it is how long the arc burns, not what a timer is set to.
func (g *timedRun) burns(w *warnings, on float64) {
	in, how := g.runIn(), "as read"
	if !g.card.Job.RunIn.Set {
		how = fmt.Sprintf("assumed, %.2f to %.2f; run-in takes a reading", in.Low, in.High)
	}
	w.tell("timed-burns", Info, timedSource, "Arc on is how long the arc burns. A timer that starts the wire is set "+
		"to %.2f s: %.2f s pass until the arc burns (%s).", on+in.V, in.V, how)
}

// strained says where given times leave their range, and where the range is too narrow for a hand.
func (g *timedRun) strained() []Warning {
	t, b := &g.times, &g.times.OnOff
	if !(b.On > 0) || !(t.OnMin > 0) {
		return nil
	}
	var w warnings
	tell := func(code, format string, args ...any) { w.tell("timed-"+code, Caution, timedSource, format, args...) }
	const slack = 1.001 // for a time that was read off the card and typed in again
	switch {
	case b.On > t.OnMax*slack && t.OnMaxBy == thinsheet.Falls:
		tell("on-falls", "On for %.2f s makes a puddle that falls, which it does from about %.2f s: shorter, or less "+
			"wire feed.", b.On, t.OnMax)
	case b.On > t.OnMax*slack:
		tell("on-long", "On for %.2f s melts the base metal at the root edge, which bears about %.2f s: shorter, or "+
			"less wire feed.", b.On, t.OnMax)
	case b.On*slack < t.OnMin:
		tell("on-short", "On for %.2f s does not wet the joint, which needs about %.2f s: longer, or more wire feed.",
			b.On, t.OnMin)
	}
	switch {
	case b.Off > t.OffMax*slack:
		tell("off-long", "Off for %.2f s freezes the puddle before the next spot, after about %.2f s: shorter.",
			b.Off, t.OffMax)
	case b.Off*slack < t.OffMin:
		tell("off-short", "Off for %.2f s strikes into a puddle that is all liquid until about %.2f s: it can fall "+
			"through. Longer.", b.Off, t.OffMin)
	}
	switch {
	case g.in.FixedStep == 0:
	case b.Step > 1.01*b.StepMost && b.StepBy == thinsheet.StepFill:
		tell("step-fill", "A step of %.1f mm leaves the gap unfilled: a spot fills about %.1f mm.", b.Step, b.StepMost)
	case b.Step > 1.01*b.StepMost:
		tell("step-far", "A step of %.1f mm does not overlap the last puddle by half: about %.1f mm does.",
			b.Step, b.StepMost)
	case b.Step < 0.25*b.StepMost:
		tell("step-short", "A step of %.1f mm piles metal and heat up: about %.1f mm would do.", b.Step, b.StepMost)
	}
	if room := t.OnMax - t.OnMin; room < tables.NarrowestOn.V && g.in.FixedOn == 0 {
		tell("narrow", "On has only %.2f s of room, less than a hand repeats and far less than its ends are sure of: "+
			"treat it as a start for trials on scrap, or change feed or gap.", room)
	}
	return w.list
}
