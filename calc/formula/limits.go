package formula

import (
	"math"

	"brazebooth/tables"
)

// DipFloor returns the current in A below which the short arc of a wire of diameter d mm gets unsteady, for 0.4
// to 3.2 mm: interpolated between the rows of tables.DipFloors, and on the slope of the two outermost rows
// beyond them. It returns ErrRange outside that range.
func DipFloor(d float64) (float64, error) { return ampsByWire(tables.DipFloors[:], d) }

// SprayTransition returns the current in A above which bronze wire of diameter d mm sprays in argon, in the
// same way from tables.SprayTransitions.
func SprayTransition(d float64) (float64, error) { return ampsByWire(tables.SprayTransitions[:], d) }

// ampsByWire interpolates in the logarithms of diameter and current: both limits are about a power of the
// diameter, and a power never crosses zero.
func ampsByWire(rows []tables.WireAmps, d float64) (float64, error) {
	if !(d >= 0.4 && d <= 3.2) {
		return 0, Outside("wire diameter", d, "from 0.4 to 3.2 mm")
	}
	i := 0
	for i < len(rows)-2 && d > rows[i+1].Wire {
		i++
	}
	a, b := rows[i], rows[i+1]
	power := math.Log(b.Amps.V/a.Amps.V) / math.Log(b.Wire/a.Wire)
	return a.Amps.V * math.Pow(d/a.Wire, power), nil
}
