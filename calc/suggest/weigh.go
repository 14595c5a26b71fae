package suggest

import (
	"math"
	"slices"

	"brazebooth/tables"
)

// heats are the three deviations at which the heat is tried, in doubts, with their weights: Gauss-Hermite
// quadrature, exact to the fifth power of the heat's logarithm.
var heats = [3]struct{ z, weight float64 }{{-math.Sqrt(3), 1.0 / 6}, {0, 2.0 / 3}, {math.Sqrt(3), 1.0 / 6}}

// The price of heat and of a travel off the hand's middle in the objective, and how fast the weights of the two means
// fall: chosen by trials over joints of 0.6 to 3 mm. Higher prices cost chance; faster weights let the place jump.
const (
	heatPrice  = 0.06
	handPrice  = 0.06
	feedSoft   = 0.06
	travelSoft = 0.13
)

// meltingPrice is the price of heat where the base melts with every bead that wets: some 6 in 100 of the chance
// are given up for a colder setting. Chosen by trials on grey iron and copper.
const meltingPrice = 1

func (p *Problem) heatPrice() float64 {
	if p.Melting {
		return meltingPrice
	}
	return heatPrice
}

// Factors are the factors on the heat at the three deviations; doubt is the standard deviation of its
// logarithm.
func Factors(doubt float64) (f [3]float64) {
	for k := range heats {
		f[k] = math.Exp(heats[k].z * doubt)
	}
	return f
}

// Chance is the chance that a setting meets every edge and that a hand holds its travel, mm/s; margins at the
// three heats, doubts of each edge.
func Chance(margins [3][]float64, doubts []float64, hand Range, travel float64) float64 {
	held, _ := hand.hand(travel)
	return math.Exp(LogChance(margins, doubts) + held)
}

// lnPhi is the logarithm of the cumulative normal distribution, even where the distribution itself underflows.
func lnPhi(x float64) float64 {
	switch {
	case x > 9: // less than 1e-18
		return 0
	case x > 0:
		return math.Log1p(-math.Erfc(x/math.Sqrt2) / 2)
	case x > -30:
		return math.Log(math.Erfc(-x/math.Sqrt2) / 2)
	}
	y := 1 / (x * x) // asymptotic series; the next term is 1e-10 of it
	return -x*x/2 - math.Log(-x*math.Sqrt(2*math.Pi)) + math.Log1p(-y+3*y*y-15*y*y*y)
}

// LogChance is the logarithm of the chance that a setting meets every edge; margins at the three heats, doubts
// of each edge.
func LogChance(margins [3][]float64, doubts []float64) float64 {
	var sum [3]float64
	for k := range heats {
		sum[k] = math.Log(heats[k].weight)
		for i, m := range margins[k] {
			sum[k] += lnPhi(m / doubts[i])
		}
	}
	top, all := slices.Max(sum[:]), 0.0
	for _, v := range sum {
		all += math.Exp(v - top)
	}
	return top + math.Log(all)
}

// hand is the rating of a travel, mm/s, by itself: the logarithm of the chance that a hand holds it, and its
// squared distance from the middle, which is 1 at an end.
func (r Range) hand(travel float64) (chance, off float64) {
	slow, fast := math.Log(travel/r.Low), math.Log(r.High/travel)
	u := (slow - fast) / math.Log(r.High/r.Low)
	return lnPhi(slow/tables.SlowDoubt.V) + lnPhi(fast/tables.FastDoubt.V), u * u
}

// Where even the best setting has little chance, its rivals differ by more than the softness although none is
// good: a sharp weight would jump from one to another as the job changes. So the weights fall more slowly the
// worse the best setting is. worthwhile is a chance of a third; both were chosen by trials on laps of 1 to 12
// mm.
const (
	worthwhile = -1.1
	widens     = 4
)

// widened is the softness for these logarithms of the chances.
func widened(soft float64, chances []float64) float64 {
	if short := worthwhile - slices.Max(chances); short > 0 {
		soft *= 1 + widens*short*short/(1+short)
	}
	return soft
}

// mean is the mean of x weighted by exp(value/soft) over evenly spaced places.
func mean(x, value []float64, soft float64) float64 {
	top := slices.Max(value)
	sum, all := 0.0, 0.0
	for i, v := range value {
		w := math.Exp((v - top) / soft)
		if i == 0 || i == len(value)-1 {
			w /= 2 // the trapezoidal rule: half a step belongs to an end
		}
		sum, all = sum+w*x[i], all+w
	}
	return sum / all
}
