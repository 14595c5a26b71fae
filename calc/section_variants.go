package calc

import (
	"math"
	"slices"
	"strings"

	"brazebooth/calc/section"
	"brazebooth/internal/crew"
)

// variant is the section with one thing changed.
type variant struct {
	heatState
	thick [2]float64 // mm
}

// variants are the section at a setting with one thing changed at a time: the heat to both ends of its interval, the
// temperature at which the toe freezes to the further end of its interval, each member's thickness and its heat
// capacity.
//
// The conductivities, the losses from the faces and the members' temperature each move a width or a rise by one or two
// per cent, which adds nothing to a root-sum-square of thirty, and are left out.
type variants struct {
	at        variant
	hot, cold *variant // nil where the model does not reach
	soft      *variant // nil where the toe's temperature is exact
	loose     *variant // over a bar: its contact at the low end
	tight     *variant // over a bar: its contact at the high end
	bare      *variant // without bar or strip, to tell what they change
	thin      [2]*variant
	dense     [2]*variant // with less heat capacity
}

// thinner is the change of a member's thickness or heat capacity, a logarithm: about the tolerance of sheet.
const thinner = -0.07

// look starts the variants in parallel; the caller waits for the team.
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
	if behind := in.Bar != (section.Bar{}); behind || in.Joint == section.StripJoint {
		run(&e.bare, bareRoot)
		if d := h.b.intervals[inBarDry]; behind {
			run(&e.loose, func(in *section.Input) { in.Bar.Dry = d.low * 1e-6 })
			run(&e.tight, func(in *section.Input) { in.Bar.Dry = d.high * 1e-6 })
		}
	}
	for i := range e.thin {
		if i < h.members {
			run(&e.thin[i], func(in *section.Input) { thin(in, i) })
			run(&e.dense[i], func(in *section.Input) { in.Base[i].RhoC *= math.Exp(thinner) })
		}
	}
}

// unwetted reports that the metal wets both members at the setting but not at the cold end of the heat's interval, or
// not at the further end of the temperature at which the toe freezes. What both members carry is then not certain at
// all.
func (e *variants) unwetted() bool {
	dry := func(v *variant) bool { return v != nil && !v.bridged }
	return e.at.bridged && (dry(e.cold) || dry(e.soft))
}

// reading tells how a figure is read off a section. Changes of a figure that may be near zero, or of a temperature, are
// differences; others are logarithms, so that the interval of a quantity that cannot be negative is not negative.
type reading struct {
	of         func(v *variant) float64
	difference bool
}

// step is how far a reading changes from one section to another; NaN where the other is nil.
func (r *reading) step(from, to *variant) float64 {
	switch {
	case to == nil:
		return math.NaN()
	case r.difference:
		return r.of(to) - r.of(from)
	}
	return math.Log(r.of(to) / r.of(from))
}

// effect is an input, or what is no input of the board, and how far it moves a reading at the two ends of its interval.
type effect struct {
	of        Input
	low, high float64
}

// What moves a reading and is no input of the board.
var (
	byModel = Input{Name: "what the cross-section leaves out", Value: 1}
	byAim   = Input{Name: "how the bead shares itself between the members", Value: 1}
)

// effects lists what moves a reading beside the model's own uncertainty, the heat first. Where the model reaches the
// heat at one end only, the other side is taken as its mirror image.
func (l *sectionList) effects(r *reading) []effect {
	e, b := &l.v.variants, l.b
	cold, hot := r.step(&e.at, e.cold), r.step(&e.at, e.hot)
	switch {
	case math.IsNaN(cold):
		cold = -hot
	case math.IsNaN(hot):
		hot = -cold
	}
	list := append(make([]effect, 0, 8), effect{Derived("", "net heat", l.s.value[oNet], "J/mm"), cold, hot})
	if soft := r.step(&e.at, e.soft); !math.IsNaN(soft) {
		x := effect{l.input(inToe, 0), soft, 0}
		if b.intervals[inToe].high-b.inputs[inToe] > b.inputs[inToe]-b.intervals[inToe].low {
			x.low, x.high = 0, soft
		}
		list = append(list, x)
	}
	if loose, tight := r.step(&e.at, e.loose), r.step(&e.at, e.tight); !math.IsNaN(loose + tight) {
		list = append(list, effect{l.input(inBarDry, 0), loose, tight})
	}
	for i, own := range ofMember {
		for n, changed := range [2]*variant{e.thin[i], e.dense[i]} {
			k := [2]input{own.thick, own.capacity}[n]
			slope := r.step(&e.at, changed) / thinner
			if math.IsNaN(slope) || math.IsInf(slope, 0) {
				continue
			}
			d := b.intervals[k]
			list = append(list, effect{l.input(k, 0), slope * math.Log(d.low/b.inputs[k]),
				slope * math.Log(d.high/b.inputs[k])})
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

// inputs are what a figure depends on: the toe's temperature where its formula names it, the section's heat, and then
// everything that moves it by half a per cent or more, strongest first.
func (l *sectionList) inputs(effects []effect, r *reading, v float64, formula string) []Input {
	moves := func(step float64) float64 {
		switch {
		case r.difference && v == 0:
			return 0 // no percentage of zero
		case r.difference:
			return 100 * step / v
		}
		return 100 * math.Expm1(step)
	}
	var list, rest []Input
	if strings.Contains(formula, "{T_toe}") {
		list = append(list, l.input(inToe, 0))
		list[0].Symbol = "T_toe"
	}
	for i, x := range effects {
		in := x.of
		in.Sensitivity = telling(x.low, x.high, moves)
		switch {
		case i == 0: // the heat
			list = append(list, in)
			rest = append(rest, l.throughHeat(x.high/math.Log(l.s.high[oNet]/l.s.value[oNet]), moves)...)
		case in.Name == inputNames[inToe].name && list[0].Symbol != "":
			list[0].Sensitivity = in.Sensitivity
		default:
			rest = append(rest, in)
		}
	}
	rest = slices.DeleteFunc(rest,
		func(in Input) bool { return !(math.Abs(in.Sensitivity) >= 0.5) || math.IsInf(in.Sensitivity, 0) })
	slices.SortStableFunc(rest, func(a, b Input) int { return cmpMagnitude(b.Sensitivity, a.Sensitivity) })
	return append(list, rest...)
}

func (l *sectionList) input(k input, moved float64) Input {
	return inputOf(k, &l.b.inputs, &l.b.intervals, moved)
}

// throughHeat is what moves a figure by way of the heat; slope is the reading's step over the heat's logarithmic step.
func (l *sectionList) throughHeat(slope float64, moves func(step float64) float64) []Input {
	if math.IsInf(slope, 0) || math.IsNaN(slope) {
		return nil
	}
	var list []Input
	for k := range inputCount {
		if by := l.s.byInput[oNet][k]; by != 0 {
			list = append(list, l.input(k, moves(slope*math.Log1p(by/100))))
		}
	}
	return list
}

// telling is the larger side of an effect, % of the figure, signed for an increase of the input.
func telling(low, high float64, moves func(step float64) float64) float64 {
	if math.Abs(low) > math.Abs(high) {
		return -moves(low)
	}
	return moves(high)
}

// thin makes a member thinner, and so lowers the edge at which a lap's bead ends.
func thin(in *section.Input, member int) {
	in.Thick[member] *= math.Exp(thinner)
	if in.High > 0 && member == 0 {
		in.High = in.Thick[0]
	}
}
