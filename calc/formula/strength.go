package formula

import (
	"math"

	"brazebooth/tables"
)

// Predictive returns the median of a small lognormal sample and the 95 % interval of the next value: the mean
// of the logarithms ± Student's t times their standard deviation times √(1 + 1/n). At least two values, all
// above zero.
func Predictive(sample []float64) (median, low, high float64, err error) {
	n := float64(len(sample))
	if n < 2 {
		return 0, 0, 0, Outside("sample", n, "at least two values")
	}
	logs := make([]float64, len(sample))
	for i, v := range sample {
		if !(v > 0) {
			return 0, 0, 0, Outside("sample", v, "values above zero")
		}
		logs[i] = math.Log(v)
	}
	mean, s := meanAndDeviation(logs)
	half := studentsT(0.975, n-1) * s * math.Sqrt(1+1/n)
	return math.Exp(mean), math.Exp(mean - half), math.Exp(mean + half), nil
}

// FilletStress returns F/(a·L) of the published fillet tests that failed in the throat, or in the bond, MPa.
func FilletStress(bond bool) []float64 {
	var list []float64
	for _, t := range tables.FilletTests {
		if t.Bond == bond {
			list = append(list, t.Force*1000/(t.Throat*t.Length))
		}
	}
	return list
}

// FaceStress returns the stress, MPa, on the wetted face of the published fillets that failed in the bond:
// F/(l·L), because an equal-legged fillet of throat a has a leg l = a·√2 on each member.
func FaceStress() []float64 {
	list := FilletStress(true)
	for i := range list {
		list[i] /= math.Sqrt2
	}
	return list
}

// LegThroat returns the throat of an equal-legged fillet, mm: 0.707 of the leg.
func LegThroat(leg float64) float64 { return leg * math.Sqrt2 / 2 }

// PlugHole returns the smallest and the largest hole of a plug in sheet of thickness t, mm: t + 8, and 3 mm
// more or 2.25 times the depth, whichever is larger. Source: AWS D1.1 and AISC as restated, read.
func PlugHole(t float64) (least, most float64) {
	least = t + tables.PlugHoleOverSheet.V
	return least, max(least+tables.PlugHoleSpan.V, tables.PlugHolePerDepth.V*t)
}
