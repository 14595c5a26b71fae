package quantity

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"
)

// Sentences are written in metric units: a number or a range, one blank, the unit ("2 mm", "1 to 2 mm", "900 °C (880 to
// 920)"). If the trade has its own number in the other system, the sentence gives both ("11 m (35 ft)"). A value to be
// typed has no blank ("1.5mm"), and text that somebody typed or named stands between quotes. A length before the word
// wire is the name of its size.

// Sentence returns a sentence in the units of a system. In the metric system it stays as it is written. In the inch
// system each metric quantity becomes the roundest number within its rounding; where a sentence gives both systems, the
// inch number is kept. With Both the inch number follows in parentheses.
func Sentence(text string, sys System) string {
	if !strings.ContainsAny(text, "0123456789") || sys != Inch && sys != Both {
		return text
	}
	var out strings.Builder
	done, repeated := 0, quotations(text)
	for _, at := range quantities().FindAllStringSubmatchIndex(text, -1) {
		m := matched{text, at}
		quoted := func(q part) bool { return q.from < at[0] && at[1] <= q.to }
		if !m.whole() || slices.ContainsFunc(repeated, quoted) {
			continue
		}
		out.WriteString(text[done:at[0]])
		out.WriteString(m.in(sys))
		done = at[1]
	}
	return out.String() + text[done:]
}

// The groups of the pattern: the numbers and their unit, and after them in parentheses the same quantity in another
// unit or the band in this one.
const (
	numbers = 2 * (iota + 1)
	label
	again
	otherLabel
)

// quantities is the pattern of a quantity.
var quantities = sync.OnceValue(func() *regexp.Regexp {
	const number = `-?(?:\d+(?:\.\d+)?|\.\d+)`
	const fraction = number + `(?:/\d+)?`
	const list = `between ` + number + ` and ` + number + `|` + number + ` by ` + number + `|` +
		fraction + `(?:(?: to | or |–)` + fraction + `)*`
	const other = fraction + `(?:(?: to | or | and | by |–)` + fraction + `)*`
	var units []string
	for _, w := range views {
		if w.inch != nil && !strings.HasPrefix(w.metric, "a ") {
			units = append(units, regexp.QuoteMeta(w.metric), regexp.QuoteMeta(w.inch.label))
		}
	}
	slices.SortFunc(units, func(a, b string) int { return len(b) - len(a) })
	unit := `(` + strings.Join(slices.Compact(units), "|") + `)`
	return regexp.MustCompile(`(` + list + `) ` + unit + `(?: \((` + other + `)(?: ` + unit + `)?\))?`)
})

// matched is a quantity found in a text.
type matched struct {
	text string
	at   []int
}

func (m *matched) group(n int) string {
	if m.at[n] < 0 {
		return ""
	}
	return m.text[m.at[n]:m.at[n+1]]
}

// whole reports whether the quantity stands alone: it is not part of a name ("50 L 200 bar") or of a longer unit, and
// not something to type.
func (m *matched) whole() bool {
	if next, ok := strings.CutPrefix(m.text[m.at[1]:], " "); ok && next != "" && '0' <= next[0] && next[0] <= '9' {
		return false
	}
	before, _ := utf8.DecodeLastRuneInString(m.text[:m.at[0]])
	after, _ := utf8.DecodeRuneInString(m.text[m.at[1]:])
	if name, ok := strings.CutPrefix(m.text[m.at[1]:], "."); ok { // of a file name: "2 mm.pdf"
		r, _ := utf8.DecodeRuneInString(name)
		if inWord(r) {
			return false
		}
	}
	joined := func(r rune) bool { return inWord(r) || strings.ContainsRune(`/²³·_`, r) }
	return !joined(before) && !strings.ContainsRune(`"'.`, before) && !joined(after)
}

