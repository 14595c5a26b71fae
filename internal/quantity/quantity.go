// Package quantity parses the sizes, speeds and temperatures that a user types and prints them in
// both unit systems.
package quantity

import (
	"slices"
	"strings"
)

// Base units. Conversions from an inch unit to a metric one are exact where the definition is
// (inch, pound, foot, Celsius); the doc comment of each parser says so.
type (
	Length      float64 // mm
	Speed       float64 // mm/s
	Temperature float64 // C
	Current     float64 // A
	Voltage     float64 // V
	Flow        float64 // L/min
	Force       float64 // kN
	Duration    float64 // s
	Price       float64 // per kg, in the user's currency
)

// Size is a sheet thickness as typed: a gauge number, or a length where Gauge is 0.
type Size struct {
	Gauge  int
	Length Length
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

// Next is the system behind this one; metric behind the last and behind none.
func (s System) Next() System { return Systems[(slices.Index(Systems[:], s)+1)%len(Systems)] }

// FindSystem is the system that a hand names; false for a name of none.
func FindSystem(name string) (System, bool) {
	sys := System(strings.ToLower(name))
	if sys == "imperial" || sys == "us" {
		sys = Inch
	}
	return sys, slices.Contains(Systems[:], sys)
}
