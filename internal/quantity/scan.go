package quantity

import (
	"math"
	"strconv"
	"strings"

	"brazebooth/internal/mistake"
)

// scanned is typed text split into a number and the text around it.
type scanned struct {
	v         float64
	thousands float64 // the number if its comma marks thousands ("1,500"); 0 if it cannot
	unit      string  // lower case, without blanks; "" for a number without a unit
	fraction  bool    // typed as 3/32 or 1-1/4
	whole     bool    // typed as digits only
	before    string  // a currency sign or # before the number
}

// A text of more bytes than this, as typed or after folding, is nonsense or an attack.
const (
	most    = 40
	longest = 4 * most
)

// scan splits text, or says what is wrong with it.
func scan(sp *spec, text string) (scanned, error) {
	var out scanned
	s := ""
	if len(text) <= longest {
		s = fold(text)
	}
	switch {
	case len(text) > longest, len(s) > most:
		return out, mistake.New(sp.what+" is too long to be a number", sp.hint)
	case s == "":
		return out, mistake.New(sp.what+" is empty", sp.hint)
	}
	if cut := strings.IndexAny(s, "-.,0123456789"); cut > 0 {
		out.before, s = strings.TrimSpace(s[:cut]), s[cut:]
	}
	rest, negative := strings.CutPrefix(s, "-")
	if negative && !sp.signed {
		return out, mistake.New(sp.what+" cannot be negative", sp.hint)
	}
	if !out.number(strings.TrimSpace(rest)) {
		return out, sp.refuse(text, "is not a number")
	}
	if negative {
		out.v, out.thousands = -out.v, 0
	}
	return out, nil
}

// number reads the number at the start of s and takes the rest as the unit.
func (out *scanned) number(s string) bool {
	grouped := grouping(s)
	s = pointed(s)
	n := numberLength(s)
	v, ok := value(s[:n])
	if !ok || strings.ContainsAny(s[n:], "0123456789,") && !hasPower(s[n:]) {
		return false
	}
	out.v = v
	if grouped {
		out.thousands = math.Round(v * 1000)
	}
	out.fraction = strings.Contains(s[:n], "/")
	out.whole = strings.IndexFunc(s[:n], func(r rune) bool { return r < '0' || r > '9' }) < 0
	out.unit = unitText(s[n:])
	return true
}

// unitText brings a unit to one spelling: no blanks, a slash for "per".
func unitText(s string) string {
	return strings.ReplaceAll(strings.ReplaceAll(s, " per ", "/"), " ", "")
}

// hasPower reports whether the only digit of a unit is the 2 or 3 of a square or cube: ft3/h.
func hasPower(s string) bool {
	i := strings.IndexAny(s, "0123456789,")
	return i > 0 && letter(s[i-1]) && (s[i] == '2' || s[i] == '3') && !strings.ContainsAny(s[i+1:], "0123456789,")
}

// grouping reports whether a number's only comma may mark thousands: one to three digits before it, the first not 0,
// and exactly three after it.
func grouping(s string) bool {
	s = marks(s)
	comma := strings.IndexByte(s, ',')
	if comma < 1 || comma > 3 || s[0] == '0' || strings.Contains(s, ".") {
		return false
	}
	return len(s) == comma+4 && strings.Count(s, ",") == 1
}

// pointed writes a decimal comma as a point, if it is the only mark.
func pointed(s string) string {
	if n := marks(s); strings.Count(n, ",") == 1 && !strings.Contains(n, ".") {
		return strings.Replace(s, ",", ".", 1)
	}
	return s
}

// marks are the digits, points and commas at the start of s. The point of a unit ("in.") does not belong to them.
func marks(s string) string { return s[:len(s)-len(strings.TrimLeft(s, ".,0123456789"))] }

// numberLength returns how many bytes at the start of s are a number: digits with a point, a fraction, or a whole
// number and a fraction joined by a hyphen or a blank.
func numberLength(s string) int {
	whole := span(s, 0)
	if whole < len(s) && (s[whole] == '-' || s[whole] == ' ') {
		over := span(s, whole+1)
		if end := under(s, over); over > whole+1 && end > over {
			return end
		}
	}
	return under(s, whole)
}

// under returns the end of a slash and its divisor that begin at i, or i if there are none.
func under(s string, i int) int {
	if i < len(s) && s[i] == '/' {
		if end := span(s, i+1); end > i+1 {
			return end
		}
	}
	return i
}

// span returns the end of the digits and points from i.
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
	return whole + a/b, okA && okB && b > 0
}

// digits reads a part of a fraction: up to six digits, no point.
func digits(s string) (float64, bool) {
	if len(s) > 6 || strings.Contains(s, ".") {
		return 0, false
	}
	return decimal(s)
}

// decimal reads digits and points. It keeps exponents and "Inf" away from ParseFloat.
func decimal(s string) (float64, bool) {
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil
}

// folds replaces spellings that mean the same by one of them. A character is never dropped if that could join two
// numbers into another one: a degree sign becomes letters, a vulgar fraction gets blanks around it, and a power counts
// only after its unit.
var folds = strings.NewReplacer(
	"″", `"`, "”", `"`, "“", `"`, "′′", `"`, "''", `"`, "′", "'", "’", "'",
	"°", "deg", "º", "deg", "℃", "degc", "℉", "degf", "№", "#",
	"µ", "u", "μ", "u", "m²", "m2", "m³", "m3", "t³", "t3",
	"½", " 1/2 ", "¼", " 1/4 ", "¾", " 3/4 ", "⅛", " 1/8 ", "⅜", " 3/8 ", "⅝", " 5/8 ", "⅞", " 7/8 ",
	"⁄", "/", "∕", "/", "−", "-", "–", "-", "‐", "-", "‑", "-",
)

// fold brings text to one spelling: lower case, single blanks, ASCII characters.
func fold(text string) string {
	return strings.Join(strings.Fields(folds.Replace(strings.ToLower(text))), " ")
}
