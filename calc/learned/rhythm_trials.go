package learned

import (
	"math"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// Ends are the ends of a timed arc's times as computed, s.
type Ends struct {
	OnMin, OnMax, OffMin, OffMax float64
	Power                        float64 // one standard deviation of the logarithm of the power
}

// SpotTrial is a seam of spots that was laid and judged, with the computed ends of its times.
type SpotTrial struct {
	Ends    Ends
	On, Off float64 // s; Off is 0 if it was not given
	Seen    string  // ids of tables.Sights with commas
}

// RhythmOf finds stirring, spread and power on a grid over their logarithms, with normal priors. The likelihood of a
// trial at a point of the grid is how often the causes there lead to its look; a look that causes other than heat
// explain changes hardly anything. key names the filler and wire of the trials.
func RhythmOf(list []SpotTrial, key string) Rhythm {
	if len(list) == 0 {
		return Rhythm{}
	}
	power := list[0].Ends.Power
	for i := range list {
		power = min(power, list[i].Ends.Power)
	}
	sigma := [3]float64{tables.StirringSigma.V, math.Log(tables.ArcWidth.High/tables.ArcWidth.Low) / 4, power}
	points, weights := rhythmGrid(sigma)
	for i := range list {
		shows := list[i].shows()
		for n := range points {
			weights[n] *= shows(&points[n])
		}
		formula.Normalize(weights)
	}
	r := Rhythm{Trials: len(list), For: key}
	var mean [3]float64
	for n, w := range weights {
		for i := range mean {
			mean[i] += w * points[n][i]
		}
	}
	for n, w := range weights {
		for i := range mean {
			for k := range i + 1 {
				r.Cov[i*(i+1)/2+k] += w * (points[n][i] - mean[i]) * (points[n][k] - mean[k])
			}
		}
	}
	r.Stir, r.Spread = tables.Stirring.V*math.Exp(mean[0]), tables.ArcWidth.V*math.Exp(mean[1])
	r.Power = math.Exp(mean[2])
	return r
}

// rhythmGrid is the grid over the three logarithms with its normal prior.
func rhythmGrid(sigma [3]float64) (points [][3]float64, weights []float64) {
	const n, reach = 11, 3.0
	at := func(i int) float64 { return reach * (2*float64(i)/(n-1) - 1) }
	for i := range n * n * n {
		z := [3]float64{at(i / n / n), at(i / n % n), at(i % n)}
		points = append(points, [3]float64{z[0] * sigma[0], z[1] * sigma[1], z[2] * sigma[2]})
		weights = append(weights, math.Exp(-(z[0]*z[0]+z[1]*z[1]+z[2]*z[2])/2))
	}
	formula.Normalize(weights)
	return points, weights
}

// shows returns the probability of a trial's look at a point of the three logarithms.
func (t *SpotTrial) shows() func(at *[3]float64) float64 {
	var share [5]float64
	for i, cause := range [...]string{tables.CauseOnShort, tables.CauseOnLong, tables.CauseOffShort,
		tables.CauseOffLong, tables.CauseFine} {
		share[i] = tables.ShareAllSeen(t.Seen, cause)
	}
	other := otherCauses(t.Seen)
	return func(at *[3]float64) float64 {
		p, sum := t.causes(at), 0.0
		mean := 0.0
		for i, v := range p {
			mean += v * share[i]
			sum += v
		}
		return mean/sum + other
	}
}

// causes are the probabilities of each cause at a point: on too short or too long, off too short or too long, none.
func (t *SpotTrial) causes(at *[3]float64) [5]float64 {
	over := func(x float64) float64 { return math.Erfc(-x/tables.RhythmDoubt.V/math.Sqrt2) / 2 }
	var end [4]float64
	for i, v := range [...]float64{t.Ends.OnMin, t.Ends.OnMax, t.Ends.OffMin, t.Ends.OffMax} {
		s := slopes(i)
		end[i] = math.Log(v) + s[0]*at[0] + s[1]*at[1] + s[2]*at[2]
	}
	on := math.Log(t.On)
	p := [5]float64{over(end[0] - on), over(on - end[1])}
	if t.Off > 0 {
		off := math.Log(t.Off)
		p[2], p[3] = over(end[2]-off), over(off-end[3])
	}
	p[4] = (1 - p[0]) * (1 - p[1]) * (1 - p[2]) * (1 - p[3])
	return p
}

// otherCauses is the probability of a look from causes other than heat.
func otherCauses(seen string) (p float64) {
	for _, c := range tables.Causes {
		if c.Base > 0 && c.Base < 1 {
			p += c.Base * tables.ShareAllSeen(seen, c.ID)
		}
	}
	return p
}
