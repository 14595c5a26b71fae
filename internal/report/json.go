// Package report writes a card for a reader: as text, and as JSON for a program.
package report

import (
	"bytes"
	"encoding/json"
	"slices"
	"sync"

	"brazebooth/calc"
	"brazebooth/internal/plain"
)

// Schema is the version of the JSON that docs/schema.json describes.
const Schema = 1

// document is a card as JSON. What does not apply is absent or empty, never zero.
type document struct {
	Schema   int                        `json:"schema"`
	Version  string                     `json:"version"`
	Job      calc.Job                   `json:"job"`
	Used     calc.Job                   `json:"used"`
	Assumed  []calc.Assumption          `json:"assumed"`
	Figures  []figure                   `json:"figures"`
	Settings []calc.Note                `json:"settings"`
	Warnings []calc.Warning             `json:"warnings"`
	Edges    []edge                     `json:"edges"`
	Zone     string                     `json:"zone"`
	Verdict  string                     `json:"verdict"`
	Sections map[string]json.RawMessage `json:"sections"`
}

type figure struct {
	Name  string  `json:"name"`
	Value float64 `json:"value"`
	Low   float64 `json:"low"`
	High  float64 `json:"high"`
	Unit  string  `json:"unit"`
	Basis basis   `json:"basis"`
}

type basis struct {
	Formula     string  `json:"formula"`
	Substituted string  `json:"substituted"`
	Inputs      []input `json:"inputs"`
	Source      string  `json:"source"`
	Known       string  `json:"known"`
}

type input struct {
	Name        string  `json:"name"`
	Symbol      string  `json:"symbol,omitempty"`
	Value       float64 `json:"value"`
	Unit        string  `json:"unit"`
	Assumed     bool    `json:"assumed"`
	Sensitivity float64 `json:"sensitivity"` // % of the figure, at the edge of the input's own 95 % band
}

type edge struct {
	Name   string  `json:"name"`
	Margin float64 `json:"margin"`
	Met    bool    `json:"met"`
	Basis  basis   `json:"basis"`
}

// JSON writes the card as one JSON document, version 1, ending in a line break.
func JSON(card *calc.Card, version string) ([]byte, error) {
	d := documentOf(card, version)
	if err := d.draw(card); err != nil {
		return nil, err
	}
	return encode(d)
}

// scratch holds lines before they are made safe: a card on one line takes forty kilobytes, and there may be many thousands.
var scratch = sync.Pool{New: func() any { return new(bytes.Buffer) }}

// AppendLine appends the card as one line of JSON, as JSON writes it, behind the input that it answers: JSON on one line.
func AppendLine(to []byte, card *calc.Card, version string, input []byte) ([]byte, error) {
	d := struct {
		Input json.RawMessage `json:"input"`
		document
	}{input, documentOf(card, version)}
	if err := d.draw(card); err != nil {
		return to, err
	}
	out := scratch.Get().(*bytes.Buffer)
	defer scratch.Put(out)
	out.Reset()
	enc := json.NewEncoder(out)
	enc.SetEscapeHTML(false)
	err := enc.Encode(&d)
	return plain.AppendJSON(slices.Grow(to, out.Len()), out.Bytes()), err
}

// draw adds the picture of the joint's cross-section.
func (d *document) draw(card *calc.Card) error {
	if !card.Section.Drawn {
		return nil
	}
	b, err := json.Marshal(card.Section)
	d.Sections["cross_section"] = b
	return err
}

func documentOf(card *calc.Card, version string) document {
	return document{Schema: Schema, Version: version, Job: card.Job, Used: card.Used, Zone: card.Zone, Verdict: card.Verdict(),
		Assumed: orEmpty(card.Assumed), Settings: orEmpty(card.Notes), Warnings: orEmpty(card.Warnings),
		Figures: figuresOf(card.Figures), Edges: edgesOf(card.Edges), Sections: map[string]json.RawMessage{}}
}

func figuresOf(list []calc.Figure) []figure {
	out := make([]figure, 0, len(list))
	for i := range list {
		f := &list[i]
		out = append(out, figure{f.Name, f.Value, f.Low, f.High, f.Unit, basisOf(&f.Basis)})
	}
	return out
}

func encode(v any) ([]byte, error) {
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	err := enc.Encode(v)
	return plain.JSON(out.Bytes()), err
}

func basisOf(b *calc.Basis) basis {
	out := basis{Formula: b.Plain(), Substituted: b.Substituted(), Source: b.Source, Known: b.Known, Inputs: make([]input, 0, len(b.Inputs))}
	for _, in := range b.Inputs {
		out.Inputs = append(out.Inputs, input{in.Name, in.Symbol, in.Value, in.Unit, in.Assumed, in.Sensitivity})
	}
	return out
}

// orEmpty keeps null out of the JSON.
func orEmpty[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}
