package calc

import (
	"fmt"

	"brazebooth/tables"
)

// Machine holds a setting against a power source's plate, a nozzle's bore and what is on spool and in bottle.
func Machine(card *Card) (Part, error) {
	p := Part{Name: "machine", Card: *card}
	amps, ok := card.Figure("current")
	if !ok {
		return p, &FieldError{"feed", "no current is computed for this job", "give a wire feed or amps: 250ipm, 93A"}
	}
	share := arcShare(card)
	if err := p.duty(card, amps, share); err != nil {
		return p, err
	}
	p.loadLine(card, amps)
	p.nozzle(card)
	p.stocks(card, share)
	p.because("tapped or numbered volts are not the arc's: set by the meter while it burns, not by the knob", "common practice, no source", "common practice, no source")
	return p, nil
}

// arcShare is the share of the time that the arc burns within a seam: less than one for a timed arc.
func arcShare(card *Card) float64 {
	if on, off := card.Used.ArcOn.V, card.Used.ArcOff.V; card.Used.Mode == "timed" && on > 0 {
		return on / (on + off)
	}
	return 1
}

// duty is how long out of ten minutes the power source may run at this current.
func (p *Part) duty(card *Card, amps Figure, share float64) error {
	j := &card.Job
	if !j.RatedAmps.Set || !j.RatedDuty.Set {
		p.because("the plate's amps and duty were not given: no duty at this current", ownCalc, "the job")
		return nil
	}
	at := func(a float64) float64 {
		rms, err := EffectiveAmps(a, share)
		if err != nil {
			return 0
		}
		d, err := DutyAt(rms, j.RatedAmps.V, j.RatedDuty.V)
		if err != nil {
			return 0
		}
		return d
	}
	v := at(amps.Value)
	b := Basis{Formula: "min(100, {D}·({R}/{I})²)", Source: "IEC 60974-1, ten-minute period (memory high)", Known: ownCalc, Inputs: []Input{{Symbol: "D", Name: "plate duty", Value: j.RatedDuty.V, Unit: "%"},
		{Symbol: "R", Name: "plate current", Value: j.RatedAmps.V, Unit: "A"}, {Symbol: "I", Name: "current", Value: amps.Value, Unit: "A", Derived: true}}}
	if share < 1 {
		b.Formula, b.Source = "min(100, {D}·({R}/{I})²/{s})", b.Source+"; a timed arc counts by its root mean square"
		b.Inputs = append(b.Inputs, Input{Symbol: "s", Name: tShare.name, Value: share, Derived: true})
	}
	p.add("duty_cycle", "%", v, at(amps.High), at(amps.Low), b)
	p.because(fmt.Sprintf("that is %.1f minutes of arc in ten", v/10), ownCalc, tables.DutyPeriod.Source)
	load := 100 * amps.Value / j.RatedAmps.V
	p.add("load", "%", load, 100*amps.Low/j.RatedAmps.V, 100*amps.High/j.RatedAmps.V, Basis{Formula: "100·{I}/{R}", Source: "definition", Known: ownCalc,
		Inputs: []Input{{Symbol: "I", Name: "current", Value: amps.Value, Unit: "A", Derived: true}, {Symbol: "R", Name: "plate current", Value: j.RatedAmps.V, Unit: "A"}}})
	if load > 100 {
		p.Warnings = append(p.Warnings, Warning{"over-plate", Caution, fmt.Sprintf("%.0f A is more than the plate's %.0f A: this power source may not reach it, or trips.", amps.Value, j.RatedAmps.V), "IEC 60974-1, duty cycle"})
	}
	if v < 30 {
		p.Warnings = append(p.Warnings, Warning{"duty-low", Caution, fmt.Sprintf("%.0f %% duty: this power source will trip in a long seam. Let it cool, or less current.", v), "IEC 60974-1, duty cycle"})
	}
	return nil
}

// loadLine is where power sources are rated, beside the arc's own volts.
func (p *Part) loadLine(card *Card, amps Figure) {
	v := func(a float64) float64 {
		return ModeVolts(a, 1, tables.LoadLineBase.V, tables.LoadLineSlope.V, tables.LoadLineCap.V)
	}
	if volts, ok := card.Figure("volts"); ok {
		p.because(fmt.Sprintf("set the arc to the card's %.1f V; the rated volts are those at which power sources are compared at this current", volts.Value), ownCalc, tables.LoadLineBase.Source)
	}
	formula := "14 + 0.05·{I}"
	if tables.LoadLineBase.V+tables.LoadLineSlope.V*amps.Value > tables.LoadLineCap.V {
		formula = "min(44, 14 + 0.05·{I})"
	}
	p.add("load_line", "V", v(amps.Value), v(amps.Low), v(amps.High), Basis{Formula: formula, Source: tables.LoadLineBase.Source, Known: string(tables.LoadLineBase.Known),
		Inputs: []Input{{Symbol: "I", Name: "current", Value: amps.Value, Unit: "A", Derived: true}}})
}

// nozzle is the gas at which the flow in the nozzle breaks up and draws air in.
func (p *Part) nozzle(card *Card) {
	if !card.Job.NozzleBore.Set {
		p.because("the nozzle's bore was not given: nothing said of the flow at which gas draws air in", ownCalc, "the job")
		return
	}
	g := &card.Setup.Gas
	v, err := LaminarFlow(card.Job.NozzleBore.V, g.Density.V, tables.ArgonViscosity.V, tables.LaminarReynolds.V)
	if err != nil {
		return
	}
	p.add("gas_ceiling", "L/min", v, v*tables.LaminarReynolds.Low/tables.LaminarReynolds.V, v*tables.LaminarReynolds.High/tables.LaminarReynolds.V, Basis{Formula: "0.06·pi·{Re}·{mu}·{d}/(4·{rho})", Source: tables.LaminarReynolds.Source, Known: string(tables.LaminarReynolds.Known),
		Inputs: []Input{{Symbol: "Re", Name: "Reynolds number at which the flow breaks up", Value: tables.LaminarReynolds.V}, {Symbol: "mu", Name: "viscosity of the gas", Value: 1000 * tables.ArgonViscosity.V, Unit: "mPa s"},
			{Symbol: "d", Name: "bore", Value: card.Job.NozzleBore.V, Unit: "mm"}, {Symbol: "rho", Name: "gas density", Value: g.Density.V, Unit: "kg/m3"}}})
	if flow := card.Used.Flow.V; flow > v {
		p.Warnings = append(p.Warnings, Warning{"gas-turbulent", Caution, fmt.Sprintf("%.0f L/min is more than this nozzle carries smoothly (about %.0f): it draws air in and makes pores. Less gas or a wider nozzle.", flow, v), tables.LaminarReynolds.Source})
	}
}

// stocks is how long full spools last.
func (p *Part) stocks(card *Card, share float64) {
	rate, ok := card.Figure("deposition_rate")
	if !ok {
		return
	}
	melt := rate.Value / p.efficiency(card) * share // g/min
	for _, s := range tables.Spools() {
		if s.ID == "4 in" || s.ID == "14 in" || s.ID == "S100" {
			continue
		}
		p.because(fmt.Sprintf("a full %s spool (%.3g kg as sold in steel) is %.0f minutes of seam", s.ID, s.Mass.V, s.Mass.V*1000/melt), string(s.Mass.Known), s.Mass.Source)
	}
}
