package calc_test

import (
	"math"
	"testing"

	"brazebooth/tables"
)

// 15 USC 206, the United States standard gauge: ounces avoirdupois per square foot, gauges 7 to 30 (read). Iron
// of 480 lb/ft3 has 640 oz/ft2 per inch. The manufacturers' standard gauge keeps the weights and assumes steel
// of 41.82 lb/ft2 per inch (GNU units 2.22 definitions, read).
var lawOunces = []float64{120, 110, 100, 90, 80, 70, 60, 50, 45, 40, 36, 32, 28, 24, 22, 20, 18, 16, 14, 12, 11, 10,
	9, 8}

func TestUSStandardGauge(t *testing.T) {
	for i, oz := range lawOunces {
		in, _ := tables.GaugeThickness(7+i, tables.USSG)
		// Printed to four decimals; the printers rounded a final 5 up or down.
		check(t, at("%d", 7+i), in, oz/640, 0.5001e-4)
	}
}

func TestManufacturersStandardGauge(t *testing.T) {
	for i, oz := range lawOunces {
		in, _ := tables.GaugeThickness(7+i, tables.MSG)
		check(t, at("%d", 7+i), in, oz/16/41.82, 0.5001e-4)
	}
}

// ASTM B258: 0.005·92^((36−g)/39) in (read).
func TestBrownAndSharpe(t *testing.T) {
	for g := 7; g <= 30; g++ {
		in, _ := tables.GaugeThickness(g, tables.BS)
		check(t, at("%d", g), in, 0.005*math.Pow(92, float64(36-g)/39), 0.5001e-4)
	}
}
