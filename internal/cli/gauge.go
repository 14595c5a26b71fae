package cli

import (
	"fmt"
	"math"

	"github.com/spf13/cobra"

	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// gaugeRow is one gauge number in one system.
type gaugeRow struct {
	System  string  `json:"system"`
	Inches  float64 `json:"inches"`
	MM      float64 `json:"mm"`
	Minimum float64 `json:"minimum_inches,omitempty"`
	Use     string  `json:"use"`
	Source  string  `json:"source"`
}

// systems in the order of their use in a shop, with what each is for and the source of its numbers.
var systems = [...]struct {
	id          tables.GaugeSystem
	use, source string
}{
	{tables.MSG, "uncoated steel", "manufacturers' standard gauge, GNU units 2.22 definitions (read)"},
	{tables.GSG, "galvanized steel, coat included", "SMACNA tables after ASTM A924 (read)"},
	{tables.USSG, "stainless steel", "15 USC 206 (read)"},
	{tables.BS, "copper, brass, bronze", "ASTM B258 (read)"},
}

func (d *Deps) gaugeCommand() *cobra.Command {
	cmd := withJSON(&cobra.Command{
		Use:     "gauge N",
		Short:   "A sheet gauge in all four systems, in mm and inches; for a thickness the nearest gauges",
		Example: "  brazebooth gauge 16\n  brazebooth gauge 1.5mm\n  brazebooth gauge .060 --units inch",
		Args:    oneArg("a gauge from 7 to 30, or a thickness", "brazebooth gauge 16, or 1.5mm"),
		RunE: func(cmd *cobra.Command, args []string) error {
			s, err := quantity.ParseSize(args[0])
			switch {
			case err != nil:
				return err
			case s.Gauge == 0:
				return d.gaugesBeside(cmd, s.MM)
			}
			return d.gauge(cmd, s.Gauge)
		},
	})
	cmd.Flags().String("units", "", unitsUsage)
	return cmd
}

func (d *Deps) gauge(cmd *cobra.Command, n int) error {
	rows := make([]gaugeRow, 0, len(systems))
	for _, s := range systems {
		in, ok := tables.GaugeThickness(n, s.id)
		if !ok {
			continue
		}
		row := gaugeRow{System: string(s.id), Inches: in, MM: in * quantity.MMPerInch, Use: s.use, Source: s.source}
		if s.id == tables.GSG {
			row.Minimum = in - tables.GaugeTolerance(n)
		}
		rows = append(rows, row)
	}
	if asJSON(cmd) {
		return d.document(1, map[string]any{"gauge": n, "systems": rows})
	}
	d.say("%d gauge\n", n)
	for _, r := range rows {
		minimum := ""
		if r.Minimum > 0 {
			minimum = fmt.Sprintf(" (minimum %s)", thickness(r.Minimum*quantity.MMPerInch, 4, d.units))
		}
		d.tell("  %-5s %s  %s%s\n", r.System, thicknesses(r.MM, "  ", d.units), r.Use, minimum)
		d.say("        %s\n", r.Source)
	}
	d.say("One number, %d thicknesses: give the metal too, or measure.\n", len(rows))
	if n == 7 {
		d.say("Galvanized sheet has no 7 gauge.\n")
	}
	return nil
}

// besideRow is a system's gauges nearest to a thickness.
type besideRow struct {
	System string       `json:"system"`
	Use    string       `json:"use"`
	Source string       `json:"source"`
	Gauges []besideEach `json:"gauges"` // the thicker first; only one if the thickness is outside the system
}

type besideEach struct {
	Gauge  int     `json:"gauge"`
	Inches float64 `json:"inches"`
	MM     float64 `json:"mm"`
}

// gaugesBeside prints, in each system, the next thicker and the next thinner gauge of a thickness, mm.
func (d *Deps) gaugesBeside(cmd *cobra.Command, mm float64) error {
	rows := make([]besideRow, 0, len(systems))
	for _, s := range systems {
		rows = append(rows, besideRow{string(s.id), s.use, s.source, nextTo(mm, s.id)})
	}
	if asJSON(cmd) {
		return d.document(1, map[string]any{"thickness_mm": mm, "systems": rows})
	}
	d.tell("%s\n", thicknesses(mm, ", ", d.units))
	for _, r := range rows {
		d.say("  %-5s %s\n", r.System, r.Use)
		for _, g := range r.Gauges {
			d.tell("        %2d ga  %s  %s\n", g.Gauge, thicknesses(g.MM, "  ", d.units), offBy(g.MM-mm, d.units))
		}
		d.say("        %s\n", r.Source)
	}
	d.say("Give the measured thickness if you know it: a gauge is only the nearest name.\n")
	return nil
}

// nextTo are the thinnest gauge of a system that is at least mm thick, and the thickest one below. tables.Gauges run
// from thick to thin.
func nextTo(mm float64, id tables.GaugeSystem) []besideEach {
	var over, under []besideEach
	for _, g := range tables.Gauges {
		in, ok := tables.GaugeThickness(g.N, id)
		if !ok {
			continue
		}
		each := besideEach{g.N, in, in * quantity.MMPerInch}
		switch {
		case each.MM >= mm*(1-1e-9):
			over = []besideEach{each}
		case under == nil:
			under = []besideEach{each}
		}
	}
	return append(over, under...)
}

// offBy says how much thicker or thinner a gauge is, in mm.
func offBy(by float64, sys quantity.System) string {
	switch {
	case math.Abs(by) < 0.005:
		return "the same"
	case by > 0:
		return thickness(by, 2, sys) + " thicker"
	}
	return thickness(-by, 2, sys) + " thinner"
}

// thicknesses is a thickness in both units, because sheet is sold by either; the unit of the user's system comes first.
func thicknesses(mm float64, between string, sys quantity.System) string {
	metric, inch := thickness(mm, 4, quantity.Metric), thickness(mm, 4, quantity.Inch)
	if sys == quantity.Inch {
		return inch + between + metric
	}
	return metric + between + inch
}

// thickness is a thickness, mm, in the units of a system, with so many decimals of a mm.
func thickness(mm float64, decimals int, sys quantity.System) string {
	metric, inch := fmt.Sprintf("%.*f mm", decimals, mm), fmt.Sprintf("%.4f in", mm/quantity.MMPerInch)
	switch sys {
	case quantity.Inch:
		return inch
	case quantity.Both:
		return metric + ", " + inch
	}
	return metric
}
