package tui

import (
	"cmp"
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
	if m.Units == quantity.Both {
		return whose + "   both units"
	}
	return whose + "   " + string(m.Units)
}

// lampSays is the code of the warning that the strip shows in full, "" for none.
func (m *root) lampSays() string {
	s := m.strip()
	if lines := stripLines(m.w, m.h); lines == 1 || !s.Whole(m.w, lines) {
		return ""
	}
	code := stripCode(&m.session.card)
	if timedBrief[code] != "" && strings.Contains(warningText(&m.session.card, code), ". ") {
		return "" // only its first words
	}
	return code
}

// stopsUnsaid reports whether there is a stop that the strip does not show in full.
func (m *root) stopsUnsaid() bool { return len(unsaidStops(&m.session.card, m.lampSays())) > 0 }

// stripCode is the code of the warning whose text the strip uses.
func stripCode(c *calc.Card) string {
	switch stateOf(c) {
	case canvas.Stop:
		return calc.Stops(c.Warnings)[0].Code
	case canvas.NotJudged:
		return cmp.Or(timedCode(c), "not-modelled")
	case canvas.Good, canvas.Marginal, canvas.Outside:
		return "test-bead"
	}
	return cmp.Or(timedCode(c), c.Zone)
}

// timedBrief are the warnings that say why a timed arc is hot, cold or without a rhythm, each in the few words for a
// phone.
var timedBrief = map[string]string{
	"timed-on-long": "arc on too long", "timed-on-falls": "arc on too long", "timed-on-short": "arc on too short",
	"timed-off-long": "arc off too long", "timed-never-wets": "edges never wet",
	"timed-melts-first": "edge melts first",
	"timed-too-hot":     "edge melts at once", "timed-falls": "the puddle falls", "timed-no-pause": "no pause to keep",
	"timed-wide-gap": "gap too wide", "timed-too-thick": "too thick", "timed-backing": "over a backing",
	"timed-open-fillet": "an open root", "timed-plug": "a plug is round",
}

// timedCode is the code of the first of these warnings on a card, "" for none.
func timedCode(c *calc.Card) string {
	for i := range c.Warnings {
		if code := c.Warnings[i].Code; timedBrief[code] != "" {
			return code
		}
	}
	return ""
}

// timedStrip divides such a warning into the reason and what to do. Of two sentences the first is shortened to what
// stands before its colon; lampSays knows that.
func timedStrip(text string) (reason, do string) {
	text = strings.TrimPrefix(text, "Not judged, because ")
	if first, second, two := strings.Cut(text, ". "); two {
		reason, _, _ = strings.Cut(first, ": ")
		return reason, second
	}
	for _, end := range []string{": ", "; "} {
		if reason, do, ok := strings.Cut(text, end); ok {
			return reason, strings.ToUpper(do[:1]) + do[1:]
		}
	}
	return text, ""
}

// stripOf is a card's verdict: the word, the main reason, what to do.
func stripOf(c *calc.Card) canvas.Strip {
	s := canvas.Strip{State: stateOf(c)}
	near := c.DecidingEdge()
	text := warningText(c, stripCode(c))
	s.Reason, s.Do, _ = strings.Cut(text, ". ")
	s.Brief, _, _ = strings.Cut(afterWord(s.Reason), ", ")
	s.Brief, _, _ = strings.Cut(s.Brief, ": ")
	s.Brief, _, _ = strings.Cut(s.Brief, "; ")
	switch {
	case s.State == canvas.Stop:
		s.Brief, _, _ = strings.Cut(s.Reason, ": ")
	case s.State == canvas.Outside && c.TooHotParts() != "":
		s.Reason, s.Do, _ = strings.Cut(c.TooHotParts(), ". ")
		s.Brief = "too much preheat"
	case timedBrief[stripCode(c)] != "":
		s.Reason, s.Do = timedStrip(text)
		s.Brief = timedBrief[stripCode(c)]
	case near == nil && s.State == canvas.Good: // a timed arc
		s.Reason, s.Brief, s.Do = "one rhythm of on and off keeps the sheet", "one rhythm keeps it", text
		switch {
		case c.Warned("timed-two-settings"):
			s.Reason, s.Brief = "the first spot burns longer than the others", "first spot longer"
		case c.Warned("timed-does-not-cycle"):
			s.Reason, s.Brief = "these times are a start only", "a start only"
		}
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
