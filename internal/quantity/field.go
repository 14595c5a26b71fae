package quantity

import (
	"fmt"
	"strconv"
	"strings"

	"brazebooth/internal/plain"
)

// Field is one kind of box that a hand types into.
type Field int

// The fields; the zero Field is a box for names.
const (
	FieldSize Field = iota + 1
	FieldWire
	FieldGap
	FieldStickOut
	FieldLength
	FieldFeed
	FieldTravel
	FieldCurrent
	FieldVoltage
	FieldTemperature
	FieldFlow
	FieldStress
	FieldForce
	FieldMass
	FieldDuration
	FieldPrice
	FieldPercent
	fields
)

// unit is one spelling of a unit and what makes the base unit of it: v·factor + offset.
type unit struct {
	names  string // spellings, lower case, blank between
	factor float64
	offset float64
}

// spec is how one field is read.
type spec struct {
	what      string // in messages
	units     []unit
	bare      func(scanned) (factor float64, ok bool)
	low, high float64 // in the base unit
	base      string  // its symbol, for messages
	hint      string
	rule      string
}

// Exact factors by definition: the international inch and pound, the standard gravity.
const (
	inch  = 25.4                 // mm
	foot  = 304.8                // mm
	pound = 0.45359237           // kg
	cfh   = 28.316846592 / 60    // L/min
	lbf   = 4.4482216152605e-3   // kN
	psi   = 6.894757293168361e-3 // MPa: lbf over square inch
	kgf   = 9.80665e-3           // kN
	fahr  = 5.0 / 9              // K
	zeroF = -32 * fahr           // C
	quart = 1.0 / 60             // a minute's in a second
	ounce = pound / 16           // kg
	feet3 = 28.316846592         // L
	perMM = 1.0                  // mm
	micro = 1e-3                 // mm
	mil   = 25.4e-3              // mm: a thousandth of an inch
	kpsi  = 1000 * psi           // MPa
	inMin = inch / 60            // mm/s
	ftMin = foot / 60            // mm/s
	hourS = 3600.0               // s
	minS  = 60.0                 // s
	ms    = 1e-3                 // s
	gram  = 1e-3                 // kg
	tonF  = 1000 * kgf           // kN
	centi = 10.0                 // mm
	meter = 1000.0               // mm
)

var lengths = []unit{
	{`mm millimeter millimetre millimeters millimetres`, perMM, 0}, {`cm`, centi, 0}, {`m`, meter, 0}, {`um micron microns`, micro, 0},
	{`in inch inches "`, inch, 0}, {`ft foot feet '`, foot, 0}, {`mil mils thou`, mil, 0},
}

var speeds = []unit{
	{`mm/s mm/sec mmps`, 1, 0}, {`mm/min`, quart, 0}, {`cm/s`, centi, 0}, {`cm/min`, centi * quart, 0},
	{`m/min mpm`, meter * quart, 0}, {`m/s`, meter, 0},
	{`in/min ipm inch/min "/min inches/min in/minute`, inMin, 0}, {`in/s ips`, inch, 0}, {`ft/min fpm`, ftMin, 0},
}

// inchesBelow reads a bare number under limit as inches, any other as millimetres, and a fraction as
// inches always.
func inchesBelow(limit float64) func(scanned) (float64, bool) {
	return func(s scanned) (float64, bool) {
		if s.fraction || s.v < limit {
			return inch, true
		}
		return 1, true
	}
}

func always(factor float64) func(scanned) (float64, bool) {
	return func(s scanned) (float64, bool) { return factor, !s.fraction }
}

