package calc

import (
	"fmt"

	"brazebooth/calc/effort"
	"brazebooth/calc/thinsheet"
	"brazebooth/tables"
)

// timedRemedies tries what a shop would try where no rhythm is found, each by computation, and lists what the model
// cannot try. Where the search itself took all the work nothing is tried.
func timedRemedies(e *effort.Account, card *Card, why thinsheet.Reason) ([]Remedy, error) {
	list := timedCandidates(card.Used, Applies("zinc", card), why)
	if e.Work() >= effort.Most {
		return late(list), nil
	}
	return tryAll(e, list, card.Used, (*candidate).timed), e.Over()
}

// timed is the remedy of a change to a timed arc; its margin is that of on, from the shortest to the longest.
func (c *candidate) timed(e *effort.Account, job Job) *Remedy {
	c.alter(&job)
	r := &Remedy{Change: c.change}
	g, err := runTimed(e, job)
	if r.Tried = err == nil && !g.unjudged(); r.Tried && g.rhythmic() && g.times.OnMin > 0 {
		r.Opens, r.Margin = true, 100*(g.times.OnMax/g.times.OnMin-1)
	}
	return r
}

// timedCandidates are the changes worth trying, hotter or colder as the reason asks. Settings that the changed job
// suggests again (aim, times) are left open. Parts with zinc are not warmed.
func timedCandidates(u Job, zinc bool, why thinsheet.Reason) []candidate {
	var list []candidate
	u.ArcOn, u.ArcOff, u.SpotStep, u.Travel, u.Volts = Opt{}, Opt{}, Opt{}, Opt{}, Opt{}
	feed := func(f float64, word string) {
		v := u.Feed.V * f
		list = append(list, candidate{fmt.Sprintf("wire feed %s to %.1f m/min", word, v),
			func(j *Job) { j.Feed = Some(v) }})
	}
	switch why {
	case thinsheet.NeverWets:
		feed(1.25, "up")
		feed(1.5, "up")
		if !zinc {
			list = append(list, candidate{"parts warmed to 150 °C", func(j *Job) { j.Preheat = Some(150) }})
		}
	case thinsheet.TooHot, thinsheet.MeltsFirst, thinsheet.Falls:
		feed(0.8, "down")
		feed(0.65, "down")
	}
	if why == thinsheet.Falls && u.Position != "flat" {
		list = append(list, candidate{"the parts laid flat", func(j *Job) { j.Position = "flat" }})
	}
	switch why {
	case thinsheet.TooThick, roundHole, thinsheet.NoPause: // no change below is known to help
		return nil
	case onBacking:
		return append(list, candidate{"no backing", func(j *Job) { j.Backing = "" }})
	case openFillet:
		return append(list, candidate{"gap closed", func(j *Job) { j.Gap = Some(0) }})
	}
	if thin, ok := tables.Wires.ByID(".030"); ok && u.Wire.V > thin.Diameter.High && why != thinsheet.NeverWets {
		list = append(list, candidate{thin.ID + " in wire", func(j *Job) { j.Wire = Some(thin.Diameter.V) }})
	}
	if u.Gap.V > 0 {
		v := u.Gap.V * 0.6
		if why == thinsheet.WideGap {
			v = 2
		}
		list = append(list, candidate{fmt.Sprintf("gap closed to %.1f mm", v), func(j *Job) { j.Gap = Some(v) }})
	}
	return list
}
