package practice

import (
	"context"

	"brazebooth/calc"
	"brazebooth/tables"
)

// Hidden is one of the booth's own values beside the value that every card assumes.
type Hidden struct {
	calc.Figure         // as on the card, with its interval
	True        float64 // in this booth
}

// Moved is a figure of a setting: on the card, with each hidden value alone, and with all of them.
type Moved struct {
	calc.Figure
	Alone [3]float64 // with the true calibration voltage, efficiency, stick-out alone
	True  float64
}

// Revealed is the hidden truth and how it moved the figures of a setting.
type Revealed struct {
	Hidden [3]Hidden
	Moved  []Moved
}

// movedNames are the figures of a steady and of a timed arc that the truth moves.
var movedNames = [...]string{"current", "net_heat", "wetting_angle", "base_peak_temperature", "arc_on_min",
	"arc_on_max", "arc_off_min", "arc_off_max"}

// Reveal gives the truth of a booth and its effect on a setting, for when the job is over.
func (p *Booth) Reveal(ctx context.Context, setting calc.Job) (Revealed, error) {
	card, err := figures(ctx, setting)
	if err != nil {
		return Revealed{}, err
	}
	r := Revealed{Hidden: p.hidden(&card)}
	var alone [3]calc.Card
	t, usual := p.Truth, Truth{r.Hidden[0].Value, r.Hidden[1].Value, r.Hidden[2].Value}
	for i, one := range [...]Truth{{t.Phi, usual.Eta, usual.StickOut}, {usual.Phi, t.Eta, usual.StickOut},
		{usual.Phi, usual.Eta, t.StickOut}} {
		if alone[i], err = figures(ctx, one.of(&setting)); err != nil {
			return r, err
		}
	}
	whole, err := figures(ctx, t.of(&setting))
	if err != nil {
		return r, err
	}
	for _, name := range movedNames {
		f, ok := card.Figure(name)
		if !ok {
			continue
		}
		m := Moved{Figure: f}
		for i := range alone {
			x, _ := alone[i].Figure(name)
			m.Alone[i] = x.Value
		}
		x, _ := whole.Figure(name)
		m.True = x.Value
		r.Moved = append(r.Moved, m)
	}
	return r, nil
}

// figures is a setting's card; for a timed arc it also has the ends of the on and off times.
func figures(ctx context.Context, j calc.Job) (calc.Card, error) {
	if j.Mode != "timed" {
		return calc.SolveContext(ctx, j)
	}
	j.ArcOn, j.ArcOff = calc.Opt{}, calc.Opt{}
	s, err := calc.SolveTimed(ctx, j, nil)
	card := s.Card
	card.Figures = append(append([]calc.Figure(nil), card.Figures...), s.Figures...)
	return card, err
}

// hidden puts the true values beside those that the card assumes.
func (p *Booth) hidden(card *calc.Card) [3]Hidden {
	row, t := calc.RowFigure, &p.Truth
	return [3]Hidden{
		{row("calibration_voltage", card.Setup.Filler.Phi, "calibration voltage of the wire's melting"), t.Phi},
		{row("arc_efficiency", tables.ArcEfficiency, "share of the arc's power that gets into the work"), t.Eta},
		{row("stickout", tables.DefaultStickOut, "tip to arc, where nobody measures it"), t.StickOut},
	}
}