var specs = [fields]spec{
	FieldSize: {"a thickness", lengths, inchesBelow(0.25), 0.05, 150, "mm", "type 16ga, .060 or 1.5mm",
		"a whole number from 7 to 30 is a gauge, under 0.25 inches, else mm"},
	FieldWire: {"a wire size", lengths, inchesBelow(0.25), 0.4, 3.2, "mm", "type .035, 1/16 or 0.9mm",
		"a bare number under 0.25 is inches, else mm"},
	FieldGap: {"a gap", lengths, inchesBelow(0.25), 0, 25, "mm", "type 0, 1.5mm or 1/16in",
		"a bare number under 0.25 is inches, else mm"},
	FieldStickOut: {"a stick-out", lengths, inchesBelow(2), 3, 50, "mm", "type 12mm or 1/2in",
		"a bare number under 2 is inches, else mm"},
	FieldLength: {"a length", lengths, func(s scanned) (float64, bool) {
		if s.fraction {
			return inch, true
		}
		return 1, true
	}, 0, 1e5, "mm", "type 300mm, 12in or 1.5m", "a bare number is mm, a fraction inches"},
	FieldFeed: {"a wire feed", speeds, func(s scanned) (float64, bool) {
		if s.v >= 30 {
			return inMin, !s.fraction
		}
		return meter * quart, !s.fraction
	}, 5, 2000.0 / 3, "mm/s", "type 250ipm or 6.3m/min", "a bare number from 30 up is in/min, under 30 m/min"},
	FieldTravel: {"a travel", speeds, always(1), 0.3, 60, "mm/s", "type 6, 6mm/s, 14ipm or 16s/100mm",
		"a bare number is mm/s; 16s/100mm counts seconds"},
	FieldCurrent: {"a current", []unit{{`a amp amps ampere amperes`, 1, 0}}, always(1), 5, 600, "A", "type 93 or 93A", "a bare number is amps"},
	FieldVoltage: {"a voltage", []unit{{`v volt volts`, 1, 0}}, always(1), 5, 60, "V", "type 14.8 or 14.8V", "a bare number is volts"},
	FieldTemperature: {"a temperature", []unit{{`c degc celsius`, 1, 0}, {`f degf fahrenheit`, fahr, zeroF}}, always(1), -40, 1500, "°C",
		"type 95C or 200F", "a bare number is °C"},
	FieldFlow: {"a gas flow", []unit{{`l/min lpm lmin`, 1, 0}, {`cfh ft3/h ft3/hr scfh`, cfh, 0}, {`m3/h`, 1000 * quart, 0}}, always(1), 1, 60,
		"L/min", "type 12 L/min or 25cfh", "a bare number is L/min"},
	FieldStress: {"a stress", []unit{{`mpa n/mm2`, 1, 0}, {`ksi`, kpsi, 0}, {`psi`, psi, 0}, {`gpa`, 1000, 0}}, always(1), 0, 5000,
		"MPa", "type 345MPa or 50ksi", "a bare number is MPa"},
	FieldForce: {"a load", []unit{{`kn`, 1, 0}, {`n`, 1e-3, 0}, {`lbf lb lbs pounds`, lbf, 0}, {`kip kips`, 1000 * lbf, 0}, {`kgf kg`, kgf, 0}, {`t`, tonF, 0}}, always(1), 0, 10000,
		"kN", "type 5kN, 500lbf or 200kg", "a bare number is kN"},
	FieldMass: {"a mass", []unit{{`kg`, 1, 0}, {`g`, gram, 0}, {`lb lbs pounds`, pound, 0}, {`oz`, ounce, 0}}, always(1), 0, 1e5,
		"kg", "type 10lb or 4.5kg", "a bare number is kg"},
	FieldDuration: {"a time", []unit{{`s sec secs second seconds`, 1, 0}, {`ms`, ms, 0}, {`min`, minS, 0}, {`h hr`, hourS, 0}}, always(1), 0, 1e6,
		"s", "type 0.4s or 400ms", "a bare number is seconds"},
	FieldPrice: {"a price", []unit{{`/kg perkg`, 1, 0}, {`/lb perlb`, 1 / pound, 0}}, always(1), 0, 1e6,
		"a kg", "type $12/lb or 25 EUR/kg", "a bare number is per kg"},
	FieldPercent: {"a percentage", []unit{{`% percent`, 1, 0}}, always(1), 0, 100, "%", "type 40 or 40%", "a bare number is per cent"},
}

// Rule says in one short line how a bare number in the field is read; "" for a field of names.
func Rule(f Field) string {
	if f <= 0 || f >= fields {
		return ""
	}
	return specs[f].rule
}

// Hint says what may be typed into the field; "" for a field of names.
func Hint(f Field) string {
	if f <= 0 || f >= fields {
		return ""
	}
	return specs[f].hint
}

// read turns text into the field's base unit.
func read(f Field, text string) (float64, error) {
	sp := &specs[f]
	s, err := scan(sp.what, text, sp.hint)
	if err != nil {
		return 0, err
	}
	if s.before != "" {
		return 0, &Error{sp.what + " " + echo(text) + " does not begin with its number", sp.hint}
	}
	return sp.convert(s, text)
}

// convert applies the unit and the range.
func (sp *spec) convert(s scanned, text string) (float64, error) {
	factor, offset, ok := sp.unit(s)
	if !ok {
		return 0, &Error{sp.what + " " + echo(text) + " has a unit that does not fit", sp.hint}
	}
	v := s.v*factor + offset
	if !(v >= sp.low && v <= sp.high) {
		return 0, &Error{fmt.Sprintf("%s of %s is out of range", sp.what, echo(text)),
			fmt.Sprintf("%s; from %s to %s %s", sp.hint, short(sp.low), short(sp.high), sp.base)}
	}
	return v, nil
}

func (sp *spec) unit(s scanned) (factor, offset float64, ok bool) {
	if s.unit == "" {
		factor, ok = sp.bare(s)
		return factor, 0, ok
	}
	for _, u := range sp.units {
		for name := range strings.FieldsSeq(u.names) {
			if name == s.unit {
				return u.factor, u.offset, true
			}
		}
	}
	return 0, 0, false
}

// echo repeats typed text in a message, made safe and short.
func echo(text string) string { return strconv.Quote(plain.Line(text, 24)) }

func short(v float64) string { return strconv.FormatFloat(v, 'g', 4, 64) }
