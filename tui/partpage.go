package tui

import (
	"fmt"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/internal/sheet"
)

// partPages are the pages beside the card, in the order of the work; one key leads from each to the next.
var partPages = [...]struct {
	title string
	of    calc.PartOf
}{
	{"fit", calc.Fit},
	{"machine", calc.Machine},
	{"strength", calc.Strength},
	{"air", calc.Air},
	{"overlay", calc.Overlay},
	{"cost", calc.Cost},
}

// readPart opens a page beside the card.
func (m *root) readPart(at int) {
	at %= len(partPages)
	page := partPages[at]
	title := fmt.Sprintf("%s – page %d of %d, p shows the next", page.title, at+1, len(partPages))
	m.page = &textPage{title: title, body: partBody(&m.session, page.of), next: openPart{at + 1}}
}

// partBody shows figures with their bands, reasons with their marks, and what must be minded.
func partBody(s *session, of calc.PartOf) func(th *theme, w int) block {
	return func(th *theme, w int) block {
		var b block
		stops(&b, th, &s.card, w)
		p, err := of(&s.card)
		if err != nil {
			f := faultOf(err)
			b.say(th.watch, 0, "▲ "+f.what+" – on the card, or as a command: "+f.hint, w)
			return b
		}
		if p.Verdict != "" {
			style := th.good
			switch p.Verdict {
			case calc.WithCare, calc.AnotherWay:
				style = th.watch
			case calc.StopWork:
				style = th.stop
			}
			b.say(style, 0, "verdict: "+sheet.VerdictText(p.Verdict), w)
			for _, x := range p.Instead {
				b.say(th.plain, 0, "instead: "+x, w)
			}
		}
		for i := range p.Figures {
			b.add(partFigure(th, s, &p.Figures[i], w))
		}
		b.skip()
		for _, r := range p.Reasons {
			b.say(th.plain, 2, "• "+r.Text+" ("+knownWords(r.Known)+")", w)
		}
		for _, x := range p.Warnings {
			b.say(th.watch, 2, "▲ "+x.Text, w)
		}
		return b
	}
}

func partFigure(th *theme, s *session, f *calc.Figure, w int) line {
	c := showFigure(f, s.units)
	if f.Unit == "1" { // a count
		c = cell{number: fmt.Sprintf("%.0f", f.Value)}
		if f.Low != f.High {
			c.band = fmt.Sprintf("%.0f–%.0f", f.Low, f.High)
		}
	}
	value, band := 20, 36
	if w < narrowWidth {
		value, band = 17, 28
	}
	r := newRow(w).put(th.quiet, calc.FigureLabel(f.Name)).to(value).put(th.strong, c.value()).to(band).put(th.quiet, c.band)
	if s.units == quantity.Both && c.alt() != "" && r.left() > width(c.alt())+2 {
		r.to(52).put(th.plain, c.alt())
	}
	return r.line()
}
