package quantity

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"sync"

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

// numeral is a number and its unit: a fraction with or without a whole number before it, or digits with a point, then a
// unit whose only digit may be the 2 or 3 of a square or cube (ft3/h). It keeps exponents and "Inf" away from
// ParseFloat.
var numeral = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(?:(?:(\d{1,6})[- ])?(\d{1,6})/(\d{1,6})|([\d.]*))((?:[^\d,]*[a-z][23])?[^\d,]*)$`)
})

// number reads the number at the start of s and takes the rest as the unit. A comma is a decimal mark if it is the only
// mark; with one to three digits before it, the first not 0, and exactly three after it, it may also mark thousands.
// The point of a unit ("in.") is no mark.
func (out *scanned) number(s string) bool {
	marked := s[:len(s)-len(strings.TrimLeft(s, ".,0123456789"))]
	comma, grouped := strings.IndexByte(marked, ','), false
	if strings.Count(marked, ",") == 1 && !strings.Contains(marked, ".") {
		grouped = comma >= 1 && comma <= 3 && s[0] != '0' && len(marked) == comma+4
		s = strings.Replace(s, ",", ".", 1)
	}
	m := numeral().FindStringSubmatch(s)
	if m == nil || strings.HasPrefix(strings.TrimPrefix(m[5], "/"), ".") { // 3/8. is no number, nor is 3/.8
		return false
	}
	if out.fraction = m[3] != ""; out.fraction {
		whole, _ := strconv.ParseFloat("0"+m[1], 64) // only digits: none of them fails
		over, _ := strconv.ParseFloat(m[2], 64)
		under, _ := strconv.ParseFloat(m[3], 64)
		out.v = whole + over/under
	} else {
		var err error
		if out.v, err = strconv.ParseFloat(m[4], 64); err != nil {
			return false
		}
	}
	if grouped {
		out.thousands = math.Round(out.v * 1000)
	}
	out.whole = !out.fraction && !strings.Contains(m[4], ".")
	out.unit = unitText(m[5])
	return !math.IsInf(out.v, 0) && !math.IsNaN(out.v)
}

// unitText brings a unit to one spelling: no blanks, a slash for "per".
func unitText(s string) string {
	return strings.ReplaceAll(strings.ReplaceAll(s, " per ", "/"), " ", "")
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
