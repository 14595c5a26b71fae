package calc

import (
	"slices"
	"strconv"
	"strings"

	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// TypedWords are the words of a list as a user types it, separated by commas, blanks or semicolons, in lower case.
func TypedWords(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return strings.ContainsRune(", ;", r) })
}

// HazardIDs turns the words that a user may type for hazards into the ids of tables, sorted, each once. "none" alone
// says that the questions were asked and no hazard applies. The error for an unknown word names the words that may be
// typed.
func HazardIDs(text string) (string, error) {
	more := map[string][]string{"used-container": {"tank"}, "drum": {"tank"}, "barrel": {"tank"}, "fuel": {"tank"},
		"oil": {"tank"}, "used": {"tank"}, "container": {"tank"},
		"lead": {"lead-paint", "leaded-bronze"}, "crash": {"vehicle"}}
	var ids []string
	for _, word := range TypedWords(text) {
		_, known := tables.Hazards.ByID(word)
		switch {
		case word == "none":
			ids = append(ids, "none")
		case known:
			ids = append(ids, word)
		case more[word] != nil:
			ids = append(ids, more[word]...)
		default:
			return "", mistake.In("hazard", "nothing that stops a job is called "+strconv.QuoteToASCII(word),
				"type any of "+strings.Join(tables.HazardWords(), ", ")+", with commas, or none")
		}
	}
	slices.Sort(ids)
	ids = slices.Compact(ids)
	switch {
	case len(ids) == 0:
		return "", mistake.In("hazard", "nothing is named", "type the ones that apply, with commas, or none")
	case slices.Contains(ids, "none") && len(ids) > 1:
		return "", mistake.In("hazard", "none cannot stand beside others",
			"type the ones that apply, with commas, or none alone")
	}
	return strings.Join(ids, ","), nil
}
