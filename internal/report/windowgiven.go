package report

import (
	"math"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// givenMark stands on a map where the setting lies that was asked about.
const givenMark = 'G'

// givenSetting is a setting that was asked about, as JSON.
type givenSetting struct {
	Feed    float64 `json:"wire_feed"` // m/min
	Travel  float64 `json:"travel"`    // mm/s
	Zone    string  `json:"zone"`
	Verdict string  `json:"verdict"`
	Edges   []edge  `json:"edges"`
}

func givenOf(given *calc.Card) *givenSetting {
	if given == nil {
		return nil
	}
	return &givenSetting{given.Used.Feed.V, given.Used.Travel.V, given.Zone, given.Verdict(), edgesOf(given.Edges)}
}

// givenPoint is the map's point nearest to a setting that was asked about; false for none, and for one beyond the map.
func givenPoint(m *calc.Window, given *calc.Card) (i, j int, on bool) {
	if given == nil || !given.Used.Feed.Set || !given.Used.Travel.Set {
		return 0, 0, false
	}
	i, j = m.At(given.Used.Feed.V, given.Used.Travel.V)
	return i, j, within(m.Feeds, i, given.Used.Feed.V) && within(m.Travels, j, given.Used.Travel.V)
}

// within reports whether a value is no further from a point of an axis than its neighbours are.
func within(axis []float64, i int, v float64) bool {
	step := math.Log(axis[1] / axis[0])
	return math.Abs(math.Log(v/axis[i])) <= step
}

// givenText says of the setting that was asked about where it lies and how far every edge is.
func (w *writer) givenText(m *calc.Window, given *calc.Card, o Options) {
	if given == nil {
		return
	}
	at := quantity.Show(given.Used.Feed.V, "m/min", o.Units) + " at " + quantity.Show(given.Used.Travel.V, "mm/s", o.Units)
	where := "marked " + string(givenMark)
	if _, _, on := givenPoint(m, given); !on {
		where = "beyond this map"
	}
	w.para("", whatGiven(&given.Job)+": "+at+" ("+where+"): "+verdictText(given)+".")
	w.line("")
	for i := range given.Edges {
		w.line("  %-18s %s", given.Edges[i].Name, edgeText(&given.Edges[i]))
	}
	w.line("")
}

// whatGiven says which of feed and travel were given and which the card adds.
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
