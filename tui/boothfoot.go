package tui

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"brazebooth/calc"
)

// What stands under the figures of the booth view: the beat, the zone, the cautions and what endangers the hand.

// boothFeet are the ways to say it, the fullest first. Every stop stands whole, or where there is none the strongest caution;
// where that leaves the figures no room, the first stop; then fewer and fewer clauses of it. A low terminal goes without a
// caution rather than with a part of it, never without a stop.
func (m *root) boothFeet(w, h int) []block {
	c := &m.session.card
	list := loudest(c)
	feet := []block{m.boothFoot(list, 0, nil, w, h)}
	if len(list) == 0 {
		return feet
	}
	if len(list) > 1 {
		feet = append(feet, m.boothFoot(list[:1], 0, nil, w, h))
	}
	if h < lowHeight && list[0].Severity != calc.Stop {
		return append(feet, m.boothFoot(nil, 0, nil, w, h))
	}
	for lines := len(wrap(list[0].Text, w)); lines > 0; lines-- {
		feet = append(feet, m.boothFoot(list[:1], lines, nil, w, h))
	}
	return append(feet, m.boothFoot(list[:1], 1, []string{"stops", "shock"}, w, h)) // a stop ends the job before either
}

// loudest are a card's stops, or where it has none its verdict, where that is a caution, or the strongest caution.
func loudest(c *calc.Card) []calc.Warning {
	stops, _, _ := tally(c)
	for i := range c.Warnings {
		if x := &c.Warnings[i]; stops == 0 && x.Code == c.Zone && x.Severity == calc.Caution {
			return c.Warnings[i : i+1]
		}
	}
	return c.Warnings[:min(len(c.Warnings), max(1, stops))] // they stand in the order of their severity
}

// boothFoot is the foot with these cautions: whole, or in at most so many lines where lines is not zero. Codes in spared are not
// named among the dangers.
func (m *root) boothFoot(list []calc.Warning, lines int, spared []string, w, h int) block {
	b := m.boothBeat(w, h)
	if m.old {
		b.say(m.th.watch, 0, "▲ card is of the last job", w)
	}
	c := &m.session.card
	style, word := zoneWord(&m.th, c)
	r := newRow(w).put(style, word)
	for i := range list {
		b.addAll(boothCaution(&m.th, r, &list[i], lines, w))
		r = newRow(w)
	}
	if len(c.Warnings) == 0 {
		return append(b, r.line())
	}
	said := map[string]bool{}
	for i := range list {
		said[list[i].Code] = lines == 0
	}
	for _, code := range spared {
		said[code] = true
	}
	stops, _, _ := tally(c)
	return append(b, dangerRows(&m.th, r, c, dangersOf(c, said), stops > len(list))...)
}

// boothCaution is a caution behind what a row has already.
func boothCaution(th *theme, r *row, x *calc.Warning, lines, w int) block {
	p, mark := th.sign(x.Severity)
	text, body := x.Text, th.plain
	if x.Severity == calc.Stop {
		text, body = "STOP: "+text, th.stop
	}
	if r.used > 0 {
		r.blank(2)
	}
	r.put(p, mark).blank(1)
	const indent = 2
	first := w - r.used
	if lines > 0 {
		text = clauses(text, func(s string) bool { return len(running(s, first, w-indent)) <= lines })
	}
	var b block
	for i, l := range running(text, first, w-indent) {
		if i > 0 {
			r = newRow(w).blank(indent)
		}
		b.add(r.put(body, l).line())
	}
	return b
}

// running wraps text whose first line has less room than the others; where that is too little for a word it stays empty.
func running(text string, first, rest int) []string {
	const word = 14
	if first < word && first < rest {
		return append([]string{""}, wrap(text, rest)...)
	}
	lines := wrap(text, first)
	if len(lines) < 2 {
		return lines
	}
	return append(lines[:1], wrap(strings.TrimPrefix(text, lines[0]), rest)...)
}

// boothBeat is the bar of a timed arc, or how far its heat is followed.
func (m *root) boothBeat(w, h int) block {
	var b block
	switch {
	case m.session.card.Used.Mode != "timed":
	case m.beat.stop != nil:
		b.say(m.th.quiet, 0, fmt.Sprintf("on and off are rough until their heat is followed: %.0f %%", 100*m.beat.share()), w)
	case m.beat.playing():
		lines := max(1, h/12)
		if w < narrowWidth {
			lines = 1
		}
		for range lines {
			b.add(m.beat.filling(&m.th, w))
		}
	}
	return b
}

// zoneWord is the verdict in a word, and an edge that is not met besides.
func zoneWord(th *theme, c *calc.Card) (paint, string) {
	style := th.watch
	switch c.Verdict() {
	case "", "not-modelled", "stop": // a stop says so itself
		return th.quiet, ""
	case "good":
		style = th.good
	case "burn-through":
		style = th.stop
	case "outside":
		return th.watch, "not met: " + c.NearestEdge().Name
	}
	return style, c.Verdict()
}

// clauses is as much of a caution as fits, whole clauses only: at least the first one. A sign says that there is more to be
// read.
func clauses(text string, fits func(string) bool) string {
	if fits(text) {
		return text
	}
	best := ""
	for i, r := range text {
		if !strings.ContainsRune(";:.", r) || i+1 < len(text) && text[i+1] != ' ' {
			continue
		}
		head := text[:i+utf8.RuneLen(r)] + " …"
		if best == "" || best == "STOP: …" || fits(head) {
			best = head
		}
	}
	if best == "" {
		return text
	}
	return best
}
