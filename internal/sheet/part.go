package sheet

import (
	"encoding/json"
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// PartText writes a page beside the card as plain text of at most 80 columns: figures, reasons with their marks,
// cautions.
func PartText(p *calc.Part, o Options) string {
	var w writer
	w.head(&p.Card, o)
	for _, l := range p.Card.Warnings {
		if l.Severity == calc.Stop {
			w.para("STOP  ", l.Text)
			w.line("")
		}
	}
	if p.Verdict != "" {
		w.line("Verdict: %s", VerdictText(p.Verdict))
		for _, x := range p.Instead {
			w.para("  instead: ", x)
		}
		w.line("")
	}
	for i := range p.Figures {
		f := &p.Figures[i]
		value, band := quantity.Band(f.Value, f.Low, f.High, f.Unit, lead(o.Units))
		if f.Unit == "1" { // a count
			value, band = fmt.Sprintf("%.0f", f.Value), fmt.Sprintf("%.0f–%.0f", f.Low, f.High)
		}
		if f.Low == f.High {
			band = ""
		}
		w.line("  %-17s %9s %-7s %-13s %s", calc.FigureLabel(f.Name), value, quantity.Label(f.Unit, lead(o.Units)), band, aside(&p.Card, f, o))
		if o.Why {
			w.reason(f)
		}
	}
	if len(p.Figures) > 0 {
		w.line("")
	}
	for _, r := range p.Reasons {
		mark := "- "
		w.para(mark, r.Text+" ("+r.Known+")")
		if o.Why {
			w.para("    source: ", r.Source)
		}
	}
	w.line("")
	for _, l := range p.Warnings {
		w.para(strings.ToUpper(string(l.Severity))+"  ", l.Text)
	}
	w.line("")
	w.assumed(&p.Card)
	return w.String()
}

// PartJSON writes a page as a card's document with the page's figures and its reasons under sections.
func PartJSON(p *calc.Part, version string) ([]byte, error) {
	c := p.Card
	c.Figures = p.Figures
	c.Warnings = append(append([]calc.Warning{}, p.Warnings...), stopsOf(p.Card.Warnings)...)
	c.Section.Drawn = false
	d := documentOf(&c, version)
	section := struct {
		Verdict string        `json:"verdict,omitempty"`
		Reasons []calc.Reason `json:"reasons"`
		Instead *[]string     `json:"instead,omitempty"`
	}{p.Verdict, orEmpty(p.Reasons), nil}
	if p.Verdict != "" {
		list := orEmpty(p.Instead)
		section.Instead = &list
	}
	b, err := json.Marshal(section)
	if err != nil {
		return nil, err
	}
	d.Sections[p.Name] = b
	return encode(d)
}

// VerdictText is a verdict in plain words.
func VerdictText(v string) string {
	switch v {
	case calc.Suits:
		return "suits"
	case calc.WithCare:
		return "possible with care"
	case calc.AnotherWay:
		return "choose another way"
	}
	return "STOP"
}

func stopsOf(list []calc.Warning) []calc.Warning {
	var out []calc.Warning
	for _, w := range list {
		if w.Severity == calc.Stop {
			out = append(out, w)
		}
	}
	return out
}
