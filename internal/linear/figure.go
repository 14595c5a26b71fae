package linear

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/quantity"
)

// figure is a figure as it is read out: "wire feed 6.35 metres per minute, good between 5.9 and 6.8, suggested". what is added
// stands behind it.
func (t *talk) figure(f *calc.Figure, added ...string) string {
	text := label(f.Name) + " " + t.value(f)
	for _, a := range added {
		if a != "" {
			text += ", " + a
		}
	}
	return text + "."
}

// value is a figure's number and band, in both systems where both are wanted.
func (t *talk) value(f *calc.Figure) string {
	if t.units != quantity.Both {
		return valueIn(f, t.units)
	}
	text := valueIn(f, quantity.Metric)
	if quantity.Label(f.Unit, quantity.Inch) != quantity.Label(f.Unit, quantity.Metric) {
		text += ", or " + valueIn(f, quantity.Inch)
	}
	return text
}

func valueIn(f *calc.Figure, sys quantity.System) string {
	number, band := quantity.Band(f.Value, f.Low, f.High, f.Unit, sys)
	if f.Unit == "1" { // a count
		number, band = fmt.Sprintf("%.0f", f.Value), fmt.Sprintf("%.0f–%.0f", f.Low, f.High)
	}
	text := inUnit(number, quantity.Label(f.Unit, sys))
	if low, high, ok := strings.Cut(band, "–"); ok && f.Low != f.High {
		text += ", "
		switch { // what the hand may choose, not what is in doubt
		case f.Suggested():
			text += "good "
		case f.Usual():
			text += "usual "
		}
		text += "between " + inUnit(low, "") + " and " + inUnit(high, "")
	}
	return text
}

// label is a figure's plain name; a member's number in it would be heard as the figure's.
func label(name string) string {
	text := calc.FigureLabel(name)
	if base, ok := strings.CutSuffix(text, " 1"); ok {
		return base + " on the first member"
	}
	if base, ok := strings.CutSuffix(text, " 2"); ok {
		return base + " on the second member"
	}
	return text
}

// size is a value of a card's unit alone.
func (t *talk) size(v float64, unit string) string {
	return t.value(&calc.Figure{Value: v, Low: v, High: v, Unit: unit})
}

// origin says whose a setting is, "" for a figure that follows from others.
func origin(card *calc.Card, figure string) string {
	c := choice.SettingOf(figure)
	switch {
	case c == nil:
		return ""
	case c.Given(&card.Job):
		return "yours"
	case c.Assumed(card) != "":
		return "assumed"
	case figure == "wire_feed" && card.Job.Amps.Set:
		return "from your amps"
	case figure == "gas_flow":
		return "usual"
	case figure != "wire_feed" && (figure != "travel" || card.Used.Mode == "timed"):
		return "computed"
	case card.Warned("no-good-setting"):
		return "the nearest miss"
	}
	return "suggested"
}

// remark is what a hand must know beside a figure.
func (t *talk) remark(f *calc.Figure) string {
	base, _ := strings.CutSuffix(f.Name, "_2")
	switch base {
	case "travel":
		return t.pace(f.Value)
	case "stickout":
		return "tip to arc, not to the work"
	case "volts":
		return "at the arc while it burns"
	case "heat_input":
		return "for reports, with a factor of 0.8"
	case "arc_energy":
		return "no efficiency in it"
	case "net_heat":
		return "what gets into the sheet"
	case "zinc_boiled_halfwidth", "zinc_melted_halfwidth":
		return "to each side of the arc's line"
	case "cooling_time":
		return "from 800 to 500 degrees Celsius"
	case "pulse_frequency":
		return "one drop a pulse"
	}
	return ""
}

// pace is a travel as seconds along a length that a hand can count.
func (t *talk) pace(mms float64) string {
	switch {
	case !(mms > 0):
		return ""
	case t.units == quantity.Inch:
		return fmt.Sprintf("%.1f seconds for 4 inches", quantity.Seconds4in(mms))
	}
	return fmt.Sprintf("%.1f seconds for 100 millimetres", quantity.Seconds100(mms))
}
