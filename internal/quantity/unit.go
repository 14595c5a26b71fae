package quantity

import "strings"

// unit is one unit and its conversion to the field's base unit: (v + pre)·num/den. Numerator and denominator are
// separate because both are exact even if their quotient is not: 6.3 m/min is 105 mm/s and not 104.999….
type unit struct {
	names    string // spellings, lower case and without blanks, separated by blanks
	num, den float64
	symbol   string // how messages write it
	pre      float64
}

// MMPerInch is exact: the international inch.
const MMPerInch = 25.4

// FeetPerMetre is exact.
const FeetPerMetre = 1000 / foot

// Exact by definition, NIST SP 811 appendix B.
const (
	inch      = MMPerInch       // mm
	foot      = 304.8           // mm
	pound     = 0.45359237      // kg
	cubicFoot = 28.316846592    // L
	lbf       = 4.4482216152605 // N
	kgf       = 9.80665         // N
	squareIn  = 645.16          // mm2
	iceKelvin = 273.15          // K
)

var lengths = []unit{
	{`mm millimeter millimetre millimeters millimetres`, 1, 1, "mm", 0},
	{`cm centimetre centimetres`, 10, 1, "cm", 0},
	{`m meter metre meters metres`, 1000, 1, "m", 0},
	{`um micron microns micrometre micrometres`, 1, 1000, "µm", 0},
	{`in in. inch inches "`, inch, 1, "in", 0},
	{`ft foot feet '`, foot, 1, "ft", 0},
	{`mil mils thou`, inch, 1000, "mil", 0},
}

var speeds = []unit{
	{`mm/s mm/sec mm/second mmps millimetre/second millimetres/second`, 1, 1, "mm/s", 0},
	{`mm/min mm/minute mmpm millimetre/minute millimetres/minute`, 1, 60, "mm/min", 0},
	{`cm/s centimetre/second centimetres/second`, 10, 1, "cm/s", 0},
	{`cm/min cm/minute centimetre/minute centimetres/minute`, 10, 60, "cm/min", 0},
	{`m/min m/minute mpm metre/minute metres/minute`, 1000, 60, "m/min", 0},
	{`m/s metre/second metres/second`, 1000, 1, "m/s", 0},
	{`in/min ipm inch/min "/min inches/min in/minute inch/minute inches/minute`, inch, 60, "in/min", 0},
	{`in/s ips "/s inch/second inches/second`, inch, 1, "in/s", 0},
	{`ft/min fpm foot/minute feet/minute`, foot, 60, "ft/min", 0},
}

var (
	amps  = []unit{{`a amp amps ampere amperes`, 1, 1, "A", 0}}
	volts = []unit{{`v volt volts`, 1, 1, "V", 0}}

	temperatures = []unit{ // a degree sign alone is read like no unit
		{`c deg degc celsius degree degrees degreecelsius degreescelsius`, 1, 1, "°C", 0},
		{`f degf fahrenheit degreefahrenheit degreesfahrenheit`, 5, 9, "°F", -32},
		{`k kelvin`, 1, 1, "K", -iceKelvin},
	}
	flows = []unit{
		{`l/min lpm l/minute litre/minute litres/minute`, 1, 1, "L/min", 0},
		{`cfh scfh ft3/h ft3/hr cuft/h cuft/hr cf/h cf/hr cubicfoot/hour cubicfeet/hour`, cubicFoot, 60, "cfh", 0},
		{`m3/h m3/hr cubicmetre/hour cubicmetres/hour`, 1000, 60, "m3/h", 0},
	}
	forces = []unit{
		{`kn kilonewton kilonewtons`, 1, 1, "kN", 0},
		{`n newton newtons`, 1, 1000, "N", 0},
		{`lbf lb lbs pound pounds poundofforce poundsofforce`, lbf, 1000, "lbf", 0},
		{`kip kips`, lbf, 1, "kip", 0},
		{`kgf kg`, kgf, 1000, "kgf", 0},
		{`t`, kgf, 1, "t", 0},
	}
	durations = []unit{
		{`s sec secs second seconds`, 1, 1, "s", 0},
		{`ms millisecond milliseconds`, 1, 1000, "ms", 0},
		{`min mins minute minutes`, 60, 1, "min", 0},
		{`h hr hrs hour hours`, 3600, 1, "h", 0},
	}
	prices = []unit{
		{`/kg /kilo /kilogram`, 1, 1, "a kg", 0},
		{`/lb /lbs /pound`, 1, pound, "a lb", 0},
		{`/oz /ounce`, 16, pound, "an oz", 0},
	}
	gasPrices = []unit{
		{`/m3 /cbm`, 1, 1, "a m3", 0},
		{`/l /liter /litre`, 1000, 1, "a litre", 0},
		{`/ft3 /cuft /cf`, 1000, cubicFoot, "a ft3", 0},
	}
	rates = []unit{
		{`/h /hr /hour`, 1, 1, "an hour", 0},
		{`/min /minute`, 60, 1, "a minute", 0},
	}
	perLengths = []unit{
		{`min/m mins/m minutes/m min/meter min/metre minute/metre minutes/metre minutes/meter`, 1, 1, "min/m", 0},
		{`s/m sec/m seconds/m second/metre seconds/metre`, 1, 60, "s/m", 0},
		{`min/ft mins/ft minutes/ft min/foot minute/foot minutes/foot`, 1000, foot, "min/ft", 0},
	}
	masses = []unit{
		{`kg kilo kilos kilogram kilograms`, 1, 1, "kg", 0},
		{`g gram grams`, 1, 1000, "g", 0},
		{`lb lbs pound pounds`, pound, 1, "lb", 0},
		{`oz ounce ounces`, pound, 16, "oz", 0},
		{`t`, 1000, 1, "t", 0},
	}
	percents = []unit{{`% percent pct /cent`, 1, 1, "%", 0}}
)

// plainUnit is the unit of a number that has none.
var plainUnit = unit{num: 1, den: 1}

// spelled finds a unit by its folded spelling, nil if the field has no such unit. The empty spelling is the unit of a
// field without units.
func spelled(units []unit, name string) *unit {
	if name == "" {
		return &plainUnit
	}
	for i := range units {
		for n := range strings.FieldsSeq(units[i].names) {
			if n == name {
				return &units[i]
			}
		}
	}
	return nil
}

func (u *unit) toBase(v float64) float64   { return (v + u.pre) * u.num / u.den }
func (u *unit) fromBase(v float64) float64 { return v*u.den/u.num - u.pre }
