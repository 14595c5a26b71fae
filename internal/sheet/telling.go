package sheet

import (
	"cmp"
	"math"
	"slices"

	"brazebooth/calc"
)

// mostTelling returns up to n inputs that move a figure by half a per cent or more, the strongest first.
// What was computed on the card is left out: its own inputs are in the list.
func mostTelling(inputs []calc.Input, n int) []calc.Input {
	list := slices.DeleteFunc(slices.Clone(inputs), func(in calc.Input) bool { return in.Derived || math.Abs(in.Sensitivity) < 0.5 })
	slices.SortStableFunc(list, func(a, b calc.Input) int { return cmp.Compare(math.Abs(b.Sensitivity), math.Abs(a.Sensitivity)) })
	return list[:min(n, len(list))]
}
