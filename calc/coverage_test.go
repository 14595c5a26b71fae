package calc

import (
	"math"
	"math/rand/v2"
	"testing"

	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// tally is how many outcomes of a figure lay in its band.
type tally struct{ in, below, above int }

func (c *tally) count(v, low, high float64) {
	const round = 1e-9
	switch {
	case v < low*(1-round):
		c.below++
	case v > high*(1+round):
		c.above++
	default:
		c.in++
	}
}

func (c *tally) all() int { return c.in + c.below + c.above }

// coverageJob is a random job of the shop.
func coverageJob(r *rand.Rand) Job {
	pick := func(list ...string) string { return list[r.IntN(len(list))] }
	j := Job{Metal: pick("mild-steel", "galvanized", "stainless-304", "dp600", "copper"),
		Joint: pick("lap", "tee", "butt", "corner"), Thickness: Some(0.6 + 1.9*r.Float64()), Mode: pick("dip", "dip",
			"pulsed")}
	if r.IntN(3) == 0 {
		j.Thickness2 = Some(j.Thickness.V * (0.7 + 0.8*r.Float64()))
		j.Metal2 = j.Metal
	}
	return j
}

// The 95 % band of each figure holds 93 to 98 of 100 outcomes when everything uncertain is drawn from its interval.
func TestBandsHoldTheirShare(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("a card and sections for each of many jobs")
	}
	r := deep.Rand(t)
	tallies := map[string]*tally{}
	count := func(name string, v, low, high float64) {
		if !(low < high) || math.IsNaN(v) {
			return
		}
		if tallies[name] == nil {
			tallies[name] = new(tally)
		}
		tallies[name].count(v, low, high)
	}
	for range deep.Many(14, 2000) {
		card, err := Solve(coverageJob(r))
		if err != nil {
			continue
		}
		at := Laid(&card)
		if card, err = Solve(at); err != nil {
			continue
		}
		drawOutcomes(t, r, &card, count)
	}
	for name, c := range tallies {
		n := float64(c.all())
		noise := 3 * math.Sqrt(0.95*0.05/n) // three standard errors of a share of 95 %
		if share := float64(c.in) / n; share < 0.93-noise || share > 0.98+noise {
			t.Errorf("%s: %.1f %% of %d outcomes lie in its band", name, 100*share, c.all())
		}
		t.Logf("%-26s %5d: %5.1f %% in, %4.1f %% below, %4.1f %% above", name, c.all(),
			100*float64(c.in)/float64(c.all()),
			100*float64(c.below)/float64(c.all()), 100*float64(c.above)/float64(c.all()))
	}
}

// drawOutcomes draws everything uncertain of a laid job a few times.
func drawOutcomes(t *testing.T, r *rand.Rand, card *Card, count func(name string, v, low, high float64)) {
	b := newBoard(card)
	var s spread
	if err := b.chain.propagate(&b.inputs, &b.intervals, &s); err != nil {
		t.Fatal(err)
	}
	const draws, sections = 20, 4
	for n := range draws {
		c := *b
		for k := range inputCount {
			if c.intervals[k].low != c.intervals[k].high {
				c.move(k, r.NormFloat64())
			}
		}
		var o [outs]float64
		if c.chain.eval(&c.inputs, &o) != nil {
			continue
		}
		for _, list := range [][]figureSpec{settingSpecs[:], resultSpecs[:]} {
			for i := range list {
				spec := &list[i]
				if f, ok := card.Figure(spec.name); ok && f.Basis.Source != SectionSource && s.value[spec.out] > 0 {
					count(spec.name, o[spec.out], s.low[spec.out], s.high[spec.out])
				}
			}
		}
		if n < sections && b.notModelled(card) == "" {
			drawSection(r, &c, card, count)
		}
	}
}

// drawSection draws the model's own errors and reads the figures of the section.
func drawSection(r *rand.Rand, c *board, card *Card, count func(name string, v, low, high float64)) {
	h := c.heatField(card)
	st, err := h.at(c.inputs[inFeed], c.inputs[inTravel], false)
	if err != nil {
		return
	}
	l := sectionList{b: c, card: card, v: &verdict{field: h}}
	l.v.variants.at = variant{st, h.in.Thick}
	one := l.widthDoubt()
	whole := between(tables.SectionTotal, r.NormFloat64())
	rest := tables.Datum{V: 1, Low: apart(one.Low, tables.SectionTotal.Low), High: apart(one.High,
		tables.SectionTotal.High)}
	share := between(rest, r.NormFloat64())
	x := l.reshaped(whole*share, whole/share, 1)
	read := func(name string, v float64) {
		if f, ok := card.Figure(name); ok {
			count(name, v, f.Low, f.High)
		}
	}
	read("wetted_width_1", x.wet[0])
	if !card.Setup.One {
		read("wetted_width_2", x.wet[1])
	}
	if x.bridged {
		read("bead_width", x.toes.Chord)
		read("wetting_angle", min(180, max(0, x.toes.Larger()*180/math.Pi)))
		if throatFormula[card.Used.Joint] != "" {
			read("throat", throat(card.Used.Joint, card.Used.Gap.V, between(tables.RootGrows, r.NormFloat64()), x))
		}
	} else {
		read("wetting_angle", 180)
	}
	d := tables.SectionRiseEnding
	start := c.inputs[inRoom]
	read("base_peak_temperature", start+(max(st.skin[0], st.skin[1])-start)*between(d, r.NormFloat64()))
}

// apart is the part of one factor beyond another, as the root of a difference of squares.
func apart(one, total float64) float64 {
	a, b := math.Log(one), math.Log(total)
	return math.Exp(math.Copysign(math.Sqrt(max(0, a*a-b*b)), a))
}
