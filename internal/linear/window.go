package linear

import (
	"fmt"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// readMap says in words what the map of all settings shows.
func (t *talk) readMap(string) {
	m, err := calc.WindowOf(t.ctx, t.job, calc.FullWindow, nil)
	if err != nil {
		t.fault(err)
		return
	}
	t.stops()
	if words := m.CoarserWords(); words != "" {
		t.voice.say("The map is ", words, ".")
	}
	at := t.setting(m.Suggestion.Feed, m.Suggestion.Travel)
	if !m.Good {
		t.voice.say("No feed and travel meet every edge. The nearest miss: ", at, ".")
		for i := range m.Remedies {
			t.voice.say("Tried: ", m.Remedies[i].Change, ": ", remedy(&m.Remedies[i]), ".")
		}
		return
	}
	t.voice.say("Suggested: ", at, fmt.Sprintf(". Every edge is met with a chance of %.0f in 100, over everything uncertain.", m.Chance.Good))
	if words := m.Chance.Words(); words != "" {
		t.voice.say("Most often missed: ", words, ".")
	}
	t.ranges(&m)
	t.standing(&m)
}

// stops reads out what stops the job, before any answer beside the card.
func (t *talk) stops() {
	for i := range t.card.Warnings {
		if w := &t.card.Warnings[i]; w.Severity == calc.Stop {
			t.danger(w)
		}
	}
}

func (t *talk) setting(feed, travel float64) string {
	return "wire feed " + t.size(feed, "m/min") + " at travel " + t.size(travel, "mm/s")
}

// ranges says for a few travels between which feeds everything is met, and for the suggested feed between which travels.
func (t *talk) ranges(m *calc.Window) {
	si, sj := m.At(m.Suggestion.Feed, m.Suggestion.Travel)
	slow, fast := run(len(m.Travels), sj, func(j int) bool { return good(m, si, j) })
	if slow <= fast {
		t.voice.say("At the suggested wire feed travel is good from ", t.between(m.Travels, slow, fast, "mm/s"), ".")
	}
	told := -1
	for j := range m.Travels {
		some := -1
		for i := range m.Feeds {
			if good(m, i, j) {
				some = i
				break
			}
		}
		if some < 0 || told >= 0 && j != sj && j-told < 3 {
			continue
		}
		told = j
		low, high := run(len(m.Feeds), some, func(i int) bool { return good(m, i, j) })
		t.voice.say("At travel ", t.about(m.Travels[j], "mm/s"), " wire feed is good from ", t.between(m.Feeds, low, high, "m/min"), ".")
	}
}

// good reports whether every edge is met at a point.
func good(m *calc.Window, i, j int) bool {
	return m.Margins[i*len(m.Travels)+j] >= 0 && m.Zones[i*len(m.Travels)+j] == "good"
}

// run is the stretch of good points around one, empty (from over to) where it is none itself.
func run(n, at int, good func(int) bool) (from, to int) {
	if !good(at) {
		return at, at - 1
	}
	for from = at; from > 0 && good(from-1); from-- {
	}
	for to = at; to < n-1 && good(to+1); to++ {
	}
	return from, to
}

// between is a stretch of the map's points. Where it reaches the map's end nobody looked beyond.
func (t *talk) between(points []float64, low, high int, unit string) string {
	text := t.about(points[low], unit)
	if t.units != quantity.Both { // the unit is said once
		text, _ = quantity.Band(points[low], points[low]*0.94, points[low]*1.06, unit, t.units)
	}
	if low == 0 {
		text += ", where the map begins,"
	}
	text += " to " + t.about(points[high], unit)
	if high == len(points)-1 {
		text += ", where the map ends"
	}
	return text
}

// about is a point of the map, no finer than the map is.
func (t *talk) about(v float64, unit string) string {
	in := func(sys quantity.System) string {
		number, _ := quantity.Band(v, v*0.94, v*1.06, unit, sys)
		return inUnit(number, quantity.Label(unit, sys))
	}
	if t.units == quantity.Both {
		return in(quantity.Metric) + ", or " + in(quantity.Inch)
	}
	return in(t.units)
}

// standing says where the present setting lies.
func (t *talk) standing(m *calc.Window) {
	u := &t.card.Used
	if !u.Feed.Set || !u.Travel.Set {
		return
	}
	i, j := m.At(u.Feed.V, u.Travel.V)
	k := i*len(m.Travels) + j
	t.voice.say("The card stands at ", t.setting(u.Feed.V, u.Travel.V), ". ", heat(&t.card))
	if m.Nearest[k] != "" && m.Margins[k] >= 0 {
		t.voice.say(fmt.Sprintf("On the map the edge nearest to it is %s, %.0f per cent of feed or travel away.", m.Nearest[k], m.Margins[k]))
	}
}

func remedy(r *calc.Remedy) string {
	switch {
	case r.Late:
		return "untried, this job takes long to compute"
	case !r.Tried:
		return "untried, the model has no equations for it"
	case r.Opens:
		return fmt.Sprintf("opens a good zone, %.0f per cent wide to its nearest edge", r.Margin)
	}
	return "does not help"
}
