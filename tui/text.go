package tui

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tui/canvas"
)

// width returns how many cells plain text takes on the screen.
func width(s string) int { return plain.Width(s) }

// cut shortens plain text to room cells, and ends it with an ellipsis if something is missing.
func cut(s string, room int) string { return plain.Cut(s, room) }

// wrap breaks plain text at blanks into lines of at most room cells.
func wrap(s string, room int) []string { return canvas.Wrap(s, room) }

// line is one line of the screen with its width in cells.
type line = canvas.Line

// row builds one line and counts its cells, so that no line is ever wider than its room.
type row struct {
	b     strings.Builder
	style paint // of the last text
	ahead int   // blanks that are not written yet: between two texts in one style they get it too
	used  int
	room  int
}

func newRow(room int) *row {
	r := &row{room: room}
	r.b.Grow(room + styleRoom)
	return r
}

// styleRoom is about how many bytes the styles of a line take.
const styleRoom = 64

// put adds text in a style, shortened to the remaining room.
func (r *row) put(p paint, s string) *row {
	if p.comma {
		s = quantity.Comma(s)
	}
	s = cut(s, r.room-r.used)
	if s == "" {
		return r
	}
	r.used += width(s)
	r.setStyle(p)
	r.b.WriteString(s)
	return r
}

// setStyle changes the style if it is different: a map's row then has as many styles as zones, not as points.
func (r *row) setStyle(p paint) {
	between := blanks(r.ahead)
	if r.ahead = 0; r.style == p && (p.across || between == "") {
		r.b.WriteString(between)
		return
	}
	r.b.WriteString(r.style.close)
	r.b.WriteString(between)
	r.b.WriteString(p.open)
	r.style = p
}

// to fills with blanks up to a column.
func (r *row) to(col int) *row { return r.blank(col - r.used) }

func (r *row) blank(n int) *row {
	if n = min(n, r.room-r.used); n > 0 {
		r.ahead += n
		r.used += n
	}
	return r
}

func (r *row) left() int { return r.room - r.used }

func (r *row) line() line {
	r.used, r.ahead = r.used-r.ahead, 0 // no blanks at the end
	r.setStyle(paint{})
	return line{Text: r.b.String(), Width: r.used}
}

func blanks(n int) string { return strings.Repeat(" ", n) }

// block is some lines of the screen, from top to bottom.
type block []line

func (b *block) add(l line)     { *b = append(*b, l) }
func (b *block) skip()          { *b = append(*b, line{}) }
func (b *block) addAll(c block) { *b = append(*b, c...) }

// say adds wrapped text in one style, indented.
func (b *block) say(p paint, indent int, s string, room int) {
	b.pointed(p, indent, "", indent, p, s, room)
}

// hang adds wrapped text after a mark, with its further lines below its first word.
func (b *block) hang(p paint, indent int, mark, s string, room int) {
	b.pointed(p, indent, mark, indent+width(mark), p, s, room)
}

// pointed is hang with a mark in a style of its own. at is the column of the text.
func (b *block) pointed(sign paint, indent int, mark string, at int, p paint, s string, room int) {
	for i, l := range wrap(s, room-at) {
		r := newRow(room).blank(indent)
		if i == 0 {
			r.put(sign, mark)
		}
		b.add(r.to(at).put(p, l).line())
	}
}

// fault adds what is wrong and what to do instead.
func (b *block) fault(th *theme, f *fault, room int) {
	text := "▲ " + f.what
	if f.hint != "" {
		text += " – " + f.hint
	}
	b.say(th.watch, 0, th.inUnits(text), room)
}

// indent moves every line that is not empty to the right.
func (b block) indent(by int) block {
	if by > 0 {
		for i, l := range b {
			if l.Width > 0 {
				b[i] = line{Text: blanks(by) + l.Text, Width: by + l.Width}
			}
		}
	}
	return b
}

// fit returns exactly h lines: cut, or filled with empty ones.
func (b block) fit(h int) block {
	if h = max(0, h); len(b) >= h {
		return b[:h]
	}
	return append(b, make(block, h-len(b))...)
}

// beside joins two blocks: the second starts at column at, and sep is drawn between them.
func beside(left, right block, at int, p paint, sep string) block {
	out := append(block{}, left...).fit(max(len(left), len(right)))
	for i := range out {
		var r line
		if i < len(right) {
			r = right[i]
		}
		out[i] = join(out[i], r, at, p, sep)
	}
	return out
}

func join(l, r line, at int, p paint, sep string) line {
	if r.Width == 0 && sep == "" {
		return l
	}
	gap := at - l.Width - width(sep)
	if gap < 0 {
		return l
	}
	var b strings.Builder
	b.Grow(len(l.Text) + len(r.Text) + gap + 16)
	b.WriteString(l.Text)
	b.WriteString(blanks(gap))
	if sep != "" {
		b.WriteString(p.open)
		b.WriteString(sep)
		b.WriteString(p.close)
	}
	b.WriteString(r.Text)
	return line{Text: b.String(), Width: at + r.Width}
}

// linesOf are the lines drawn by a component of Bubbles, without the blanks that it fills them with.
func linesOf(view string) (b block) {
	for text := range strings.SplitSeq(view, "\n") {
		text = strings.TrimRight(text, " ")
		b.add(line{Text: text, Width: ansi.StringWidth(text)})
	}
	return b
}

func (b block) String() string { return canvas.Block(b).String() }

// piece is one part of a row: its preferred column and its style.
type piece struct {
	col   int
	paint paint
	text  string
}

// flow puts the parts after head: in their columns if they fit, closer together if not, and on further lines from
// column from on if the line is full.
func flow(head *row, parts []piece, from, w int) (b block) {
	for _, p := range parts {
		if p.text == "" {
			continue
		}
		at, need := from, width(p.text)
		if head.used > from {
			at = max(p.col, head.used+2)
			if at+need > w {
				at = head.used + 2
			}
		}
		if at+need > w && head.used > from {
			b.add(head.line())
			head, at = newRow(w), from
			if need <= w-2 {
				at = min(from, w-need)
			}
		}
		// Of several blanks wrap makes one, and of those at the ends none.
		if at+need <= w && !strings.Contains(p.text, "  ") && strings.TrimSpace(p.text) == p.text {
			head.to(at).put(p.paint, p.text)
			continue
		}
		for i, l := range wrap(p.text, w-at) {
			if i > 0 {
				b.add(head.line())
				head = newRow(w)
			}
			head.to(at).put(p.paint, l)
		}
	}
	b.add(head.line())
	return b
}

func spaced(number, unit string) string { return report.Value{Number: number, Unit: unit}.String() }
