package report

import (
	"bytes"
	"encoding/csv"
	"strconv"

	"brazebooth/calc"
)

// gapDocument is a timed arc's answer as JSON, version 1.
type gapDocument struct {
	Schema   int               `json:"schema"`
	Version  string            `json:"version"`
	Job      calc.Job          `json:"job"`
	Used     calc.Job          `json:"used"`
	Good     bool              `json:"good"`
	Reason   string            `json:"reason"`
	Why      string            `json:"why"`
	Zone     string            `json:"zone"`
	Figures  []figure          `json:"figures"`
	Limits   []calc.RangeLimit `json:"limits"`
	Spots    int               `json:"spots"`
	Seam     float64           `json:"seam"` // mm
	Wider    *calc.Wider       `json:"wider,omitempty"`
	Remedies []calc.Remedy     `json:"remedies"`
	Warnings []calc.Warning    `json:"warnings"`
}

// GapJSON writes the times of a timed arc as one JSON document.
func GapJSON(s *calc.Timed, version string) ([]byte, error) {
	d := gapDocument{Schema: Schema, Version: version, Job: s.Job, Used: s.Card.Used, Good: s.Good, Reason: s.Reason, Why: s.Why,
		Zone: s.Card.Zone, Figures: []figure{}, Limits: orEmpty(s.Limits), Spots: s.Count, Seam: s.Seam, Wider: s.Wider,
		Remedies: orEmpty(s.Remedies), Warnings: orEmpty(s.Card.Warnings)}
	for i := range s.Figures {
		f := &s.Figures[i]
		d.Figures = append(d.Figures, figure{f.Name, f.Value, f.Low, f.High, f.Unit, basisOf(&f.Basis)})
	}
	return encode(d)
}

// GapCSV writes the heat trace, one line a moment: time in s, arc 1 or 0, temperatures in C.
func GapCSV(s *calc.Timed) ([]byte, error) {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	rows := [][]string{{"time_s", "arc", "root_edge_C", "centre_C", "back_face_C"}}
	for _, p := range s.Trace {
		arc := "0"
		if p.On {
			arc = "1"
		}
		rows = append(rows, []string{strconv.FormatFloat(p.Time, 'f', 4, 64), arc, degrees(p.Edge), degrees(p.Centre), degrees(p.Back)})
	}
	err := w.WriteAll(rows)
	return out.Bytes(), err
}

func degrees(v float64) string { return strconv.FormatFloat(v, 'f', 1, 64) }
