package tui

import (
	"fmt"
	"strconv"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

var askWire = question{
	name: "wire", title: "wire", ask: "Which wire size?",
	list:    wireRows,
	now:     func(c *calc.Card) string { return wireKey(c.Used.Wire.V) },
	shown:   func(c *calc.Card, sys quantity.System) string { return wireText(c.Used.Wire.V, sys) },
	open:    func(j *calc.Job) { j.Wire = calc.Opt{} },
	parse:   parseWire,
	reasons: wireReasons,
	rule:    quantity.FieldWire,
}

var askFiller = question{
	name: "filler", title: "filler", ask: "Which filler?",
	list:  func(*session) []choice { return fillerRows() },
	now:   func(c *calc.Card) string { return c.Used.Filler },
	shown: func(c *calc.Card, _ quantity.System) string { return c.Setup.Filler.Name },
	open:  func(j *calc.Job) { j.Filler = "" },
	find: func(text string) (string, error) {
		f, err := tables.FindFiller(text)
		return f.ID, err
	},
	reasons: fillerReasons,
}

// wireKey tells sizes apart to a micrometre.
func wireKey(mm float64) string { return strconv.FormatFloat(mm, 'f', 3, 64) }

// wireText is the size as it stands on the spool, or in the system's units.
func wireText(mm float64, sys quantity.System) string {
	if w, ok := tables.WireNear(mm); ok {
		return w.ID
	}
	return lengthText(mm, sys)
}

// fillerShort is the alloy's symbol, as on a spool.
func fillerShort(c *calc.Card) string {
	words := strings.Fields(c.Setup.Filler.Name)
	if len(words) == 0 {
		return c.Used.Filler
	}
	if last := words[len(words)-1]; strings.HasPrefix(last, "Cu") {
		return last
	}
	return c.Used.Filler
}

func wireRows(s *session) []choice {
	all := tables.Wires()
	rows := make([]choice, 0, len(all))
	for i := range all {
		rows = append(rows, wireRow(s, all[i].ID, all[i].Diameter.V, all[i].Spools))
	}
	return rows
}

func wireRow(s *session, name string, mm float64, spools string) choice {
	line := calc.ArcRange(mm)
	if line == "" {
		line = "no steady range known for this size"
	}
	if spools != "" {
		line += "; " + spools
	}
	return choice{key: wireKey(mm), name: name, fact: fmt.Sprintf("%.3f mm", mm), line: line,
		put: func(j *calc.Job) { j.Wire = calc.Some(mm) }}
}

func parseWire(s *session, text string) (choice, error) {
	d, err := quantity.ParseWire(text)
	if err != nil {
		return choice{}, err
	}
	mm := float64(d)
	name := lengthText(mm, quantity.Both)
	if w, ok := tables.WireNear(mm); ok {
		return wireRow(s, w.ID, w.Diameter.V, w.Spools), nil
	}
	return wireRow(s, name, mm, "no standard size"), nil
}

func wireReasons(s *session, key string) []reason {
	mm, err := strconv.ParseFloat(key, 64)
	if err != nil {
		return nil
	}
	f := &s.card.Setup.Filler
	lines := []reason{{"in " + f.Name, fmt.Sprintf("%.2f g a metre", formula.MassPerLength(mm, f.Density.V)), f.Density.Source, string(f.Density.Known)}}
	if w, ok := tables.WireNear(mm); ok {
		lines = append(lines, datum("diameter with its tolerance", w.Diameter, quantity.Metric))
	}
	return lines
}

func fillerRows() []choice {
	all := tables.Fillers()
	rows := make([]choice, 0, len(all))
	for i := range all {
		f := &all[i]
		rows = append(rows, choice{key: f.ID, name: f.ID, line: calc.NameAndNote(f.Name, f.Use),
			also: strings.ToLower(strings.Join([]string{f.Name, f.AWS, f.UNS, f.ISO, f.DIN}, " ")),
			put:  func(j *calc.Job) { j.Filler = f.ID }})
	}
	return rows
}

func fillerReasons(s *session, id string) []reason {
	f, ok := tables.FillerByID(id)
	if !ok {
		return nil
	}
	return []reason{
		{"designations", joinWords(f.AWS, f.UNS, f.ISO, f.DIN), f.LimitsOrigin.Source, string(f.LimitsOrigin.Known)},
		datum("starts to melt", f.Solidus, s.units), datum("all liquid", f.Liquidus, s.units),
		datum("density", f.Density, s.units),
		datum("guide strength of the deposit", f.Tensile, s.units),
		{"use", f.Use, f.UseOrigin.Source, string(f.UseOrigin.Known)},
	}
}

// joinWords joins what is there.
func joinWords(words ...string) string {
	var got []string
	for _, w := range words {
		if w != "" {
			got = append(got, w)
		}
	}
	return strings.Join(got, ", ")
}
