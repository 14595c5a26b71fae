package report

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/quantity"
)

func (p Body) words(o Options) []Line {
	answer := []Block{lines(p.fit), lines(p.correction)}
	rest := []Block{lines(p.ranking), Figures{&p.Card, p.Figures, OfPage}, lines(p.order), lines(p.reasons)}
	cautions := []Block{Cautions{List: p.Warnings}}
	if o.Heard { // a listener hears them before figures and reasons
		return said(slices.Concat(answer, cautions, rest), o)
	}
	return said(slices.Concat(answer, rest, cautions), o)
}

// fit says whether a job should be arc-brazed at all, and what a shop does instead.
func (p Body) fit(Options) []Line {
	var list []Line
	if p.Verdict != "" {
		list = append(list, Line{Kind: FitVerdict, Lead: p.Verdict, Text: cmp.Or(fitWords[p.Verdict], "STOP")})
	}
	for _, x := range p.Instead {
		list = append(list, Line{Kind: Instead, Text: x})
	}
	return list
}

var fitWords = map[string]string{advice.Suits: "suitable", advice.WithCare: "possible with care",
	advice.AnotherWay: "choose another way"}

// correction is the one setting to change after a test bead, and why.
func (p Body) correction(o Options) []Line {
	c := p.Correction
	if c == nil {
		return nil
	}
	var list []Line
	if text := CorrectionText(c.Change, c.Do, o.Units); text != "" {
		list = append(list, Line{Kind: Change, Text: text})
	}
	return append(list, Line{Text: c.Why})
}

// CorrectionText is the one change after a test bead: a setting, or something else to do; "" for nothing.
func CorrectionText(c *advice.Change, do string, sys quantity.System) string {
	if c == nil {
		return quantity.Sentence(do, sys)
	}
	if c.What == "mode" {
		return fmt.Sprintf("mode from %s to %s", c.FromMode, c.ToMode)
	}
	show := func(v float64) string { return quantity.ShowDialed(c.What, v, c.Unit, sys) }
	return fmt.Sprintf("%s from %s to %s", calc.FigureLabel(c.What), show(c.From), show(c.To))
}

// ranking is all fillers, the best first, with the reasons for and against each; in brief the first three in full and
// only the names of the others.
func (p Body) ranking(o Options) []Line {
	const full = 3
	var list []Line
	var others, out []string
	for i := range p.Ranking {
		f := &p.Ranking[i]
		switch {
		case !p.Brief || i < full:
			list = append(list, p.rank(i, o.Units)...)
		case f.RuledOut:
			out = append(out, f.ID)
		default:
			others = append(others, f.ID)
		}
	}
	var rest []string
	if len(others) > 0 {
		rest = append(rest, "after these: "+strings.Join(others, ", "))
	}
	if len(out) > 0 {
		rest = append(rest, "ruled out: "+strings.Join(out, ", "))
	}
	if len(rest) > 0 {
		list = append(list, Line{Text: strings.Join(rest, "; ")})
	}
	return list
}

// rank is one filler with the reasons for and against it.
func (p Body) rank(i int, sys quantity.System) []Line {
	f := &p.Ranking[i]
	parts := []string{f.Colour, fmt.Sprintf("%.0f MPa", f.Tensile)}
	if f.Wire != nil {
		parts = append(parts, fmt.Sprintf("%.0f g/m of seam", *f.Wire))
	}
	if f.Cost != nil {
		money, cost, along := cmp.Or(p.Card.Used.Currency, "money"), *f.Cost, "metre"
		if sys == quantity.Inch {
			cost, along = cost/quantity.FeetPerMetre, "foot"
		}
		parts = append(parts, fmt.Sprintf("%.2f %s a %s at the price given", cost, money, along))
	}
	facts := strings.Join(parts, ", ")
	if f.RuledOut {
		facts = "ruled out"
	}
	list := []Line{{Kind: Rank, N: i + 1, Bad: f.RuledOut, Text: f.ID + ", " + f.Name + ": " + facts}}
	for _, x := range f.For {
		list = append(list, Line{Kind: For, Text: x.Text, Known: x.Known, Source: x.Source})
	}
	for _, x := range f.Against {
		list = append(list, Line{Kind: Against, Text: x.Text, Known: x.Known, Source: x.Source})
	}
	return list
}

// order is the order in which the pieces of a seam are laid.
func (p Body) order(Options) []Line {
	if len(p.Order) == 0 {
		return nil
	}
	const lead = "order of the pieces along the seam, each laid back toward the finished end"
	return []Line{{Kind: Turns, Lead: lead, Text: strings.Join(p.Order, " – ")}}
}

// reasons are sentences, each with how it is known, grouped by topic.
func (p Body) reasons(o Options) []Line {
	var list []Line
	topic := ""
	for _, x := range p.Reasons {
		if x.Topic != topic {
			if topic != "" {
				list = append(list, Line{Kind: Gap})
			}
			topic = x.Topic
			list = append(list, Line{Kind: Topic, Text: topic})
		}
		list = append(list, Line{Kind: Reason, Lead: topic, Text: x.Text, Known: x.Known, Source: x.Source})
		if o.Why {
			list = append(list, Line{Kind: Source, Lead: "reason", Text: x.Source, Known: x.Known})
		}
	}
	if len(list) > 0 {
		list[0].N = 1
	}
	return list
}
