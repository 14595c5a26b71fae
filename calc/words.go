package calc

import (
	"brazebooth/calc/formula"
	"fmt"
	"strings"
)

// KnownWords says in plain words how a figure is known.
func KnownWords(known string) string {
	switch known {
	case "read":
		return "read in the document named"
	case "memory high", "memory medium", "memory low":
		return "from memory of the document named, confidence " + strings.TrimPrefix(known, "memory ")
	case "practice":
		return "common practice, no source"
	case "worked":
		return "worked out from sourced figures"
	case "given":
		return "given by you"
	}
	return known
}

// KnownShort says the same in a word or two; what tells the source beside it has the rest.
func KnownShort(known string) string {
	switch known {
	case "memory high", "memory medium":
		return "from memory"
	case "memory low":
		return "from memory, unsure"
	case "common practice, no source":
		return "practice"
	case "worked":
		return "worked out"
	case OwnCalc:
		return "computed"
	}
	return known
}

// ArcRange says between which currents a wire of mm runs a steady short arc, "" where neither end is known.
func ArcRange(mm float64) string {
	var parts []string
	if floor, err := formula.DipFloor(mm); err == nil {
		parts = append(parts, fmt.Sprintf("steady from about %.0f A", floor))
	}
	if spray, err := formula.SprayTransition(mm); err == nil {
		parts = append(parts, fmt.Sprintf("spray above about %.0f A", spray))
	}
	return strings.Join(parts, ", ")
}

// NameAndNote is a table row's full name and its note, without the name twice.
func NameAndNote(name, note string) string {
	switch {
	case note == "":
		return name
	case strings.HasPrefix(strings.ToLower(note), strings.ToLower(name)):
		return note
	}
	return name + ". " + note
}
