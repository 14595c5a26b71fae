package calc

import (
	"context"
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"brazebooth/tables"
)

// Chance says how sure a setting is: a margin alone hides how unsure the model is.
type Chance struct {
	Good    float64 `json:"chance_good"` // % of the samples that stay in the good zone
	Spoiler string  `json:"spoiler"`     // the input that the bad samples share most, "" with none bad
	Samples int     `json:"samples"`
}

// chanceInputs are what the samples vary, each over its own 95 % band, and a hand's aim.
const chanceInputs = 9

var chanceNames = [chanceInputs]string{"arc efficiency", "arc's width", "stirring", "aim of the hand", "temperature at which the edge freezes",
	"first sheet's thickness", "second sheet's thickness", "wire diameter", "current by the energy balance"}

// chanceSamples is how many points of the fixed sequence are tried: twice over they change the result by
// a few per cent.
const chanceSamples = 64

// ChanceGood samples the inputs that carry the bands at a job's setting, with a fixed low-discrepancy
// sequence (Halton), and counts how many stay in the good zone. The job's feed and travel must be given;
// it takes some 64 sections. A job without a section has no chance: the zero Chance.
func ChanceGood(ctx context.Context, job Job) (Chance, error) {
	var card Card
	if err := resolve(job, &card); err != nil {
		return Chance{}, err
	}
	b := newBoard(&card)
	if b.notModelled(&card) != "" || !job.Travel.Set || !job.Feed.Set {
		return Chance{}, nil
	}
	m := newMargins(b, &card)
	var bad [chanceInputs]float64 // sums of the bad samples' deviates
	good := 0
	for i := range chanceSamples {
		if err := ctx.Err(); err != nil {
			return Chance{}, err
		}
		z := deviates(i)
		if b.sampleGood(&card, &m, &z) {
			good++
			continue
		}
		for k := range bad {
			bad[k] += z[k]
		}
	}
	c := Chance{Good: 100 * float64(good) / chanceSamples, Samples: chanceSamples}
	if good < chanceSamples {
		most := 0
		for k := range bad {
			if math.Abs(bad[k]) > math.Abs(bad[most]) {
				most = k
			}
		}
		c.Spoiler = chanceNames[most]
	}
	return c, nil
}

// deviates are the standard normal deviates of one point of the Halton sequence.
func deviates(i int) (z [chanceInputs]float64) {
	primes := [chanceInputs]int{2, 3, 5, 7, 11, 13, 17, 19, 23}
	normal := distuv.Normal{Sigma: 1}
	for k, p := range primes {
		u, f := 0.0, 1.0
		for n := i + 20; n > 0; n /= p { // the first points of the high bases lie on a line
			f /= float64(p)
			u += f * float64(n%p)
		}
		z[k] = normal.Quantile(u)
	}
	return z
}

// sampleGood moves the inputs by their deviates and reports whether the section stays good.
func (b *board) sampleGood(card *Card, m *margins, z *[chanceInputs]float64) bool {
	c := *b
	c.move(kEta, z[0])
	c.move(kSpread, z[1])
	c.move(kToe, z[4])
	c.move(kThick1, z[5])
	c.move(kThick2, z[6])
	c.move(kWire, z[7])
	c.move(kForm, z[8])
	h := c.heatField(card)
	h.in.Filler.Stir = between(tables.Stirring, z[2])
	h.in.Aim += tables.HandAim.V / 2 * z[3]
	s, err := h.at(c.knobs[kFeed], c.knobs[kTravel], false)
	if err != nil {
		return false
	}
	l := m.logs(&s)
	return zone(&l) == "good"
}

// move shifts a knob by a standard normal deviate, its band being two of them to each side.
func (b *board) move(k knob, z float64) {
	d := b.doubts[k]
	b.knobs[k] = between(tables.Datum{V: b.knobs[k], Low: d.low, High: d.high}, z)
}

// between is a figure at a deviate; a half-normal to each side, in logarithms so that nothing turns negative.
func between(d tables.Datum, z float64) float64 {
	if !(d.Low > 0) || !(d.V > 0) {
		return d.V
	}
	edge := d.High
	if z < 0 {
		edge = d.Low
	}
	return d.V * math.Exp(math.Abs(z)/2*math.Log(edge/d.V))
}
