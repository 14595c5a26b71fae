package calc

import "math"

// FastPeak returns the peak rise in K and its time in s at a distance y mm beside a line that got net
// J/mm at once, in sheet of thickness t mm that loses heat from both faces together in W/m2K:
// rise = (H/d)/√(4πkρct)·exp(−y²/4at − t/τ), τ = ρct/loss. A source that travels much faster than heat
// spreads looks like this from the side; at 8 mm/s in steel sheet the half-widths of a zinc band come
// out within about a tenth.
func FastPeak(net, t, rhoC, k, loss, y float64) (rise, when float64, err error) {
	if err := positive([4]string{"net heat", "thickness", "heat capacity", "conductivity"}, net, t, rhoC, k); err != nil {
		return 0, 0, err
	}
	if !(y > 0) || !(loss >= 0) || math.IsInf(y+loss, 1) {
		return 0, 0, outside("distance", y, "must be above zero, with no negative loss")
	}
	when = y * y * rhoC / (2 * k) // without loss
	decay := loss * 1e-6 / (rhoC * t)
	if decay > 0 {
		// (τ/2)(√(1/4 + y²/aτ) − 1/2), in a form that keeps its digits when decay is small.
		s := y * y * rhoC / k * decay
		when = y * y * rhoC / (2 * k) / (0.5 + math.Sqrt(0.25+s))
	}
	return fastRise(net, t, rhoC, k, decay, y, when), when, nil
}

func fastRise(net, t, rhoC, k, decay, y, when float64) float64 {
	return net / t / math.Sqrt(4*math.Pi*k*rhoC*when) * math.Exp(-y*y*rhoC/(4*k*when)-decay*when)
}

// FastHalfWidth returns the distance beside the line up to which the peak rise reaches rise K, mm.
// Arguments as FastPeak.
//
// The peak's time gives both: at a peak y² = a·τ·(4s² + 2s) with s = time/τ, where the rise is
// (H/d)/√(4πkρc·time)·exp(−½ − 2s). That is one equation in the time, convex in its logarithm, and
// Newton's rule on it needs three or four steps from the answer without loss, which lies above.
func FastHalfWidth(net, t, rhoC, k, loss, rise float64) (float64, error) {
	if err := positive([4]string{"net heat", "thickness", "heat capacity", "conductivity"}, net, t, rhoC, k); err != nil {
		return 0, err
	}
	if !(rise > 0) || !(loss >= 0) || math.IsInf(rise+loss, 1) {
		return 0, outside("rise", rise, "must be above zero, with no negative loss")
	}
	decay := loss * 1e-6 / (rhoC * t) // 1/τ, 1/s
	root := net / t / rise
	still := root * root / (4 * math.Pi * k * rhoC) / math.E // time of the peak without loss, s
	// x = ln(time): f(x) = ½(x − ln still) + 2·decay·e^x = 0, and f' = ½ + 2·decay·e^x.
	x := math.Log(still)
	first := x
	for range 60 {
		drag := 2 * decay * math.Exp(x)
		step := (0.5*(x-first) + drag) / (0.5 + drag)
		x -= step
		if math.Abs(step) < 1e-14 {
			break
		}
	}
	when := math.Exp(x)
	y := math.Sqrt(k / rhoC * (4*decay*when*when + 2*when))
	if math.IsNaN(y) || math.IsInf(y, 0) {
		return 0, outside("rise", rise, "too far from what this heat can do")
	}
	return y, nil
}
