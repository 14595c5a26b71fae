package tui

import (
	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

var askMode = question{
	name: "mode", title: "mode", ask: "Which mode?",
	list:  modeRows,
	now:   func(c *calc.Card) string { return c.Used.Mode },
	shown: func(c *calc.Card, _ quantity.System) string { return c.Used.Mode },
	open:  func(j *calc.Job) { j.Mode = "" },
	find:  func(text string) (string, error) { r, err := tables.FindMode(text); return r.ID, err },
}

var askJoint = question{
	name: "joint", title: "joint", ask: "Which joint?",
	list: func(*session) []choice {
		return plainRows(tables.Joints(), func(j *calc.Job, id string) { j.Joint = id })
	},
	now:   func(c *calc.Card) string { return c.Used.Joint },
	shown: func(c *calc.Card, _ quantity.System) string { return c.Used.Joint },
	brief: func(c *calc.Card, _ quantity.System) string { return c.Used.Joint },
	open:  func(j *calc.Job) { j.Joint = "" },
	find:  func(text string) (string, error) { r, err := tables.FindJoint(text); return r.ID, err },
}

var askPosition = question{
	name: "position", title: "position", ask: "Which position?",
	list: func(*session) []choice {
		return plainRows(tables.Positions(), func(j *calc.Job, id string) { j.Position = id })
	},
	now:   func(c *calc.Card) string { return c.Used.Position },
	shown: func(c *calc.Card, _ quantity.System) string { return c.Used.Position },
	brief: func(c *calc.Card, _ quantity.System) string { return c.Used.Position },
	open:  func(j *calc.Job) { j.Position = "" },
	find:  func(text string) (string, error) { r, err := tables.FindPosition(text); return r.ID, err },
}

var askUse = question{
	name: "use", title: "use", ask: "What is it for?",
	list: func(*session) []choice {
		return plainRows(tables.Uses(), func(j *calc.Job, id string) { j.Use = id })
	},
	now: func(c *calc.Card) string { return c.Used.Use },
	shown: func(c *calc.Card, _ quantity.System) string {
		if c.Used.Use == "" {
			return "not said"
		}
		return c.Used.Use
	},
	open: func(j *calc.Job) { j.Use = "" },
	find: func(text string) (string, error) { r, err := tables.FindUse(text); return r.ID, err },
}

var askGas = question{
	name: "gas", title: "shielding gas", ask: "Which gas?",
	list:  func(*session) []choice { return gasRows() },
	now:   func(c *calc.Card) string { return c.Used.Gas },
	shown: func(c *calc.Card, _ quantity.System) string { return c.Setup.Gas.Name },
	open:  func(j *calc.Job) { j.Gas = "" },
	find:  func(text string) (string, error) { r, err := tables.FindGas(text); return r.ID, err },
	reasons: func(s *session, id string) []reason {
		g, ok := tables.GasByID(id)
		if !ok {
			return nil
		}
		return []reason{datum("usual flow", g.Flow, s.units), {"note", g.Note, g.Origin.Source, string(g.Origin.Known)}}
	},
}

func gasRows() []choice {
	all := tables.Gases()
	rows := make([]choice, 0, len(all))
	for i := range all {
		g := &all[i]
		rows = append(rows, choice{key: g.ID, name: g.ID, line: calc.NameAndNote(g.Name, g.Note),
			put: func(j *calc.Job) { j.Gas = g.ID }})
	}
	return rows
}

// plainRows lists rows that are an id and a sentence.
func plainRows(all []tables.Option, put func(*calc.Job, string)) []choice {
	rows := make([]choice, 0, len(all))
	for _, o := range all {
		rows = append(rows, choice{key: o.ID, name: o.ID, line: o.Line, put: func(j *calc.Job) { put(j, o.ID) }})
	}
	return rows
}

// modeRows lists the modes and whether each has a good setting for the sheet at hand: that is
// computed, not looked up.
func modeRows(s *session) []choice {
	rows := plainRows(tables.Modes(), func(j *calc.Job, id string) { j.Mode = id })
	sheet := sheetText(s.card.Used.Gauge, s.card.Used.Thickness, s.units)
	for i := range rows {
		job := s.base()
		rows[i].put(&job)
		rows[i].fact = "suits " + sheet
		if card, err := s.solve(job); err != nil || card.Warned("no-good-setting") {
			rows[i].fact = "no good setting for " + sheet
		}
	}
	return rows
}
