package tui

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tui/canvas"
)

// stateOf is a card's verdict as the strip shows it.
func stateOf(c *calc.Card) canvas.State {
	if s, ok := states[c.Verdict()]; ok {
		return s
	}
	return canvas.NotJudged
}

var states = map[string]canvas.State{"good": canvas.Good, "marginal": canvas.Marginal, "cold": canvas.Cold,
	"hot": canvas.Hot, "burn-through": canvas.Burns, "outside": canvas.Outside, "stop": canvas.Stop}

// stripLines is the height of the strip on a screen that shows it in full. Big letters take four lines.
func stripLines(w, h int) int {
	switch {
	case w >= 160 && h >= 50:
		return 7
	case w >= narrowWidth && h >= 20:
		return 4
	}
	return 1
}

// strip is the verdict of the card on the screen, with what is wrong and what to do.
func (m *root) strip() canvas.Strip {
	s := stripOf(m.shown())
	s.Status = m.status()
	f := m.session.fault
	if p, ok := m.front().(*picker); ok && p.unfit != nil {
		f = p.unfit
	}
	if f != nil {
		s.State, s.Reason, s.Brief, s.Do = canvas.NotJudged, "this has no card: "+f.what, f.what, f.hint
	}
	for _, text := range [...]*string{&s.Reason, &s.Brief, &s.Do} {
		*text = m.th.look.number(m.th.inUnits(*text))
	}
	return s
}

// status says whose job it is and in which units.
func (m *root) status() string {
	whose := ownTitle
	if m.example {
		whose = "example"
	}
	if m.meter.kept != "" {
		whose += " on " + m.meter.kept
	}
	if m.units == quantity.Both {
		return whose + "   both units"
	}
	return whose + "   " + string(m.units)
}

// lampSays is the code of the warning that the strip shows in full, "" for none.
func (m *root) lampSays() string {
	s := m.strip()
	if lines := stripLines(m.w, m.h); lines == 1 || !s.Whole(m.w, lines) {
		return ""
	}
	return stripCode(&m.session.card)
}

// stopsUnsaid reports whether there is a stop that the strip does not show in full.
func (m *root) stopsUnsaid() bool { return len(unsaidStops(&m.session.card, m.lampSays())) > 0 }

// stripCode is the code of the warning whose text the strip uses.
func stripCode(c *calc.Card) string {
	switch stateOf(c) {
	case canvas.Stop:
		return calc.Stops(c.Warnings)[0].Code
	case canvas.NotJudged:
		return "not-modelled"
	case canvas.Good, canvas.Marginal, canvas.Outside:
		return "test-bead"
	}
	return c.Zone
}

// stripOf is a card's verdict: the word, the main reason, what to do.
func stripOf(c *calc.Card) canvas.Strip {
	s := canvas.Strip{State: stateOf(c)}
	near := c.NearestEdge()
	text := warningText(c, stripCode(c))
	s.Reason, s.Do, _ = strings.Cut(text, ". ")
	s.Brief, _, _ = strings.Cut(afterWord(s.Reason), ", ")
	s.Brief, _, _ = strings.Cut(s.Brief, ": ")
	switch {
	case s.State == canvas.Stop:
		s.Brief, _, _ = strings.Cut(s.Reason, ": ")
	case s.State == canvas.Outside && c.TooHotParts() != "":
		s.Reason, s.Do, _ = strings.Cut(c.TooHotParts(), ". ")
		s.Brief = "too much preheat"
	case near == nil && s.State == canvas.Good: // a timed arc
		s.Reason, s.Brief, s.Do = "one rhythm of on and off keeps the sheet", "one rhythm keeps it", text
	case near == nil || s.State == canvas.NotJudged:
		s.Reason = afterWord(s.Reason)
	case near.Met:
		s.Reason = fmt.Sprintf("nearest edge: %s, %.0f %% to spare", near.Name, near.Margin)
		s.Brief = fmt.Sprintf("%s %.0f %%", near.Name, near.Margin)
		s.Do = text
		if chance, judged := c.Figure("chance"); judged {
			s.Chance = fmt.Sprintf("%.0f in 100", chance.Value)
			if c.AboutEven() {
				s.Reason = "about even; " + s.Reason
			}
		}
	case s.State == canvas.Outside || text == "":
		s.Reason = fmt.Sprintf("missed: %s, by %s", near.Name, report.MissedBy(near.Margin))
		s.Brief = "missed: " + near.Name
		s.Do = text
	default:
		s.Reason = afterWord(s.Reason)
		s.Brief = "missed: " + near.Name
		if s.State == canvas.Burns { // "missed: no …" could be read as its opposite, and is cut on a phone
			s.Brief = "base melts through"
		}
	}
	return s
}

// afterWord is a reason without the word before its colon, which is in the strip's big letters.
func afterWord(text string) string {
	if _, rest, ok := strings.Cut(text, ": "); ok {
		return rest
	}
	return text
}

func warningText(c *calc.Card, code string) string {
	for i := range c.Warnings {
		if c.Warnings[i].Code == code {
			return c.Warnings[i].Text
		}
	}
	return ""
}
