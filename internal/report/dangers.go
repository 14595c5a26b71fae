package report

import (
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/tables"
)

// dangers are the card's cautions of what hurts a hand at the arc, in the order in which they are said, less those that
// stand in said. A stopped job has its stops.
func dangers(card *calc.Card, said []calc.Warning) []calc.Warning {
	if card.Stopped() {
		return nil
	}
	var list []calc.Warning
	for _, d := range tables.Dangers() {
		code := func(w calc.Warning) bool { return w.Code == d.Code }
		if i := slices.IndexFunc(card.Warnings, code); i >= 0 && !slices.ContainsFunc(said, code) {
			list = append(list, card.Warnings[i])
		}
	}
	return list
}

// whoDecides stands under the cautions of every answer that is no card, which says it itself.
const whoDecides = "Local codes and licensed practice decide."

// short writes the dangers, of each the first sentence: the card has the rest.
func (w *writer) short(list []calc.Warning) {
	for _, l := range list {
		text, _, more := strings.Cut(l.Text, ". ")
		if more {
			text += "."
		}
		w.para(strings.ToUpper(string(l.Severity))+"  ", text)
	}
	if len(list) > 0 {
		w.para("", "The card has these in full. "+whoDecides)
		w.line("")
	}
}
