package calc

// Part is one page beside the card: what a question about the same job comes to.
type Part struct {
	Name     string // strength air overlay machine
	Card     Card
	Figures  []Figure
	Reasons  []Reason
	Warnings []Warning
}

// Reason is a sentence with its source.
type Reason struct {
	Text   string `json:"text"`
	Known  string `json:"known"`
	Source string `json:"source"`
}

// PartOf computes a page of a job's card. Errors as Solve; a *FieldError where the job lacks what the page needs.
type PartOf func(card *Card) (Part, error)

func (p *Part) add(name, unit string, v, low, high float64, b Basis) {
	p.Figures = append(p.Figures, Figure{name, v, low, high, unit, b})
}

func (p *Part) because(text, known, source string) {
	p.Reasons = append(p.Reasons, Reason{text, known, source})
}

// Figure returns the named figure.
func (p *Part) Figure(name string) (Figure, bool) { return find(p.Figures, name) }

// seam is the length that a page counts with: the job's, or one shown as assumed.
func (p *Part) seam(card *Card, usual float64) float64 {
	if card.Used.Length.Set {
		return card.Used.Length.V
	}
	p.Card.Assumed = append(p.Card.Assumed, Assumption{"length", number(usual) + "mm", "seam's length not given"})
	return usual
}
