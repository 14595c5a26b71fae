package report

import (
	"cmp"
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

// Options control how a finding is put into words.
type Options struct {
	Units quantity.System
	Comma bool // a decimal comma instead of the point
	Why   bool // the reason under each figure
	Heard bool // it is read out: cautions come before figures, and ranges replace pictures
	// Beside leaves out what the card beside it shows: subject, cautions of every arc, what is assumed.
	Beside bool
	Width  int // of a line of text, in columns; 0: 80

	loud bool // the medium has no colour: edges that are not met are written in capitals
}

// width is the width of a line if Options name none.
const width = 80

// Text writes a finding as plain text of at most Width columns.
func Text(blocks []Block, o Options) string { return written(blocks, o, (*writer).put) }

// written puts a finding's lines into a medium without colour.
func written(blocks []Block, o Options, put func(w *writer, lines []Line, i int)) string {
	o.loud = true
	w := writer{Options: o}
	lines := Words(blocks, o)
	for i := range lines {
		put(&w, lines, i)
	}
	return w.String()
}

type writer struct {
	strings.Builder
	Options
	unit int // width of the unit's column in the present table
}

func (w *writer) line(format string, args ...any) {
	text := strings.TrimRight(fmt.Sprintf(format, args...), " ")
	w.WriteString(quantity.Marked(text, w.Comma) + "\n")
}

// para writes text after a mark, wrapped and indented by the width of the mark.
func (w *writer) para(mark, text string) {
	for _, line := range plain.Wrap(text, cmp.Or(w.Width, width)-plain.Width(mark)) {
		w.line("%s%s", mark, line)
		mark = strings.Repeat(" ", plain.Width(mark))
	}
}

// Wrapped is text after a mark in lines of at most 80 columns.
func Wrapped(mark, text string) string {
	var w writer
	w.para(mark, text)
	return w.String()
}

// textMarks are written before a line of each kind, with room for its lead if it has one.
var textMarks = map[Kind]string{
	Stop: "STOP  ", Caution: "CAUTION  ", Note: "INFO  ", Alert: "ALERT  ", Draft: "DRAFT  ",
	FitVerdict: capital(FitLabel) + ": ", Instead: "  instead: ", Change: "CHANGE  ", MayGive: "You may also give: ",
	For: "       + ", Against: "       - ", Reason: "- ",
	Formula: "      ", PutIn: "      = ", LeansOn: "      rests on: ",
	Edge: "  %-18s ", Limit: "  %-19s ", Remedy: "  %-28s ", Setting: "  %-13s ", CardVerdict: "  %-13s ",
	Form: "  %-26s ", Field: "  %-18s ", Item: "  ", Named: "%s: ", Bead: "bead %s  ", OfBead: "        %s",
	Hid: "  %-22s  %6s %-12s  %6s %s", Moves: "  %-16s%6s %-12s %7s %9s %9s %6s %s",
}

// put writes one line of a list.
func (w *writer) put(lines []Line, i int) {
	l := &lines[i]
	mark := textMarks[l.Kind]
	switch l.Kind {
	case Gap:
		w.line("")
	case Verbatim:
		w.line("%s", l.Text)
	case Title:
		w.line("%s", l.Text)
		w.line("%s", strings.Repeat("-", len(l.Text)))
	case Subject:
		w.para("", subject(l))
	case Rank:
		mark = fmt.Sprintf("%3d  ", l.N)
		if l.Bad {
			mark = "  x  "
		}
		w.para(mark, l.Text)
	case FigureRow:
		if i == 0 || !inTable(lines[i-1].Kind) {
			w.unit = unitColumn(lines[i:])
		}
		w.figure(l.Row)
	case Hid, Moves:
		w.line(mark, l.Cells...)
	case Source:
		from, known := "      source: ", " ("+l.Known+")"
		if l.Lead != "" { // the source of a reason, which already says in short how it is known
			from = "    source: "
			if !strings.HasPrefix(l.Known, "memory") {
				known = ""
			}
		}
		w.WriteString(Wrapped(from, l.Text+known)) // the section 4.5 of a document keeps its point
	case Topic:
		w.line("%s", capital(l.Text))
	case Turns:
		w.para("", capital(l.Lead)+":")
		w.para("  ", l.Text)
	case RestsOn: // shown under Assumed
	case For, Against, Reason:
		w.para(mark, l.Text+" ("+calc.KnownShort(l.Known)+")")
	case Picture:
		w.picture(l.Of, &w.Options)
	case Assume, CheckFirst:
		w.para(fmt.Sprintf("  %-26s ", fmt.Sprintf("%-12s %s", l.Lead, l.Value)), l.Text)
	case Edge, Setting, CardVerdict, Limit, Remedy, Form, Field, Named, Bead, OfBead:
		w.para(strings.Repeat(" ", 2*l.N)+fmt.Sprintf(mark, l.Lead), l.Text)
	default:
		w.para(mark, l.Text)
	}
}

// subject is what a finding is for, after its name.
func subject(l *Line) string {
	if l.Lead != "" {
		return l.Lead + ": " + l.Text
	}
	return l.Text
}

// inTable reports whether lines of this kind belong to a table of figures.
func inTable(k Kind) bool {
	return k == FigureRow || k == Formula || k == PutIn || k == Source || k == LeansOn
}

// unitColumn is the width of the longest unit in a table: "lb/1000 ft" is longer than any metric one.
func unitColumn(lines []Line) int {
	n := 7
	for i := range lines {
		if !inTable(lines[i].Kind) {
			break
		}
		if r := lines[i].Row; r != nil {
			n = max(n, plain.Width(r.Value.Unit))
		}
	}
	return n
}

// labelColumn is the width of the names in each table.
var labelColumn = [...]int{OfCard: 13, OfPage: 17, OfTimed: 14, OfKept: 13}

func (w *writer) figure(r *Row) {
	v := &r.Value
	text := fmt.Sprintf("  %-*s %9s %-*s %-13s ", labelColumn[r.Of], r.Label, v.Number, w.unit, v.Unit, v.Band())
	text += r.Other.String()
	beside := r.Beside(cmp.Or(w.Width, width)-plain.Width(text)-2, plain.Width)
	if beside != "" && r.Other.Number != "" {
		text += ", "
	}
	w.line("%s", text+beside)
}

// capital capitalizes the first letter of a text, which must be ASCII.
func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
