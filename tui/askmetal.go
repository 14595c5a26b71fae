package tui

import (
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

var askMetal = question{
	name: "metal", title: "metal", ask: "Which metal?",
	list:    func(*session) []choice { return metalRows(false) },
	now:     func(c *calc.Card) string { return c.Used.Metal },
	shown:   func(c *calc.Card, _ quantity.System) string { return c.Used.Metal },
	open:    func(j *calc.Job) { j.Metal, j.Coating = "", "" },
	find:    findMetal,
	reasons: metalReasons,
}

// askMetal2 asks for the second member; by default it is cut from the same sheet.
var askMetal2 = question{
	name: "metal2", title: "second metal", ask: "Which metal is the second member?",
	list: func(*session) []choice { return metalRows(true) },
	now: func(c *calc.Card) string {
		if c.Job.Metal2 == "" {
			return sameKey
		}
		return c.Used.Metal2
	},
	shown: func(c *calc.Card, _ quantity.System) string {
		if c.Job.Metal2 == "" {
			return "same as the first"
		}
		return c.Used.Metal2
	},
	brief: func(c *calc.Card, _ quantity.System) string {
		if c.Job.Metal2 == "" {
			return ""
		}
		return "on " + c.Used.Metal2
	},
	open: func(j *calc.Job) { j.Metal2, j.Coating2 = "", "" },
	find: findMetal, reasons: metalReasons, applies: hasSecond,
}

// sameKey is the key of "same as the first member".
const sameKey = "same"

func hasSecond(c *calc.Card) bool { return !c.Setup.One }

func findMetal(text string) (string, error) {
	m, err := tables.FindMetal(text)
	return m.ID, err
}

// metalRows lists the base metals. A coating belongs to its sheet: another metal takes its own.
func metalRows(second bool) []choice {
	all := tables.Metals()
	rows := make([]choice, 0, len(all)+1)
	if second {
		rows = append(rows, choice{key: sameKey, name: "same", line: "The same sheet as the first member.",
			put: func(j *calc.Job) { j.Metal2, j.Coating2 = "", "" }})
	}
	for i := range all {
		m := &all[i]
		put := func(j *calc.Job) {
			if j.Metal != m.ID {
				j.Coating = ""
			}
			j.Metal = m.ID
		}
		if second {
			put = func(j *calc.Job) {
				if j.Metal2 != m.ID {
					j.Coating2 = ""
				}
				j.Metal2 = m.ID
			}
		}
		rows = append(rows, choice{key: m.ID, name: m.ID, also: strings.ToLower(m.Name),
			line: calc.NameAndNote(m.Name, m.Note), put: put})
	}
	return rows
}

func metalReasons(s *session, id string) []reason {
	m, ok := tables.MetalByID(id)
	if !ok {
		return nil
	}
	return []reason{
		{"sold by", string(m.System) + " gauge", "", ""},
		datum("starts to melt", m.Solidus, s.units),
		datum("conductivity, mean to 1000 °C", m.Conductivity, s.units),
		datum("heat capacity, mean to 1000 °C", m.HeatCapacity, s.units),
		datum("tensile strength", m.Tensile, s.units),
	}
}
