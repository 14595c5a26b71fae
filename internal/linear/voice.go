package linear

import (
	"bufio"
	"io"
	"strings"

	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

// width is where lines are broken between words. A simple terminal would break them inside a word.
const width = 78

// voice writes the output: whole lines, and a prompt without a line break.
type voice struct {
	out   *bufio.Writer
	below io.Writer
	comma bool     // numbers have a decimal comma
	said  []string // since the last prompt
	last  []string // the answer before that
	err   error
}

func (v *voice) say(parts ...string) { v.line(v.marked(spell(strings.Join(parts, "")))) }

func (v *voice) marked(text string) string { return quantity.Marked(text, v.comma) }

// show prints text that can be typed, as it is typed.
func (v *voice) show(parts ...string) { v.line(literal(strings.Join(parts, ""))) }

func (v *voice) line(text string) {
	v.said = append(v.said, text)
	v.write(strings.Join(plain.Wrap(text, width), "\n") + "\n")
}

func (v *voice) prompt(name string) {
	if len(v.said) > 0 {
		v.last, v.said = v.said, nil
	}
	v.write(safe(name) + ": ")
	v.flush()
}

// write reports no error: the buffer remembers it, and flush returns it.
func (v *voice) write(s string) { _, _ = v.out.WriteString(s) }

// flush sends the output, also through a buffer below this one.
func (v *voice) flush() {
	err := v.out.Flush()
	if f, ok := v.below.(interface{ Flush() error }); ok && err == nil {
		err = f.Flush()
	}
	if v.err == nil {
		v.err = err
	}
}
