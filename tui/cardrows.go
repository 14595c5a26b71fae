package tui

import (
	"cmp"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/report"
)

// rowKind is the part of the card that a row belongs to.
type rowKind int

const (
	settingRow rowKind = iota // what the hand sets or holds
	resultRow                 // what follows from it
	choiceRow                 // what else was chosen
)

// cardRow is one row of the card, formatted once per card and not once per frame.
type cardRow struct {
	kind        rowKind
	name        string // of the figure, the note or the Job's field
	label       string
	words       string     // a note's or a choice's text
	tag         string     // "yours", "assumed" or nothing
	long, short string     // remark
	fig         report.Row // of setting and result rows with a number
	note        calc.Note
	ask         *choice.Choice // of choice rows
}

// numbered reports whether the row holds a figure.
func (r *cardRow) numbered() bool { return r.fig.Figure != nil }

// buildRows lays the card out: settings, then results, then the other choices.
func buildRows(s *session, c *calc.Card) []cardRow {
	rows := make([]cardRow, 0, len(c.Figures)+len(c.Notes)+10)
	for i := range c.Figures {
		if f := &c.Figures[i]; isSetting(f.Name) {
			rows = append(rows, figureRow(s, c, f, settingRow))
		}
	}
	for _, n := range c.Notes {
		rows = append(rows, cardRow{kind: settingRow, name: n.Name, label: n.Name,
			words: headline(n.Text), long: n.Text, note: n})
	}
	if r, ok := zoneRow(c); ok {
		rows = append(rows, r)
	}
	for i := range c.Figures {
		if f := &c.Figures[i]; !isSetting(f.Name) && f.Name != "gun_angle" {
			rows = append(rows, figureRow(s, c, f, resultRow))
		}
	}
	for _, q := range otherChoices() {
		if !q.Applies(c) {
			continue
		}
		r := cardRow{kind: choiceRow, name: q.Field(), label: q.Label(), ask: q, words: cmp.Or(q.Shown(c, s.units), "not said")}
		if q.Assumed(c) != "" {
			r.tag = "assumed"
		}
		rows = append(rows, r)
	}
	return rows
}

// isSetting reports whether a hand sets the figure or holds it.
func isSetting(name string) bool {
	return choice.SettingOf(name) != nil
}

func figureRow(s *session, c *calc.Card, f *calc.Figure, kind rowKind) cardRow {
	figure := *f
	r := cardRow{kind: kind, name: f.Name, fig: report.RowOf(c, &figure, report.OfCard, s.units)}
	r.label = r.fig.Label
	r.long, r.short = r.fig.Remark()
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

// columns are where the parts of a row begin, measured over a whole part of the card so that they
// line up.
type columns struct {
	label, number, unit, alt, band int // widths
}

func measure(rows []cardRow, kind rowKind) columns {
	var c columns
	for i := range rows {
		r := &rows[i]
		c.label = max(c.label, width(r.label))
		if r.kind != kind || !r.numbered() {
			continue
		}
		c.number = max(c.number, width(guessMark(r.tag)+r.fig.Value.Number))
		c.unit = max(c.unit, width(r.fig.Value.Unit))
		c.alt = max(c.alt, width(r.fig.Other.String()))
		c.band = max(c.band, width(r.fig.Value.Band()))
	}
	return c
}
