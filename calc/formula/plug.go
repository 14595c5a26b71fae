package formula

import "math"

// PlugVolume is the metal that fills a hole flush, mm3: π/4·d²·t. d and t in mm.
func PlugVolume(d, t float64) float64 { return math.Pi / 4 * d * d * t }
