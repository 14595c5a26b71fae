package correct

import (
	"cmp"
	"math"
	"slices"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/tables"
)

// rank lists the causes that may explain a bead's look, likeliest first: causes of heat with their probability
// by the window at this setting, the others by how often such a job has them; each times how often it looks
// like this.
func (v *posterior) rank(t *Try) []advice.Likely {
	prior := v.priors(t)
	var list []advice.Likely
	sum := 0.0
	for _, c := range tables.Causes {
		if c.ID == tables.CauseFine && t.Seen != "good" {
			continue // a fault has a cause
		}
		p := prior[c.ID] * tables.ShareAllSeen(t.Seen, c.ID)
		sum += p
		list = append(list, advice.Likely{ID: c.ID, Name: c.Name, Likelihood: p, Do: v.cure(&c), Known: string(c.Known),
			Source: c.Source, Prior: prior[c.ID]})
	}
	if t.Seen == "good" {
		list = slices.DeleteFunc(list, func(l advice.Likely) bool { return l.ID != tables.CauseFine })
		list[0].Likelihood, sum = 1, 1
	}
	slices.SortStableFunc(list, func(a, b advice.Likely) int { return cmp.Compare(b.Likelihood, a.Likelihood) })
	for i := range list {
		list[i].Likelihood *= 100 / sum
	}
	few := 1
	for few < len(list) && few < 5 && list[few].Likelihood >= 3 {
		few++
	}
	return list[:few]
}

// priors are the probabilities of the causes before the bead was seen.
func (v *posterior) priors(t *Try) map[string]float64 {
	p := map[string]float64{}
	for i, c := range v.causesAt(&t.Job) {
		p[c] += v.weights[i]
	}
	// The model may be wrong by more than its interval, so no cause of heat is ruled out.
	for _, c := range v.heatCauses() {
		p[c] = max(p[c], 0.05)
	}
	for _, c := range tables.Causes {
		if c.Base > 0 {
			p[c.ID] = c.Base * v.suits(c.ID, &t.Job)
		}
	}
	return p
}

func (v *posterior) heatCauses() []string {
	if v.timed {
		return []string{tables.CauseOnLong, tables.CauseOnShort, tables.CauseOffLong, tables.CauseOffShort,
			tables.CauseFine}
	}
	return []string{tables.CauseCold, tables.CauseHot, tables.CauseMelts, tables.CauseFine}
}

// suits is how many times as often as usual this job has a cause, by what is known about it and was done
// against it.
func (v *posterior) suits(cause string, j *calc.Job) float64 {
	f := v.meets(cause, j)
	if v.cured[cause] {
		const missed = 0.15 // the cure may have been done badly
		f *= missed
	}
	return f
}

func (v *posterior) meets(cause string, j *calc.Job) float64 {
	switch cause {
	case tables.CauseUneven:
		below, above := v.outside(j)
		return below + above
	case tables.CauseVoltsLow:
		return v.voltsOff(j, -1)
	case tables.CauseVoltsHi:
		return v.voltsOff(j, 1)
	case tables.CauseVapour:
		return v.vapour(j)
	case tables.CauseGas:
		return v.gasFaults(j)
	case tables.CauseCopper:
		return v.copperAttack()
	case tables.CauseHeld:
		if v.has(tables.CastIron) || v.has(tables.Stainless) {
			return 3
		}
	case tables.CauseHollow:
		if v.card.Section.Drawn && v.card.Section.Phi < 0 {
			return 5
		}
	}
	return 1
}

// voltsOff compares the volts that were read with the usual ones for the current: two standard deviations make
// a cause several times likelier, or nearly rule it out. Volts that were not read count as 1.
func (v *posterior) voltsOff(j *calc.Job, side float64) float64 {
	if !v.card.Job.Volts.Set {
		return 1
	}
	usual, band := calc.UsualVolts(j)
	z := side * (j.Volts.V - usual) / (band / 2)
	return math.Exp(max(-3, min(2, z)))
}

// vapour is nothing without zinc, and high in a closed lap between two zinc coats.
func (v *posterior) vapour(j *calc.Job) float64 {
	zinc := 0
	for _, m := range v.card.Setup.Joined() {
		if m.Coating.Zinc {
			zinc++
		}
	}
	switch {
	case zinc == 0 && !v.has(tables.BrassFam):
		return 0
	case j.Joint == "lap" && zinc == 2 && j.Gap.V == 0:
		return 2
	}
	return 1
}

// gasFaults is high for a flow outside the usual range or above what the nozzle carries.
func (v *posterior) gasFaults(j *calc.Job) float64 {
	f := v.card.Setup.Gas.Flow
	over := j.NozzleBore.Set && j.Flow.V > calc.SmoothFlow(j, &v.card.Setup.Gas)
	if over || j.Flow.V < 0.8*f.Low || j.Flow.V > 1.3*f.High || v.card.Setup.Gas.Refused {
		return 4
	}
	return 1
}

// copperAttack happens to stainless and high-strength steel, hardly ever to mild steel, and to nothing else; aluminium
// in the wire protects them.
func (v *posterior) copperAttack() float64 {
	switch {
	case !v.has(tables.Stainless) && !v.has(tables.Steel):
		return 0
	case !v.has(tables.Stainless) && !calc.Applies("high-strength", &v.card):
		return 0.02
	case calc.AluminiumWire(v.card.Setup.Filler.ID):
		return 0.5
	}
	return 1
}

func (v *posterior) has(f tables.Family) bool { return calc.Applies(string(f), &v.card) }
