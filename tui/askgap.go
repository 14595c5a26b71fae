package tui

import (
	"strconv"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

var askGap = question{
	name: "gap", title: "gap", ask: "How wide is the root opening?",
	list:  func(*session) []choice { return gapRows() },
	now:   func(c *calc.Card) string { return gapKey(c.Used.Gap.V) },
	shown: func(c *calc.Card, sys quantity.System) string { return gapText(c.Used.Gap.V, sys) },
	brief: func(c *calc.Card, sys quantity.System) string {
		if c.Used.Gap.V == 0 {
			return "no gap"
		}
		return "gap " + gapText(c.Used.Gap.V, sys)
	},
	open:  func(j *calc.Job) { j.Gap = calc.Opt{} },
	parse: parseGap,
	rule:  quantity.FieldGap,
}

// gaps are the openings that the list offers, mm; any other is typed.
var gaps = [...]float64{0, 0.5, 1, 1.5, 2, 2.5, 3}

func gapKey(mm float64) string { return strconv.FormatFloat(mm, 'f', 3, 64) }

func gapText(mm float64, sys quantity.System) string {
	if mm == 0 {
		return "none"
	}
	return lengthText(mm, sys)
}

func gapRows() []choice {
	rows := make([]choice, 0, len(gaps))
	for _, mm := range gaps {
		rows = append(rows, gapRow(mm))
	}
	return rows
}

func gapRow(mm float64) choice {
	line := "open root: the bead has to fill it"
	if mm == 0 {
		line = "the members touch"
	}
	return choice{key: gapKey(mm), name: gapText(mm, quantity.Both), line: line,
		put: func(j *calc.Job) { j.Gap = calc.Some(mm) }}
}

func parseGap(_ *session, text string) (choice, error) {
	g, err := quantity.ParseGap(text)
	if err != nil {
		return choice{}, err
	}
	return gapRow(float64(g)), nil
}
