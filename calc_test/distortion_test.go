package calc_test

import (
	"math"
	"testing"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// The pull along a seam in steel by three authors (memory medium): White and Leggatt 0.20 kN for each J/mm,
// Terasaki 0.235, Okerblom's formula with handbook values of steel (E 206 GPa, 12e-6/K, 4.8e-3 J/mm3K) 0.173.
// The published ones lie inside the band that the program shows.
func TestShrinkageForce(t *testing.T) {
	ok := must(t)
	check(t, "Okerblom", ok(formula.ShrinkageForce(1, 206, 12, 4.8e-3, 0.335)), 172.525, 5e-4)
	s, d := tables.Shrinkers[0], tables.ShrinkageForce
	steel := func(share float64) float64 {
		return ok(formula.ShrinkageForce(1, s.Modulus.V, s.Expansion.V, tables.Metals[0].HeatCapacity.V, share))
	}
	between(t, "White and Leggatt", 200, steel(d.Low), steel(d.High))
	between(t, "Terasaki", 235, steel(d.Low), steel(d.High))
}

// EN 1993-1-5 (memory high): elastic critical stress 190000·(t/b)² MPa times k, k 4 for a plate held at both edges and
// 0.43 for an outstand.
func TestPlateBuckling(t *testing.T) {
	ok := must(t)
	for _, thick := range []float64{0.8, 2, 6} {
		pull := 10000.0
		b := ok(formula.FlatWidth(pull, thick, 210, 0.3, tables.PlateHeld.V))
		stress := pull / (2 * b * thick)
		check(t, at("%g mm, k", thick), stress/(190000*math.Pow(thick/b, 2)), 4, 0.01) // 190000 is rounded from 189800
	}
	between(t, "outstand", tables.PlateFree.V, 0.42, 0.43)
}