// in is the quantity in a system.
func (m *matched) in(sys System) string {
	inch, metric := inchOf(m.group(label))
	switch {
	case inch.unit == "mm" && strings.HasPrefix(m.text[m.at[1]:], " wire") && m.at[again] < 0:
		return m.group(0)
	case m.at[otherLabel] >= 0 && !sameQuantity(m.group(label), m.group(otherLabel)):
		return Sentence(m.text[m.at[numbers]:m.at[label+1]], sys) + " (" +
			Sentence(m.text[m.at[again]:m.at[otherLabel+1]], sys) + ")"
	case m.at[otherLabel] >= 0:
		return m.either(sys, metric)
	case !metric || strings.Contains(m.group(numbers), "/"): // metric quantities are never written as fractions
		return m.group(0)
	case sys == Inch:
		return m.converted(&inch)
	}
	return m.both(&inch)
}

// sameQuantity reports whether two labels are the metric and the inch unit of one quantity. Two rows can have the same
// inch label.
func sameQuantity(a, b string) bool {
	return slices.ContainsFunc(views[:], func(w view) bool {
		return w.inch != nil && (w.metric == a && w.inch.label == b || w.metric == b && w.inch.label == a)
	})
}

// both is a metric quantity followed by the inch one, then its band in the same way.
func (m *matched) both(inch *scale) string {
	said := func(list string) string {
		return list + " " + m.group(label) + " (" + inch.list(strings.TrimPrefix(list, "between ")) + " " +
			inch.label + ")"
	}
	text := said(m.group(numbers))
	if band := m.group(again); band != "" {
		text += ", " + said(band)
	}
	return text
}

// either is what a system shows of a quantity that the sentence gives in both. metric means that the metric one comes
// first.
func (m *matched) either(sys System, metric bool) string {
	switch {
	case sys == Both:
		return m.group(0)
	case metric:
		return m.text[m.at[again]:m.at[otherLabel+1]]
	}
	return m.text[m.at[numbers]:m.at[label+1]]
}

// converted is the quantity in the inch system, followed by its band.
func (m *matched) converted(inch *scale) string {
	text := inch.list(m.group(numbers)) + " " + inch.label
	if band := m.group(again); band != "" {
		text += " (" + inch.list(band) + ")"
	}
	return text
}

// inchOf is the inch scale of a unit as written in a sentence; metric means that the name is the metric one. It is
// empty for an unknown name.
func inchOf(name string) (inch scale, metric bool) {
	for _, w := range views {
		if w.inch != nil && (w.metric == name || w.inch.label == name) {
			return scale{w.unit, true, *w.inch}, w.metric == name
		}
	}
	return scale{}, false
}

var oneNumber = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`-?(?:\d+(?:\.\d+)?|\.\d+)`) })

// list converts each number of a metric list to the inch system.
func (s *scale) list(text string) string { return oneNumber().ReplaceAllStringFunc(text, s.roundest) }

// roundest is the inch number with the fewest digits that differs from the metric one by less than half of its last
// digit and less than a fiftieth. Zeros at the end of a number, or one 5, are taken as rounded. For a temperature at
// most one zero is, because it may be a round hundred only in this scale.
func (s *scale) roundest(metric string) string {
	const near = 0.02
	v, err := strconv.ParseFloat(metric, 64)
	if err != nil || v == 0 && s.zero == 0 {
		return metric
	}
	half := 0.5
	_, decimals, _ := strings.Cut(metric, ".")
	switch {
	case decimals != "":
		half = 0.5 * math.Pow10(-len(decimals))
	case math.Mod(v, 10) == 0:
		half = 5
		for s.zero == 0 && v != 0 && math.Mod(v, 20*half) == 0 {
			half *= 10
		}
	case math.Mod(v, 5) == 0:
		half = 2.5
	}
	x, low, high := s.of(v), s.of(v-half), s.of(v+half)
	for power := 5; power > -8; power-- {
		for _, step := range [...]float64{1, 0.5} {
			step *= math.Pow10(power)
			r := math.Round(x/step) * step
			if low <= r && r <= high && math.Abs(r-x) <= near*math.Abs(x) {
				decimals := max(0, -power)
				if step < math.Pow10(power) {
					decimals = max(0, 1-power)
				}
				return s.number(r, decimals)
			}
		}
	}
	return s.number(x, s.decimals(x))
}
