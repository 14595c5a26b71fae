package advice

import (
	"fmt"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// Machine compares a setting with a power source's plate, a nozzle's bore and what is on spool and in bottle.
func Machine(card *calc.Card) (Page, error) {
	p := Page{Name: "machine", Card: *card}
	amps, ok := card.Figure("current")
	if !ok {
		return p, mistake.In("feed", "no current is computed for this job", "give a wire feed or amps: 250ipm, 93A")
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
func arcShare(card *calc.Card) float64 {
	if on, off := card.Used.ArcOn.V, card.Used.ArcOff.V; card.Used.Mode == "timed" && on > 0 {
		return on / (on + off)
	}
	return 1
}

// duty is how many minutes in ten the power source may run at this current.
func (p *Page) duty(card *calc.Card, amps calc.Figure, share float64) error {
	j := &card.Job
	if !j.RatedAmps.Set || !j.RatedDuty.Set {
		p.because("the plate's amps and duty were not given: no duty at this current", calc.OwnCalc, "the job")
		return nil
	}
	at := func(a float64) float64 {
		rms, err := formula.EffectiveAmps(a, share)
		if err != nil {
			return 0
		}
		d, err := formula.DutyAt(rms, j.RatedAmps.V, j.RatedDuty.V)
		if err != nil {
			return 0
		}
		return d
	}
	v := at(amps.Value)
	b := calc.Basis{Formula: "min(100, {D}·({R}/{I})²)", Source: "IEC 60974-1, ten-minute period (memory high)", Known: calc.OwnCalc, Inputs: []calc.Input{{Symbol: "D", Name: "plate duty", Value: j.RatedDuty.V, Unit: "%"},
		{Symbol: "R", Name: "plate current", Value: j.RatedAmps.V, Unit: "A"}, {Symbol: "I", Name: "current", Value: amps.Value, Unit: "A", Derived: true}}}
	if share < 1 {
		b.Formula, b.Source = "min(100, {D}·({R}/{I})²/{s})", b.Source+"; a timed arc counts by its root mean square"
		b.Inputs = append(b.Inputs, calc.Input{Symbol: "s", Name: calc.ArcShare, Value: share, Derived: true})
	}
	p.add("duty_cycle", "%", v, at(amps.High), at(amps.Low), b)
	p.because(fmt.Sprintf("that is %.1f minutes of arc in ten", v/10), calc.OwnCalc, tables.DutyPeriod.Source)
	load := 100 * amps.Value / j.RatedAmps.V
	p.add("load", "%", load, 100*amps.Low/j.RatedAmps.V, 100*amps.High/j.RatedAmps.V, calc.Basis{Formula: "100·{I}/{R}", Source: "definition", Known: calc.OwnCalc,
		Inputs: []calc.Input{{Symbol: "I", Name: "current", Value: amps.Value, Unit: "A", Derived: true}, {Symbol: "R", Name: "plate current", Value: j.RatedAmps.V, Unit: "A"}}})
	if load > 100 {
		p.Warnings = append(p.Warnings, calc.Warning{Code: "over-plate", Severity: calc.Caution, Text: fmt.Sprintf("%.0f A is more than the plate's %.0f A: this power source may not reach it, or trips.", amps.Value, j.RatedAmps.V), Basis: "IEC 60974-1, duty cycle"})
	}
	if v < 30 {
		p.Warnings = append(p.Warnings, calc.Warning{Code: "duty-low", Severity: calc.Caution, Text: fmt.Sprintf("%.0f %% duty: this power source will trip in a long seam. Let it cool, or less current.", v), Basis: "IEC 60974-1, duty cycle"})
	}
	return nil
}

// loadLine is where power sources are rated, beside the arc's own volts.
func (p *Page) loadLine(card *calc.Card, amps calc.Figure) {
	v := func(a float64) float64 {
		return formula.ModeVolts(a, 1, tables.LoadLineBase.V, tables.LoadLineSlope.V, tables.LoadLineCap.V)
	}
	if volts, ok := card.Figure("volts"); ok {
		p.because(fmt.Sprintf("set the arc to the card's %.1f V; the rated volts are those at which power sources are compared at this current", volts.Value), calc.OwnCalc, tables.LoadLineBase.Source)
	}
	formula := "14 + 0.05·{I}"
	if tables.LoadLineBase.V+tables.LoadLineSlope.V*amps.Value > tables.LoadLineCap.V {
		formula = "min(44, 14 + 0.05·{I})"
	}
	p.add("load_line", "V", v(amps.Value), v(amps.Low), v(amps.High), calc.Basis{Formula: formula, Source: tables.LoadLineBase.Source, Known: string(tables.LoadLineBase.Known),
		Inputs: []calc.Input{{Symbol: "I", Name: "current", Value: amps.Value, Unit: "A", Derived: true}}})
}

// nozzle is the gas flow at which the flow in the nozzle breaks up and draws air in.
func (p *Page) nozzle(card *calc.Card) {
	if !card.Job.NozzleBore.Set {
		p.because("the nozzle's bore was not given: nothing said of the flow at which gas draws air in", calc.OwnCalc, "the job")
		return
	}
	g := &card.Setup.Gas
	v, err := formula.LaminarFlow(card.Job.NozzleBore.V, g.Density.V, tables.ArgonViscosity.V, tables.LaminarReynolds.V)
	if err != nil {
		return
	}
	p.add("gas_ceiling", "L/min", v, v*tables.LaminarReynolds.Low/tables.LaminarReynolds.V, v*tables.LaminarReynolds.High/tables.LaminarReynolds.V, calc.Basis{Formula: "0.06·pi·{Re}·{mu}·{d}/(4·{rho})", Source: tables.LaminarReynolds.Source, Known: string(tables.LaminarReynolds.Known),
		Inputs: []calc.Input{{Symbol: "Re", Name: "Reynolds number at which the flow breaks up", Value: tables.LaminarReynolds.V}, {Symbol: "mu", Name: "viscosity of the gas", Value: 1000 * tables.ArgonViscosity.V, Unit: "mPa s"},
			{Symbol: "d", Name: "bore", Value: card.Job.NozzleBore.V, Unit: "mm"}, {Symbol: "rho", Name: "gas density", Value: g.Density.V, Unit: "kg/m3"}}})
	if flow := card.Used.Flow.V; flow > v {
		p.Warnings = append(p.Warnings, calc.Warning{Code: "gas-turbulent", Severity: calc.Caution, Text: fmt.Sprintf("%.0f L/min is more than this nozzle carries smoothly (about %.0f): it draws air in and makes pores. Less gas or a wider nozzle.", flow, v), Basis: tables.LaminarReynolds.Source})
	}
}

// stocks is how long full spools last.
func (p *Page) stocks(card *calc.Card, share float64) {
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
