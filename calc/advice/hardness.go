package advice

import (
	"math"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// composition is the typical composition of a steel.
func composition(s *tables.HardeningSteel) formula.Steel {
	return formula.Steel{C: s.C.V, Si: s.Si.V, Mn: s.Mn.V, Cr: s.Cr.V}
}

// hardnessOf is the hardness of the metal that turned to austenite, with its interval. Each element and the
// time are put at both ends of their bands; the changes, the formulas' disagreement and what both leave out are
// joined by root-sum-square.
func hardnessOf(steel *tables.HardeningSteel, time calc.Figure) (ends, bool) {
	s := composition(steel)
	mid, apart, ok := meanHardness(steel, s, time.Value)
	if !ok {
		return ends{}, false
	}
	moved := calc.Sides{Down: math.Hypot(tables.HardnessForm.Low, apart),
		Up: math.Hypot(tables.HardnessForm.High, apart)}
	join := func(s formula.Steel, t float64) {
		if h, _, ok := meanHardness(steel, s, t); ok {
			moved.Add(h - mid)
		}
	}
	for _, e := range [...]struct {
		band  tables.Datum
		share *float64
	}{{steel.C, &s.C}, {steel.Si, &s.Si}, {steel.Mn, &s.Mn}, {steel.Cr, &s.Cr}} {
		for _, v := range [2]float64{e.band.Low, e.band.High} {
			*e.share = v
			join(s, time.Value)
		}
		*e.share = e.band.V
	}
	join(s, time.Low)
	join(s, time.High)
	return ends{mid - moved.Down, mid, mid + moved.Up}, true
}

// meanHardness is the mean of both formulas and half the distance between them, HV. Boron steel that cools fast
// enough is martensite throughout; slower than that ok is false, because the formulas do not cover boron.
func meanHardness(steel *tables.HardeningSteel, s formula.Steel, t float64) (mean, apart float64, ok bool) {
	if steel.Boron {
		h, err := formula.HardnessMartensite(s)
		return h, 0, err == nil && t <= tables.BoronMartensite.V
	}
	a, err := formula.HardnessYurioka(s, t)
	b, err2 := formula.HardnessDuren(s, t)
	return (a + b) / 2, math.Abs(a-b) / 2, err == nil && err2 == nil
}
