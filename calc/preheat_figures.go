package calc

import (
	"fmt"
	"math"

	"brazebooth/calc/formula"
	"brazebooth/calc/limit"
	"brazebooth/tables"
)

// warmUp is what a card says of warming its parts: the preheat that its own wire needs, and a thicker wire where that
// is much.
type warmUp struct {
	preheat
	asked bool    // the card is cold, or its parts were warmed
	other string  // a thicker wire that needs less, "" for none
	then  preheat // with that wire
	less  preheat // with a weaker arc, where the strongest wets and misses another edge
}

// warmUp computes the least preheat where the setting does not wet or the parts were warmed.
func (b *board) warmUp(card *Card, v *verdict) (u warmUp) {
	if !v.modelled || v.logs[limit.Wets] >= 0 && !(card.Job.Preheat.Set && b.warmed()) {
		return u
	}
	w := b.newWarmth(card)
	w.onlyNeeded = true
	u.asked, u.preheat, u.less.least = true, w.find(), math.NaN()
	if !u.needed() || Applies("zinc", card) { // the card then says no more
		return u
	}
	w.band(&u.preheat, b)
	if !(u.least <= tables.PreheatUsual.V) {
		u.thicker(b, card)
	}
	if u.other == "" && math.IsNaN(u.least) && u.spoils != "" {
		u.less = w.weaker()
	}
	return u
}

// warmed reports whether the parts are warmer than a hand bears.
func (b *board) warmed() bool { return b.inputs[inRoom] > tables.ChillOff.V }

// thicker looks for the thinnest of the usual sizes with which a usual preheat is enough, else for the one that needs
// the least.
func (u *warmUp) thicker(b *board, card *Card) {
	for _, size := range [...]struct{ id, name string }{{".045", "1.2 mm (.045 in)"}, {"1/16", "1.6 mm (1/16 in)"}} {
		wire, ok := tables.Wires.ByID(size.id)
		if !ok || wire.Diameter.V < card.Used.Wire.V*1.1 {
			continue
		}
		job := card.Job
		job.Wire, job.Feed, job.Amps = Some(wire.Diameter.V), Opt{}, Opt{}
		with, other, err := laidOut(b.effort, job)
		if err != nil {
			continue
		}
		w := with.newWarmth(other)
		if p := w.find(); p.least < u.then.least || u.other == "" && !math.IsNaN(p.least) {
			u.other, u.then = size.name, p
		}
		if u.other != "" && u.then.least <= tables.PreheatUsual.V {
			return
		}
	}
}

// figures are the least preheat, and how long the heat takes through the part and beside the seam.
func (u *warmUp) figures(b *board, card *Card) (list []Figure) {
	if Applies("zinc", card) { // zinc is never warmed
		return nil
	}
	if u.asked && u.needed() && !math.IsNaN(u.least) {
		wire := In("", "wire", b.inputs[inWire], "mm")
		list = append(list, NewFigure("least_preheat", "C", u.least, u.low, u.high, OwnBasis(
			"least temperature of the parts at which this wire's strongest steady arc wets",
			SectionSource+"; the hottest tried, "+Number(HottestPreheat(card))+" °C, is assumed", wire,
			Derived("", "current", u.amps, "A"), Derived("", "travel", u.travel, "mm/s"))))
	}
	if !(u.asked && u.needed()) && !(b.warmed() && (card.Job.Preheat.Set || maxCore(card.Setup.Joined()) >
		tables.SheetThickest.V)) {
		return list
	}
	for _, f := range soaks(card) {
		if f.Value >= noticed {
			list = append(list, f)
		}
	}
	return list
}

// noticed is the shortest time that is shown, s.
const noticed = 0.5

