package formula

import (
	"math"

	"brazebooth/tables"
)

// BeadPitch returns the distance between beads, mm, by the tangent model (Ding 2015) and by the flat-top model
// (Suryakumar 2011), both from memory with high confidence, for a bead's width in mm.
func BeadPitch(width float64) (tangent, flat float64) {
	return tables.PitchTangent.V * width, tables.PitchFlat.V * width
}

// ShaftSpeed returns the turns a minute at which the surface of a shaft of this diameter, mm, moves at v, mm/s.
func ShaftSpeed(v, diameter float64) (float64, error) {
	if err := Positive([7]string{"travel", "diameter"}, v, diameter); err != nil {
		return 0, err
	}
	return 60 * v / (math.Pi * diameter), nil
}
