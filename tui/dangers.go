package tui

import (
	"cmp"
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// dangers are the dangers to the welder at the arc, in the fewest words.
type dangers struct {
	vital, short []string // always named: what kills at once, then the fume; short is for little room
	others       []string
}

// dangersOf are a card's dangers, without those already shown in full.
func dangersOf(c *calc.Card, said map[string]bool) dangers {
	var d dangers
	var fumes, more, others []string
	for _, x := range tables.Dangers {
		if !c.Warned(x.Code) || said[x.Code] {
			continue
		}
		more = append(more, x.More...)
		switch {
		case x.Deadly:
			d.vital, d.short = append(d.vital, x.Word), append(d.short, cmp.Or(x.Short, x.Word))
		case x.Fume:
			fumes = append(fumes, x.Word)
		default:
			others = append(others, x.Word)
		}
	}
	if len(fumes) > 0 {
		d.vital = append(d.vital, strings.Join(fumes, ", ")+" fume")
		d.short = append(d.short, strings.Join(fumes, "/")+" fume")
	}
	d.others = append(more, others...)
	return d
}

// dangerBand names the dangers that the band above it does not show in full, with the key that shows every caution. It
// is empty if the vital ones are shown. The number of stops is added.
func dangerBand(th *theme, c *calc.Card, whole map[string]bool, w int) block {
	d := dangersOf(c, whole)
	if len(d.vital) == 0 {
		return nil
	}
	if w < 36 { // a column beside something else
		return dangerColumn(th, c, d, w)
	}
	return dangerRows(th, c, d, w)
}

// dangerColumn names the dangers on as many lines as they take.
func dangerColumn(th *theme, c *calc.Card, d dangers, w int) (b block) {
	if stops := len(calc.Stops(c.Warnings)); stops > 0 {
		b.add(newRow(w).put(th.stop, "■ "+quantity.Count(stops, "stop")).line())
	}
	p, mark := th.sign(calc.Caution)
	b.pointed(p, 0, mark, 2, th.plain, strings.ReplaceAll(strings.Join(d.short, " · "), "/", ", ")+" – c", w)
	return b
}

// dangerRows names the dangers on one row, in the fullest way that fits, or on two. The vital ones are always named.
func dangerRows(th *theme, c *calc.Card, d dangers, w int) block {
	tail, long, short := " shows all %d", "", ""
	if w < narrowWidth {
		tail = ": all %d"
	}
	tail = fmt.Sprintf(tail, len(c.Warnings))
	if stops := len(calc.Stops(c.Warnings)); stops > 0 {
		long, short = "■ "+quantity.Count(stops, "stop"), fmt.Sprintf("■ %d", stops)
	}
	for _, f := range [...]struct {
		count, tail string
		words       []string
	}{{long, tail, d.vital}, {long, "", d.vital}, {long, "", d.short}, {short, "", d.short}} {
		if r := dangerRow(th, f.count, f.words, w); r.ends(f.tail) {
			return block{r.ending(th, f.tail, d.others).line()}
		}
	}
	return dangersOnTwo(th, long, tail, d, w)
}

// dangersOnTwo names the vital dangers on two rows. The key that shows every caution is at the end of the second row,
// or of the first if the second is full.
func dangersOnTwo(th *theme, stops, tail string, d dangers, w int) block {
	last := len(d.short) - 1
	r, next := dangerRow(th, stops, d.short[:last], w), newRow(w).blank(2).put(th.plain, d.short[last])
	if !next.ends(tail) {
		tail = ""
	}
	if !next.ends(tail) {
		r.ending(th, "", nil)
	} else if next.ending(th, tail, d.others); last > 0 && r.left() >= 2 { // the list goes on in the next row
		r.put(th.plain, " ·")
	}
	return block{r.line(), next.line()}
}

// dangerRow is a row with the number of stops, "" for none, and dangers.
func dangerRow(th *theme, stops string, words []string, w int) *row {
	r := newRow(w)
	if stops != "" {
		r.put(th.stop, stops).blank(2)
	}
	p, mark := th.sign(calc.Caution)
	return r.put(p, mark).put(th.plain, " "+strings.Join(words, " · "))
}

// ends reports whether there is room for the key that shows every caution. There is none in a row that was cut.
func (r *row) ends(tail string) bool { return width(" – c"+tail) <= r.left() }

// ending adds the words for which there is room, and the key that shows every caution.
func (r *row) ending(th *theme, tail string, others []string) *row {
	for _, word := range others {
		if word = " · " + word; r.ends(word + tail) {
			r.put(th.plain, word)
		}
	}
	return r.put(th.plain, " – ").put(th.bold, "c").put(th.plain, tail)
}
