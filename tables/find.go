package tables

import (
	"slices"
	"strconv"
	"strings"

	"brazebooth/internal/mistake"
	"brazebooth/internal/near"
)

// typeInstead returns the hint for a name that no row has: the nearest ids, best first, or where the list is. kind
// is "filler", "metal", "coating", "gas", "joint", "mode", "position", "backing" or "use".
func typeInstead(kind string, nearest []string) string {
	switch {
	case len(nearest) > 0:
		return "type " + near.Or(nearest)
	case kind == "metal":
		return "it is not in the tables, which hold sheet steel, stainless, cast iron, copper, bronze and brass: " +
			"see brazebooth tables metals"
	case kind == "gas":
		return "it is not in the tables: see brazebooth tables gases"
	}
	return "it is not in the tables: see brazebooth tables " + kind + "s"
}

// named are the names of each row of a list, its id first.
type named [][]string

// of are the names of one row: its id, its name and, if it is in the list, its other words.
func (n named) of(id, name string) []string {
	all := []string{id, name}
	for _, row := range n {
		if row[0] == id {
			return append(all, row[1:]...)
		}
	}
	return all
}

// namesIn are the names of all rows.
func namesIn[T any](rows []T, names func(row *T) []string) named {
	all := make(named, len(rows))
	for i := range rows {
		all[i] = names(&rows[i])
	}
	return all
}

// findIn returns the row that text means: by id, by any whole name, by a beginning that only one row has, or by
// a small typing error that only one row explains. Digits are never a typing error: G60 and G90 are different
// sheet.
func findIn[T any](kind, text string, rows []T, names func(row *T) []string) (row T, err error) {
	key, all := fold(text), namesIn(rows, names)
	if i, ok := all.meant(key, same, begins, slipped); ok {
		return rows[i], nil
	}
	return row, unknown(kind, text, all)
}

// meant returns the single row with a name that fits a folded key, by the first rule by which only one row fits.
func (n named) meant(key string, rules ...func(key, name string) bool) (int, bool) {
	for _, fits := range rules {
		hit, hits := 0, 0
		for i, names := range n {
			if slices.ContainsFunc(names, func(name string) bool { return fits(key, fold(name)) }) {
				hit, hits = i, hits+1
			}
		}
		if hits == 1 && key != "" {
			return hit, true
		}
	}
	return 0, false
}

func same(key, name string) bool { return key == name }

// begins needs at least three letters: "st" finds nothing. A number must be whole: Z35 is not a beginning of
// Z350.
func begins(key, name string) bool {
	rest, ok := strings.CutPrefix(name, key)
	return ok && len(key) >= 3 && (rest == "" || !digit(key[len(key)-1]) || !digit(rest[0]))
}

func digit(c byte) bool { return '0' <= c && c <= '9' }

// slipped allows one wrong letter in a key of five or more and two in one of eight or more. A designation of up
// to three letters and a number allows none: AZ140 and ZF140 are not typing errors for Z140.
func slipped(key, name string) bool {
	number := digits(key)
	if len(key) < 5 || number != digits(name) || number != "" && len(key)-len(number) <= 3 {
		return false
	}
	allowed := 1
	if len(key) >= 8 {
		allowed = 2
	}
	return near.Slips(key, name) <= allowed
}

// fold keeps letters and digits, in lower case, so that hyphens, blanks, dots and slashes make no difference.
func fold(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case 'A' <= r && r <= 'Z':
			return r - 'A' + 'a'
		case 'a' <= r && r <= 'z' || '0' <= r && r <= '9':
			return r
		}
		return -1
	}, text)
}

func digits(s string) string {
	return strings.Map(func(r rune) rune {
		if '0' <= r && r <= '9' {
			return r
		}
		return -1
	}, s)
}

// fewRows is the size up to which a list is named whole, whatever was typed.
const fewRows = 8

// unknown names the nearest rows: only those whose name contains what was typed, or if there are none the
// nearest by distance. It leaves out names of which more than half would have to change; for metals more than a
// third, because any steel is close to some copper. A short list is named whole, except that of fillers, which
// has a table.
func unknown(kind, text string, names named) error {
	key := fold(text)
	type scored struct {
		id    string
		score int
	}
	all := make([]scored, len(names))
	series := seriesOf(kind, key, names)
	for i, row := range names {
		all[i] = scored{row[0], near.Longest + 1}
		for _, name := range row {
			if series == "" || letters(fold(name)) == series {
				all[i].score = min(all[i].score, score(key, fold(name)))
			}
		}
	}
	slices.SortStableFunc(all, func(a, b scored) int { return a.score - b.score })
	few := len(all) <= fewRows && kind != "filler"
	if !few { // a short list is named whole, or a reader takes the list for whole
		all = all[:min(len(all), 5)]
	}
	var nearest []string
	held, most := key != "" && all[0].score < 0, len(key)/2
	if kind == "metal" {
		most = len(key) / 3
	}
	for _, n := range all {
		if held && n.score < 0 || !held && (few || key != "" && n.score <= most) {
			nearest = append(nearest, n.id)
		}
	}
	if kind == "metal" && !held && key != "" && digit(key[0]) {
		return mistake.New("no metal is called "+quoted(text), "type a metal, such as mild-steel; a gauge or a "+
			"thickness is a choice of its own")
	}
	return mistake.New("no "+kind+" is called "+quoted(text), typeInstead(kind, nearest))
}

// seriesOf returns the letters of a coating's designation if some row has the same letters with another mass:
// ZF140 means one of the zinc-iron coats and not the zinc coat Z140. Otherwise it returns "".
func seriesOf(kind, key string, names named) string {
	front := letters(key)
	for _, row := range names {
		if kind == "coating" && front != key &&
			slices.ContainsFunc(row, func(name string) bool { return letters(fold(name)) == front }) {
			return front
		}
	}
	return ""
}

// letters returns the letters before the trailing number of a folded name.
func letters(key string) string { return strings.TrimRight(key, "0123456789") }

func score(key, name string) int {
	d := near.Slips(key, name)
	if few := len(key) < 2 || len(key) < 3 && digits(key) == key; !few && strings.Contains(name, key) {
		return d - near.Longest
	}
	return d
}

// quoted makes typed text safe to print: one line, no control or direction marks, at most 40 runes.
func quoted(text string) string {
	const most = 40
	r := []rune(text[:min(len(text), 4*most)])
	if len(r) > most {
		r = append(r[:most], '…')
	}
	return strconv.QuoteToGraphic(string(r))
}
