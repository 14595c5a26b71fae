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
	if stops, _, _ := tally(c); stops > 0 {
		b.add(newRow(w).put(th.stop, "■ "+quantity.Count(stops, "stop")).line())
	}
	p, mark := th.sign(calc.Caution)
	b.pointed(p, 0, mark, 2, th.plain, strings.ReplaceAll(strings.Join(d.short, " · "), "/", ", ")+" – c", w)
	return b
}

// dangerForm is a way to name the dangers on a row.
type dangerForm struct {
	count, tail string
	words       []string
}

func (f *dangerForm) width() int {
	n := width(f.count) + width("▲ "+strings.Join(f.words, " · ")+" – c"+f.tail)
	if f.count != "" {
		n += 2
	}
	return n
}

// dangerForms are the ways, the fullest first.
func dangerForms(c *calc.Card, d dangers, w int) []dangerForm {
	tail := fmt.Sprintf(" shows all %d", len(c.Warnings))
	if w < narrowWidth {
		tail = fmt.Sprintf(": all %d", len(c.Warnings))
	}
	long, short := "", ""
	if stops, _, _ := tally(c); stops > 0 {
		long, short = "■ "+quantity.Count(stops, "stop"), fmt.Sprintf("■ %d", stops)
	}
	return []dangerForm{{long, tail, d.vital}, {long, "", d.vital}, {long, "", d.short}, {short, "", d.short}}
}

// dangerRows names the dangers on one row, or on two if they do not fit. The vital ones are always named.
func dangerRows(th *theme, c *calc.Card, d dangers, w int) block {
	forms := dangerForms(c, d, w)
	p, mark := th.sign(calc.Caution)
	for _, f := range forms {
		if f.width() <= w {
			r := newRow(w).count(th, f.count).put(p, mark).put(th.plain, " "+strings.Join(f.words, " · "))
			return block{r.ending(th, f.tail, d.others).line()}
		}
	}
	return dangersOnTwo(th, w, d, &forms[0])
}

// dangersOnTwo names the vital dangers on two rows. The key that shows every caution is at the end of the second row,
// or of the first if the second is full.
func dangersOnTwo(th *theme, w int, d dangers, f *dangerForm) block {
	last := len(d.short) - 1
	p, mark := th.sign(calc.Caution)
	r := newRow(w).count(th, f.count).put(p, mark).put(th.plain, " "+strings.Join(d.short[:last], " · "))
	next := newRow(w).blank(2).put(th.plain, d.short[last])
	tail := f.tail
	if width(" – c"+tail) > next.left() {
		tail = ""
	}
	if width(" – c"+tail) > next.left() {
		r.ending(th, "", nil)
		return block{r.line(), next.line()}
	}
	next.ending(th, tail, d.others)
	if last > 0 && r.left() >= 2 { // the list goes on in the next row
		r.put(th.plain, " ·")
	}
	return block{r.line(), next.line()}
}

// count adds the number of stops.
func (r *row) count(th *theme, text string) *row {
	if text != "" {
		r.put(th.stop, text).blank(2)
	}
	return r
}

// ending adds the words for which there is room, and the key that shows every caution.
func (r *row) ending(th *theme, tail string, others []string) *row {
	end := width(" – c" + tail)
	for _, word := range others {
		if word = " · " + word; width(word)+end <= r.left() {
			r.put(th.plain, word)
		}
	}
	return r.put(th.plain, " – ").put(th.bold, "c").put(th.plain, tail)
}