// soaks are how long heat takes through the slowest member, and along it over the width that is warmed.
func soaks(card *Card) []Figure {
	const source = "Carslaw and Jaeger 3.8, 14.10 (memory high): heat laid on one face has come to the far one but " +
		"for 4 %"
	wide := tables.SoakWidth
	best := [2]Figure{}
	for _, m := range card.Setup.Joined() {
		k, rhoC := m.Metal.Conductivity, m.Metal.HeatCapacity
		for i, way := range [2]struct {
			name, of  string
			t         float64
			low, high float64
		}{{"soak_through", "thickness", m.Core, m.Core, m.Core},
			{"soak_across", "width beside the seam", wide.V, wide.Low, wide.High}} {
			mid, err := formula.SoakThrough(way.t, k.V, rhoC.V)
			low, _ := formula.SoakThrough(way.low, k.High, rhoC.Low)
			high, _ := formula.SoakThrough(way.high, k.Low, rhoC.High)
			if err == nil && mid > best[i].Value {
				best[i] = NewFigure(way.name, "s", mid, low, high, OwnBasis("0.4·{t}²·{rhoc}/{k}", source,
					In("t", way.of, way.t, "mm"), In("rhoc", "heat capacity", rhoC.V, "J/mm3K"),
					In("k", "conductivity", k.V, "W/mmK")))
			}
		}
	}
	return best[:]
}

// warmUp says how warm the parts must be until this filler wets, or that another process is needed.
func (w *warnings) warmUp(u *warmUp) {
	iron := Applies(string(tables.CastIron), w.card) // iron wants warmth: say what forbids it
	if w.card.Used.Preheat.V > tables.ChillOff.V || u.asked && u.needed() || iron && Applies("zinc", w.card) {
		w.say(PreheatNever)
	}
	if !u.asked || !u.needed() {
		return
	}
	const basis = "cross-section model, own computation; the limits of a preheat are assumed"
	most := HottestPreheat(w.card)
	switch other := u.beside(); {
	case Applies("zinc", w.card):
		w.tell("preheat-needed", Caution, basis, "Cold parts are not wetted, and zinc must not be preheated: %s.",
			StripZinc(w.card))
	case !math.IsNaN(u.less.least):
		w.tell("preheat-needed", Caution, basis, "From about %.0f °C on this wire's strongest arc wets, and there "+
			"“%s” is not met. Hotter parts and less current: about %.0f A and a preheat to %.0f °C. Measure on the "+
			"far face.",
			tens(u.wets), u.spoils, u.less.amps, tens(u.less.least))
	case math.IsNaN(u.least) && other == "" && u.spoils != "":
		w.tell("preheat-no-cure", Caution, basis, "Preheat alone is no cure: from about %.0f °C on this wire's "+
			"strongest arc wets, and there “%s” is not met. Another joint, filler or process.", tens(u.wets), u.spoils)
	case math.IsNaN(u.least) && other == "":
		w.tell("another-process", Caution, basis, "Another process: no preheat up to about %.0f °C makes this wire's "+
			"strongest arc wet and meet the other edges: %s.", most, OtherProcess(w.card))
	case math.IsNaN(u.least):
		w.tell("preheat-needed", Caution, basis, "No preheat up to about %.0f °C makes this wire's strongest arc good "+
			"here: take %s. Else another process: %s.", most, other, OtherProcess(w.card))
	default:
		if other != "" {
			other = ", or " + other
		}
		if Applies("high-strength", w.card) {
			other += fmt.Sprintf(". Over %.0f °C the sheet softens", most)
		}
		w.tell("preheat-needed", Caution, basis, "Preheat to at least %.0f °C (%.0f to %.0f), with the strongest arc "+
			"of this wire, about %.0f A%s. Measure on the far face, beside the joint.", tens(u.least), u.low, u.high,
			u.amps,
			other)
	}
}

// beside names the thicker wire with its preheat, "" where it is no better.
func (u *warmUp) beside() string {
	switch {
	case u.other == "" || !math.IsNaN(u.least) && u.then.least > u.least-tens(1):
		return ""
	case !u.then.needed():
		return fmt.Sprintf("%s wire at about %.0f A without preheat", u.other, u.then.amps)
	}
	return fmt.Sprintf("%s wire at about %.0f A and preheat to %.0f °C", u.other, u.then.amps, tens(u.then.least))
}

// tens rounds a temperature, C, up to what a thermometer on a hot part can show.
func tens(t float64) float64 { return 10 * math.Ceil(t/10) }
