package calc_test

import (
	"math"
	"testing"

	"brazebooth/calc"
)

func ln(v float64) float64 { return math.Log(v) }

// AWS Brazing Handbook (memory high), capillary lap: X = T·W/(C·L); 482.6 MPa, 1.27 mm, 172.4 MPa: 4.44 mm. Not for an
// arc-brazed fillet.
func TestCapillaryLap(t *testing.T) {
	check(t, "overlap", must(t)(calc.CapillaryLap(482.6, 1.27, 0.8, 172.4)), 4.44, 0.005)
}
