package report

import (
	"fmt"
	"math"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// Grid is an operating window over every wire feed and travel: a picture, and in words the ranges that are good.
type Grid struct {
	*calc.Window
	Given *calc.Card // of the setting that was asked about, nil for none
}

// Window is everything that an operating window shows. given is the card of the setting that was asked about, nil for
// none.
func Window(m *calc.Window, given *calc.Card) []Block {
	g := Grid{m, given}
	list := []Block{Head{Card: &m.Card, Title: "Window"}, stopsOf(&m.Card), g}
	if given != nil {
		list = append(list, lines(g.given), Edges{Card: given})
	}
	return append(list, lines(g.suggested), Edges{Card: &m.Card}, Remedies{List: m.Remedies},
		Cautions{dangers(&m.Card, nil), true, true})
}

func (g Grid) words(o Options) []Line {
	list := []Line{{Kind: Picture, Of: g}}
	if o.Heard {
		list = g.ranges(o)
	}
	if words := g.CoarserWords(); words != "" {
		list = append(list, Line{Text: "The map is " + words + "."})
	}
	return list
}

// given says where the setting that was asked about lies.
func (g Grid) given(o Options) []Line {
	marked := " (marked " + string(givenMark) + ")"
	if o.Heard {
		marked = ""
	}
	return []Line{{Text: g.asked(marked, o) + "."}}
}

// asked is the setting that was asked about with its verdict. where says how the map marks it, if it lies on the map.
func (g Grid) asked(where string, o Options) string {
	if _, _, on := givenPoint(g.Window, g.Given); !on {
		where = " (beyond this map)"
	}
	u := &g.Given.Used
	return whatGiven(&g.Given.Job) + ": " + setting(u.Feed.V, u.Travel.V, o) + where + ": " + VerdictText(g.Given)
}

// suggested is the suggested setting with its chance.
func (g Grid) suggested(o Options) []Line {
	at := setting(g.Suggestion.Feed, g.Suggestion.Travel, o)
	lead := "Suggested: "
	switch {
	case !g.Card.Met():
		lead = "No feed and travel meet every edge by more than a hand repeats. The nearest miss: "
	case g.Card.Verdict() == "marginal":
		lead = "Marginal. Suggested: "
	}
	missed := ""
	if words := g.Chance.Words(); words != "" {
		missed = " Most often missed: " + words + "."
	}
	return []Line{{Text: fmt.Sprintf("%s%s. Chance that it meets every edge, over everything uncertain: %.0f in 100.%s",
		lead, at, g.Chance.Good, missed)}}
}

// setting is a wire feed, m/min, and a travel, mm/s. A reader can tell them by their units; a listener hears their
// names.
func setting(feed, travel float64, o Options) string {
	words := "%s at %s"
	if o.Heard {
		words = "wire feed %s at travel %s"
	}
	return fmt.Sprintf(words, quantity.ShowDialed("wire_feed", feed, "m/min", o.Units),
		quantity.ShowDialed("travel", travel, "mm/s", o.Units))
}

// whatGiven says which of feed and travel were given and which one the card adds.
func whatGiven(j *calc.Job) string {
	switch {
	case j.Travel.Set && (j.Feed.Set || j.Amps.Set):
		return "As given"
	case j.Travel.Set:
		return "Travel as given, with the feed that the card suggests"
	case j.Feed.Set:
		return "Wire feed as given, with the travel that the card suggests"
	}
	return "Current as given, with the travel that the card suggests"
}

// givenMark marks the setting that was asked about in a window.
const givenMark = 'G'

// givenPoint is the window's point nearest to the setting that was asked about. on is false if there is no such
// setting, or if it lies outside the window.
func givenPoint(m *calc.Window, given *calc.Card) (i, j int, on bool) {
	if given == nil || !given.Used.Feed.Set || !given.Used.Travel.Set {
		return 0, 0, false
	}
	i, j = m.At(given.Used.Feed.V, given.Used.Travel.V)
	return i, j, within(m.Feeds, i, given.Used.Feed.V) && within(m.Travels, j, given.Used.Travel.V)
}

// within reports whether a value is no further from a point of an axis than the point's neighbours.
func within(axis []float64, i int, v float64) bool {
	step := math.Log(axis[1] / axis[0])
	return math.Abs(math.Log(v/axis[i])) <= step
}

// ranges say between which travels everything is met at the suggested feed, and between which feeds at a few travels.
func (g *Grid) ranges(o Options) []Line {
	var list []Line
	si, sj := g.At(g.Suggestion.Feed, g.Suggestion.Travel)
	if slow, fast := run(len(g.Travels), sj, func(j int) bool { return g.good(si, j) }); slow <= fast {
		good := between(g.Travels, slow, fast, "mm/s", o.Units)
		list = append(list, Line{Text: "At the suggested wire feed travel is good from " + good + "."})
	}
	told := -1
	for j, travel := range g.Travels {
		some := 0
		for some < len(g.Feeds) && !g.good(some, j) {
			some++
		}
		if some == len(g.Feeds) || told >= 0 && j != sj && j-told < 3 {
			continue
		}
		told = j
		low, high := run(len(g.Feeds), some, func(i int) bool { return g.good(i, j) })
		at, good := about(travel, "mm/s", o.Units), between(g.Feeds, low, high, "m/min", o.Units)
		list = append(list, Line{Text: "At travel " + at + " wire feed is good from " + good + "."})
	}
	return list
}

// good reports whether every edge is met at a point.
func (g *Grid) good(i, j int) bool {
	k := i*len(g.Travels) + j
	return g.Margins[k] >= 0 && g.Zones[k] == "good"
}

// run is the range of good points around a point. It is empty, with from above to, if that point is not good.
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

// between is a range of the window's points. If it reaches the end of the window, it says that nothing beyond was
// computed.
func between(points []float64, low, high int, unit string, sys quantity.System) string {
	text := about(points[low], unit, sys)
	if sys != quantity.Both { // the unit is written once
		text = axisPoint(points[low], unit, sys)
	}
	if low == 0 {
		text += ", where the map begins,"
	}
	text += " to " + about(points[high], unit, sys)
	if high == len(points)-1 {
		text += ", where the map ends"
	}
	return text
}

// about is a point of a window with its unit.
func about(v float64, unit string, sys quantity.System) string {
	if sys == quantity.Both {
		said := quantity.ShownValue(axisPoint(v, unit, quantity.Metric), v)
		return about(v, unit, quantity.Metric) + " (" + about(said, unit, quantity.Inch) + ")"
	}
	return axisPoint(v, unit, sys) + " " + quantity.Label(unit, sys)
}
