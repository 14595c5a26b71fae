package calc

import "math"

// CoolingRateThin and CoolingRateThick return the cooling rate on the bead's centreline at tc C, K/s
// (AWS Welding Handbook vol. 1). net J/mm, t mm, k W/mmK, rhoC J/mm3K, t0 start C.
func CoolingRateThin(net, t, k, rhoC, t0, tc float64) (float64, error) {
	if err := coolingInputs(net, k, t0, tc); err != nil {
		return 0, err
	}
	return 2 * math.Pi * k * rhoC * (t / net) * (t / net) * math.Pow(tc-t0, 3), nil
}

// CoolingRateThick is for a part thicker than the heat reaches; see CoolingRateThin.
func CoolingRateThick(net, k, t0, tc float64) (float64, error) {
	if err := coolingInputs(net, k, t0, tc); err != nil {
		return 0, err
	}
	return 2 * math.Pi * k * (tc - t0) * (tc - t0) / net, nil
}

func coolingInputs(net, k, t0, tc float64) error {
	if err := positive([4]string{"net heat", "conductivity"}, net, k); err != nil {
		return err
	}
	if !(tc > t0) {
		return outside("temperature", tc, "must be above the start temperature")
	}
	return nil
}

// RelativeThickness returns τ = t·√(ρc·(Tc−T0)/H): thick above 0.9, thin under 0.6 (AWS Welding Handbook
// vol. 1).
func RelativeThickness(net, t, rhoC, t0, tc float64) (float64, error) {
	if err := coolingInputs(net, rhoC, t0, tc); err != nil {
		return 0, err
	}
	return t * math.Sqrt(rhoC*(tc-t0)/net), nil
}

// SolidificationTime returns how long the weld metal takes to freeze, s: St = L·H/(2πkρc(Tm−T0)²), latent
// J/mm3 (AWS Welding Handbook vol. 1).
func SolidificationTime(net, latent, k, rhoC, t0, tm float64) (float64, error) {
	if err := coolingInputs(net, k, t0, tm); err != nil {
		return 0, err
	}
	return latent * net / (2 * math.Pi * k * rhoC * (tm - t0) * (tm - t0)), nil
}

// CoolingTime returns the time from 800 to 500 C, s, by EN 1011-2 Annex D: the larger of the three- and
// the two-dimensional time. net J/mm; t sheet mm; t0 start C, under 500; joint an id of tables. For
// unalloyed and low-alloy ferritic steels only.
func CoolingTime(net, t, t0 float64, joint string) (float64, error) {
	if err := positive([4]string{"net heat", "thickness"}, net, t); err != nil {
		return 0, err
	}
	if !(t0 < 500) {
		return 0, outside("start temperature", t0, "must be under 500 C")
	}
	f2, f3 := jointFactors(joint)
	q := net / 1000 // kJ/mm
	five, eight := 1/(500-t0), 1/(800-t0)
	space := (6700 - 5*t0) * q * (five - eight) * f3
	plane := (4300 - 4.3*t0) * 1e5 * q * q / (t * t) * (five*five - eight*eight) * f2
	return max(space, plane), nil
}

// jointFactors are F2 and F3 of EN 1011-2 Annex D, Table D.1.
func jointFactors(joint string) (f2, f3 float64) {
	switch joint {
	case "butt":
		return 0.9, 0.9
	case "corner":
		return 0.9, 0.67
	case "lap", "tee":
		return 0.45, 0.67
	}
	return 1, 1 // a bead on sheet
}
