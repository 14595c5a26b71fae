package linear

import (
	"regexp"
	"slices"
	"strings"
	"sync"
)

// unit is one unit as it stands on a card or in a text, and as it is read out.
type unit struct{ sign, one, many string }

// same is a unit whose name has no plural.
func same(sign, name string) unit { return unit{sign, name, name} }

var units = [...]unit{
	{"m/min", "metre per minute", "metres per minute"},
	{"in/min", "inch per minute", "inches per minute"},
	{"mm/s", "millimetre per second", "millimetres per second"},
	{"mm", "millimetre", "millimetres"},
	{"in", "inch", "inches"},
	{"m", "metre", "metres"},
	{"ft", "foot", "feet"},
	{"g/min", "gram per minute", "grams per minute"},
	{"g/h", "gram per hour", "grams per hour"},
	{"g/m", "gram per metre", "grams per metre"},
	{"g/m²", "gram per square metre", "grams per square metre"},
	{"g/m2", "gram per square metre", "grams per square metre"},
	{"g/cm³", "gram per cubic centimetre", "grams per cubic centimetre"},
	{"g/cm3", "gram per cubic centimetre", "grams per cubic centimetre"},
	{"lb/h", "pound per hour", "pounds per hour"},
	{"oz/h", "ounce per hour", "ounces per hour"},
	{"lb/1000 ft", "pound per thousand feet", "pounds per thousand feet"},
	{"oz/ft²", "ounce per square foot", "ounces per square foot"},
	{"J/mm", "joule per millimetre", "joules per millimetre"},
	{"kJ/in", "kilojoule per inch", "kilojoules per inch"},
	{"J/g", "joule per gram", "joules per gram"},
	{"J/mm³K", "joule per cubic millimetre and kelvin", "joules per cubic millimetre and kelvin"},
	{"J/mm3K", "joule per cubic millimetre and kelvin", "joules per cubic millimetre and kelvin"},
	{"W/m²K", "watt per square metre and kelvin", "watts per square metre and kelvin"},
	{"W/m2K", "watt per square metre and kelvin", "watts per square metre and kelvin"},
	{"W/mmK", "watt per millimetre and kelvin", "watts per millimetre and kelvin"},
	{"mm²", "square millimetre", "square millimetres"},
	{"mm2", "square millimetre", "square millimetres"},
	{"in²", "square inch", "square inches"},
	{"mm³", "cubic millimetre", "cubic millimetres"},
	{"mm3", "cubic millimetre", "cubic millimetres"},
	{"in³", "cubic inch", "cubic inches"},
	{"L/min", "litre per minute", "litres per minute"},
	{"cfh", "cubic foot per hour", "cubic feet per hour"},
	{"cfm", "cubic foot per minute", "cubic feet per minute"},
	{"L", "litre", "litres"},
	{"ft³", "cubic foot", "cubic feet"},
	{"ft3", "cubic foot", "cubic feet"},
	{"m³", "cubic metre", "cubic metres"},
	{"m3", "cubic metre", "cubic metres"},
	{"m³/h", "cubic metre per hour", "cubic metres per hour"},
	{"m³/min", "cubic metre per minute", "cubic metres per minute"},
	{"mg/m³", "milligram per cubic metre", "milligrams per cubic metre"},
	{"mg/m3", "milligram per cubic metre", "milligrams per cubic metre"},
	{"kg/m³", "kilogram per cubic metre", "kilograms per cubic metre"},
	{"kg/m3", "kilogram per cubic metre", "kilograms per cubic metre"},
	{"°C", "degree Celsius", "degrees Celsius"},
	{"C", "degree Celsius", "degrees Celsius"},
	{"°F", "degree Fahrenheit", "degrees Fahrenheit"},
	{"°", "degree", "degrees"},
	same("K", "kelvin"),
	{"kN", "kilonewton", "kilonewtons"},
	{"N", "newton", "newtons"},
	{"lbf", "pound of force", "pounds of force"},
	{"MPa", "megapascal", "megapascals"},
	{"A²s", "ampere squared second", "ampere squared seconds"},
	{"A2s", "ampere squared second", "ampere squared seconds"},
	{"V/A", "volt per amp", "volts per amp"},
	{"GPa", "gigapascal", "gigapascals"},
	same("HV", "Vickers"),
	same("10⁻⁶/K", "millionths per kelvin"),
	same("1e-6/K", "millionths per kelvin"),
	{"mPa s", "millipascal second", "millipascal seconds"},
	{"ksi", "thousand pounds per square inch", "thousand pounds per square inch"},
	{"g", "gram", "grams"},
	{"kg", "kilogram", "kilograms"},
	{"oz", "ounce", "ounces"},
	{"lb", "pound", "pounds"},
	same("a kg", "a kilogram"),
	same("a lb", "a pound"),
	{"A", "amp", "amps"},
	{"V", "volt", "volts"},
	{"s", "second", "seconds"},
	{"ms", "millisecond", "milliseconds"},
	{"min", "minute", "minutes"},
	{"h", "hour", "hours"},
	same("%", "per cent"),
	same("Hz", "hertz"),
	{"W", "watt", "watts"},
	{"deg", "degree", "degrees"},
	{"r/min", "turn a minute", "turns a minute"},
	{"min/m", "minute a metre", "minutes a metre"},
	same("ga", "gauge"),
	{"Ω·mm", "ohm millimetre", "ohm millimetres"},
	{"ohm mm", "ohm millimetre", "ohm millimetres"},
	{"Ω·mm/K", "ohm millimetre per kelvin", "ohm millimetres per kelvin"},
	{"ohm mm/K", "ohm millimetre per kelvin", "ohm millimetres per kelvin"},
	{"µm", "micrometre", "micrometres"},
}

