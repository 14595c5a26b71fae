package advice

import (
	"context"
	"fmt"
	"slices"

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
	Weight float64 `json:"weight,omitzero"` // of fit: 1 in favour, 4 stops the job; of filler: its points
	Topic  string  `json:"topic,omitzero"`  // heading above it
}

// PageOf computes a page of a job's card. Errors are those of Solve, or a *mistake.Error if the job lacks
// something; a page that takes long ends with ctx's error once ctx is cancelled.
type PageOf func(ctx context.Context, card *calc.Card) (Page, error)

// add puts a figure on the page and returns it.
func (p *Page) add(name, unit string, v, low, high float64, b calc.Basis) calc.Figure {
	return p.take(calc.NewFigure(name, unit, v, low, high, b))
}

// take puts a figure on the page unchanged and returns it.
func (p *Page) take(f calc.Figure) calc.Figure {
	p.Figures = append(p.Figures, f)
	return f
}

// scaled puts a multiple of another figure on the page.
func (p *Page) scaled(name, unit string, f calc.Figure, by float64, b calc.Basis) calc.Figure {
	return p.add(name, unit, f.Value*by, f.Low*by, f.High*by, b)
}

// newReason makes a sentence with its source. The format is always interpreted: a literal % is written %%.
func newReason(o tables.Origin, format string, args []any) Reason {
	return Reason{Text: fmt.Sprintf(format, args...), Known: string(o.Known), Source: o.Source}
}

// Because adds a reason to the page and returns it so that the caller can set its other fields.
func (p *Page) Because(o tables.Origin, format string, args ...any) *Reason {
	p.Reasons = append(p.Reasons, newReason(o, format, args))
	return &p.Reasons[len(p.Reasons)-1]
}

// Warn adds a caution to the page.
func (p *Page) Warn(code, basis, format string, args ...any) {
	p.Warnings = append(p.Warnings, calc.Warning{Code: code, Severity: calc.Caution, Text: fmt.Sprintf(format, args...),
		Basis: basis})
}

// Own is the origin of statements that this program computes itself.
func Own(source string) tables.Origin { return tables.Origin{Source: source, Known: calc.OwnCalc} }

// members end the names of a card's figures of each member.
var members = [...]string{"", "_2"}

// Origins that many reasons share.
var (
	ownJob     = Own("the job")
	fillets    = Own(filletSource)
	ownSection = Own(calc.SectionSource)
	practice   = tables.Origin{Source: "common practice, no source", Known: "common practice, no source"}
)

// Figure returns the named figure.
func (p *Page) Figure(name string) (calc.Figure, bool) { return calc.FigureNamed(p.Figures, name) }

// usualSeam is the length of seam that every page assumes where none was given, mm.
const usualSeam = 300.0

// seamLength is the job's seam length, or the usual one; it is shown as a figure because everything depends on
// it.
func (p *Page) seamLength(card *calc.Card) float64 {
	v := p.seam(card, usualSeam)
	f := calc.GivenFigure("seam_length", v, "mm")
	if !card.Used.Length.Set {
		f.Basis = calc.RowBasis("not given: taken as this on every page",
			tables.Origin{Source: practice.Source, Known: tables.Practice})
	}
	p.take(f)
	return v
}

// seam is the length that a page uses: the job's, or usual, which it then shows as assumed.
func (p *Page) seam(card *calc.Card, usual float64) float64 {
	if card.Used.Length.Set {
		return card.Used.Length.V
	}
	p.assume("length", calc.Number(usual)+"mm", "seam's length not given")
	return usual
}

// operating is the share of the time during which the arc burns, %: the job's, or the usual one, shown as assumed.
func (p *Page) operating(card *calc.Card) tables.Datum {
	f, given := tables.OperatingFactor, card.Used.Operating
	if given.Set {
		f.V, f.Low, f.High = given.V, given.V, given.V
		return f
	}
	p.assume("operating", calc.Number(f.V)+"%", "arc-on share of the time, from handbooks")
	return f
}

// assume notes a value that the page uses although nobody gave it. The card's own list is shared by its pages, which
// several sessions may compute at once.
func (p *Page) assume(field, value, why string) {
	p.Card.Assumed = append(slices.Clip(p.Card.Assumed), calc.Assumption{Field: field, Value: value, Why: why})
}
