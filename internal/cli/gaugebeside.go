package cli

import (
	"fmt"
	"math"
	"strings"

	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// besideRow is a system's gauges next to a thickness.
type besideRow struct {
	System string       `json:"system"`
	Use    string       `json:"use"`
	Source string       `json:"source"`
	Gauges []besideEach `json:"gauges"` // the thicker first; one where the thickness lies outside the system
}

// besideEach is one of them.
type besideEach struct {
	Gauge  int     `json:"gauge"`
	Inches float64 `json:"inches"`
	MM     float64 `json:"mm"`
}

// gaugesBeside answers a thickness, mm, with the gauges next to it on both sides in each system.
func (d *Deps) gaugesBeside(mm float64, asJSON bool) error {
	rows := make([]besideRow, 0, len(systems))
	for _, s := range systems {
		rows = append(rows, besideRow{string(s.id), s.use, s.source, nextTo(mm, s.id)})
	}
	if asJSON {
		return d.encode(map[string]any{"schema": 1, "version": Version, "thickness_mm": mm, "systems": rows})
	}
	var b strings.Builder
	b.WriteString(d.marked(fmt.Sprintf("%.4g mm, %.4f in\n", mm, mm/quantity.MMPerInch)))
	for _, r := range rows {
		fmt.Fprintf(&b, "  %-5s %s\n", r.System, r.Use)
		for _, g := range r.Gauges {
			b.WriteString(d.marked(fmt.Sprintf("        %2d ga  %.4f in  %.4f mm  %s\n", g.Gauge, g.Inches, g.MM, offBy(g.MM-mm))))
		}
		fmt.Fprintf(&b, "        %s\n", r.Source)
	}
	b.WriteString("Give the thickness as measured where it is known: a gauge is only the nearest name.\n")
	_, err := d.Out.Write([]byte(b.String()))
	return err
}

// nextTo are the thinnest gauge of a system that is not thinner, and the thickest that is. Gauges run from thick to thin.
func nextTo(mm float64, id tables.GaugeSystem) []besideEach {
	var over, under []besideEach
	all := tables.Gauges()
	for i := range all {
		in, ok := tables.GaugeThickness(all[i].N, id)
		if !ok {
			continue
		}
		each := besideEach{all[i].N, in, in * quantity.MMPerInch}
		switch {
		case each.MM >= mm*(1-1e-9):
			over = []besideEach{each}
		case under == nil:
			under = []besideEach{each}
		}
	}
	return append(over, under...)
}

// offBy says how much thicker or thinner a gauge is.
func offBy(by float64) string {
	switch {
	case math.Abs(by) < 0.005:
		return "the same"
	case by > 0:
		return fmt.Sprintf("%.2f mm thicker", by)
	}
	return fmt.Sprintf("%.2f mm thinner", -by)
}
