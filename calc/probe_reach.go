package calc

import (
	"context"
	"math"
	"slices"

	"brazebooth/calc/formula"
	"brazebooth/calc/section"
	"brazebooth/tables"
)

// Reach is the width, from the joint's line outward, mm, over which the peak on a member's bead side is above a
// temperature, with its 95 % interval; zero where it never is. A strip at the line itself that stays colder, as in the
// corner of a thick tee, is not counted, so that the width vanishes without a jump. Cold and Hot are the widths by the
// ends of the net heat's interval alone.
type Reach struct{ V, Low, High, Cold, Hot float64 }

// ReachOf is the reach of some temperatures, C, in each member at a card's own setting. The interval joins that of the
// net heat with what the section leaves out of a half-width. False where no section is computed, or where a reach lies
// outside its grid.
func ReachOf(ctx context.Context, card *Card, temperatures ...float64) (list [2][]Reach, ok bool) {
	job := Laid(card)
	p, err := ProbeOf(ctx, &job)
	net, known := card.Figure("net_heat")
	if err != nil || !known || p.b.notModelled(card) != "" {
		return list, false
	}
	var ends [3][2][]float64
	for n, heat := range [3]float64{net.Value, net.Low, net.High} {
		if ends[n], err = p.reach(math.Log(heat/net.Value), temperatures); err != nil {
			return list, false
		}
	}
	form := tables.ZincBandForm
	for member := range p.field.members {
		for i := range temperatures {
			mid, low, high := ends[0][member][i], ends[1][member][i], ends[2][member][i]
			if math.IsNaN(mid) || math.IsNaN(low) || math.IsNaN(high) {
				return list, false
			}
			r := Reach{V: mid, High: high, Cold: low, Hot: high}
			if mid > 0 {
				up := math.Hypot(math.Log(high/mid), math.Log(form.High))
				r.Low, r.High = lowReach(mid, low, form.Low), mid*math.Exp(up)
			}
			list[member] = append(list[member], r)
		}
	}
	return list, true
}

// lowReach is the low end of a reach that is mid at the heat and cold at the heat's low end, where what the section
// leaves out may make it the share form. A logarithm would jump to zero once the cold end is zero: differences replace
// it before.
func lowReach(mid, cold, form float64) float64 {
	apart := max(0, mid-math.Hypot(mid-cold, mid-mid*form))
	if cold <= 0 {
		return apart
	}
	down := math.Hypot(math.Log(mid/cold), math.Log(form))
	share := max(0, min(1, (down-differencesFrom)/(differencesAlone-differencesFrom)))
	byLogs := mid * math.Exp(-down)
	return byLogs + share*(apart-byLogs)
}

// reach is the reach of each temperature in each member, mm, where the heat is exp(shift) times the computed one.
func (p *Probe) reach(shift float64, temperatures []float64) (far [2][]float64, err error) {
	in, _, err := p.fed(shift)
	if err != nil {
		return far, err
	}
	in.Lowest = slices.Min(temperatures)
	if in.Lowest <= in.Start {
		return far, formula.Outside("temperature", in.Lowest, "the part starts hotter")
	}
	if err := p.b.effort.Over(); err != nil {
		return far, err
	}
	w := workspaces.Get().(*section.Workspace)
	defer workspaces.Put(w)
	r, err := w.Solve(&in)
	if err != nil {
		return far, err
	}
	for member := range p.field.members {
		for _, t := range temperatures {
			far[member] = append(far[member], r.Front[member].Over(t))
		}
	}
	return far, nil
}
