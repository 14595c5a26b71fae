package quantity

import (
	"math"
	"strconv"
	"strings"
)

// scanned is typed text taken apart: a number that is zero or more, and what stands after it.
type scanned struct {
	v        float64
	unit     string // lower case, without blanks; "" for a bare number
	fraction bool   // typed as 3/32 or 1-1/4
	whole    bool   // typed as digits only
	before   string // a currency sign or # that stood before the number
}

// most is the most text that can be a quantity; more is nonsense or hostile.
const most = 40

// scan takes text apart, or says what is wrong with it. what names the quantity in the message.
func scan(what, text, hint string) (scanned, error) {
	s := fold(text)
	var out scanned
	switch {
	case s == "":
		return out, &Error{what + " is empty", hint}
	case len(s) > most:
		return out, &Error{what + " is too long to be a number", hint}
	}
	if cut := strings.IndexAny(s, "-.0123456789"); cut > 0 {
		out.before, s = strings.TrimSpace(s[:cut]), s[cut:]
	}
	if s[0] == '-' {
		return out, &Error{what + " cannot be negative", hint}
	}
	n := numberLength(s)
	v, ok := value(s[:n])
	if !ok {
		return out, &Error{what + " " + echo(text) + " is no number", hint}
	}
	out.v = v
	out.fraction = strings.Contains(s[:n], "/")
	out.whole = strings.IndexFunc(s[:n], func(r rune) bool { return r < '0' || r > '9' }) < 0
	out.unit = strings.ReplaceAll(s[n:], " ", "")
	return out, nil
}

// folds are the spellings that mean the same: quotes, degree and micro signs, vulgar fractions, middle
// dots.
var folds = strings.NewReplacer("″", `"`, "”", `"`, "“", `"`, "′′", `"`, "''", `"`, "°", "", "º", "",
	"µ", "u", "μ", "u", "½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"⁄", "/", "·", "", "²", "2", "³", "3", "−", "-", "–", "-", "\u00a0", " ", "\u202f", " ")

// fold brings text to one spelling: lower case, single blanks, the point as decimal mark.
func fold(text string) string {
	s := strings.Join(strings.Fields(folds.Replace(strings.ToLower(text[:min(len(text), 4*most)]))), " ")
	if strings.Count(s, ",") == 1 && !strings.Contains(s, ".") {
		s = strings.Replace(s, ",", ".", 1)
	}
	return s
}

// numberLength returns how many bytes at the start of s are a number: digits with a point, a fraction,
// or a whole number and a fraction joined by a hyphen or a blank.
func numberLength(s string) int {
	i := span(s, 0)
	j := i
	if j < len(s) && (s[j] == '-' || s[j] == ' ') {
		j++
	}
	if k := span(s, j); j > i && k > j && k < len(s) && s[k] == '/' && span(s, k+1) > k+1 {
		return span(s, k+1)
	}
	if i < len(s) && s[i] == '/' && span(s, i+1) > i+1 {
		return span(s, i+1)
	}
	return i
}

// span returns the end of the run of digits and points from i.
func span(s string, i int) int {
	for i < len(s) && (s[i] >= '0' && s[i] <= '9' || s[i] == '.') {
		i++
	}
	return i
}

// value computes a number, a fraction or a mixed fraction.
func value(s string) (float64, bool) {
	over, under, ok := strings.Cut(s, "/")
	if !ok {
		return decimal(s)
	}
	whole := 0.0
	if i := strings.IndexAny(over, "- "); i >= 0 {
		if whole, ok = digits(over[:i]); !ok {
			return 0, false
		}
		over = over[i+1:]
	}
	a, okA := digits(over)
	b, okB := digits(under)
	return whole + a/b, okA && okB && b > 0 && a/b < 1e6
}

func digits(s string) (float64, bool) {
	if s == "" || len(s) > 6 || strings.Contains(s, ".") {
		return 0, false
	}
	return decimal(s)
}

// decimal is ParseFloat without what a hand never means: exponents, hexadecimals, names, two points.
func decimal(s string) (float64, bool) {
	if strings.Count(s, ".") > 1 || strings.Trim(s, ".") == "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil && !math.IsInf(v, 0) && !math.IsNaN(v)
}
