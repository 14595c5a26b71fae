package tui

import (
	"cmp"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// rowKind is the part of the card that a row belongs to.
type rowKind int

const (
	chipRow   rowKind = iota // a choice
	dialRow                  // a setting to dial, in big digits
	heldRow                  // another setting made or held by hand
	resultRow                // follows from the settings
	noteRow                  // a setting that is a word
)

// cardGroup is a group of rows between which tab moves.
type cardGroup int

const (
	chipGroup cardGroup = iota
	dialGroup
	figureGroup
	cardGroups
)

// cardRow is one choice, figure or note of the card. It is formatted once per card instead of once per frame.
type cardRow struct {
	kind  rowKind
	name  string // of the figure, the note or the Job's field
	label string
	words string     // a note's or a choice's text
	tag   string     // "yours", "assumed" or nothing
	short string     // remark
	fig   report.Row // for rows with a number
	note  calc.Note
	ask   *choice.Choice // for choices
}

func (r *cardRow) group() cardGroup {
	return [...]cardGroup{chipRow: chipGroup, dialRow: dialGroup, heldRow: dialGroup, noteRow: figureGroup,
		resultRow: figureGroup}[r.kind]
}

// numbered reports whether the row has a figure.
func (r *cardRow) numbered() bool { return r.fig.Figure != nil }

// buildRows lays the card out: choices, dials, other settings, notes, results.
func buildRows(s *session, c *calc.Card) []cardRow {
	rows, from := choiceRows(s, c), 0
	for _, kind := range [...]rowKind{dialRow, heldRow, resultRow} {
		from = len(rows)
		for i := range c.Figures {
			if f := &c.Figures[i]; kindOf(f.Name) == kind {
				rows = append(rows, figureRow(s, c, f, kind))
			}
		}
	}
	// The most important results first, because there may not be room for all.
	slices.SortStableFunc(rows[from:], func(a, b cardRow) int { return telling(a.name) - telling(b.name) })
	for _, n := range c.Notes {
		n.Text = quantity.Sentence(n.Text, s.Units)
		rows = append(rows, cardRow{kind: noteRow, name: n.Name, label: n.Name, words: headline(n.Text), note: n})
	}
	return rows
}

// tellingFirst are the results that say most about a setting.
var tellingFirst = []string{"current", "net_heat", "bead_width", "base_peak_temperature", "wetting_angle",
	"zinc_boiled_halfwidth"}

// telling is a result's place in tellingFirst. All others come after these, in their order.
func telling(name string) int {
	if i := slices.Index(tellingFirst, name); i >= 0 {
		return i
	}
	return len(tellingFirst)
}

// kindOf is the part of the card that shows a figure: the gun angle as a note, the margin on the strip and the edges.
func kindOf(name string) rowKind {
	switch name {
	case "wire_feed", "volts", "travel", "arc_on", "arc_off":
		return dialRow
	case "gun_angle", "margin":
		return noteRow
	}
	if choice.SettingOf(name) != nil {
		return heldRow
	}
	return resultRow
}

// choiceRows are the choices that have chips on a card.
func choiceRows(s *session, c *calc.Card) []cardRow {
	rows := make([]cardRow, 0, len(c.Figures)+len(c.Notes)+10) // with room for the other rows of the card
	for _, q := range chipChoices() {
		if !q.Applies(c) {
			continue
		}
		r := cardRow{kind: chipRow, name: q.Field(), label: q.Label(), ask: q, words: cmp.Or(q.Shown(c, s.Units),
			"not given")}
		if q.Assumed(c) != "" || q.Now(c) == choice.Same {
			r.tag = "assumed"
		}
		rows = append(rows, r)
	}
	return rows
}

func figureRow(s *session, c *calc.Card, f *calc.Figure, kind rowKind) cardRow {
	figure := *f
	r := cardRow{kind: kind, name: f.Name, fig: report.RowOf(c, &figure, report.OfCard, s.Units)}
	r.label = r.fig.Label
	_, r.short = r.fig.Remark()
	if set := choice.SettingOf(f.Name); set != nil {
		switch {
		case set.Given(&c.Job):
			r.tag = "yours"
		case c.AssumedWhy(f.Name) != "":
			r.tag = "assumed"
		}
	}
	return r
}

// chipText is a choice's value as its chip shows it.
func (r *cardRow) chipText(c *calc.Card) string {
	follows := r.ask.Now(c) == choice.Same
	switch r.name {
	case "wire":
		return r.words + " " + fillerShort(c)
	case "gap":
		return strings.Replace("gap "+r.words, "gap none", "no gap", 1)
	case "metal2":
		if follows {
			return "on same"
		}
		return "on " + r.words
	case "gauge2":
		if follows {
			return "2nd same"
		}
		return "2nd " + r.words
	}
	return r.words
}

// chipName is the name above a chip.
func (r *cardRow) chipName() string {
	return cmp.Or(map[string]string{"metal2": "onto", "gauge2": "2nd gauge"}[r.name], r.label)
}

// fillerShort is the alloy's symbol, as on a spool.
func fillerShort(c *calc.Card) string {
	name := c.Setup.Filler.Name
	if last := name[strings.LastIndexByte(name, ' ')+1:]; strings.HasPrefix(last, "Cu") {
		return last
	}
	return c.Used.Filler
}

// columns are the widths of the parts of a row, measured over all results, which are shown in columns.
type columns struct {
	label, number, unit, alt, band int
}

func measure(rows []cardRow) (c columns) {
	for i := range rows {
		r := &rows[i]
		if r.group() != figureGroup || !r.numbered() {
			continue
		}
		c.label = max(c.label, width(r.label))
		c.number = max(c.number, width(guessMark(r.tag)+r.fig.Value.Number))
		c.unit = max(c.unit, width(r.fig.Value.Unit))
		c.alt = max(c.alt, width(r.fig.Other.String()))
		c.band = max(c.band, width(r.fig.Value.Band()))
	}
	return c
}

// headline is the first clause of an advice: what to do, without the reason.
func headline(s string) string {
	if i := strings.IndexAny(s, ";:"); i > 0 {
		return s[:i]
	}
	return s
}
