package quantity

import (
	"fmt"
	"strings"
	"unicode"

	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
)

// Each parser takes what a hand types (any case, blanks or none, comma or point as decimal mark) and
// returns the base unit, or *mistake.Error with what to type instead. Rule(field) tells how a bare number is
// read. Inches, feet, pounds, pounds-force, cubic feet and degrees Fahrenheit convert by their exact
// definitions (NIST SP 811). A comma before three digits ("1,500") marks decimals or thousands,
// whichever the field's range allows; where it allows both, the text is refused.

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
	return Size{Length: Length(v)}, err
}

// isGauge knows the spellings of a sheet gauge; the British wire gauge (swg) is not one.
func isGauge(unit string) bool {
	switch unit {
	case "ga", "gauge", "gage", "g", "msg", "gsg":
		return true
	}
	return false
}

// Read reads a field that is one number, as its base unit: a feed is mm/s. A size and a price are more than that and
// have parsers of their own.
func Read(f Field, text string) (float64, error) {
	if f == FieldTravel { // it may be typed as seconds along a length
		v, err := ParseTravel(text)
		return float64(v), err
	}
	return read(f, text)
}

// ParseWire reads a wire diameter, 0.4 to 3.2 mm.
func ParseWire(text string) (Length, error) { return readAs[Length](FieldWire, text) }

// ParseGap reads a root opening, 0 to 25 mm.
func ParseGap(text string) (Length, error) { return readAs[Length](FieldGap, text) }

// ParseStickOut reads a stick-out, 3 to 50 mm.
func ParseStickOut(text string) (Length, error) { return readAs[Length](FieldStickOut, text) }

// ParseLength reads any length up to 100 m, mm.
func ParseLength(text string) (Length, error) { return readAs[Length](FieldLength, text) }

// ParseOffset reads a length to either side, −25 to 25 mm.
func ParseOffset(text string) (Length, error) { return readAs[Length](FieldOffset, text) }

// ParseFeed reads a wire feed, 0.3 to 40 m/min, as mm/s.
func ParseFeed(text string) (Speed, error) { return readAs[Speed](FieldFeed, text) }

// ParseCurrent reads a current, 5 to 600 A.
func ParseCurrent(text string) (Current, error) { return readAs[Current](FieldCurrent, text) }

// ParseVoltage reads a voltage, 5 to 60 V.
func ParseVoltage(text string) (Voltage, error) { return readAs[Voltage](FieldVoltage, text) }

// ParseTemperature reads a temperature, −40 to 1500 C; it may be negative.
func ParseTemperature(text string) (Temperature, error) {
	return readAs[Temperature](FieldTemperature, text)
}

// ParseFlow reads a gas flow, 1 to 60 L/min. A bare number is L/min, also for users of cfh:
// 25 would fit both, so cfh must be typed.
func ParseFlow(text string) (Flow, error) { return readAs[Flow](FieldFlow, text) }

// ParseForce reads a load up to 10 MN, kN. Pounds and kilograms count as the force they weigh.
func ParseForce(text string) (Force, error) { return readAs[Force](FieldForce, text) }

// ParseDuration reads a time up to a million seconds.
func ParseDuration(text string) (Duration, error) { return readAs[Duration](FieldDuration, text) }

// ParsePercent reads a share of 0 to 100 %.
func ParsePercent(text string) (float64, error) { return read(FieldPercent, text) }

// ParseNumber reads a number without a unit, 0 to 1e9: a count, a factor.
func ParseNumber(text string) (float64, error) { return read(FieldNumber, text) }

// ParsePrice reads a price per mass with its currency sign or code, before or after the number: "$12/lb",
// "25 EUR/kg". The price is per kg; the currency comes back in upper case, "" where none was typed.
func ParsePrice(text string) (Price, string, error) {
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
	currency := strings.ToUpper(s.before + after)
	if !isCurrency(currency) {
		return 0, "", sp.refuse(text, "has no currency that can be told")
	}
	v, err := sp.convert(s, text)
	if err != nil {
		return 0, "", err
	}
	return Price(v), currency, nil
}

// isCurrency accepts nothing, or up to four letters and currency signs.
func isCurrency(s string) bool {
	other := func(r rune) bool { return !unicode.IsLetter(r) && !unicode.Is(unicode.Sc, r) }
	return plain.Width(s) <= 4 && strings.IndexFunc(s, other) < 0
}
