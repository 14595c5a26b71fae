package advice

import (
	"brazebooth/calc"
	"brazebooth/tables"
)

// Page is one page beside the card: the answer to one question about the same job.
type Page struct {
	Name     string // fit filler prepare overlay machine strength air correct cost
	Card     calc.Card
	Figures  []calc.Figure
	Reasons  []Reason
	Warnings []calc.Warning
	Verdict  string   // of fit: suits, with-care, another-way or stop
	Instead  []string // of fit: what a shop does instead

	Ranking    []Ranked    // of filler, the best first
	Order      []string    // of prepare: for each piece of the seam, when it is laid
	Correction *Correction // of correct
}

// Reason is a sentence with its source.
type Reason struct {
	Text   string  `json:"text"`
	Known  string  `json:"known"`
	Source string  `json:"source"`
	Weight float64 `json:"weight,omitzero"` // of fit: 1 speaks for it, 4 stops it; of filler: its points
	Topic  string  `json:"topic,omitzero"`  // heading that it stands under
}

// PageOf computes a page of a job's card. Errors as Solve; a *mistake.Error where the job lacks what the page needs.
type PageOf func(card *calc.Card) (Page, error)

func (p *Page) add(name, unit string, v, low, high float64, b calc.Basis) {
	const bit = 1e-12 // ends computed another way than the value may miss it by a last bit
	if low > v && low < v*(1+bit) {
		low = v
	}
	if high < v && high > v*(1-bit) {
		high = v
	}
	p.Figures = append(p.Figures, calc.Figure{Name: name, Value: v, Low: low, High: high, Unit: unit, Basis: b})
}

func (p *Page) because(text, known, source string) {
	p.Reasons = append(p.Reasons, Reason{Text: text, Known: known, Source: source})
}

// Figure returns the named figure.
func (p *Page) Figure(name string) (calc.Figure, bool) { return calc.FigureNamed(p.Figures, name) }

// usualSeam is the length of seam that every page assumes where none was given, mm.
const usualSeam = 300.0

// seamLength is the seam of the job, or the usual one, shown as a figure since everything else depends on it.
func (p *Page) seamLength(card *calc.Card) float64 {
	v := p.seam(card, usualSeam)
	b := calc.Basis{Formula: calc.GivenFormula, Source: "user", Known: "given"}
	if !card.Used.Length.Set {
		b = calc.Basis{Formula: "not given: taken as this on every page", Source: "common practice, no source", Known: string(tables.Practice)}
	}
	p.add("seam_length", "mm", v, v, v, b)
	return v
}

// seam is the length that a page counts with: the job's, or one shown as assumed.
func (p *Page) seam(card *calc.Card, usual float64) float64 {
	if card.Used.Length.Set {
		return card.Used.Length.V
	}
	p.Card.Assumed = append(p.Card.Assumed, calc.Assumption{Field: "length", Value: calc.Number(usual) + "mm", Why: "seam's length not given"})
	return usual
}
