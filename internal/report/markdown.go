package report

import "strings"

// Markdown writes a finding as Markdown: headings, tables of figures, lists.
func Markdown(blocks []Block, o Options) string { return written(blocks, o, (*writer).mark) }

// clean escapes the characters that have a meaning in Markdown.
func clean(s string) string {
	return strings.NewReplacer("|", "\\|", "*", "\\*", "_", "\\_", "<", "&lt;", "`", "\\`").Replace(s)
}

// markdownMarks are written before a line of each kind.
var markdownMarks = map[Kind]string{
	Stop: "- **STOP** ", Caution: "- **CAUTION** ", Note: "- **INFO** ", Instead: "- instead: ",
	Change: "**Change**: ", For: "   - for: ", Against: "   - against: ",
	Reason: "- ", MayGive: "You may also give: ",
}

// mark writes one line of a list. The subject is the heading and stays on one line.
func (w *writer) mark(lines []Line, i int) {
	l, text := &lines[i], clean(lines[i].Text)
	switch l.Kind {
	case Gap:
		w.line("")
	case Subject:
		text = clean(subject(l))
		if i == 0 {
			text = "# " + text
		}
		if i+1 < len(lines) && lines[i+1].Kind == Subject {
			w.WriteString(text + " ")
			break
		}
		w.line("%s", text)
	case Title:
		w.line("## %s\n", l.Text)
	case FitVerdict:
		w.line("**%s: %s**\n", capital(FitLabel), l.Text)
	case CardVerdict, Turns:
		w.line("%s: %s", capital(l.Lead), text)
	case Rank:
		w.line("%d. %s", l.N, text)
	case FigureRow:
		if i == 0 || lines[i-1].Kind != FigureRow {
			w.line("| figure | value | band | basis |\n|---|---|---|---|")
		}
		w.tableRow(l.Row)
	case For, Against:
		w.line("%s%s (%s)", markdownMarks[l.Kind], text, l.Known)
	case Reason:
		if l.Lead != "" {
			text = "**" + l.Lead + "**: " + text
		}
		from := l.Known
		if l.Source != l.Known { // common practice has no other source
			from += "; " + clean(l.Source)
		}
		w.line("- %s (%s)", text, from)
	case Topic, RestsOn, Formula, PutIn, Source, LeansOn: // in the reasons and the tables already
	case Picture:
	case Edge, Setting, Assume, CheckFirst, Limit, Remedy, Named, Form, Field, Bead, OfBead:
		if lead := strings.TrimSpace(l.Lead + " " + l.Value); lead != "" {
			text = "**" + clean(lead) + "**: " + text
		}
		w.line("- %s", text)
	case Hid, Moves:
		w.line(strings.Repeat("| %s ", len(l.Cells))+"|", l.Cells...)
	default:
		w.line("%s%s", markdownMarks[l.Kind], text)
	}
}

func (w *writer) tableRow(r *Row) {
	whole := func(string) int { return 0 } // a cell has room for everything
	band := joined(r.Value.Band(), strings.TrimSpace(r.Other.String()), r.Beside(0, whole))
	w.line("| %s | %s | %s | %s |", r.Label, r.Value, clean(band), clean(r.Figure.Basis.Known))
}
