package linear

import (
	"regexp"
	"slices"
	"strings"
	"sync"
)

// unit is a unit as written on a card or in a text, and as it is read out.
type unit struct{ sign, one, many string }

// units are the base units and a few compound units with a name of their own. Squares, cubes and quotients of these
// need no row.
var units = [...]unit{
	{"mm", "millimetre", "millimetres"}, {"cm", "centimetre", "centimetres"}, {"m", "metre", "metres"},
	{"in", "inch", "inches"}, {"ft", "foot", "feet"}, {"µm", "micrometre", "micrometres"},
	{"s", "second", "seconds"}, {"ms", "millisecond", "milliseconds"}, {"min", "minute", "minutes"},
	{"h", "hour", "hours"}, {"r", "turn", "turns"},
	{"mg", "milligram", "milligrams"}, {"g", "gram", "grams"}, {"kg", "kilogram", "kilograms"},
	{"oz", "ounce", "ounces"}, {"lb", "pound", "pounds"}, {"a kg", "a kilogram", "a kilogram"}, {"a lb", "a pound",
		"a pound"},
	{"L", "litre", "litres"}, {"cfh", "cubic foot per hour", "cubic feet per hour"},
	{"cfm", "cubic foot per minute", "cubic feet per minute"}, {"1000 ft", "thousand feet", "thousand feet"},
	{"J", "joule", "joules"}, {"kJ", "kilojoule", "kilojoules"}, {"W", "watt", "watts"}, {"K", "kelvin", "kelvin"},
	{"mm³K", "cubic millimetre and kelvin", "cubic millimetres and kelvin"},
	{"m²K", "square metre and kelvin", "square metres and kelvin"}, {"mmK", "millimetre and kelvin",
		"millimetres and kelvin"},
	{"°C", "degree Celsius", "degrees Celsius"}, {"C", "degree Celsius", "degrees Celsius"},
	{"°F", "degree Fahrenheit", "degrees Fahrenheit"}, {"°", "degree", "degrees"}, {"deg", "degree", "degrees"},
	{"marks", "mark", "marks"},
	{"N", "newton", "newtons"}, {"kN", "kilonewton", "kilonewtons"}, {"lbf", "pound of force", "pounds of force"},
	{"MPa", "megapascal", "megapascals"}, {"GPa", "gigapascal", "gigapascals"}, {"HV", "Vickers", "Vickers"},
	{"10⁻⁶/K", "millionths per kelvin", "millionths per kelvin"}, {"1e-6/K", "millionths per kelvin",
		"millionths per kelvin"}, {"A²s", "ampere squared second", "ampere squared seconds"}, {"A2s",
		"ampere squared second", "ampere squared seconds"},
	{"mPa s", "millipascal second", "millipascal seconds"},
	{"ksi", "thousand pounds per square inch", "thousand pounds per square inch"},
	{"A", "amp", "amps"}, {"V", "volt", "volts"}, {"Hz", "hertz", "hertz"}, {"%", "per cent", "per cent"},
	{"ga", "gauge", "gauge"}, {"Ω·mm", "ohm millimetre", "ohm millimetres"}, {"ohm mm", "ohm millimetre",
		"ohm millimetres"},
}

// inUnit is a printed number with its unit in words.
func inUnit(number, sign string) string {
	if rest, ok := strings.CutPrefix(number, "-"); ok {
		number = "minus " + rest
	}
	if sign == "" || sign == "shade" { // the number of a filter follows the word "shade"
		return number
	}
	return number + " " + unitWord(sign, number == "1")
}

// powers are squares and cubes: the symbol, the digit typed for it, and the word before the unit's name.
var powers = [...][3]string{{"²", "2", "square "}, {"³", "3", "cubic "}}

// unitWord is a unit in words. A unit without words stays as it is.
func unitWord(sign string, one bool) string {
	if words := unitName(sign, one); words != "" {
		return words
	}
	return sign
}

func unitName(sign string, one bool) string {
	for i := range units {
		switch {
		case units[i].sign != sign:
		case one:
			return units[i].one
		default:
			return units[i].many
		}
	}
	if top, under, ok := strings.Cut(sign, "/"); ok {
		if top, under = unitName(top, one), unitName(under, true); top != "" && under != "" {
			return top + " per " + under
		}
		return ""
	}
	for _, p := range powers {
		if strings.Contains(sign, p[1]) { // mm3K is mm³K
			return unitName(strings.Replace(sign, p[1], p[0], 1), one)
		}
		if base, ok := strings.CutSuffix(sign, p[0]); ok && unitName(base, one) != "" {
			return p[2] + unitName(base, one)
		}
	}
	return ""
}

// unitPattern finds a unit after its number. A longer symbol is tried before a shorter one that it begins with.
var unitPattern = sync.OnceValue(func() *regexp.Regexp {
	signs := []string{"in/min", "in²", "in³"}
	for i := range units {
		if sign := units[i].sign; sign != "in" && sign != "1000 ft" && sign != "r" {
			signs = append(signs, regexp.QuoteMeta(sign))
		}
	}
	slices.SortFunc(signs, func(a, b string) int { return len(b) - len(a) })
	all := strings.Join(signs, "|")
	// After a whole number, "in" means inches only if no word follows: "72 in 100" is no length. After a decimal or a
	// fraction it also does before a word: ".5 in nozzle".
	return regexp.MustCompile(`(\d) ?(?:((?:r/min|(?:` + all + `)[²³23]?(?:/(?:1000 ft|in|(?:` + all + `)[²³23]?))?))` +
		`($|[^\pL\pN/²³°·])|(in)($|[),;:.]| \())|([./]\d+) in( \pL)`)
})

// unitsSpelled replaces the units after a number and a blank by words. A unit right after its number, such as 16ga, is
// something to type and stays; only symbols that nobody types are replaced there too.
func unitsSpelled(text string) string {
	return unitPattern().ReplaceAllStringFunc(text, func(s string) string {
		m := unitPattern().FindStringSubmatch(s)
		if m[6] != "" {
			return m[6] + " " + unitWord("in", true) + m[7]
		}
		sign, after := m[2]+m[4], m[3]+m[5]
		if s[1] != ' ' && !strings.HasPrefix(sign, "°") && sign != "%" {
			return s
		}
		return m[1] + " " + unitWord(sign, false) + after
	})
}
