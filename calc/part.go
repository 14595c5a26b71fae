package calc

import "brazebooth/tables"

// Part is one page beside the card: what a question about the same job comes to.
type Part struct {
	Name     string // fit filler prepare overlay machine strength air correct cost
	Card     Card
	Figures  []Figure
	Reasons  []Reason
	Warnings []Warning
	Verdict  string   // of fit: suits, with-care, another-way or stop
	Instead  []string // of fit: what a shop does instead

	Ranking    []Ranked    // of filler, the best first
	Order      []string    // of prepare: the seam's pieces in the order in which they are laid
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

// PartOf computes a page of a job's card. Errors as Solve; a *FieldError where the job lacks what the page needs.
type PartOf func(card *Card) (Part, error)

func (p *Part) add(name, unit string, v, low, high float64, b Basis) {
	const bit = 1e-12 // ends that are computed another way than the value may miss it by a last bit
	if low > v && low < v*(1+bit) {
		low = v
	}
	if high < v && high > v*(1-bit) {
		high = v
	}
	p.Figures = append(p.Figures, Figure{name, v, low, high, unit, b})
}

func (p *Part) because(text, known, source string) {
	p.Reasons = append(p.Reasons, Reason{Text: text, Known: known, Source: source})
}

// Figure returns the named figure.
func (p *Part) Figure(name string) (Figure, bool) { return find(p.Figures, name) }

// usualSeam is the seam that every page takes where no length was given, mm.
const usualSeam = 300.0

// seamLength is the seam of the job, or the usual one, shown as a figure since everything else goes by it.
func (p *Part) seamLength(card *Card) float64 {
	v := p.seam(card, usualSeam)
	b := Basis{Formula: givenFormula, Source: "user", Known: "given"}
	if !card.Used.Length.Set {
		b = Basis{Formula: "not given: taken as this on every page", Source: "common practice, no source", Known: string(tables.Practice)}
	}
	p.add("seam_length", "mm", v, v, v, b)
	return v
}

// seam is the length that a page counts with: the job's, or one shown as assumed.
func (p *Part) seam(card *Card, usual float64) float64 {
	if card.Used.Length.Set {
		return card.Used.Length.V
	}
	p.Card.Assumed = append(p.Card.Assumed, Assumption{"length", number(usual) + "mm", "seam's length not given"})
	return usual
}
