package choice

import (
	"fmt"
	"strconv"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/internal/mistake"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// sheets are the thicknesses of one member: the gauges of its metal's own system, since the same number in another
// system is another thickness.
func sheets(member int) values {
	metal := func(p *Present) tables.GaugeSystem {
		if p.Card == nil {
			return tables.MSG
		}
		return p.Card.Setup.Members[member].Metal.System
	}
	return values{
		rows: func(p *Present) []Row {
			var rows []Row
			for _, g := range tables.Gauges {
				if in, ok := tables.GaugeThickness(g.N, metal(p)); ok {
					rows = append(rows, gaugeRow(g.N, in, metal(p)))
				}
			}
			return rows
		},
		Typed:   func(p *Present, text string) (Row, error) { return typedSheet(text, metal(p)) },
		reasons: func(id string, _ *Present) []Reason { return gaugeReasons(id) },
		About:   func(p *Present) string { return "in " + gaugeOf(metal(p)) },
	}
}

func gaugeRow(n int, in float64, sys tables.GaugeSystem) Row {
	mm := in * quantity.MMPerInch
	r := Row{ID: sheetID(n, calc.Opt{}), Name: strconv.Itoa(n) + " ga", Fact: bothWays(in), Line: suits(mm),
		More: "nominal thickness in " + gaugeOf(sys),
		Tip:  fmt.Sprintf("%.4f in, %.2f mm of uncoated steel", in, mm), said: fmt.Sprintf("%.2f mm, %.4f in", mm, in)}
	switch {
	case mm > tables.SheetThickest.V:
		r.said += ", over what arc brazing suits"
	case r.Line != "":
		r.said += ", " + r.Line
	}
	return r
}

// typedSheet is the row of a typed gauge or thickness. A gauge that the metal's system does not have is refused here,
// next to where it was typed.
func typedSheet(text string, sys tables.GaugeSystem) (Row, error) {
	size, err := quantity.ParseSize(text)
	if err != nil {
		return Row{}, err
	}
	if mm := size.MM; size.Gauge == 0 {
		return Row{ID: sizeID(mm), Name: quantity.Show(mm, "mm", quantity.Both), Line: suits(mm),
			More: "as measured, coating included"}, nil
	}
	in, ok := tables.GaugeThickness(size.Gauge, sys)
	if !ok {
		return Row{}, mistake.New(fmt.Sprintf("%s has no %d gauge", sheetOf[sys], size.Gauge),
			"type 8 to 30, or the thickness, such as .060 or 1.5mm")
	}
	return gaugeRow(size.Gauge, in, sys), nil
}

// sheetID tells one thickness from another.
func sheetID(gauge int, mm calc.Opt) string {
	if mm.Set {
		return sizeID(mm.V)
	}
	return strconv.Itoa(gauge) + "ga"
}

func sheetText(gauge int, mm calc.Opt, sys quantity.System) string {
	if mm.Set {
		return quantity.Show(mm.V, "mm", sys)
	}
	return strconv.Itoa(gauge) + " ga"
}

// bothWays is a thickness in millimetres and in inches, because people use either. The inches have no leading zero, as
// on a mill tag.
func bothWays(in float64) string {
	return fmt.Sprintf("%5.2f mm  %s in", in*quantity.MMPerInch, strings.TrimPrefix(fmt.Sprintf("%.4f", in), "0"))
}

// suits warns of a sheet whose thickness does not suit arc brazing.
func suits(mm float64) string {
	switch {
	case mm > tables.SheetThickest.V:
		return "over the 3 mm that arc brazing suits"
	case mm < tables.SheetThinnest.V:
		return "thinner than arc brazing suits"
	}
	return ""
}

func gaugeOf(sys tables.GaugeSystem) string { return sheetOf[sys] + " gauge (" + string(sys) + ")" }

var sheetOf = map[tables.GaugeSystem]string{tables.MSG: "bare steel sheet", tables.GSG: "galvanized sheet",
	tables.USSG: "stainless sheet", tables.BS: "copper-alloy sheet"}

// gaugeReasons shows what the same gauge number means in the four systems, a frequent mistake.
func gaugeReasons(id string) []Reason {
	n, err := strconv.Atoi(strings.TrimSuffix(id, "ga"))
	if err != nil {
		return nil
	}
	lines := []Reason{{Label: "one number, four thicknesses"}}
	for _, sys := range [...]tables.GaugeSystem{tables.MSG, tables.GSG, tables.USSG, tables.BS} {
		if in, ok := tables.GaugeThickness(n, sys); ok {
			lines = append(lines, Reason{sheetOf[sys], bothWays(in), "", ""})
		}
	}
	return lines
}

var wires = values{
	rows: func(*Present) []Row {
		return rowsOf(tables.Wires, func(w *tables.Wire) Row { return wireRow(w.ID, w.ID, w.Diameter.V, w.Spools) })
	},
	Typed: func(_ *Present, text string) (Row, error) {
		mm, err := quantity.Read(quantity.FieldWire, text)
		if err != nil {
			return Row{}, err
		}
		if w, ok := tables.WireNear(mm); ok {
			return wireRow(w.ID, w.ID, w.Diameter.V, w.Spools), nil
		}
		return wireRow(sizeID(mm), quantity.Show(mm, "mm", quantity.Both), mm, "no standard size"), nil
	},
	reasons: func(id string, p *Present) []Reason {
		mm, err := quantity.Read(quantity.FieldWire, id)
		if err != nil {
			return nil
		}
		f := &p.Card.Setup.Filler
		mass := fmt.Sprintf("%.2f g a metre", formula.MassPerLength(mm, f.Density.V))
		lines := []Reason{{"in " + f.Name, mass, f.Density.Source, string(f.Density.Known)}}
		if w, ok := tables.WireNear(mm); ok {
			lines = append(lines, figure("diameter with its tolerance", w.Diameter, quantity.Metric))
		}
		return lines
	},
}

// wireRow says between which currents a wire burns a steady short arc, and on which spools it is sold.
func wireRow(id, name string, mm float64, spools string) Row {
	parts := []string{fmt.Sprintf("%.3f mm", mm)}
	arc, sold := calc.ArcRange(mm), ""
	if arc != "" {
		parts = append(parts, arc)
	} else {
		arc = "no steady range known for this size"
	}
	if spools != "" {
		sold = "; " + spools
	}
	return Row{ID: id, Name: name, Fact: parts[0], Line: arc + sold, Tip: spools,
		said: strings.Join(parts, ", ") + sold}
}

func wireID(mm float64) string {
	if w, ok := tables.WireNear(mm); ok {
		return w.ID
	}
	return sizeID(mm)
}

// shownWire is the size as it is stamped on the spool, otherwise in the units of the card.
func shownWire(c *calc.Card, sys quantity.System) string {
	if w, ok := tables.WireNear(c.Used.Wire.V); ok {
		return w.ID
	}
	return quantity.Show(c.Used.Wire.V, "mm", sys)
}

// gaps are a few openings to pick from; any other can be typed.
var gaps = values{sample: true,
	rows: func(*Present) []Row {
		return rowsOf([]float64{0, 0.5, 1, 1.5, 2, 2.5, 3}, func(mm *float64) Row { return gapRow(*mm) })
	},
	Typed: func(_ *Present, text string) (Row, error) {
		g, err := quantity.Read(quantity.FieldGap, text)
		return gapRow(g), err
	},
}

func gapRow(mm float64) Row {
	line := "open root: the bead has to fill it"
	if mm == 0 {
		line = "the members touch"
	}
	return Row{ID: sizeID(mm), Name: gapText(mm, quantity.Both), Line: line}
}

func gapText(mm float64, sys quantity.System) string {
	if mm == 0 {
		return "none"
	}
	return quantity.Show(mm, "mm", sys)
}
