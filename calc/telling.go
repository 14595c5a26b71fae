package calc

import (
	"cmp"
	"math"
	"slices"
)

// Warned reports whether the card carries the warning of that code.
func (c *Card) Warned(code string) bool {
	return slices.ContainsFunc(c.Warnings, func(w Warning) bool { return w.Code == code })
}

// Telling are the inputs that move a figure by half a per cent or more, the strongest first. What was computed on the
// card is left out: its own inputs are in the list.
func (b *Basis) Telling() []Input {
	list := slices.DeleteFunc(slices.Clone(b.Inputs), func(in Input) bool { return in.Derived || math.Abs(in.Sensitivity) < 0.5 })
	slices.SortStableFunc(list, func(a, b Input) int { return cmp.Compare(math.Abs(b.Sensitivity), math.Abs(a.Sensitivity)) })
	return list
}

// AssumedWhy is the reason given for the assumption of a field of the job, by its JSON name; "" for what was chosen.
func (c *Card) AssumedWhy(field string) string {
	for i := range c.Assumed {
		if c.Assumed[i].Field == field {
			return c.Assumed[i].Why
		}
	}
	return ""
}
