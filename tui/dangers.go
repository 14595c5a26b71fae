package tui

import (
	"fmt"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// dangerWords are what endangers a hand at the arc, in the fewest words: the fume first, since it cannot be seen.
func dangerWords(c *calc.Card) []string {
	var fumes, others []string
	for _, x := range tables.Dangers() {
		switch {
		case !c.Warned(x.Code):
		case x.Fume:
			fumes = append(fumes, x.Word)
		default:
			others = append(others, x.Word)
		}
	}
	if len(fumes) == 0 {
		return others
	}
	return append([]string{strings.Join(fumes, ", ") + " fume"}, others...)
}

// putDangers names them on a row, as many as there is room for before what ends it, and the first in any case.
func putDangers(th *theme, r *row, words []string, end int) {
	if len(words) == 0 {
		return
	}
	p, mark := th.sign(calc.Caution)
	r.put(p, mark).blank(1).put(th.plain, words[0])
	for _, word := range words[1:] {
		if word = " · " + word; width(word)+end > r.left() {
			return
		}
		r.put(th.plain, word)
	}
}

// dangerLine names the dangers where the band over it does not say whole what is in the plume; false where it does. Stops
// are counted besides.
func dangerLine(th *theme, c *calc.Card, whole map[string]bool, w int) (line, bool) {
	words := dangerWords(c)
	if len(words) == 0 || fumeIsSaid(c, whole) {
		return line{}, false
	}
	return dangerRow(th, newRow(w), c, words, true), true
}

// dangerRow names the dangers behind what a row has already, and the key that shows every caution; stops are counted where
// that is wanted.
func dangerRow(th *theme, r *row, c *calc.Card, words []string, count bool) line {
	short := width(" – c")
	if len(words) > 0 {
		short += 2 + width(words[0])
	}
	if stops, _, _ := tally(c); count && stops > 0 {
		if text := "■ " + quantity.Count(stops, "stop"); width(text)+2+short <= r.left() {
			r.put(th.stop, text).blank(2)
		}
	}
	tail := fmt.Sprintf(" shows all %d", len(c.Warnings))
	if r.room < narrowWidth {
		tail = fmt.Sprintf(": all %d", len(c.Warnings))
	}
	if short+width(tail) > r.left() {
		tail = ""
	}
	putDangers(th, r, words, width(" – c"+tail))
	r.put(th.quiet, " – ").put(th.accent, "c").put(th.quiet, tail)
	return r.line()
}

// fumeIsSaid reports whether every caution of the plume is among those that stand whole.
func fumeIsSaid(c *calc.Card, whole map[string]bool) bool {
	return !slices.ContainsFunc(tables.Dangers(), func(x tables.Danger) bool { return x.Fume && c.Warned(x.Code) && !whole[x.Code] })
}
