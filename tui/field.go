package tui

import (
	"cmp"
	"strings"
	"unicode"

	"charm.land/bubbles/v2/key"
	"charm.land/bubbles/v2/textinput"
	tea "charm.land/bubbletea/v2"

	"brazebooth/internal/choice"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

// fieldMax is the longest text that a field accepts, enough for every size and for a name in the book.
const fieldMax = 60

// field is one line of typed text with a cursor. The zero field is empty.
type field struct {
	input *textinput.Model // nil: nothing was typed yet
}

func (f *field) String() string {
	if f.input == nil {
		return ""
	}
	return f.input.Value()
}

func (f *field) trimmed() string { return strings.TrimSpace(f.String()) }

func (f *field) empty() bool { return f.String() == "" }
func (f *field) clear()      { *f = field{} }

// at is the position of the cursor, in characters from the left.
func (f *field) at() int {
	if f.input == nil {
		return 0
	}
	return f.input.Position()
}

// view is the part of the text around the cursor that fits, and the cursor's column in it.
func (f *field) view(room int) (string, int) {
	text, at := []rune(f.String()), f.at()
	from, to := 0, len(text)
	for from < at && width(string(text[from:at])) >= room {
		from++
	}
	for to > at && width(string(text[from:to])) > room {
		to--
	}
	return string(text[from:to]), width(string(text[from:at]))
}

// ask draws a question followed by the typed text, and returns the cursor's column.
func (f *field) ask(th *theme, question string, w int) (*row, int) {
	r := newRow(w).put(th.bold, question)
	text, at := f.view(r.left())
	x := min(r.used+at, w-1)
	return r.put(th.bold.exact(), text), x
}

// valueField is a field for a value of the user's own for a setting.
type valueField struct {
	typing bool
	field  field
}

// edit edits the value; enter lets set take it.
func (v *valueField) edit(press tea.KeyPressMsg, set func() action) action {
	switch on := key.Matches(press, bound.On); {
	case on && v.field.empty(), press.String() == "esc":
		*v = valueField{}
	case on:
		return set()
	default:
		v.field.edit(press)
	}
	return nil
}

// below adds the field as a line of its own, with how the value was read, and returns the cursor in it.
func (v *valueField) below(b block, th *theme, name string, set *choice.Choice, w int) (block, *tea.Cursor) {
	ask, x := v.field.ask(th, name+": ", w)
	text := v.field.reading(set.Kind, th.look.units, quantity.Rule(set.Kind))
	if ask.left() > width(text)+2 {
		ask.blank(2).put(th.quiet, text)
	}
	return append(b, ask.line()), tea.NewCursor(x, len(b))
}

// reading says how a typed number was read if it may mean something else, otherwise the rule.
func (f *field) reading(kind quantity.Field, units quantity.System, rule string) string {
	return cmp.Or(quantity.Reading(kind, f.String(), units), rule)
}

// insert puts text at the cursor: one line of printable characters. Other characters are dropped.
func (f *field) insert(s string) {
	f.tell(tea.PasteMsg{Content: strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) || unicode.In(r, unicode.Mn, unicode.Me) {
			return -1 // control, format, bidi and combining characters
		}
		return r
	}, s)})
}

// pasted is a key that types a whole pasted text. Its end, which no field takes, keeps it from being the name of a key.
func pasted(msg tea.PasteMsg) tea.KeyPressMsg {
	return tea.KeyPressMsg{Code: tea.KeyExtended, Text: plain.Line(msg.Content, 2*fieldMax) + "\r"}
}

// tell passes a message to the input, which is created for the first one.
func (f *field) tell(msg tea.Msg) {
	if f.input == nil {
		m := textinput.New()
		m.CharLimit = fieldMax
		m.Focus()
		f.input = &m
	}
	*f.input, _ = f.input.Update(msg)
}

// edit handles a key press: a character, or one of the keys that the input itself knows.
func (f *field) edit(k tea.KeyPressMsg) {
	switch {
	case k.Text != "":
		f.insert(k.Text)
	case k.String() == "ctrl+u": // wherever the cursor is
		f.clear()
	case f.input != nil:
		f.tell(k)
	}
}

// pagesKey is the key that turns the page while text is typed: the arrows move in the text then.
func (f *field) pagesKey() string {
	if f.empty() {
		return "  ←→ pages"
	}
	return "  f4 pages"
}
