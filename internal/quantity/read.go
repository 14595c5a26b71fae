package quantity

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode"

	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
)

// The range of sheet gauges.
const (
	firstGauge = 7
	lastGauge  = 30
)

// ParseSize reads a sheet thickness: a gauge from 7 to 30, or a length from 0.05 to 150 mm. A whole number without a
// unit is a gauge from 7 up, so 44 is refused as a gauge that does not exist, and 44mm is accepted.
func ParseSize(text string) (Size, error) {
	sp := &specs[FieldSize]
	s, err := scan(sp, text)
	if err != nil {
		return Size{}, err
	}
	marked := s.before == "#" || s.before == "no" || isGauge(s.unit)
	bare := s.unit == "" && s.before == ""
	switch {
	case marked && (s.unit == "" || isGauge(s.unit)), bare && s.whole && s.v >= firstGauge:
		if !s.whole || s.v < firstGauge || s.v > lastGauge {
			return Size{}, mistake.New(fmt.Sprintf("a gauge is a number from %d to %d", firstGauge, lastGauge), sp.hint)
		}
		return Size{Gauge: int(s.v)}, nil
	case s.before != "":
		return Size{}, sp.refuse(text, "does not begin with its number")
	}
	v, err := sp.convert(s, text)
	return Size{MM: v}, err
}

// isGauge knows the spellings of a sheet gauge. The British wire gauge (swg) is not a sheet gauge.
func isGauge(unit string) bool {
	return slices.Contains([]string{"ga", "gauge", "gage", "g", "msg", "gsg"}, unit)
}

// IsPrice reports whether a field takes a currency.
func (f Field) IsPrice() bool { return f == FieldPrice || f == FieldGasPrice || f == FieldRate }

// ParsePrice reads a price with its currency sign or code before or after the number: "$12/lb", "25 EUR/kg", "45
// EUR/h". The price is in the field's base unit: per kg, per m3 of gas, per hour. The currency is returned in upper
// case, "" if none was typed.
func ParsePrice(f Field, text string) (price float64, currency string, err error) {
	sp := &specs[f]
	s, err := scan(sp, text)
	if err != nil {
		return 0, "", err
	}
	after, per, found := strings.Cut(s.unit, "/")
	s.unit = ""
	if found {
		s.unit = "/" + per
	}
	currency = strings.ToUpper(s.before + after)
	other := func(r rune) bool { return !unicode.IsLetter(r) && !unicode.Is(unicode.Sc, r) }
	if plain.Width(currency) > 4 || strings.IndexFunc(currency, other) >= 0 {
		return 0, "", sp.refuse(text, "has a currency that is neither a sign nor a code")
	}
	price, err = sp.convert(s, text)
	return price, currency, err
}

// Read reads a field that is one number and returns it in the base unit: a feed is in mm/s. Sizes and prices are more
// than one number and have parsers of their own. A travel may also be typed as the seconds for a length: "16s/100mm". A
// gas flow without a unit is L/min, also for users of cfh: 25 would be possible in both, so cfh must be typed.
func Read(f Field, text string) (float64, error) { return specs[f].number(f, text) }

// ReadWithin is Read with other limits, in the field's base unit, because most fields serve several choices.
func ReadWithin(f Field, text string, low, high float64) (float64, error) {
	sp := specs[f]
	sp.low, sp.high = low, high
	if sp.shown == "m" && high < 1e4 { // a bead's size is named in mm, a seam's in m
		sp.shown = "mm"
	}
	return sp.number(f, text)
}

func (sp *spec) number(f Field, text string) (float64, error) {
	if f == FieldTravel && len(text) <= longest {
		if m := counted().FindStringSubmatch(strings.ReplaceAll(fold(text), " per ", "/")); m != nil {
			return sp.pace(text, m[1], m[2])
		}
	}
	s, err := scan(sp, text)
	if err != nil {
		return 0, err
	}
	if s.before != "" {
		return 0, sp.refuse(text, "does not begin with its number")
	}
	return sp.convert(s, text)
}

// counted is text of the form "16 s / 100 mm", which has a letter before its slash and a digit or a point after it.
// This excludes "6 mm/s" and "3/32".
var counted = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^(.*?[a-z]) ?/ ?([\d.].*)$`) })

// pace is a length divided by a time, mm/s. A time of zero gives a speed that is outside every range.
func (sp *spec) pace(text, seconds, along string) (float64, error) {
	t, err := Read(FieldDuration, seconds)
	if err != nil {
		return 0, sp.refuse(text, "has no seconds before the stroke")
	}
	l, err := Read(FieldLength, along)
	if err != nil {
		return 0, sp.refuse(text, "has no length after the stroke")
	}
	if !sp.holds(l / t) {
		return 0, sp.outside(text)
	}
	return l / t, nil
}

// convert applies the unit and the range. If a comma can mark thousands as well as decimals, the range decides; if it
// cannot, the text is refused.
func (sp *spec) convert(s scanned, text string) (float64, error) {
	v, ok := sp.base(s, s.v)
	if !ok {
		return 0, sp.refuse(text, "has a unit that does not fit")
	}
	if s.thousands > 0 {
		w, _ := sp.base(s, s.thousands)
		switch {
		case sp.holds(v) && sp.holds(w):
			return 0, sp.twoWays(s, text)
		case sp.holds(w):
			return w, nil
		}
	}
	if !sp.holds(v) {
		return 0, sp.outside(text)
	}
	return v, nil
}

// base returns v in the base unit. ok is false if the field does not know the unit.
func (sp *spec) base(s scanned, v float64) (float64, bool) {
	name := s.unit
	if name == "" {
		switch {
		case s.fraction && sp.bare.fraction == "":
			return 0, false
		case s.fraction:
			name = sp.bare.fraction
		case v < sp.bare.limit:
			name = sp.bare.under
		default:
			name = sp.bare.from
		}
	}
	u := spelled(sp.units, name)
	if u == nil {
		return 0, false
	}
	return u.toBase(v), true
}

// holds reports whether v is in the field's range and, where that is asked, whole; NaN is not in any range.
func (sp *spec) holds(v float64) bool {
	return v >= sp.low && v <= sp.high && (!sp.whole || v == math.Trunc(v))
}

func (sp *spec) refuse(text, why string) error {
	return mistake.New(sp.what+" "+echo(text)+" "+why, sp.hint)
}

func (sp *spec) outside(text string) error {
	u, why := spelled(sp.units, sp.shown), "is out of range"
	if sp.whole {
		why = "is out of range or not whole"
	}
	return mistake.New(sp.what+" of "+echo(text)+" "+why,
		sp.hint+"; "+Limits(u.fromBase(sp.low), u.fromBase(sp.high), strings.TrimPrefix(u.symbol, "°")))
}

func (sp *spec) twoWays(s scanned, text string) error {
	return mistake.New(sp.what+" of "+echo(text)+" can be read in two ways",
		"type "+exactly(s.v)+s.unit+" or "+exactly(s.thousands)+s.unit)
}

func exactly(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// echo repeats typed text in a message, made safe to print and short.
func echo(text string) string {
	quote := `"`
	if strings.Contains(text, quote) { // an inch sign
		quote = `'`
	}
	return quote + plain.Line(text, 24) + quote
}

// short prints a limit in the fewest digits that a message needs.
func short(v float64) string {
	if v >= 1e4 {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	return strconv.FormatFloat(v, 'g', 4, 64)
}
