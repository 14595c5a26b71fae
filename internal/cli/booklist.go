package cli

import (
	"fmt"
	"strings"

	"brazebooth/internal/plain"
	"brazebooth/internal/shop"
)

// usualColumns is the width that every terminal has and every page takes.
const usualColumns = 80

// columns is how wide an answer that is a list may be: as standard output where that is a wider terminal.
func (d *Deps) columns() int {
	if d.Terminal != nil {
		if t := d.Terminal(); t.Out {
			return max(usualColumns, t.Width)
		}
	}
	return usualColumns
}

// listing is a line for each record, none wider than so many columns: its own line ends at a whole word.
func listing(entries []shop.Entry, columns int) string {
	const longest = 24
	at, kind, name := 0, 0, 0
	for i := range entries {
		e := &entries[i]
		e.Name = plain.Line(e.Name, longest)
		at, kind, name = max(at, len(e.At)), max(kind, len(e.Kind)), max(name, plain.Width(e.Name))
	}
	var b strings.Builder
	for i := range entries {
		e := &entries[i]
		head := fmt.Sprintf("%s  %-*s  %-*s %s", e.ID, at, e.At, kind, e.Kind, e.Name) +
			strings.Repeat(" ", name-plain.Width(e.Name)) + " "
		b.WriteString(strings.TrimRight(head+wholeWords(e.Line, columns-plain.Width(head)), " ") + "\n")
	}
	return b.String()
}

// wholeWords is as much of a text as stands in so many columns, with a sign where there is more.
func wholeWords(text string, columns int) string {
	text = plain.Line(text, 100)
	if plain.Width(text) <= columns {
		return text
	}
	room := columns - plain.Width(" …")
	if text = plain.Wrap(text, room)[0]; plain.Width(text) > room {
		return "…"
	}
	return strings.TrimRight(text, ",;:") + " …"
}
