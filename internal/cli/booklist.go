package cli

import (
	"fmt"
	"strings"

	"brazebooth/internal/plain"
	"brazebooth/internal/shop"
)

// usualColumns is the width that every terminal has.
const usualColumns = 80

// columns is how wide a list may be: 80, or as wide as the terminal that standard output is.
func (d *Deps) columns() int {
	if d.Terminal != nil {
		if t := d.Terminal(); t.Out {
			return max(usualColumns, t.Width)
		}
	}
	return usualColumns
}

// listing is one line for each record, each at most so many columns wide. A record's text is cut after a whole word.
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

// wholeWords cuts a text after a whole word to so many columns, with … where something is missing.
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
