package calc

import (
	"cmp"
	"fmt"
	"strings"

	"brazebooth/calc/formula"
)

// knownWords say how a figure is known: in plain words, and in a word or two.
var knownWords = map[string][2]string{
	"read":                       {"read in the document named", "read"},
	"memory high":                {"from memory of the document named, confidence high", "from memory"},
	"memory medium":              {"from memory of the document named, confidence medium", "from memory"},
	"memory low":                 {"from memory of the document named, confidence low", "from memory, unsure"},
	"practice":                   {"common practice, no source", "practice"},
	"common practice, no source": {"common practice, no source", "practice"},
	"worked":                     {"worked out from sourced figures", "worked out"},
	"given":                      {"given by you", "given"},
	OwnCalc:                      {OwnCalc, "computed"},
}

// KnownWords says in plain words how a figure is known.
func KnownWords(known string) string { return cmp.Or(knownWords[known][0], known) }

// KnownShort says the same in a word or two; what tells the source beside it has the rest.
func KnownShort(known string) string { return cmp.Or(knownWords[known][1], known) }

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
