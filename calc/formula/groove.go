package formula

import "math"

// GroovePasses is how many beads of an area, mm2, fill a V groove of an angle in degrees through a thickness, mm.
func GroovePasses(t, angle, bead float64) float64 {
	return math.Max(1, math.Ceil(t*t*math.Tan(angle/2*math.Pi/180)/bead-1e-9))
}
