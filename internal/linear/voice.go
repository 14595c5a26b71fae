package linear

import (
	"bufio"
	"io"
	"regexp"
	"strings"
	"sync"
	"unicode"

	"brazebooth/calc"
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

// signs are the characters in this program's texts that screen readers skip or misread, with words for them.
var signs = strings.NewReplacer(
	" – ", ", ", "–", " to ", " — ", ", ", "—", ", ", "−", " minus ", "×", " times ", "·", " times ", "÷", " over ",
	"²", " squared", "³", " cubed", "⁵", " to the power 5", "√", "the square root of ",
	"±", "plus or minus ", "≥", "at least ", "≤", "at most ", "≈", "about ", "~", "about ",
	"°C", " degrees Celsius", "°F", " degrees Fahrenheit", "°", " degrees", "%", " per cent",
	"½", "1/2", "¼", "1/4", "¾", "3/4", "…", "...", "→", " to ", "€", "EUR", "£", "GBP",
	"“", `"`, "”", `"`, "’", "'", "‘", "'", "\u00a0", " ",
	"η", "eta ", "ρ", "rho ", "φ", "phi ", "σ", "sigma ", "π", "pi ", "µ", "micro", "μ", "micro", "Ω", "ohm")

var minus = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(^|[\s(])-([\d.])`) })

// spell is a text as it is read out, with units and symbols in words.
func spell(text string) string {
	text = signs.Replace(unitsSpelled(text))
	text = minus().ReplaceAllString(text, "${1}minus $2")
	return safe(tidy(text))
}

// literal is a text that names something to type: only characters that cannot be typed are replaced.
func literal(text string) string {
	return safe(strings.NewReplacer("°C", "C", "°F", "F", "–", "-", "−", "-", "…", "...", "“", `"`, "”", `"`, "’",
		"'").Replace(text))
}

// tidy reduces several blanks to one, and leaves none before a comma.
func tidy(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	return strings.NewReplacer(" ,", ",", " ;", ";", " )", ")", "( ", "(").Replace(text)
}

// safe keeps letters, their marks and printable ASCII. Everything else becomes a question mark, so that nothing is
// dropped silently.
func safe(text string) string {
	return strings.Map(func(r rune) rune {
		if r >= ' ' && r <= '~' || r > '~' && r != unicode.ReplacementChar &&
			(unicode.IsLetter(r) || unicode.IsMark(r)) {
			return r
		}
		return '?'
	}, text)
}

var operators = strings.NewReplacer(" + ", " plus ", " − ", " minus ", "/", " over ", "^", " to the power of ", " = ",
	" is ",
	"=", " is ", "*", " times ")

func formula(text string) string { return spell(operators.Replace(text)) }

// numbers is a formula with its numbers filled in and their units in words.
func numbers(b *calc.Basis) string { return formula(b.Filled(inUnit)) }

func capital(s string) string {
	for i, r := range s {
		return string(unicode.ToUpper(r)) + s[i+len(string(r)):]
	}
	return s
}

// sentence ends a text with a full stop, unless it ends with a mark already.
func sentence(s string) string {
	s = strings.TrimSpace(s)
	if s == "" || strings.ContainsRune(".?!:", rune(s[len(s)-1])) {
		return s
	}
	return s + "."
}
