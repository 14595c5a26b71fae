package tui

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// cell is a figure ready for the screen: number and unit, its band, and the same in the other system
// where both are shown and they differ.
type cell struct {
	number, unit, band          string
	altNumber, altUnit, altBand string
}

// showFigure prints a figure in the chosen system.
func showFigure(f *calc.Figure, sys quantity.System) cell {
	first := oneSystem(sys)
	var c cell
	c.number, c.band = quantity.Band(f.Value, f.Low, f.High, f.Unit, first)
	c.unit = quantity.Label(f.Unit, first)
	if f.Low == f.High {
		c.band = ""
	}
	if inch := quantity.Label(f.Unit, quantity.Inch); sys == quantity.Both && inch != c.unit {
		c.altUnit = inch
		c.altNumber, c.altBand = quantity.Band(f.Value, f.Low, f.High, f.Unit, quantity.Inch)
		if f.Low == f.High {
			c.altBand = ""
		}
	}
	return c
}

// oneSystem is the system that leads where both are shown.
func oneSystem(sys quantity.System) quantity.System {
	if sys == quantity.Both {
		return quantity.Metric
	}
	return sys
}

// value is number and unit in one.
func (c *cell) value() string { return spaced(c.number, c.unit) }

// alt is the value in the other system, "" where there is none.
func (c *cell) alt() string { return spaced(c.altNumber, c.altUnit) }

func spaced(number, unit string) string {
	if unit == "" {
		return number
	}
	return number + " " + unit
}

// lengthText prints a length of a few millimetres the way the system's hands say it.
func lengthText(mm float64, sys quantity.System) string { return quantity.Show(mm, "mm", sys) }

// paceText is a travel as seconds for a length that a hand can count along.
func paceText(mms float64, sys quantity.System) string {
	switch {
	case !(mms > 0):
		return ""
	case sys == quantity.Inch:
		return fmt.Sprintf("%.1f s for 4 in", quantity.Seconds4in(mms))
	case sys == quantity.Both:
		return fmt.Sprintf("%.1f s for 100 mm (4 in)", quantity.Seconds100(mms))
	}
	return fmt.Sprintf("%.1f s for 100 mm", quantity.Seconds100(mms))
}

// remark is what a hand must know beside a figure: long, and short for narrow screens.
func remark(f *calc.Figure, c *calc.Card, sys quantity.System) (long, short string) {
	name, _ := strings.CutSuffix(f.Name, "_2")
	switch name {
	case "wire_feed":
		switch {
		case f.Suggested():
			return "good between", ""
		case f.Usual():
			return "usual; not judged", ""
		}
	case "travel":
		long, short = paceText(f.Value, sys), paceText(f.Value, oneSystem(sys))
		if f.Suggested() {
			long = "good between; " + long
		}
		if f.Usual() {
			long = "usual; " + long
		}
		return long, short
	case "arc_on":
		return beatGap(c, sys)
	case "arc_off":
		long, _ = beatGap(c, sys) // the row above says it
		return long, ""
	case "stickout":
		return "tip to arc, not to the work", "tip to arc"
	case "gas_flow":
		return c.Setup.Gas.Name, c.Setup.Gas.ID
	case "volts":
		return "at the arc, while it burns", ""
	case "heat_input":
		return "for reports, k 0.8", ""
	case "arc_energy":
		return "no efficiency in it", ""
	case "net_heat":
		return "what gets into the sheet", ""
	case "zinc_boiled_halfwidth", "zinc_melted_halfwidth":
		return "each side of the arc's line", ""
	case "cooling_time":
		return "800 to 500 °C", "800–500 °C"
	case "pulse_frequency":
		return "one drop a pulse", ""
	}
	return "", ""
}

// beatGap is the gap that a beat is for: it is no good for another one.
func beatGap(c *calc.Card, sys quantity.System) (long, short string) {
	if c.Used.Gap.V == 0 {
		return "for a closed joint", "no gap"
	}
	gap := lengthText(c.Used.Gap.V, oneSystem(sys))
	return "for a gap of " + gap, "gap " + gap
}

// headline is the first clause of an advice: what to do, without the reason.
func headline(s string) string {
	if i := strings.IndexAny(s, ";:"); i > 0 {
		return s[:i]
	}
	return s
}

// knownShort is how a figure is known in a word or two; * tells more.
func knownShort(known string) string {
	switch known {
	case "memory high", "memory medium":
		return "from memory"
	case "memory low":
		return "from memory, unsure"
	case "common practice, no source":
		return "practice"
	case "own computation":
		return "computed"
	}
	return known
}
