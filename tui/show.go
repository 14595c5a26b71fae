package tui

import (
	"strings"

	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
)

// lengthText prints a length of a few millimetres the way the system's hands say it.
func lengthText(mm float64, sys quantity.System) string { return quantity.Show(mm, "mm", sys) }

func spaced(number, unit string) string { return report.Value{Number: number, Unit: unit}.String() }

// headline is the first clause of an advice: what to do, without the reason.
func headline(s string) string {
	if i := strings.IndexAny(s, ";:"); i > 0 {
		return s[:i]
	}
	return s
}
