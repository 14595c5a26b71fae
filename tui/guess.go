package tui

import (
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
)

// restsOn are the choices that a page's figures go by, besides those of the card itself. A figure goes by what nobody gave where
// its page assumed one of them.
var restsOn = map[string][]string{
	"seam_length": {"length"}, "throat_capacity": {"length"}, "bond_capacity": {"length"}, "sheet_capacity": {"length"}, "allowable_load": {"length"},
	"arc_time": {"length"}, "wire_used": {"length"}, "gas_used": {"length"}, "wire_cost": {"length"}, "gas_cost": {"length"},
	"labour_time": {"length", "operating"}, "labour_cost": {"length", "operating"}, "total_cost": {"length", "operating"}, "steel_cost": {"length", "operating"},
	"tacks": {"length"}, "seam_pieces": {"length"}, "layer_temperature": {"length"}, "interpass_hold": {"length"},
}

// guessed reports a figure that is assumed, or goes by what its page assumed.
func guessed(p *advice.Page, f *calc.Figure) bool {
	return p.Card.AssumedWhy(f.Name) != "" || slices.ContainsFunc(restsOn[f.Name], func(field string) bool { return unsaid(p, field) })
}

// unsaid reports a choice that nobody gave and that the page took its own for.
func unsaid(p *advice.Page, field string) bool {
	return p.Card.AssumedWhy(field) != "" || field == "length" && !p.Card.Used.Length.Set
}

// guessLine says what a page's figures with a ~ go by; "" where none do.
func guessLine(p *advice.Page) string {
	var list []string
	for _, field := range [...]string{"length", "operating"} {
		if !unsaid(p, field) || !slices.ContainsFunc(p.Figures, func(f calc.Figure) bool { return slices.Contains(restsOn[f.Name], field) }) {
			continue
		}
		text := field
		for _, a := range p.Card.Assumed {
			if a.Field == field {
				text = field + " " + a.Value
			}
		}
		list = append(list, text)
	}
	if len(list) == 0 {
		return ""
	}
	return "~ goes by what nobody gave: " + strings.Join(list, ", ")
}
