package report

import (
	"fmt"
	"strings"

	"brazebooth/internal/quantity"
)

// Markdown writes a finding as Markdown: headings, tables of figures, lists.
func Markdown(blocks []Block, o Options) string {
	o.loud = true
	m := marker{comma: o.Comma}
	lines := Words(blocks, o)
	for i := range lines {
		m.put(lines, i)
	}
	return m.String()
}

type marker struct {
	strings.Builder
	comma bool // in numbers
}

func (m *marker) line(format string, args ...any) {
	m.WriteString(quantity.Marked(fmt.Sprintf(format, args...), m.comma) + "\n")
}

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

// put writes one line of a list. The subject is the heading and stays on one line.
func (m *marker) put(lines []Line, i int) {
	l, text := &lines[i], clean(lines[i].Text)
	switch l.Kind {
	case Gap:
		m.line("")
	case Subject:
		text = clean(subject(l))
		if i == 0 {
			text = "# " + text
		}
		if i+1 < len(lines) && lines[i+1].Kind == Subject {
			m.WriteString(text + " ")
			break
		}
		m.line("%s", text)
	case Title:
		m.line("## %s\n", l.Text)
	case FitVerdict:
		m.line("**%s: %s**\n", capital(FitLabel), l.Text)
	case CardVerdict:
		m.line("%s: %s", capital(l.Lead), text)
	case Rank:
		m.line("%d. %s", l.N, text)
	case FigureRow:
		if i == 0 || lines[i-1].Kind != FigureRow {
			m.line("| figure | value | band | basis |\n|---|---|---|---|")
		}
		m.figure(l.Row)
	case For, Against:
		m.line("%s%s (%s)", markdownMarks[l.Kind], text, l.Known)
	case Reason:
		if l.Lead != "" {
			text = "**" + l.Lead + "**: " + text
		}
		from := l.Known
		if l.Source != l.Known { // common practice has no other source
			from += "; " + clean(l.Source)
		}
		m.line("- %s (%s)", text, from)
	case Topic, RestsOn, Formula, PutIn, Source, LeansOn: // in the reasons and the tables already
	case Picture:
	case Edge, Setting, Assume, CheckFirst, Limit, Remedy, Named, Form, Field, Bead, OfBead:
		if lead := strings.TrimSpace(l.Lead + " " + l.Value); lead != "" {
			text = "**" + clean(lead) + "**: " + text
		}
		m.line("- %s", text)
	case Hid, Moves:
		m.line(strings.Repeat("| %s ", len(l.Cells))+"|", l.Cells...)
	case Turns:
		m.line("%s: %s", capital(l.Lead), text)
	default:
		m.line("%s%s", markdownMarks[l.Kind], text)
	}
}

func (m *marker) figure(r *Row) {
	whole := func(string) int { return 0 } // a cell has room for everything
	band := joined(r.Value.Band(), strings.TrimSpace(r.Other.String()), r.Beside(0, whole))
	m.line("| %s | %s | %s | %s |", r.Label, r.Value, clean(band), clean(r.Figure.Basis.Known))
}
