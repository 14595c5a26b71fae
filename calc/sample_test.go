package calc

import (
	"math"
	"math/rand/v2"
	"testing"

	"brazebooth/calc/limit"
	"brazebooth/calc/section"
	"brazebooth/tables"
)

// A sampled chance, to check the card's chance against: everything uncertain at a setting is drawn at random, each over
// its own interval. It takes hundreds of sections where the card takes three.

// sampled counts how many samples meet every edge, %, at a job's own setting.
func sampled(t *testing.T, r *rand.Rand, j Job, samples int) float64 {
	t.Helper()
	c := card(t, j)
	b := newBoard(c)
	m, inputs, good := newMargins(b, c), b.varied(c), 0.0
	for range samples {
		z := make([]float64, len(inputs))
		for k := range z {
			z[k] = r.NormFloat64()
		}
		if s := b.sample(c, &m, inputs, z); s.good() {
			good++
		}
	}
	return 100 * good / float64(samples)
}

// varied is what a sample draws at random: an input of the board, the filler's stirring or the welder's aim.
type varied struct {
	input input
	name  string
}

// What is drawn beside the inputs.
const (
	drawnStir input = -1 - iota
	drawnAim
	drawnLiquid
	drawnWidth
	drawnSlow
	drawnFast
	drawnBand
)

// formsOf are the limits for which the model itself, or the hand, leaves something out, with how much.
var formsOf = map[input]struct {
	of    limit.Limit
	doubt tables.Datum
}{drawnWidth: {limit.Wets, tables.WetsDoubt}, drawnSlow: {limit.Slow, tables.SlowDoubt},
	drawnFast: {limit.Fast, tables.FastDoubt},
	drawnBand: {limit.Zinc, tables.ZincDoubt}}

// variedNames are names of inputs that differ between a list and a sentence.
var variedNames = map[input]string{inThick1: "first member's thickness", inThick2: "second member's thickness",
	inStick: "stick-out",
	inForm:  "what the energy balance leaves out of the current"}

// varied lists what a sample draws: each input with an open interval that the wire, the arc or the section depends on
// here, the stirring, and the aim where there are two members to aim between.
func (b *board) varied(card *Card) []varied {
	list := []varied{{drawnStir, "stirring of the liquid filler"}, {drawnWidth, "the section's width"},
		{drawnSlow, "slowest hand"}, {drawnFast, "fastest hand"}}
	if card.Used.ZincLimit.Set {
		list = append(list, varied{drawnBand, "the zinc's band"})
	}
	if !card.Setup.One {
		list = append(list, varied{drawnAim, "aim of the hand"})
	}
	if l := newLiquid(b, card); l.gap || l.position {
		list = append(list, varied{drawnLiquid, "what liquid bronze bridges and holds"})
	}
	for k := range inputCount {
		d := b.intervals[k]
		if d.low == d.high || !b.feels(card, k, d.low) && !b.feels(card, k, d.high) {
			continue
		}
		name := variedNames[k]
		if name == "" {
			name = inputNames[k].name
		}
		list = append(list, varied{k, name})
	}
	return list
}

// feels reports whether another value of an input changes anything that the limits use.
func (b *board) feels(card *Card, k input, v float64) bool {
	at := func(b *board) (section.Input, [outs]float64, error) {
		h := b.heatField(card)
		return h.fed(b.inputs[inFeed], b.inputs[inTravel])
	}
	c := *b
	c.inputs[k] = v
	in, o, err := at(b)
	in2, o2, err2 := at(&c)
	if err != nil || err2 != nil || in != in2 {
		return true
	}
	for i := range o {
		if o[i] != o2[i] && !(math.IsNaN(o[i]) && math.IsNaN(o2[i])) {
			return true
		}
	}
	return false
}

// sample is one point: its deviates and limits; where the model does not reach it is not known, and counts as not good.
type sample struct {
	z      []float64
	limits limit.All
	known  bool
}

func (s *sample) good() bool { return s.known && s.limits.Worst() >= 0 }

// sample moves the inputs by their deviates and computes every limit.
func (b *board) sample(card *Card, m *margins, inputs []varied, z []float64) sample {
	c, stir, aim, held := *b, tables.Stirring.V, 0.0, 0.0
	for i, in := range inputs {
		switch in.input {
		case drawnStir:
			stir = between(tables.Stirring, z[i])
		case drawnAim:
			aim = tables.HandAim.V / 2 * z[i]
		case drawnLiquid:
			held = z[i]
		case drawnWidth, drawnSlow, drawnFast, drawnBand: // below
		default:
			c.move(in.input, z[i])
		}
	}
	h := c.heatField(card)
	h.margins = *m
	h.in.Filler.Stir, h.in.Aim = stir, h.in.Aim+aim
	limits, err := h.limits(c.inputs[inFeed], c.inputs[inTravel], 1)
	if err != nil {
		return sample{z: z}
	}
	for _, at := range [...]limit.Limit{limit.Bridges, limit.Stays} {
		if limits[at] < limit.Far {
			limits[at] += held * m.liquid.doubt(at)
		}
	}
	for i, in := range inputs {
		if form, ok := formsOf[in.input]; ok && limits[form.of] < limit.Far {
			limits[form.of] += form.doubt.V * z[i]
		}
	}
	return sample{z, limits, true}
}

// move shifts an input by a standard normal deviate; two deviates are its interval's end.
func (b *board) move(k input, z float64) {
	d := b.intervals[k]
	b.inputs[k] = between(tables.Datum{V: b.inputs[k], Low: d.low, High: d.high}, z)
}

// between is a figure at a deviate: a half-normal to each side, in logarithms where it cannot be negative.
func between(d tables.Datum, z float64) float64 {
	edge := d.High
	if z < 0 {
		edge = d.Low
	}
	if !(d.Low > 0) || !(d.V > 0) {
		return d.V + math.Abs(z)/2*(edge-d.V)
	}
	return d.V * math.Exp(math.Abs(z)/2*math.Log(edge/d.V))
}
