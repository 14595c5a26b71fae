package quantity

import (
	"fmt"
	"strings"
	"unicode"

	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
)

// The range of sheet gauges.
const (
	firstGauge = 7
	lastGauge  = 30
)

// ParseSize reads a sheet thickness: a gauge 7 to 30, or a length from 0.05 to 150 mm. A bare whole
// number from 7 up is a gauge, so 44 is refused as no gauge and 44mm is taken.
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

// isGauge knows the spellings of a sheet gauge; the British wire gauge (swg) is not one.
func isGauge(unit string) bool {
	switch unit {
	case "ga", "gauge", "gage", "g", "msg", "gsg":
		return true
	}
	return false
}

// ParsePrice reads a price per mass with its currency sign or code, before or after the number: "$12/lb",
// "25 EUR/kg". The price is per kg; the currency comes back in upper case, "" where none was typed.
func ParsePrice(text string) (perKg float64, currency string, err error) {
	sp := &specs[FieldPrice]
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
	perKg, err = sp.convert(s, text)
	return perKg, currency, err
}
