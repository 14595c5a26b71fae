package report

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// PartText writes a page beside the card as plain text of at most 80 columns: figures, reasons with their marks,
// cautions.
func PartText(p *advice.Page, o Options) string {
	w := writer{comma: o.Comma}
	w.head(&p.Card, o)
	w.stops(&p.Card)
	w.part(p, o)
	w.short(dangers(&p.Card, p.Warnings))
	w.assumed(&p.Card)
	if len(o.Open) > 0 {
		w.line("")
		w.para("You may also give: ", "--"+strings.Join(o.Open, " --"))
	}
	return w.String()
}

// stops are the lines that no page may be without.
func (w *writer) stops(card *calc.Card) {
	stops := calc.Stops(card.Warnings)
	for _, l := range stops {
		w.para("STOP  ", l.Text)
		w.line("")
	}
	if len(stops) > 0 {
		w.para("", "What follows is computed for comparison only: do not strike the arc on it.")
		w.line("")
	}
}

// part writes what is a page's own.
func (w *writer) part(p *advice.Page, o Options) {
	w.verdict(p)
	w.correction(p.Correction, o)
	w.ranking(p)
	for i := range p.Figures {
		w.partFigure(p, &p.Figures[i], o)
	}
	if len(p.Figures) > 0 {
		w.line("")
	}
	w.order(p.Order)
	w.reasons(p.Reasons, o)
	for _, l := range p.Warnings {
		w.para(strings.ToUpper(string(l.Severity))+"  ", l.Text)
	}
	if len(p.Warnings) > 0 {
		w.line("")
	}
}

func (w *writer) verdict(p *advice.Page) {
	if p.Verdict != "" {
		w.line("Verdict: %s", VerdictText(p.Verdict))
	}
	for _, x := range p.Instead {
		w.para("  instead: ", x)
	}
	if p.Verdict != "" || len(p.Instead) > 0 {
		w.line("")
	}
}

func (w *writer) partFigure(p *advice.Page, f *calc.Figure, o Options) {
	value, band := quantity.Band(f.Value, f.Low, f.High, f.Unit, lead(o.Units))
	if f.Unit == "1" { // a count
		value, band = fmt.Sprintf("%.0f", f.Value), fmt.Sprintf("%.0f–%.0f", f.Low, f.High)
	}
	if f.Low == f.High {
		band = ""
	}
	w.line("  %-17s %9s %-*s %-13s %s", calc.FigureLabel(f.Name), value, unitColumn(p.Figures, o), quantity.Label(f.Unit, lead(o.Units)), band, aside(&p.Card, f, o))
	if o.Why {
		w.reason(f)
	}
}

// reasons are sentences with how each is known, under their topics where they have some.
func (w *writer) reasons(list []advice.Reason, o Options) {
	topic := ""
	for _, r := range list {
		if r.Topic != topic {
			if topic != "" {
				w.line("")
			}
			topic = r.Topic
			w.line("%s", strings.ToUpper(topic[:1])+topic[1:])
		}
		w.para("- ", r.Text+" ("+r.Known+")")
		if o.Why {
			w.cite("    source: ", r.Source)
		}
	}
	if len(list) > 0 {
		w.line("")
	}
}

// order draws a seam's pieces with the turn in which each is laid.
func (w *writer) order(list []string) {
	if len(list) == 0 {
		return
	}
	w.para("", "Turn of each piece along the seam, each laid back toward the finished end:")
	line := "  |"
	for _, turn := range list {
		if len(line)+len(turn)+3 > width {
			w.line("%s", line)
			line = "  |"
		}
		line += "-" + turn + "-|"
	}
	w.line("%s", line)
	w.line("")
}

// ranking is every filler, the best first, with what speaks for it and against.
func (w *writer) ranking(p *advice.Page) {
	for i := range p.Ranking {
		r := &p.Ranking[i]
		if r.RuledOut {
			w.para("  x  ", r.ID+", "+r.Name+": ruled out")
		} else {
			w.para(fmt.Sprintf("%3d  ", i+1), r.ID+", "+r.Name+": "+FillerFacts(r, p.Card.Used.Currency))
		}
		for _, x := range r.For {
			w.para("       + ", x.Text+" ("+x.Known+")")
		}
		for _, x := range r.Against {
			w.para("       - ", x.Text+" ("+x.Known+")")
		}
	}
	if len(p.Ranking) > 0 {
		w.line("")
	}
}

