package calc

import "math"

// adamsFactor is √(2πe) of Adams' peak-temperature equation.
var adamsFactor = math.Sqrt(2 * math.Pi * math.E)

// AdamsPeak returns the peak temperature in C at a distance y mm from the isotherm of tRef C, in sheet
// of thickness t mm heated by net J/mm from t0 C: 1/(Tp−T0) = √(2πe)·ρc·t·y/H + 1/(Tref−T0) (Adams;
// AWS Welding Handbook vol. 1). For a fast source in thin sheet. With y counted from the centreline the
// last term goes: tRef +Inf.
func AdamsPeak(net, t, rhoC, tRef, t0, y float64) (float64, error) {
	if err := positive([4]string{"net heat", "thickness", "heat capacity"}, net, t, rhoC); err != nil {
		return 0, err
	}
	if !(y >= 0) || !(tRef > t0) {
		return 0, outside("distance", y, "zero or more, from an isotherm above the start temperature")
	}
	inverse := adamsFactor*rhoC*t*y/net + 1/(tRef-t0)
	if inverse == 0 {
		return 0, outside("distance", y, "above zero where it counts from the centreline")
	}
	return t0 + 1/inverse, nil
}

// AdamsDistance is the inverse: how far from the isotherm of tRef the peak falls to tp, mm.
func AdamsDistance(net, t, rhoC, tRef, t0, tp float64) (float64, error) {
	if err := positive([4]string{"net heat", "thickness", "heat capacity"}, net, t, rhoC); err != nil {
		return 0, err
	}
	if !(tp > t0) || !(tRef >= tp) {
		return 0, outside("peak temperature", tp, "between the start temperature and the isotherm")
	}
	return (1/(tp-t0) - 1/(tRef-t0)) * net / (adamsFactor * rhoC * t), nil
}

// AdamsCorrection returns the exact thin peak over Adams' centreline form at u = v·y/2a: how much a slow
// source falls short of a fast one. It depends on u alone.
func AdamsCorrection(u float64) (float64, error) {
	if !(u > 0) || math.IsInf(u, 1) {
		return 0, outside("v·y/2a", u, "must be above zero")
	}
	// In units where 2k, ρc, thickness and y are 1 and the source gives 1 per length: v = u.
	peak, err := ThinPeak(u, u, 1, 0.5, 1, 1)
	if err != nil {
		return 0, err
	}
	return peak * adamsFactor, nil
}
