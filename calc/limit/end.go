package limit

import "math"

// LastMet searches from a setting toward the value most, which may be above or below it, and returns the last value up
// to which worst is not negative. here is worst(from); if it is negative, LastMet returns from. The search goes in
// steps of a Probe, so that it does not pass over a range in which a limit is missed; if the limits are nearly reached
// at both ends of a step, it looks in between too. The value is exact to about a three-hundredth of the limit. worst
// may return NaN, which counts as missed.
func LastMet(from, here, most float64, worst func(float64) float64) float64 {
	if !(here >= 0) || from == most {
		return from
	}
	const nearly, least = 0.04, Probe / 4 // of a limit, and of a setting, both logarithms
	at := func(x float64) float64 {
		if f := worst(from * math.Exp(x)); f > -1 {
			return f
		}
		return -1 // NaN is no answer either
	}
	end := math.Log(most / from)
	in, fIn := 0.0, here // from itself stays what it is to the last bit
	for step := Probe; ; {
		out := end
		if math.Abs(end-in) > step {
			out = in + math.Copysign(step, end)
		}
		f := at(out)
		switch {
		case f < 0:
			return from * math.Exp(crossing(in, fIn, out, f, at))
		case max(fIn, f) < nearly && math.Abs(out-in) > least:
			step = math.Abs(out-in) / 2
			continue
		case out == end || f < closeTo:
			return from * math.Exp(out)
		}
		in, fIn, step = out, f, Probe
	}
}

// closeTo is how near to zero a limit counts as found: far less than the intervals of the figures behind it.
const closeTo = 0.003

// crossing is the last place, a logarithm, at which a limit is met, between a place where it is met and one where it is
// not. It uses false position, because limits are nearly straight. An end that stays gets half its weight; otherwise it
// would stay for ever where the limit bends.
func crossing(in, fIn, out, fOut float64, at func(float64) float64) float64 {
	for f := math.NaN(); !(f >= 0 && f < closeTo || math.Abs(out-in) < closeTo); {
		x := in + (out-in)*max(0.05, min(0.95, fIn/(fIn-fOut)-0.01))
		if f = at(x); f >= 0 {
			in, fIn, fOut = x, f, fOut/2
		} else {
			out, fIn, fOut = x, fIn/2, f
		}
	}
	return in
}
