package calc

import (
	"math"

	"brazebooth/calc/section"
	"brazebooth/internal/crew"
)

// variant is the section with one thing changed.
type variant struct {
	heatState
	thick [2]float64 // mm
}

// variants are the section at a setting with one thing changed at a time: the heat to both ends of its interval, the
// temperature at which the toe freezes to the further end of its own, each member's thickness and its heat capacity.
//
// The conductivities, the losses from the faces and the members' temperature move a width or a rise by one or two per
// cent each, which adds nothing to a root-sum-square of thirty, and are left out.
type variants struct {
	at        variant
	hot, cold *variant // nil where the model does not reach
	soft      *variant // nil where the toe's temperature is exact
	thin      [2]*variant
	dense     [2]*variant // in the heat that it takes up
}

// thinner is the change of a member's thickness or heat capacity, logarithmic: about a sheet's tolerance.
const thinner = -0.07

// look solves the variants in parallel; the caller waits for the team.
func (e *variants) look(h *heatField, feed, travel float64, s *spread, team *crew.Crew) {
	in, o, err := h.fed(feed, travel)
	if err != nil {
		return // the setting's own state reports it
	}
	k, toe := &h.b.inputs, h.b.intervals[inToe]
	run := func(into **variant, alter func(in *section.Input)) {
		x := in
		alter(&x)
		team.Go(func() {
			if state, err := h.solve(&x, &o, false); err == nil {
				*into = &variant{state, x.Thick}
			}
		})
	}
	run(&e.hot, func(in *section.Input) { in.Heat = s.high[oNet] })
	run(&e.cold, func(in *section.Input) { in.Heat = s.low[oNet] })
	if toe.low != toe.high {
		run(&e.soft, func(in *section.Input) {
			in.Filler.Toe = toe.low
			if toe.high-k[inToe] > k[inToe]-toe.low {
				in.Filler.Toe = toe.high
			}
		})
	}
	for i := range e.thin {
		if i == 0 || !h.one {
			run(&e.thin[i], func(in *section.Input) { in.Thick[i] *= math.Exp(thinner) })
			run(&e.dense[i], func(in *section.Input) { in.Base[i].RhoC *= math.Exp(thinner) })
		}
	}
}

// reading is how a figure is read off a section. Its changes are differences where it may be near zero or is a
// temperature, else logarithms, in which a quantity that cannot be negative keeps an interval that is not.
type reading struct {
	of         func(v *variant) float64
	difference bool
}

// step is how far a reading changes from one section to another; NaN where the other is not known.
func (r *reading) step(from, to *variant) float64 {
	switch {
	case to == nil:
		return math.NaN()
	case r.difference:
		return r.of(to) - r.of(from)
	}
	return math.Log(r.of(to) / r.of(from))
}

// effect is an input and how far it moves a reading at the two ends of its interval.
type effect struct {
	input     input
	low, high float64
}

// What is no input of the board.
const (
	byModel input = -2 - iota
	byHeat
	byBead
	byAim
)

// effects lists what moves a reading beside the model's own uncertainty. Where the model follows the heat at one end
// only, the other side is taken as its mirror image.
func (e *variants) effects(r *reading, b *board) []effect {
	cold, hot := r.step(&e.at, e.cold), r.step(&e.at, e.hot)
	switch {
	case math.IsNaN(cold):
		cold = -hot
	case math.IsNaN(hot):
		hot = -cold
	}
	list := append(make([]effect, 0, 8), effect{byHeat, cold, hot})
	if soft := r.step(&e.at, e.soft); !math.IsNaN(soft) {
		x := effect{inToe, soft, 0}
		if b.intervals[inToe].high-b.inputs[inToe] > b.inputs[inToe]-b.intervals[inToe].low {
			x = effect{inToe, 0, soft}
		}
		list = append(list, x)
	}
	for i, own := range [2][2]input{{inThick1, inHeatCap1}, {inThick2, inHeatCap2}} {
		for n, changed := range [2]*variant{e.thin[i], e.dense[i]} {
			k := own[n]
			slope := r.step(&e.at, changed) / thinner
			if math.IsNaN(slope) || math.IsInf(slope, 0) {
				continue
			}
			d := b.intervals[k]
			list = append(list, effect{k, slope * math.Log(d.low/b.inputs[k]), slope * math.Log(d.high/b.inputs[k])})
		}
	}
	return list
}

// join adds effects by root-sum-square, each side for itself.
func join(list []effect) (down, up float64) {
	for _, l := range list {
		least, most := min(l.low, l.high, 0), max(l.low, l.high, 0)
		down, up = down+least*least, up+most*most
	}
	return math.Sqrt(down), math.Sqrt(up)
}
