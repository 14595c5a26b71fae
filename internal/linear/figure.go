package linear

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/report"
)

// figure is a figure as a sentence: "Wire feed 6.35 metres per minute, good between 5.9 and 6.8, suggested." The text
// added comes after the value, before the remark.
func figure(r *report.Row, added string) string {
	name := label(r.Figure.Name)
	text := capital(name) + " " + value(r)
	named := strings.HasSuffix(name, " member") // then a remark need not name it
	for _, a := range append([]string{added}, strings.Split(r.Long, ", ")...) {
		if a != "" && !(named && strings.HasSuffix(a, " member")) {
			text += ", " + a
		}
	}
	return text + "."
}

// setting is a figure of the card as a sentence that also says whether it was given, assumed or suggested.
func (t *talk) setting(f *calc.Figure) string { return figure(t.row(f), origin(&t.card, f.Name)) }

// row is the row of a card's figure.
func (t *talk) row(f *calc.Figure) *report.Row {
	r := report.RowOf(&t.card, f, report.OfCard, t.units)
	return &r
}

// value is a figure's number and band; in both systems if both were asked for.
func value(r *report.Row) string {
	text := valueIn(&r.Value, r.Range)
	if r.Other.Number != "" {
		text += ", or " + valueIn(&r.Other, r.Range)
	}
	return text
}

// between is how a band is read out, by its meaning.
var between = [...]string{", between ", ", good between ", ", usual between ", ", works between ",
	", between "}

func valueIn(v *report.Value, of report.Meaning) string {
	text := inUnit(v.Number, v.Unit)
	if v.Low != "" {
		text += between[of] + inUnit(v.Low, "") + " and " + inUnit(v.High, "")
	}
	return text
}

// label is a figure's plain name. A member's number is put into words, otherwise it would sound like the figure's
// value. A label that contains a unit is replaced by the full name.
func label(name string) string {
	text := calc.FigureLabel(name)
	if strings.Contains(text, "/") {
		text = strings.ReplaceAll(name, "_", " ")
	}
	for i, member := range [...]string{"first", "second"} {
		if base, ok := strings.CutSuffix(text, fmt.Sprint(" ", i+1)); ok {
			return base + " on the " + member + " member"
		}
	}
	return text
}

// origin says whether a setting was given, assumed or suggested; "" for a figure that follows from others.
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
