package linear

import (
	"fmt"
	"strconv"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// row is one answer that a question lists: what is typed, and what it means.
type row struct{ id, line string }

// rowsOf are the answers of a choice, none for a plain number.
func (t *talk) rowsOf(name string) []row {
	switch name {
	case "metal", "metal2":
		return rowsFrom(tables.Metals(), func(m *tables.Metal) row { return row{m.ID, calc.NameAndNote(m.Name, m.Note)} })
	case "coating", "coating2":
		return rowsFrom(tables.Coatings(), func(c *tables.Coating) row { return row{c.ID, calc.NameAndNote(c.Name, c.Note)} })
	case "filler":
		return rowsFrom(tables.Fillers(), func(f *tables.Filler) row { return row{f.ID, calc.NameAndNote(f.Name, f.Use)} })
	case "gas":
		return rowsFrom(tables.Gases(), func(g *tables.Gas) row { return row{g.ID, calc.NameAndNote(g.Name, g.Note)} })
	case "joint":
		return rowsFrom(tables.Joints(), optionRow)
	case "position":
		return rowsFrom(tables.Positions(), optionRow)
	case "use":
		return rowsFrom(tables.Uses(), optionRow)
	case "hazard":
		list := rowsFrom(tables.Hazards(), func(h *tables.Hazard) row { return row{h.ID, calc.NameAndNote(h.Name, h.Why)} })
		return append(list, row{"none", "asked, and none of them applies"})
	case "mode":
		return t.modeRows()
	case "gauge":
		return t.gaugeRows(0)
	case "gauge2":
		return t.gaugeRows(1)
	case "wire":
		return rowsFrom(tables.Wires(), wireRow)
	}
	return nil
}

func rowsFrom[T any](all []T, of func(*T) row) []row {
	list := make([]row, len(all))
	for i := range all {
		list[i] = of(&all[i])
	}
	return list
}

func optionRow(o *tables.Option) row { return row{o.ID, calc.NameAndNote(o.Name, o.Line)} }

// modeRows say of each mode whether it has a good setting for the sheet at hand: that is computed, not looked up.
func (t *talk) modeRows() []row {
	list := rowsFrom(tables.Modes(), optionRow)
	for i := range list {
		job := t.job
		job.Mode = list[i].id
		verdict := "Has a good setting for this sheet"
		if card, err := calc.Answer(t.ctx, job, nil); err != nil || card.Warned("no-good-setting") {
			verdict = "Has no good setting for this sheet"
		}
		list[i].line = sentence(list[i].line) + " " + verdict
	}
	return list
}

// gaugeRows are the gauges of the member's own system; the same number in another is another thickness.
func (t *talk) gaugeRows(member int) []row {
	sys := t.card.Setup.Members[member].Metal.System
	var list []row
	for _, g := range tables.Gauges() {
		if in, ok := tables.GaugeThickness(g.N, sys); ok {
			mm := in * quantity.MMPerInch
			line := fmt.Sprintf("%.2f mm, %s in", mm, strconv.FormatFloat(in, 'f', 4, 64))
			switch {
			case mm > tables.SheetThickest.V:
				line += ", over what arc brazing suits"
			case mm < tables.SheetThinnest.V:
				line += ", thinner than arc brazing suits"
			}
			list = append(list, row{strconv.Itoa(g.N) + "ga", line})
		}
	}
	return list
}

// wireRow says between which currents a wire runs a steady short arc.
func wireRow(w *tables.Wire) row {
	line := fmt.Sprintf("%.3f mm", w.Diameter.V)
	if arc := calc.ArcRange(w.Diameter.V); arc != "" {
		line += ", " + arc
	}
	if w.Spools != "" {
		line += "; " + w.Spools
	}
	return row{w.ID, line}
}

// wireName is a wire as its spool says it, with its diameter.
func wireName(mm float64) string {
	w, ok := tables.WireNear(mm)
	switch {
	case !ok:
		return quantity.Show(mm, "mm", quantity.Metric)
	case w.Inch > 0:
		return fmt.Sprintf("%s in, %.3f mm", w.ID, mm)
	}
	return quantity.Show(mm, "mm", quantity.Metric)
}
