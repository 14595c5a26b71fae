package quantity

import (
	"fmt"
	"strings"

	"brazebooth/internal/plain"
)

// Each parser takes what a hand types (any case, blanks or none, comma or point as decimal mark) and
// returns the base unit, or *Error with what to type instead. Rule(field) tells how a bare number is
// read. Inches, feet, pounds, pounds-force, cubic feet and degrees Fahrenheit convert by their exact
// definitions (NIST SP 811).

// The gauges that a number can be.
const (
	firstGauge = 7
	lastGauge  = 30
)

// ParseSize reads a sheet thickness: a gauge 7 to 30, or a length from 0.05 to 150 mm.
func ParseSize(text string) (Size, error) {
	sp := &specs[FieldSize]
	s, err := scan(sp.what, text, sp.hint)
	if err != nil {
		return Size{}, err
	}
	gauge := s.before == "#" || s.before == "no" || isGauge(s.unit)
	bare := s.unit == "" && s.before == ""
	switch {
	case gauge && (s.unit == "" || isGauge(s.unit)), bare && s.whole && s.v >= firstGauge:
		if !s.whole || s.v < firstGauge || s.v > lastGauge {
			return Size{}, &Error{fmt.Sprintf("a gauge is a number from %d to %d", firstGauge, lastGauge), sp.hint}
		}
		return Size{Gauge: int(s.v)}, nil
	case s.before != "":
		return Size{}, &Error{sp.what + " " + echo(text) + " does not begin with its number", sp.hint}
	}
	v, err := sp.convert(s, text)
	return Size{Length: Length(v)}, err
}

func isGauge(unit string) bool {
	switch unit {
	case "ga", "gauge", "gage", "g", "swg", "msg", "gsg":
		return unit != "swg" // the British wire gauge is another thing
	}
	return false
}

// ParseWire reads a wire diameter, 0.4 to 3.2 mm.
func ParseWire(text string) (Length, error) { return readAs[Length](FieldWire, text) }

// ParseGap reads a root opening, 0 to 25 mm.
func ParseGap(text string) (Length, error) { return readAs[Length](FieldGap, text) }

// ParseStickOut reads a stick-out, 3 to 50 mm.
func ParseStickOut(text string) (Length, error) { return readAs[Length](FieldStickOut, text) }

// ParseLength reads any length up to 100 m, mm.
func ParseLength(text string) (Length, error) { return readAs[Length](FieldLength, text) }

// ParseFeed reads a wire feed, 0.3 to 40 m/min, as mm/s.
func ParseFeed(text string) (Speed, error) { return readAs[Speed](FieldFeed, text) }

// ParseTravel reads a travel, 0.3 to 60 mm/s, also as the seconds counted along a length: "16s/100mm",
// "17 s/4in".
func ParseTravel(text string) (Speed, error) {
	if v, ok, err := counted(text); ok {
		return Speed(v), err
	}
	return readAs[Speed](FieldTravel, text)
}

// counted reads seconds over a length; ok says whether the text is of that form.
func counted(text string) (v float64, ok bool, err error) {
	seconds, along, found := strings.Cut(fold(text), "/")
	seconds = strings.TrimSpace(seconds)
	if !found || !strings.HasSuffix(seconds, "s") || strings.HasSuffix(seconds, "mms") {
		return 0, false, nil
	}
	sp := &specs[FieldTravel]
	t, err := ParseDuration(seconds)
	if err != nil {
		return 0, true, err
	}
	l, err := ParseLength(along)
	if err != nil {
		return 0, true, err
	}
	v = float64(l) / float64(t)
	if !(v >= sp.low && v <= sp.high) {
		return 0, true, &Error{fmt.Sprintf("%s of %s is out of range", sp.what, echo(text)),
			fmt.Sprintf("%s; from %s to %s %s", sp.hint, short(sp.low), short(sp.high), sp.base)}
	}
	return v, true, nil
}

// ParseCurrent reads a current, 5 to 600 A.
func ParseCurrent(text string) (Current, error) { return readAs[Current](FieldCurrent, text) }

// ParseVoltage reads a voltage, 5 to 60 V.
func ParseVoltage(text string) (Voltage, error) { return readAs[Voltage](FieldVoltage, text) }

// ParseTemperature reads a temperature, −40 to 1500 C. It is the one quantity that may be negative.
func ParseTemperature(text string) (Temperature, error) {
	sp := &specs[FieldTemperature]
	if below, ok := strings.CutPrefix(fold(text), "-"); ok {
		s, err := scan(sp.what, below, sp.hint)
		if err != nil || s.before != "" {
			return 0, &Error{sp.what + " " + echo(text) + " is no number", sp.hint}
		}
		s.v = -s.v
		v, err := sp.convert(s, text)
		return Temperature(v), err
	}
	return readAs[Temperature](FieldTemperature, text)
}

// ParseFlow reads a gas flow, 1 to 60 L/min.
func ParseFlow(text string) (Flow, error) { return readAs[Flow](FieldFlow, text) }

// ParseStress reads a stress up to 5000 MPa.
func ParseStress(text string) (Stress, error) { return readAs[Stress](FieldStress, text) }

// ParseForce reads a load up to 10 MN, kN. Pounds and kilograms count as the force they weigh.
func ParseForce(text string) (Force, error) { return readAs[Force](FieldForce, text) }

// ParseMass reads a mass up to 100 t, kg.
func ParseMass(text string) (Mass, error) { return readAs[Mass](FieldMass, text) }

// ParseDuration reads a time up to a million seconds.
func ParseDuration(text string) (Duration, error) { return readAs[Duration](FieldDuration, text) }

// ParsePercent reads a share of 0 to 100 %.
func ParsePercent(text string) (float64, error) { return read(FieldPercent, text) }

// ParsePrice reads a price per mass with its currency sign or code, before or after the number: "$12/lb",
// "25 EUR/kg". The currency comes back as typed, "" where none was.
func ParsePrice(text string) (Price, string, error) {
	sp := &specs[FieldPrice]
	s, err := scan(sp.what, text, sp.hint)
	if err != nil {
		return 0, "", err
	}
	currency, per := s.before, s.unit
	if i := strings.Index(per, "/"); i > 0 {
		currency, per = currency+per[:i], per[i:]
	} else if i < 0 && !strings.HasPrefix(per, "per") {
		currency, per = currency+per, ""
	}
	if !isCurrency(currency) {
		return 0, "", &Error{sp.what + " " + echo(text) + " has no currency that can be told", sp.hint}
	}
	s.unit = per
	v, err := sp.convert(s, text)
	return Price(v), strings.ToUpper(currency), err
}

// isCurrency accepts a sign or a code of up to four characters without digits or marks of a number.
func isCurrency(s string) bool {
	return plain.Width(s) <= 4 && !strings.ContainsAny(s, "0123456789.,-+/\\ #%'\"=@") && plain.Line(s, 4) == s
}

func readAs[Q ~float64](f Field, text string) (Q, error) {
	v, err := read(f, text)
	return Q(v), err
}
