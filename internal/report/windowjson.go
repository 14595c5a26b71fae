package report

import (
	"math"

	"brazebooth/calc"
)

// windowDocument is an operating window as JSON, version 1.
type windowDocument struct {
	Schema  int      `json:"schema"`
	Version string   `json:"version"`
	Job     calc.Job `json:"job"`
	Axes    struct {
		Feed   []float64 `json:"wire_feed"` // m/min
		Travel []float64 `json:"travel"`    // mm/s
	} `json:"axes"`
	Zones      []string        `json:"zones"`   // feed outer
	Margins    []float64       `json:"margins"` // %
	Aims       []float64       `json:"aims,omitempty"`
	Coarser    bool            `json:"coarser,omitempty"`
	Suggestion calc.Suggestion `json:"suggestion"`
	Given      *givenSetting   `json:"given,omitempty"`
	Good       bool            `json:"good"`
	Edges      []edge          `json:"edges"` // at the suggestion
	calc.Chance
	Remedies []calc.Remedy `json:"remedies"`
}

// WindowJSON writes an operating window as one JSON document, with the setting that was asked about, nil for none.
func WindowJSON(m *calc.Window, given *calc.Card, version string) ([]byte, error) {
	d := windowDocument{Schema: Schema, Version: version, Job: m.Job, Zones: m.Zones, Margins: make([]float64, len(m.Margins)), Aims: m.Aims, Coarser: m.Coarser,
		Suggestion: m.Suggestion, Given: givenOf(given), Good: m.Good, Edges: edgesOf(m.Card.Edges), Chance: m.Chance, Remedies: orEmpty(m.Remedies)}
	d.Axes.Feed, d.Axes.Travel = m.Feeds, m.Travels
	for i, v := range m.Margins {
		d.Margins[i] = math.Round(v*10) / 10
	}
	return encode(d)
}

func edgesOf(list []calc.Edge) []edge {
	out := make([]edge, 0, len(list))
	for i := range list {
		e := &list[i]
		out = append(out, edge{e.Name, e.Margin, e.Met, basisOf(&e.Basis)})
	}
	return out
}

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
