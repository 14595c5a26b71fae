package tui

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

var askCoating = question{
	name: "coating", title: "coating", ask: "Which coating?",
	list: func(*session) []choice {
		return coatingRows(func(j *calc.Job, id string) { j.Coating = id })
	},
	now:   func(c *calc.Card) string { return c.Used.Coating },
	shown: func(c *calc.Card, _ quantity.System) string { return c.Used.Coating },
	brief: func(c *calc.Card, _ quantity.System) string { return coatBrief(c.Used.Coating) },
	open:  func(j *calc.Job) { j.Coating = "" },
	find:  findCoating, reasons: coatingReasons,
}

var askCoating2 = question{
	name: "coating2", title: "second coating", ask: "Which coating has the second member?",
	list: func(*session) []choice {
		return coatingRows(func(j *calc.Job, id string) { j.Coating2 = id })
	},
	now:   func(c *calc.Card) string { return c.Used.Coating2 },
	shown: func(c *calc.Card, _ quantity.System) string { return c.Used.Coating2 },
	open:  func(j *calc.Job) { j.Coating2 = "" },
	find:  findCoating, reasons: coatingReasons, applies: hasSecond,
}

func coatBrief(id string) string {
	if id == "none" {
		return "bare"
	}
	return id
}

func findCoating(text string) (string, error) {
	c, err := tables.FindCoating(text)
	return c.ID, err
}

func coatingRows(put func(*calc.Job, string)) []choice {
	all := tables.Coatings()
	rows := make([]choice, 0, len(all))
	for i := range all {
		c := &all[i]
		rows = append(rows, choice{key: c.ID, name: c.ID, line: coatingLine(c),
			also: strings.ToLower(c.Name + " " + string(c.Kind)),
			put:  func(j *calc.Job) { put(j, c.ID) }})
	}
	return rows
}

// coatingLine says what a coat adds to the sheet and to the plume.
func coatingLine(c *tables.Coating) string {
	if c.Kind == tables.NoCoat {
		return calc.NameAndNote("Bare sheet", c.Note)
	}
	fume := "no zinc vapour"
	if c.Zinc {
		fume = "zinc boils off along the bead"
	}
	line := fmt.Sprintf("%s, %.0f g/m² each side; %s", c.Kind, c.Side.V, fume)
	if c.Note != "" {
		line += ". " + c.Note
	}
	return line
}

func coatingReasons(s *session, id string) []reason {
	c, ok := tables.CoatingByID(id)
	if !ok || c.Kind == tables.NoCoat {
		return nil
	}
	return []reason{datum("mass on each side", c.Side, quantity.Metric)}
}
