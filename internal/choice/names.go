package choice

import (
	"fmt"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/near"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// listed makes values from the rows of a table. find accepts the names that people use, and ids.
func listed[T any](all []T, find func(string) (T, error), row func(*T) Row,
	reasons func(*T, quantity.System) []Reason) values {
	return values{
		Find: func(text string) (string, error) { x, err := find(text); return row(&x).ID, err },
		rows: func(*Present) []Row { return rowsOf(all, row) },
		reasons: func(id string, p *Present) []Reason {
			x, err := find(id)
			if err != nil || reasons == nil {
				return nil
			}
			return reasons(&x, p.Units)
		},
	}
}

var metals = listed(tables.Metals, tables.FindMetal,
	func(m *tables.Metal) Row {
		return Row{ID: m.ID, Line: calc.NameAndNote(m.Name, m.Note), Brief: metalBriefs[m.ID],
			Also: strings.ToLower(m.Name), Tip: m.Name}
	},
	func(m *tables.Metal, sys quantity.System) []Reason {
		return []Reason{
			{"sold by", string(m.System) + " gauge", "", ""},
			figure("starts to melt", m.Solidus, sys),
			figure("conductivity, mean to 1000 °C", m.Conductivity, sys),
			figure("heat capacity, mean to 1000 °C", m.HeatCapacity, sys),
			figure("tensile strength", m.Tensile, sys),
		}
	})

// metalBriefs describe each metal in at most 21 columns: a list beside a card has no more on a screen of 80 columns.
var metalBriefs = map[string]string{
	"mild-steel": "bare", "galvanized": "hot-dip zinc", "galvannealed": "zinc-iron coat",
	"electro-zinc": "zinc-plated steel", "aluminized": "Al-Si coat",
	"hsla": "high-strength steel", "dp600": "dual-phase steel", "dp800": "dual-phase steel",
	"dp1000": "dual-phase steel", "boron-steel": "press-hardened", "stainless-304": "austenitic",
	"stainless-316": "austenitic, with Mo", "grey-iron": "cast; brittle", "ductile-iron": "cast; tougher",
	"copper": "pure copper", "brass": "not to be brazed", "silicon-bronze": "sheet C65500",
	"aluminium-bronze": "sheet C61400",
}

// shownMetal2 says so if the second member is of the same metal as the first.
func shownMetal2(c *calc.Card, _ quantity.System) string {
	if c.Job.Metal2 == "" {
		return "same as the first"
	}
	return c.Used.Metal2
}

var coatings = listed(tables.Coatings, tables.FindCoating,
	func(c *tables.Coating) Row {
		return Row{ID: c.ID, Line: coatingLine(c), Also: strings.ToLower(c.Name + " " + string(c.Kind)),
			said: calc.NameAndNote(c.Name, c.Note)}
	},
	func(c *tables.Coating, _ quantity.System) []Reason {
		if c.Kind == tables.NoCoat {
			return nil
		}
		return []Reason{figure("mass on each side", c.Side, quantity.Metric)}
	})

// coatingLine says how much coating is on the sheet and what it adds to the fume.
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

var fillers = listed(tables.Fillers, tables.FindFiller,
	func(f *tables.Filler) Row {
		return Row{ID: f.ID, Line: calc.NameAndNote(f.Name, f.Use), Tip: f.Name,
			Also: strings.ToLower(strings.Join([]string{f.Name, f.AWS, f.UNS, f.ISO, f.DIN}, " "))}
	},
	func(f *tables.Filler, sys quantity.System) []Reason {
		designations := slices.DeleteFunc([]string{f.AWS, f.UNS, f.ISO, f.DIN}, func(s string) bool { return s == "" })
		return []Reason{
			{"designations", strings.Join(designations, ", "), f.LimitsOrigin.Source, string(f.LimitsOrigin.Known)},
			figure("starts to melt", f.Solidus, sys),
			figure("all liquid", f.Liquidus, sys),
			figure("density", f.Density, sys),
			figure("guide strength of the deposit", f.Tensile, sys),
			{"use", f.Use, f.UseOrigin.Source, string(f.UseOrigin.Known)},
		}
	})

var gases = listed(tables.Gases, tables.FindGas,
	func(g *tables.Gas) Row { return Row{ID: g.ID, Line: calc.NameAndNote(g.Name, g.Note)} },
	func(g *tables.Gas, sys quantity.System) []Reason {
		return []Reason{figure("usual flow", g.Flow, sys), {"note", g.Note, g.Origin.Source, string(g.Origin.Known)}}
	})

// options makes values whose rows are one sentence each.
func options(find func(string) (tables.Option, error), all []tables.Option) values {
	return listed(all, find, func(o *tables.Option) Row {
		return Row{ID: o.ID, Line: o.Line, Tip: o.Line, said: calc.NameAndNote(o.Name, o.Line)}
	}, nil)
}

// modes are options. Each also says whether it has a good setting for the present sheet, which is computed for that
// sheet.
var modes = func() values {
	v := options(tables.FindMode, tables.Modes)
	all := v.rows
	v.rows = func(p *Present) []Row {
		rows := all(p)
		for i := range rows {
			rows[i].judge(p)
		}
		return rows
	}
	return v
}()

// judge writes into a row whether its mode has a good setting.
func (r *Row) judge(p *Present) {
	if p.Card == nil {
		return
	}
	job := p.Job
	job.Mode = r.ID
	fact, said := "suits ", "Has a good setting for this sheet"
	if card, err := p.Solve(job); err != nil || card.Warned("no-good-setting") {
		fact, said = "none good for ", "Has no good setting for this sheet"
	}
	r.Fact = fact + sheetText(p.Card.Used.Gauge, p.Card.Used.Thickness, p.Units.Lead())
	r.said += ". " + said
}

var hazards = values{
	Find: func(text string) (string, error) { return calc.HazardIDs(tables.HazardsSaid(text)) },
	rows: func(*Present) []Row {
		rows := rowsOf(tables.Hazards, func(h *tables.Hazard) Row {
			return Row{ID: h.ID, Name: h.Name, Line: h.Why, said: calc.NameAndNote(h.Name, h.Why)}
		})
		return append(rows, Row{ID: "none", Name: "none of these", Line: "asked and answered",
			said: "asked, and none of them applies"})
	},
}

var backings = listed(tables.Backings, tables.FindBacking,
	func(b *tables.Backing) Row {
		return Row{ID: b.ID, Line: b.Line, Tip: b.Line, said: calc.NameAndNote(b.Name, b.Line)}
	},
	func(b *tables.Backing, sys quantity.System) []Reason {
		var list []Reason
		if b.Changes != "" {
			list = append(list, Reason{"changes", b.Changes, b.Source, string(b.Known)})
		}
		switch b.ID {
		case "copper-bar":
			list = append(list, figure("heat transfer from dry sheet", tables.BarDry, sys),
				figure("heat transfer from liquid bronze", tables.BarWet, sys))
		case "steel-strip":
			list = append(list, figure("root opening at least", tables.StripGap, sys))
		}
		return list
	})

// joints, positions and uses are options.
var (
	joints    = options(tables.FindJoint, tables.Joints)
	positions = options(tables.FindPosition, tables.Positions)
	uses      = options(tables.FindUse, tables.Uses)
)

// Like returns at most three of the names that a word may have meant: the names that the glossary has for the same
// thing, such as gauge for thickness, otherwise the names that are spelled nearly alike.
func Like(word string, names []string) []string {
	if term, ok := tables.TermFor(word); ok {
		same := slices.DeleteFunc(slices.Clone(names), func(name string) bool {
			other, ok := tables.TermFor(name)
			return !ok || other != term
		})
		if len(same) > 0 {
			return same[:min(len(same), 3)]
		}
	}
	return near.Names(word, names)
}
