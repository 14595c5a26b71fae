package tui

import (
	"strings"

	"brazebooth/internal/report"
)

func spaced(number, unit string) string { return report.Value{Number: number, Unit: unit}.String() }

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
