package tui

import (
	"fmt"
	"strconv"

	"brazebooth/calc"
	"brazebooth/internal/mistake"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

var askGauge = question{
	name: "gauge", title: "gauge", ask: "Which gauge or thickness?",
	list:    func(s *session) []choice { return gaugeRows(s, 0) },
	now:     func(c *calc.Card) string { return sheetKey(c.Used.Gauge, c.Used.Thickness) },
	shown:   func(c *calc.Card, sys quantity.System) string { return sheetText(c.Used.Gauge, c.Used.Thickness, sys) },
	open:    func(j *calc.Job) { j.Gauge, j.Thickness = 0, calc.Opt{} },
	parse:   func(s *session, text string) (choice, error) { return parseSheet(s, text, 0) },
	reasons: func(s *session, key string) []reason { return gaugeReasons(s, key, 0) },
	rule:    quantity.FieldSize,
	about:   func(s *session) string { return systemAbout(s, 0) },
}

var askGauge2 = question{
	name: "gauge2", title: "second gauge", ask: "Which gauge is the second member?",
	list: func(s *session) []choice { return gaugeRows(s, 1) },
	now: func(c *calc.Card) string {
		if c.Job.Gauge2 == 0 && !c.Job.Thickness2.Set {
			return sameKey
		}
		return sheetKey(c.Used.Gauge2, c.Used.Thickness2)
	},
	shown: func(c *calc.Card, sys quantity.System) string {
		return sheetText(c.Used.Gauge2, c.Used.Thickness2, sys)
	},
	brief: func(c *calc.Card, sys quantity.System) string {
		if sheetKey(c.Used.Gauge2, c.Used.Thickness2) == sheetKey(c.Used.Gauge, c.Used.Thickness) {
			return ""
		}
		return "second " + sheetText(c.Used.Gauge2, c.Used.Thickness2, sys)
	},
	open:    func(j *calc.Job) { j.Gauge2, j.Thickness2 = 0, calc.Opt{} },
	parse:   func(s *session, text string) (choice, error) { return parseSheet(s, text, 1) },
	reasons: func(s *session, key string) []reason { return gaugeReasons(s, key, 1) },
	applies: hasSecond,
	rule:    quantity.FieldSize,
	about:   func(s *session) string { return systemAbout(s, 1) },
}

// sheetKey tells one thickness from another.
func sheetKey(gauge int, mm calc.Opt) string {
	if mm.Set {
		return strconv.FormatFloat(mm.V, 'g', 6, 64)
	}
	return strconv.Itoa(gauge) + "ga"
}

func sheetText(gauge int, mm calc.Opt, sys quantity.System) string {
	if mm.Set {
		return lengthText(mm.V, sys)
	}
	return strconv.Itoa(gauge) + " ga"
}

// systemAbout says which of the four systems the numbers belong to.
func systemAbout(s *session, member int) string {
	sys := s.card.Setup.Members[member].Metal.System
	return "in " + systemWords(sys) + " gauge (" + string(sys) + ")"
}

// gaugeRows lists the gauges of the member's own system; a number of another system would be another
// thickness.
func gaugeRows(s *session, member int) []choice {
	m := s.card.Setup.Members[member].Metal
	all := tables.Gauges()
	rows := make([]choice, 0, len(all)+1)
	if member == 1 {
		rows = append(rows, choice{key: sameKey, name: "same", line: "As thick as the first member.",
			put: func(j *calc.Job) { j.Gauge2, j.Thickness2 = 0, calc.Opt{} }})
	}
	for i := range all {
		if in, ok := tables.GaugeThickness(all[i].N, m.System); ok {
			rows = append(rows, gaugeRow(all[i].N, in, m, member))
		}
	}
	return rows
}

func gaugeRow(n int, in float64, m tables.Metal, member int) choice {
	return choice{
		key: strconv.Itoa(n) + "ga", name: strconv.Itoa(n) + " ga",
		fact: sizeFact(in * quantity.MMPerInch),
		line: suits(in * quantity.MMPerInch), more: "nominal thickness in " + systemWords(m.System) + " gauge (" + string(m.System) + ")",
		put: func(j *calc.Job) { putSheet(j, member, n, calc.Opt{}) },
	}
}

// sizeFact is a thickness both ways: hands use either.
func sizeFact(mm float64) string {
	return fmt.Sprintf("%5.2f mm  %s in", mm, inchText(mm))
}

// inchText prints inches to four decimals without the leading nought, as a mill tag does.
func inchText(mm float64) string {
	s := strconv.FormatFloat(mm/quantity.MMPerInch, 'f', 4, 64)
	if s[0] == '0' {
		return s[1:]
	}
	return s
}

func systemWords(sys tables.GaugeSystem) string {
	switch sys {
	case tables.MSG:
		return "bare steel sheet"
	case tables.GSG:
		return "galvanized sheet"
	case tables.USSG:
		return "stainless sheet"
	}
	return "copper-alloy sheet"
}

// suits says where a sheet is not of a thickness that arc brazing suits.
func suits(mm float64) string {
	switch {
	case mm > tables.SheetThickest.V:
		return "over the 3 mm that arc brazing suits"
	case mm < tables.SheetThinnest.V:
		return "thinner than arc brazing suits"
	}
	return ""
}

func putSheet(j *calc.Job, member, gauge int, mm calc.Opt) {
	if member == 1 {
		j.Gauge2, j.Thickness2 = gauge, mm
		return
	}
	j.Gauge, j.Thickness = gauge, mm
}

// parseSheet reads a typed gauge or thickness. A gauge that the metal's system does not have is
// refused here, where it was typed.
func parseSheet(s *session, text string, member int) (choice, error) {
	size, err := quantity.ParseSize(text)
	if err != nil {
		return choice{}, err
	}
	m := s.card.Setup.Members[member].Metal
	if size.Gauge != 0 {
		in, ok := tables.GaugeThickness(size.Gauge, m.System)
		if !ok {
			return choice{}, mistake.New(
				fmt.Sprintf("%s has no %d gauge", systemWords(m.System), size.Gauge),
				"type 8 to 30, or the thickness as .060 or 1.5mm")
		}
		return gaugeRow(size.Gauge, in, m, member), nil
	}
	mm := calc.Some(float64(size.Length))
	return choice{key: sheetKey(0, mm), name: lengthText(mm.V, quantity.Both), line: suits(mm.V), more: "as measured, coating included",
		put: func(j *calc.Job) { putSheet(j, member, 0, mm) }}, nil
}

// gaugeReasons shows the trap: what the same number means in the four systems.
func gaugeReasons(s *session, key string, member int) []reason {
	n, err := strconv.Atoi(key[:max(0, len(key)-2)])
	if err != nil {
		return nil
	}
	lines := []reason{{label: "one number, four thicknesses"}}
	for _, sys := range [...]tables.GaugeSystem{tables.MSG, tables.GSG, tables.USSG, tables.BS} {
		if in, ok := tables.GaugeThickness(n, sys); ok {
			lines = append(lines, reason{systemWords(sys), sizeFact(in * quantity.MMPerInch), "", ""})
		}
	}
	return lines
}
