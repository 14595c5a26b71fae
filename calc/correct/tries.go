package correct

import (
	"strconv"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// Try is one test bead: how it was laid and what it showed, ids of tables.Sights in their order with commas.
type Try struct {
	Job  calc.Job
	Seen string
}

// SeenIDs turns what a user types of a bead's look into ids in the order of tables.Sights, each once. The error of an
// unknown word names what may be typed.
func SeenIDs(text string) (string, error) {
	given := map[string]bool{}
	for _, word := range strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return r == ',' || r == ' ' || r == ';' }) {
		if _, ok := tables.SightByID(word); !ok {
			return "", mistake.In("seen", "nothing that a bead shows is called "+strconv.QuoteToASCII(word), "type any of "+strings.Join(SightIDs(), ", ")+", with commas")
		}
		given[word] = true
	}
	var ids []string
	for _, id := range SightIDs() {
		if given[id] {
			ids = append(ids, id)
		}
	}
	switch {
	case len(ids) == 0:
		return "", mistake.In("seen", "nothing is named", "type what the bead shows, as rolled-edge or burn-through,pores")
	case given["good"] && len(ids) > 1:
		return "", mistake.In("seen", "good stands beside a fault", "type the faults alone, or good alone")
	}
	return strings.Join(ids, ","), nil
}

// SightIDs lists the ids of tables.Sights in their order.
func SightIDs() []string {
	var ids []string
	for _, s := range tables.Sights() {
		ids = append(ids, s.ID)
	}
	return ids
}
