// Package quantity reads the sizes, speeds and temperatures that a user types and prints them in both unit systems.
//
// Read, ParseSize and ParsePrice take text in any case, with or without blanks, with a comma or a point as decimal
// mark. They return the number in the field's base unit: mm, mm/s, °C, A, V, L/min, kN, s, %; a price is per kg, of gas
// per m3, of labour per hour; a time per length is in min/m. The error is *mistake.Error, with what to type instead.
// Rule says how a number without a unit is read. Inches, feet, pounds, pounds-force, cubic feet and degrees Fahrenheit
// convert by their exact definitions (NIST SP 811). A comma before three digits ("1,500") marks decimals or thousands,
// whichever the field's range allows; where it allows both, the text is refused.
package quantity

import (
	"slices"
	"strings"
)

// Size is a sheet thickness as typed: a gauge number, or a thickness where Gauge is 0.
type Size struct {
	Gauge int
	MM    float64
}

// System is the habit of units to print in.
type System string

// The systems.
const (
	Metric System = "metric"
	Inch   System = "inch"
	Both   System = "both"
)

// Systems are the systems in the order in which one key goes through them.
var Systems = [...]System{Metric, Inch, Both}

// Next is the system after this one; metric after the last and after none.
func (s System) Next() System { return Systems[(slices.Index(Systems[:], s)+1)%len(Systems)] }

// FindSystem is the system of a name; false for a name of none.
func FindSystem(name string) (System, bool) {
	sys := System(strings.ToLower(name))
	if sys == "imperial" || sys == "us" {
		sys = Inch
	}
	return sys, slices.Contains(Systems[:], sys)
}