// inUnit is a printed number with its unit in words.
func inUnit(number, sign string) string {
	if rest, ok := strings.CutPrefix(number, "-"); ok {
		number = "minus " + rest
	}
	if sign == "" || sign == "shade" { // a filter's number has its name before it
		return number
	}
	return number + " " + unitWord(sign, number == "1")
}

// unitWord is a unit in words; one that has none stays as it is.
func unitWord(sign string, one bool) string {
	for i := range units {
		switch {
		case units[i].sign != sign:
		case one:
			return units[i].one
		default:
			return units[i].many
		}
	}
	return sign
}

// unitPattern finds a unit behind its number; a longer sign is tried before one that it begins with.
var unitPattern = sync.OnceValue(func() *regexp.Regexp {
	signs := make([]string, 0, len(units))
	for i := range units {
		if units[i].sign != "in" {
			signs = append(signs, regexp.QuoteMeta(units[i].sign))
		}
	}
	slices.SortFunc(signs, func(a, b string) int { return len(b) - len(a) })
	// "in" counts as inches only where nothing of a sentence follows: "72 in 100" is no length.
	return regexp.MustCompile(`(\d) ?(?:(` + strings.Join(signs, "|") + `)($|[^\pL\pN/²³°·])|(in)($|[),;:.]| \())`)
})

// unitsSpelled puts words for the units that stand behind a number and a blank. Behind a number without a blank they are
// something to type, as 16ga, and stay; only signs that nobody types are spelled there too.
func unitsSpelled(text string) string {
	return unitPattern().ReplaceAllStringFunc(text, func(s string) string {
		m := unitPattern().FindStringSubmatch(s)
		sign, after := m[2]+m[4], m[3]+m[5]
		if s[1] != ' ' && !strings.HasPrefix(sign, "°") && sign != "%" {
			return s
		}
		return m[1] + " " + unitWord(sign, false) + after
	})
}

// typed undoes inUnit for what a hand types: "6.2 metres per minute" is read as 6.2 m/min.
func typed(text string) string {
	low := strings.ToLower(text)
	best, words := -1, ""
	for i := range units {
		for _, w := range [...]string{units[i].one, units[i].many} {
			if w := strings.ToLower(w); len(w) > len(words) && strings.HasSuffix(low, " "+w) && strings.ContainsAny(low, "0123456789") {
				best, words = i, w
			}
		}
	}
	if best < 0 {
		return text
	}
	return text[:len(text)-len(words)] + units[best].sign
}
