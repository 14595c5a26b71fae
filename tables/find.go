package tables

import (
	"sort"
	"strconv"
	"strings"

	"brazebooth/internal/mistake"
	"brazebooth/internal/near"
)

// typeInstead returns the hint for a name that no row has: the nearest ids, best first, or where the list is. kind
// is "filler", "metal", "coating", "gas", "joint", "mode", "position", "backing", "wire" or "use".
func typeInstead(kind string, nearest []string) string {
	switch n := len(nearest); {
	case n == 1:
		return "type " + nearest[0]
	case n > 1:
		return "type " + strings.Join(nearest[:n-1], ", ") + " or " + nearest[n-1]
	case kind == "metal":
		return "it is not in the tables, which hold sheet steel, stainless, cast iron, copper, bronze and brass: " +
			"see brazebooth tables metals"
	case kind == "gas":
		return "it is not in the tables: see brazebooth tables gases"
	}
	return "it is not in the tables: see brazebooth tables " + kind + "s"
}

// rowNames calls visit for every name of a row, its id first.
type rowNames func(row int, visit func(name string))

// findIn returns the row that text means: by id, by any whole name, by a beginning that only one row has, or by
// a small typing error that only one row explains. Digits are never a typing error: G60 and G90 are different
// sheet.
func findIn[T any](kind, text string, rows []T, names func(row *T, visit func(name string))) (row T, err error) {
	key := fold(text)
	of := func(i int, visit func(string)) { names(&rows[i], visit) }
	for _, fits := range [...]func(key, name string) bool{same, begins, slipped} {
		if i, ok := onlyMatch(key, len(rows), of, fits); ok && key != "" {
			return rows[i], nil
		}
	}
	return row, unknown(kind, text, key, len(rows), of)
}

// onlyMatch returns the single row with a name that fits, and false if no row or several rows have one.
func onlyMatch(key string, rows int, names rowNames, fits func(key, name string) bool) (int, bool) {
	hit, hits := 0, 0
	for row := range rows {
		matched := false
		names(row, func(name string) { matched = matched || fits(key, fold(name)) })
		if matched {
			hit = row
			hits++
		}
	}
	return hit, hits == 1
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
func unknown(kind, text, key string, rows int, names rowNames) error {
	all := make([]struct {
		id    string
		score int
	}, rows)
	series := seriesOf(kind, key, rows, names)
	for row := range rows {
		all[row].score = near.Longest + 1
		names(row, func(name string) {
			if all[row].id == "" {
				all[row].id = name
			}
			if series == "" || letters(fold(name)) == series {
				all[row].score = min(all[row].score, score(key, fold(name)))
			}
		})
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].score < all[j].score })
	few := rows <= fewRows && kind != "filler"
	shown := min(rows, 5)
	if few {
		shown = rows // all of them, or a reader takes the list for whole
	}
	nearest := make([]string, 0, shown)
	held, most := key != "" && all[0].score < 0, len(key)/2
	if kind == "metal" {
		most = len(key) / 3
	}
	for _, n := range all[:shown] {
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
func seriesOf(kind, key string, rows int, names rowNames) (series string) {
	if kind != "coating" || letters(key) == key {
		return ""
	}
	for row := range rows {
		names(row, func(name string) {
			if front := letters(fold(name)); front == letters(key) {
				series = front
			}
		})
	}
	return series
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
