package hang

import (
	"math"

	"brazebooth/tables"
)

// Backed is the widest gap, mm, of a root on a bar or strip: twice the arc's standard deviation, mm. Over a
// wider gap the arc reaches too little of both edges.
func Backed(arcWidth float64) float64 { return 2 * arcWidth }

// backedDoubt is the doubt of the arc's width.
func backedDoubt() float64 {
	return math.Log(tables.ArcWidth.High/tables.ArcWidth.Low) / (2 * 1.96)
}
