package linear

import (
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/report"
)

// figure is a figure as it is read out: "wire feed 6.35 metres per minute, good between 5.9 and 6.8, suggested". What is added
// stands behind it, before the remark.
func (t *talk) figure(r *report.Row, added string) string {
	text := label(r.Figure.Name) + " " + value(r)
	for _, a := range [...]string{added, r.Long} {
		if a != "" {
			text += ", " + a
		}
	}
	return text + "."
}

// row is a figure of the card.
func (t *talk) row(f *calc.Figure) *report.Row {
	r := report.RowOf(&t.card, f, report.OfCard, t.units)
	return &r
}

// value is a figure's number and band, in both systems where both are wanted.
func value(r *report.Row) string {
	text := valueIn(&r.Value, r.Range)
	if r.Other.Number != "" {
		text += ", or " + valueIn(&r.Other, r.Range)
	}
	return text
}

func valueIn(v *report.Value, of report.Meaning) string {
	text := inUnit(v.Number, v.Unit)
	if v.Low != "" {
		text += [...]string{", between ", ", good between ", ", usual between ", ", works between "}[of] + inUnit(v.Low, "") + " and " + inUnit(v.High, "")
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
	return value(t.row(&calc.Figure{Value: v, Low: v, High: v, Unit: unit}))
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
