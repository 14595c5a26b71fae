package cli

import (
	"context"
	"fmt"
	"strings"

	"brazebooth/internal/config"
)

// Asking is how doctor asks the terminal, and what it shows there.
type Asking struct {
	Signs string // the characters outside ASCII that the screens draw, each one column wide
	// Ask writes the signs, asks after each for the position of the cursor, and clears the terminal again.
	Ask func(ctx context.Context) Answers
	// Samples are things that the screens draw, in a theme, on a background that is dark, light or "" for unknown.
	Samples func(theme, background string) []Sample
}

// Answers are a terminal's answers to the questions.
type Answers struct {
	Columns    []int  // of each sign; nil: no answer
	Background string // dark, light, or "" for no answer
}

// Sample is something that the screens draw, for the user to look at.
type Sample struct {
	Name  string
	Lines []string // with the colours of the screens
	Look  string   // how it looks when it is right
	Else  string   // what to set when it looks wrong
}

const setNarrow = "set the terminal's ambiguous-width characters to narrow (one column); until then: brazebooth --plain"

// lookSigns reports whether every character of the screens takes one column.
func (d *Deps) lookSigns(f *findings, columns []int) {
	signs := []rune(d.Asking.Signs)
	if len(columns) != len(signs) {
		f.add("widths", note, "the terminal did not say how wide it draws the screens' signs",
			"look at the samples below: every row must end in its bar")
		return
	}
	var off []string
	bytewise, wide := true, true
	for i, r := range signs {
		bytewise = bytewise && columns[i] == len(string(r))
		if columns[i] != 1 {
			off, wide = append(off, string(r)), wide && columns[i] == 2
		}
	}
	switch {
	case len(off) == 0:
		f.ok("widths", fmt.Sprintf("all %d signs of the screens take one column, the terminal says", len(signs)))
	case bytewise:
		f.add("widths", mend, "the terminal does not read UTF-8: it takes each sign for several letters",
			"set its character set to UTF-8; until then: brazebooth --plain")
	case wide:
		f.add("widths", mend, fmt.Sprintf("signs that take two columns where the screens count on one (%d): %s",
			len(off), some(off)), setNarrow)
	default:
		f.add("widths", mend, fmt.Sprintf("signs that do not take the one column that the screens count on (%d): %s",
			len(off), some(off)), "use another terminal, or brazebooth --plain")
	}
}

func some(list []string) string {
	const most = 12
	if len(list) <= most {
		return strings.Join(list, " ")
	}
	return strings.Join(list[:most], " ") + " …"
}

// showSamples prints samples of what the screens draw; only the user can tell whether they look right.
func (d *Deps) showSamples(background string) {
	theme := "auto"
	if s, err := config.Load(d.Config, d.Env); err == nil {
		theme = s.Get("theme").Text
	}
	d.say("look at these\n")
	for _, s := range d.Asking.Samples(theme, background) {
		for i, line := range s.Lines {
			name := ""
			if i == 0 {
				name = s.Name
			}
			d.say("  %-10s %s\n", name, line)
		}
		d.say("%13s%s\n%13sif not: %s\n", "", s.Look, "", s.Else)
	}
}
