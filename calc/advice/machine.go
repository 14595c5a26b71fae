package advice

import (
	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// Machine compares a setting with the power source's rating plate, the nozzle's bore and the wire on a spool.
func Machine(card *calc.Card) (Page, error) {
	p := Page{Name: "machine", Card: *card}
	amps, ok := card.Figure("current")
	if !ok {
		return p, mistake.In("feed", "no current is computed for this job", "give a wire feed or amps: 250ipm, 93A")
	}
	share := arcShare(card)
	p.duty(card, amps, share)
	p.load(card, amps)
	p.loadLine(card, amps)
	p.nozzle(card)
	p.stocks(card, share)
	p.Because(practice, "tapped or numbered volts are not the arc's: set by the meter while it burns, not by the knob")
	return p, nil
}

// arcShare is the share of the time within a seam that the arc burns: less than 1 for a timed arc.
func arcShare(card *calc.Card) float64 {
	if on, off := card.Used.ArcOn.V, card.Used.ArcOff.V; card.Used.Mode == "timed" && on > 0 {
		return on / (on + off)
	}
	return 1
}

// duty is how many minutes in ten the power source may run at this current, up to its rated current.
func (p *Page) duty(card *calc.Card, amps calc.Figure, share float64) {
	j := &card.Job
	if !j.RatedAmps.Set {
		lacks := "amps and duty were"
		if j.RatedDuty.Set {
			lacks = "amps were"
		}
		p.Because(ownJob, "the plate's %s not given: no duty at this current", lacks)
		return
	}
	loads, source := amps, "IEC 60974-1, ten-minute period (memory high)"
	if rms, ok := card.Figure("effective_current"); ok {
		loads, source = rms, source+"; pulses count by their root mean square"
	}
	switch {
	case !j.RatedDuty.Set:
		p.Because(ownJob, "the plate's duty was not given: no duty at this current")
		return
	case loads.Value > j.RatedAmps.V:
		p.Because(Own("IEC 60974-1, duty cycle"), "duty at this current: not judged, because %.0f A is more than its "+
			"plate allows; try the plate's column with more amps, or less wire feed", loads.Value)
		return
	}
	at := func(a float64) float64 {
		rms, _ := formula.EffectiveAmps(a, share)
		d, _ := formula.DutyAt(rms, j.RatedAmps.V, j.RatedDuty.V) // 0 for no current
		return d
	}
	v := at(loads.Value)
	b := calc.OwnBasis("min(100, {D}·({R}/{I})²)", source,
		calc.In("D", "plate duty", j.RatedDuty.V, "%"), plate(j), loads.As("I"))
	if share < 1 {
		b.Formula, b.Source = "min(100, {D}·({R}/{I})²/{s})", b.Source+"; a timed arc counts by its root mean square"
		b.Inputs = append(b.Inputs, calc.Derived("s", calc.ArcShare, share, ""))
	}
	p.add("duty_cycle", "%", v, at(loads.High), at(loads.Low), b)
	p.Because(Own(tables.DutyPeriod.Source), "that is %.1f minutes of arc in ten", v/10)
	if v < 30 {
		p.Warn("duty-low", "IEC 60974-1, duty cycle",
			"%.0f %% duty: this power source will trip in a long seam. Let it cool, or less current.", v)
	}
}

func plate(j *calc.Job) calc.Input { return calc.In("R", "plate current", j.RatedAmps.V, "A") }

// load is the current as a share of the rated current.
func (p *Page) load(card *calc.Card, amps calc.Figure) {
	rated := card.Job.RatedAmps
	if !rated.Set {
		return
	}
	f := p.add("load", "%", 100*amps.Value/rated.V, 100*amps.Low/rated.V, 100*amps.High/rated.V,
		calc.OwnBasis("100·{I}/{R}", "definition", amps.As("I"), plate(&card.Job)))
	if f.Value > 100 {
		p.Warn("over-plate", "IEC 60974-1, duty cycle", "%.0f A is more than the plate's %.0f A: this power source "+
			"may not reach it, or trips.", amps.Value, rated.V)
	}
}

// loadLine is the voltage at which power sources are rated, for comparison with the arc's own.
func (p *Page) loadLine(card *calc.Card, amps calc.Figure) {
	if volts, ok := card.Figure("volts"); ok {
		p.Because(Own(tables.LoadLineBase.Source), "set the arc to the card's %.1f V; the rated volts are those at "+
			"which power sources are compared at this current", volts.Value)
	}
	line := "14 + 0.05·{I}"
	if formula.LoadLine(amps.Value) >= tables.LoadLineCap.V {
		line = "min(44, 14 + 0.05·{I})"
	}
	p.add("load_line", "V", formula.LoadLine(amps.Value), formula.LoadLine(amps.Low), formula.LoadLine(amps.High),
		calc.RowBasis(line, tables.LoadLineBase.Origin, amps.As("I")))
}

// nozzle is the gas flow at which the flow in the nozzle turns turbulent and draws in air.
func (p *Page) nozzle(card *calc.Card) {
	if !card.Job.NozzleBore.Set {
		p.Because(ownJob, "the nozzle's bore was not given: the flow at which the gas draws air in is not computed")
		return
	}
	g, re := &card.Setup.Gas, tables.LaminarReynolds
	v := calc.SmoothFlow(&card.Job, g)
	p.add("gas_ceiling", "L/min", v, v*re.Low/re.V, v*re.High/re.V, calc.RowBasis("0.06·pi·{Re}·{mu}·{d}/(4·{rho})",
		re.Origin, calc.In("Re", "Reynolds number at which the flow breaks up", re.V, ""),
		calc.In("mu", "viscosity of the gas", 1000*tables.ArgonViscosity.V, "mPa s"),
		calc.In("d", "bore", card.Job.NozzleBore.V, "mm"), calc.In("rho", "gas density", g.Density.V, "kg/m3")))
	p.repeat(card, "gas-turbulent")
}

// stocks says how long full spools last.
func (p *Page) stocks(card *calc.Card, share float64) {
	rate, ok := card.Figure("deposition_rate")
	if !ok {
		return
	}
	melt := rate.Value / calc.Deposition(card.Used.Mode).V * share // g/min
	for _, s := range tables.Spools {
		if s.ID == "4 in" || s.ID == "14 in" || s.ID == "S100" {
			continue
		}
		p.Because(s.Mass.Origin, "a full %s spool (%.3g kg as sold in steel) lasts for %.0f minutes of arc", s.ID,
			s.Mass.V, s.Mass.V*1000/melt)
	}
}
