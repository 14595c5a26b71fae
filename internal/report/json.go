package report

import (
	"bytes"
	"encoding/json"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/plain"
)

// Schema is the version of the JSON that docs/schema.json describes.
const Schema = 1

// stamp begins every document.
type stamp struct {
	Schema  int    `json:"schema"`
	Version string `json:"version"`
}

// document is a card as JSON. Values that do not apply are absent or empty, never zero.
type document struct {
	stamp
	Job      calc.Job          `json:"job"`
	Used     calc.Job          `json:"used"`
	Assumed  []calc.Assumption `json:"assumed"`
	Figures  []figure          `json:"figures"`
	Settings []calc.Note       `json:"settings"`
	Warnings []calc.Warning    `json:"warnings"`
	Edges    []edge            `json:"edges"`
	Unjudged []calc.Unjudged   `json:"not_judged,omitempty"`
	Zone     string            `json:"zone"`
	Verdict  string            `json:"verdict"`
	Sections map[string]any    `json:"sections"`
}

type figure struct {
	*calc.Figure
	Basis basis `json:"basis"`
}

type edge struct {
	*calc.Edge
	Basis basis `json:"basis"`
}

type basis struct {
	Formula     string       `json:"formula"`
	Substituted string       `json:"substituted"`
	Inputs      []calc.Input `json:"inputs"`
	Source      string       `json:"source"`
	Known       string       `json:"known"`
}

// JSON writes a finding as one JSON document with a line break at its end.
func JSON(blocks []Block, version string) ([]byte, error) {
	for _, b := range blocks {
		if whole, ok := b.(documented); ok {
			return Encode(whole.document(stamp{Schema, version}))
		}
	}
	return Encode(documentOf(blocks, version))
}

// JSONLine is a card as JSON on one line, together with the input that it answers, which is also JSON on one line.
func JSONLine(card *calc.Card, version string, input []byte) ([]byte, error) {
	return encode(struct {
		Input json.RawMessage `json:"input"`
		*document
	}{input, documentOf(Card(card), version)}, "")
}

func documentOf(blocks []Block, version string) *document {
	d := &document{stamp: stamp{Schema, version}, Figures: []figure{}, Warnings: []calc.Warning{},
		Sections: map[string]any{}}
	d.take(blocks)
	return d
}

// take puts blocks into the document. A page's own content goes into a section of its name. A page that stands alone
// also has its figures and cautions at the top level.
func (d *document) take(blocks []Block) {
	for _, b := range blocks {
		switch b := b.(type) {
		case Head:
			c := b.Card
			d.Job, d.Used, d.Zone, d.Verdict, d.Edges = c.Job, c.Used, c.Zone, c.Verdict(), each(c.Edges, edgeOf)
			d.Unjudged = c.Unjudged
			d.Settings, d.Assumed = OrEmpty(c.Notes), OrEmpty(c.Assumed)
		case Stops:
			d.Warnings = append(d.Warnings, b.List...)
		case Cautions:
			d.Warnings = append(d.Warnings, b.List...)
		case Figures:
			d.Figures = each(b.List, figureOf)
		case Checks:
			d.Sections["check_first"] = OrEmpty(b.List)
		case Section:
			if b.Drawn {
				d.Sections["cross_section"] = b.Section
			}
		case Chapter:
			d.take(b.Blocks)
		case Body:
			s := sectionOf(b.Page)
			if !b.Brief { // the page stands alone
				d.Figures, d.Warnings = s.Figures, append(d.Warnings, s.Warnings...)
				s.Figures, s.Warnings = nil, nil
			}
			d.Sections[b.Name] = s
		}
	}
}

// section is a page in "sections".
type section struct {
	Verdict  string          `json:"verdict,omitempty"`
	Figures  []figure        `json:"figures,omitempty"` // of a page among others; else at the top level
	Reasons  []advice.Reason `json:"reasons"`
	Warnings []calc.Warning  `json:"warnings,omitempty"` // of a page among others
	Instead  *[]string       `json:"instead,omitempty"`
	Ranking  []advice.Ranked `json:"ranking,omitempty"`
	Order    []string        `json:"order,omitempty"`
	*advice.Correction
}

func sectionOf(p *advice.Page) section {
	s := section{Verdict: p.Verdict, Figures: each(p.Figures, figureOf), Reasons: OrEmpty(p.Reasons),
		Warnings: p.Warnings, Ranking: p.Ranking, Order: p.Order, Correction: p.Correction}
	if p.Verdict != "" || len(p.Instead) > 0 {
		list := OrEmpty(p.Instead)
		s.Instead = &list
	}
	return s
}

// each maps a list. The result is never nil, which keeps null out of the JSON.
func each[T, U any](list []T, of func(*T) U) []U {
	out := make([]U, len(list))
	for i := range list {
		out[i] = of(&list[i])
	}
	return out
}

func basisOf(b *calc.Basis) basis {
	return basis{b.Plain(), b.Substituted(), OrEmpty(b.Inputs), b.Source, b.Known}
}

func figureOf(f *calc.Figure) figure { return figure{f, basisOf(&f.Basis)} }

func edgeOf(e *calc.Edge) edge { return edge{e, basisOf(&e.Basis)} }

// Encode writes a value in the form of every document: indented, safe for a terminal, with a line break at its end.
func Encode(v any) ([]byte, error) { return encode(v, "  ") }

func encode(v any, indent string) ([]byte, error) {
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", indent)
	err := enc.Encode(v)
	return plain.JSON(out.Bytes()), err
}

// OrEmpty replaces nil by an empty list, which keeps null out of the JSON.
func OrEmpty[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}
