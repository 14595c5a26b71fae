package formula

import "math"

// SoakThrough returns how long a part must be heated on one face until its far face follows, s: 0.4·t²/a. By
// then, heat laid on one face has reached the far one except for 2·e^(−0.4π²) = 4 %. t mm that the heat must
// cross, or a width along which it must spread; k W/mmK; rhoC J/mm3K. Source: Carslaw and Jaeger 3.8 and 14.10
// (memory high).
func SoakThrough(t, k, rhoC float64) (float64, error) {
	if err := Positive([7]string{"thickness", "conductivity", "heat capacity"}, t, k, rhoC); err != nil {
		return 0, err
	}
	const fourier = 0.4
	return fourier * t * t * rhoC / k, nil
}

// StripRise returns how much hotter a strip of finite width gets at a moving source than an endless plate, K:
// the source's images in its two edges, f·P/(πkd)·Σ K0(v·n·B/2a). power W; travel mm/s; k W/mmK; rhoC J/mm3K; d
// mm; width mm. f is the share of it that arrives at the peak, 0.75 ± 0.2 against a three-dimensional
// reference; 1 for a thin plate. Source: images of Rosenthal's thin source.
func StripRise(power, travel, k, rhoC, d, width, f float64) (float64, error) {
	if err := Positive([7]string{"power", "travel", "conductivity", "heat capacity", "thickness", "width",
		"share of the images"}, power, travel, k, rhoC, d, width, f); err != nil {
		return 0, err
	}
	x := travel * width * rhoC / (2 * k)
	if x < 1e-4 {
		return 0, Outside("width", width, "so narrow a strip warms up as a whole: no field stands in it")
	}
	sum := 0.0
	for n := 1.0; n*x < 40; n++ {
		k0, _ := besselK(n * x)
		sum += k0 * math.Exp(-n*x)
	}
	return f * power / (math.Pi * k * d) * sum, nil
}

// PartTemperature returns the temperature of a whole part after t s, C, if the heat spreads through it as fast
// as it comes: T_air + (T0 − T_air)·e^(−t/τ) + P/hS·(1 − e^(−t/τ)), τ = ρcV/hS. air and start C; power W, 0
// while it cools; loss W/m2K; surface mm2; volume mm3; rhoC J/mm3K.
func PartTemperature(air, start, power, loss, surface, volume, rhoC, t float64) (float64, error) {
	if err := Positive([7]string{"surface", "volume", "heat capacity"}, surface, volume, rhoC); err != nil {
		return 0, err
	}
	for _, v := range [...]struct {
		name string
		v    float64
	}{{"power", power}, {"loss", loss}, {"time", t}} {
		if !(v.v >= 0) || math.IsInf(v.v, 1) {
			return 0, Outside(v.name, v.v, "must be zero or more")
		}
	}
	if math.IsNaN(air-start) || math.IsInf(air-start, 0) {
		return 0, Outside("temperature", start, "must be a number")
	}
	capacity, gone := rhoC*volume, loss*1e-6*surface // J/K, W/K
	share := -math.Expm1(-t * gone / capacity)
	rise := power * t / capacity // without losses
	if gone*t > 1e-9*capacity {
		rise = power / gone * share
	}
	return start + (air-start)*share + rise, nil
}

// SeamStart returns the length at the start of a seam in a cold part that stays colder than the rest, mm: about
// 4a/v. travel mm/s; k W/mmK; rhoC J/mm3K. In copper at 8 mm/s it wets 5 % less there.
func SeamStart(travel, k, rhoC float64) (float64, error) {
	if err := Positive([7]string{"travel", "conductivity", "heat capacity"}, travel, k, rhoC); err != nil {
		return 0, err
	}
	return 4 * k / (rhoC * travel), nil
}
