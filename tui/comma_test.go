package tui

import (
	"regexp"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// plainText is a screen without its drawings, which have commas of their own, and with decimal points.
func plainText(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == ',':
			return '.'
		case r >= 0x2580 && r <= 0x259f:
			return ' '
		}
		return r
	}, s)
}

var pointed = regexp.MustCompile(`(^|[^0-9A-Za-z.])[0-9]+\.[0-9]+([^0-9.]|$)`)

// With a decimal comma no figure on any page keeps its point, typed text stays as it is, and every line is as wide as
// with points.
func TestDecimalComma(t *testing.T) {
	job := calc.Job{Metal: "galvanized", Gauge: 18, Joint: "lap", Feed: calc.Some(4.23), Travel: calc.Some(5.5)}
	with := openAt(t, 80, 24, Options{Comma: true, Opening: job})
	without := openAt(t, 80, 24, Options{Opening: job})
	for _, keys := range []string{"", "c", "esc", "x", "esc", "m", "esc", "p", "right", "right", "esc", "u", "u"} {
		if keys != "" {
			with.press(keys)
			without.press(keys)
		}
		got, want := with.text(), without.text()
		if found := pointed.FindString(got); found != "" {
			t.Errorf("after %q a point is left: %q in\n%s", keys, found, got)
		}
		if plainText(got) != plainText(want) {
			t.Errorf("after %q more than the mark differs:\n%s", keys, got)
		}
	}
}

func TestTypedTextKeepsItsPoint(t *testing.T) {
	s := openAt(t, 80, 24, Options{Comma: true})
	s.press("tab") // to the gauge
	for _, k := range []string{"1", ".", "5", "m", "m"} {
		s.press(k)
	}
	if !strings.Contains(s.text(), "1.5mm") {
		t.Errorf("what was typed is not there:\n%s", s.text())
	}
}

// The same in inches: a size under an inch has its comma like others; a wire size stays as stamped on its spool.
func TestDecimalCommaInInches(t *testing.T) {
	small := regexp.MustCompile(`(^|[^0-9A-Za-z.])[0-9]*\.[0-9]+`)
	for _, sys := range []quantity.System{quantity.Inch, quantity.Both} {
		s := openAt(t, 80, 60, Options{Comma: true, Units: sys, Opening: calc.Job{Metal: "galvanized", Gauge: 18,
			Joint: "lap", Length: calc.Some(300)}})
		for _, keys := range []string{"", "c", "esc", "x", "esc", "p", "right", "right", "right", "right", "right",
			"right", "esc"} {
			if keys != "" {
				s.press(keys)
			}
			for _, found := range small.FindAllString(s.text(), -1) {
				if !strings.HasSuffix(found, ".035") {
					t.Errorf("%s, after %q: %q keeps its point in\n%s", sys, keys, found, s.text())
				}
			}
		}
	}
}
