package limit

import "math"

// LastMet looks from a setting, where worst is here, toward the furthest end allowed, for the last value up to which
// worst is not negative. It goes there in steps of a Probe, so that it does not pass over a stretch in which a limit is
// missed; where the limits are nearly reached at both ends of a step it looks between them too. The value is found to
// about a three-hundredth of the limit.
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

// closeTo is how near to zero a limit is looked for: far less than the intervals of the figures behind it.
const closeTo = 0.003

// crossing is the last place found between one at which a limit is met and one at which it is not, logarithms. It uses
// false position, since limits are nearly straight. An end that stays gets half its weight; else it would stay for ever
// where the limit bends.
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