// FillerFacts is what stands beside a ranked filler's name.
func FillerFacts(r *advice.Ranked, currency string) string {
	parts := []string{r.Colour, fmt.Sprintf("%.0f MPa", r.Tensile)}
	if r.Wire != nil {
		parts = append(parts, fmt.Sprintf("%.0f g of wire a metre", *r.Wire))
	}
	if r.Cost != nil {
		parts = append(parts, fmt.Sprintf("%.2f %s a metre at the price given", *r.Cost, money(currency)))
	}
	return strings.Join(parts, ", ")
}

func money(currency string) string {
	if currency == "" {
		return "money"
	}
	return currency
}

// correction is the one change and the causes.
func (w *writer) correction(c *advice.Correction, o Options) {
	if c == nil {
		return
	}
	if text := CorrectionText(c.Change, c.Do, o.Units); text != "" {
		w.para("CHANGE  ", text)
	}
	w.para("", c.Why)
	w.line("")
}

// CorrectionText is the one thing to change after a bead: a setting, or what is done in place of one; "" where nothing is.
func CorrectionText(c *advice.Change, do string, sys quantity.System) string {
	if c != nil {
		return ChangeText(c, sys)
	}
	return do
}

// ChangeText says a change in words: "travel from 9.3 to 8.1 mm/s".
func ChangeText(c *advice.Change, sys quantity.System) string {
	if c.What == "mode" {
		return fmt.Sprintf("mode from %s to %s", c.FromMode, c.ToMode)
	}
	text := func(v float64) string { return quantity.Show(v, c.Unit, sys) }
	if c.What == "arc_on" || c.What == "arc_off" {
		text = func(v float64) string { return fmt.Sprintf("%.2f s", v) }
	}
	return fmt.Sprintf("%s from %s to %s", calc.FigureLabel(c.What), text(c.From), text(c.To))
}

// SightText is a sight's name over its drawing.
func SightText(s *tables.Sight) string {
	return s.ID + ": " + s.Name + "\n    " + strings.Join(s.Drawing, "\n    ") + "\n"
}

// partSection is a page under sections in JSON.
type partSection struct {
	Verdict  string          `json:"verdict,omitempty"`
	Figures  []figure        `json:"figures,omitempty"` // of a sheet; a page's own stand at the top
	Reasons  []advice.Reason `json:"reasons"`
	Warnings []calc.Warning  `json:"warnings,omitempty"` // of a sheet
	Instead  *[]string       `json:"instead,omitempty"`
	Ranking  []advice.Ranked `json:"ranking,omitempty"`
	Order    []string        `json:"order,omitempty"`
	*advice.Correction
}

func sectionOf(p *advice.Page) partSection {
	s := partSection{Verdict: p.Verdict, Reasons: orEmpty(p.Reasons), Ranking: p.Ranking, Order: p.Order, Correction: p.Correction}
	if p.Verdict != "" || len(p.Instead) > 0 {
		list := orEmpty(p.Instead)
		s.Instead = &list
	}
	return s
}

// PartJSON writes a page as a card's document with the page's figures, its own cautions and the card's of what hurts a
// hand, and its reasons under sections.
func PartJSON(p *advice.Page, version string) ([]byte, error) {
	c := p.Card
	c.Figures = p.Figures
	c.Warnings = slices.Concat([]calc.Warning{}, p.Warnings, calc.Stops(p.Card.Warnings), dangers(&p.Card, p.Warnings))
	c.Section.Drawn = false
	d := documentOf(&c, version)
	b, err := json.Marshal(sectionOf(p))
	if err != nil {
		return nil, err
	}
	d.Sections[p.Name] = b
	return encode(d)
}

// VerdictText is a verdict in plain words.
func VerdictText(v string) string {
	switch v {
	case advice.Suits:
		return "suits"
	case advice.WithCare:
		return "possible with care"
	case advice.AnotherWay:
		return "choose another way"
	}
	return "STOP"
}
