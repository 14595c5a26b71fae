package report

import (
	"cmp"
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/quantity"
)

func (v Fit) words(Options) []Line {
	var list []Line
	if v.Verdict != "" {
		list = append(list, Line{Kind: FitVerdict, Lead: v.Verdict, Text: cmp.Or(fitWords[v.Verdict], "STOP")})
	}
	for _, x := range v.Instead {
		list = append(list, Line{Kind: Instead, Text: x})
	}
	return list
}

var fitWords = map[string]string{advice.Suits: "suitable", advice.WithCare: "possible with care",
	advice.AnotherWay: "choose another way"}

func (c Correction) words(o Options) []Line {
	if c.Correction == nil {
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

func (r Ranking) words(o Options) []Line {
	const full = 3
	var list []Line
	var others, out []string
	for i := range r.List {
		f := &r.List[i]
		switch {
		case !r.Brief || i < full:
			list = append(list, r.rank(i, o.Units)...)
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
func (r *Ranking) rank(i int, sys quantity.System) []Line {
	f := &r.List[i]
	parts := []string{f.Colour, fmt.Sprintf("%.0f MPa", f.Tensile)}
	if f.Wire != nil {
		parts = append(parts, fmt.Sprintf("%.0f g/m of seam", *f.Wire))
	}
	if f.Cost != nil {
		money := r.Currency
		if money == "" {
			money = "money"
		}
		cost, along := *f.Cost, "metre"
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
