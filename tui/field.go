package tui

import (
	"unicode"

	tea "charm.land/bubbletea/v2"
)

// fieldMax is the longest text that a field takes: every size is shorter, and a name in the book as long.
const fieldMax = 60

// field is one line of typed text with a place to type at.
type field struct {
	text []rune
	at   int
}

func (f *field) String() string { return string(f.text) }
func (f *field) empty() bool    { return len(f.text) == 0 }
func (f *field) clear()         { *f = field{} }

// view is the part of the text around the cursor that fits, and the cursor's column in it.
func (f *field) view(room int) (string, int) {
	from, to := 0, len(f.text)
	for from < f.at && width(string(f.text[from:f.at])) >= room {
		from++
	}
	for to > f.at && width(string(f.text[from:to])) > room {
		to--
	}
	return string(f.text[from:to]), width(string(f.text[from:f.at]))
}

// ask draws a question with what is typed behind it, and tells the cursor's column.
func (f *field) ask(th *theme, question string, w int) (*row, int) {
	r := newRow(w).put(th.bold, question)
	text, at := f.view(r.left())
	x := min(r.used+at, w-1)
	return r.put(th.bold.exact(), text), x
}

// insert puts text at the cursor: one line of printable characters, the rest left out.
func (f *field) insert(s string) {
	for _, r := range s {
		switch {
		case len(f.text) >= fieldMax:
			return
		case r == '\n' || r == '\t':
			r = ' '
		case !unicode.IsPrint(r) || unicode.Is(unicode.Mn, r) || unicode.Is(unicode.Me, r):
			continue // control, format, bidi and combining characters
		}
		f.text = append(f.text, 0)
		copy(f.text[f.at+1:], f.text[f.at:])
		f.text[f.at] = r
		f.at++
	}
}

// edit acts on a key press and reports whether it was one for the field.
func (f *field) edit(k tea.KeyPressMsg) bool {
	switch k.String() {
	case "backspace":
		f.remove(f.at - 1)
	case "delete":
		f.remove(f.at)
	case "left":
		f.at = max(0, f.at-1)
	case "right":
		f.at = min(len(f.text), f.at+1)
	case "home":
		f.at = 0
	case "end":
		f.at = len(f.text)
	case "ctrl+u":
		f.clear()
	default:
		if k.Text == "" {
			return false
		}
		f.insert(k.Text)
	}
	return true
}

func (f *field) remove(i int) {
	if i < 0 || i >= len(f.text) {
		return
	}
	f.text = append(f.text[:i], f.text[i+1:]...)
	if f.at > i {
		f.at--
	}
}

// typeInto puts what is pasted into a field and hands keys to its page.
func typeInto(f *field, msg tea.Msg, press func(tea.KeyPressMsg) action) action {
	switch msg := msg.(type) {
	case tea.PasteMsg:
		f.insert(msg.Content)
	case tea.KeyPressMsg:
		return press(msg)
	}
	return nil
}

func pasted(msg tea.Msg) bool {
	_, ok := msg.(tea.PasteMsg)
	return ok
}
