// Package quantity reads the sizes, speeds and temperatures that a user types and prints them in both unit systems.
//
// Read, ParseSize and ParsePrice read text in any case, with or without blanks, with a comma or a point as decimal
// mark. They return the number in the field's base unit: mm, mm/s, °C, A, V, L/min, kN, s or %; prices are per kg, for
// gas per m3, for labour per hour; a time per length is in min/m. The error is *mistake.Error and says what to type
// instead. Rule says how a number without a unit is read. Inches, feet, pounds, pounds-force, cubic feet and degrees
// Fahrenheit convert by their exact definitions (NIST SP 811). A comma before three digits ("1,500") marks decimals or
// thousands, whichever the field's range allows; if it allows both, the text is refused.
package quantity

import (
	"slices"
	"strings"
)

// Size is a sheet thickness as typed: a gauge number, or a thickness if Gauge is 0.
type Size struct {
	Gauge int
	MM    float64
}

// System is the set of units to print in.
type System string

// The systems.
const (
	Metric System = "metric"
	Inch   System = "inch"
	Both   System = "both"
)

// Systems are the systems in the order in which one key steps through them.
var Systems = [...]System{Metric, Inch, Both}

// Next is the system after this one. Metric follows the last one and an unknown one.
func (s System) Next() System { return Systems[(slices.Index(Systems[:], s)+1)%len(Systems)] }

// FindSystem finds a system by its name; false if there is none.
func FindSystem(name string) (System, bool) {
	sys := System(strings.ToLower(name))
	if sys == "imperial" || sys == "us" {
		sys = Inch
	}
	return sys, slices.Contains(Systems[:], sys)
}
