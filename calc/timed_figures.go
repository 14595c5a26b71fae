package calc

import (
	"fmt"
	"math"

	"brazebooth/calc/effort"
	"brazebooth/calc/thinsheet"
	"brazebooth/tables"
)

const timedSource = "own computation in the sheet's plane, stirring assumed; published on and off times for arc " +
	"brazing were not found"

// fill writes the run's figures and what ends each range.
func (g *timedRun) fill(s *Timed) {
	t, b := &g.times, &g.times.OnOff
	add := func(name, unit, formula string, value, low, high float64, in ...Input) {
		s.Figures = append(s.Figures, Figure{name, value, low, high, unit,
			OwnBasis(formula, timedSource, append(in, g.inputs()...)...)})
	}
	setting := func(name, formula string, given bool, v, low, high float64, in ...Input) {
		if given { // given settings have no interval; the range has its own figures
			s.Figures = append(s.Figures, GivenFigure(name, v, "s"))
			return
		}
		add(name, "s", formula, v, min(low, v), max(high, v), in...)
	}
	setting("arc_on", "√({a}·{b})", g.in.FixedOn > 0, b.On, t.OnMin, t.OnMax, Derived("a", "shortest on", t.OnMin, "s"),
		Derived("b", "longest on", t.OnMax, "s"))
	setting("arc_off", "until the puddle's middle has cooled through half of the filler's freezing range",
		g.in.FixedOff > 0, b.Off, t.OffMin, t.OffMax)
	k := &g.board.inputs
	volume := g.in.Feed * b.On / g.in.Filler.Density
	scale := func(on float64) float64 { return b.Step * on / b.On }
	low, high := min(scale(t.OnMin), b.Step), max(scale(t.OnMax), b.Step)
	if b.StepBy != thinsheet.StepFill {
		low, high = 0.7*b.Step, b.Puddle*0.6
	}
	if g.in.FixedStep > 0 {
		s.Figures = append(s.Figures, GivenFigure("spot_step", b.Step, "mm"))
	} else {
		formula, in := g.stepReason(volume)
		add("spot_step", "mm", formula, b.Step, min(low, b.Step), max(high, b.Step), in...)
	}
	g.timer(add)
	g.ends(add)
	depLow, depHigh := g.board.intervals[inDeposit].low/k[inDeposit], g.board.intervals[inDeposit].high/k[inDeposit]
	add("fill_per_spot", "mm3", "1000·{m}/60·{t_on}/{rho}", volume, volume*depLow, volume*depHigh,
		Derived("m", "filler laid", g.in.Feed*60, "g/min"), Derived("t_on", "arc on", b.On, "s"),
		In("rho", tRho.name, k[inDensity], tRho.unit))
	g.seam(s, add)
	g.limits(s)
	s.Trace = heatTrace(t.Trace)
}

// stepReason says where the step comes from: the fill of a spot of this volume, or the puddle, or a mean of both where
// the first limited some spots and the second others.
func (g *timedRun) stepReason(volume float64) (formula string, in []Input) {
	b, k := &g.times.OnOff, &g.board.inputs
	switch fill := volume / g.in.Section; {
	case b.StepBy == thinsheet.StepOverlap:
		return "half of the puddle's length, so that the next spot finds liquid or hot metal", nil
	case math.Abs(fill-b.Step) > 1e-9*b.Step:
		return "what the spot fills, levelled into the gap, on average with what the first spots' puddles allowed", nil
	}
	return "{V}/({g}·{t}·(1 + {r}))", []Input{Derived("V", "fill of one spot", volume, "mm3"), In("g", "root opening",
		k[inGap], "mm"), In("t", "thinner sheet's metal alone", MinCore(g.card.Setup.Joined()), "mm"),
		In("r", "metal above the gap over metal in it", k[inReinforce], "")}
}

// heatTrace is a run's trace with times from its own start.
func heatTrace(points []thinsheet.Point) []HeatPoint {
	list := make([]HeatPoint, len(points))
	for i, p := range points {
		list[i] = HeatPoint{p.Time - points[0].Time, p.On, p.Edge, p.Centre, p.Back}
	}
	return list
}

// timer adds the setting of a timer that starts the wire and not the arc: the wire must reach the sheet before the arc
// burns.
func (g *timedRun) timer(add addFigure) {
	b, in := &g.times.OnOff, g.runIn()
	r := Input{Symbol: "r", Name: "run-in of the wire until the arc burns", Value: in.V, Unit: "s",
		Assumed: !g.card.Job.RunIn.Set}
	add("timer_on", "s", "{t_on} + {r}", b.On+in.V, b.On+in.Low, b.On+in.High, Derived("t_on", "arc on", b.On, "s"), r)
}

// runIn is the time from the timer's start to the arc's, s.
func (g *timedRun) runIn() tables.Datum {
	if r := g.card.Job.RunIn; r.Set {
		return tables.Datum{V: r.V, Low: r.V, High: r.V}
	}
	return tables.RunIn
}

// addFigure adds a figure of the run to the answer.
type addFigure func(name, unit, formula string, value, low, high float64, in ...Input)

// ends adds the ends of both ranges, with the model's own interval joined with that of the arc's power.
func (g *timedRun) ends(add addFigure) {
	t, b := &g.times, &g.times.OnOff
	weak, strong := g.board.readPower(&g.card)
	banded := func(name, formula string, v float64, end int, form, steep tables.Datum) {
		if r := &g.card.Used.Rhythm; r.Set() {
			two := 2 * r.Doubt(end)
			add(name, "s", formula, v, v*math.Exp(-two), v*math.Exp(two), Derived("", "trials that narrowed it",
				float64(r.Trials), ""))
			return
		}
		low := math.Exp(-math.Hypot(math.Log(form.Low), steep.V*math.Log(strong)))
		high := math.Exp(math.Hypot(math.Log(form.High), steep.V*math.Log(weak)))
		add(name, "s", formula, v, v*low, v*high)
	}
	wet := "until the back face of both root edges has reached the filler's liquidus"
	if g.in.Surface {
		wet = "until the joint's line has reached the filler's liquidus"
	}
	banded("arc_on_min", wet, t.OnMin, 0, tables.GapOnMin, tables.GapOnMinPower)
	banded("arc_on_max", "until a fifth of the base metal is molten at the root edge, in the repeating cycle", t.OnMax,
		1, tables.GapOnMax, tables.GapOnMaxPower)
	banded("arc_off_min", "until the puddle's middle falls to the filler's liquidus", t.OffMin, 2, tables.GapOff,
		tables.GapOffPower)
	banded("arc_off_max", "until it falls to the filler's solidus", t.OffMax, 3, tables.GapOff, tables.GapOffPower)
	if t.FirstOn > 0 {
		banded("first_spot_on", "arc on, or longer until the cold joint is wet as arc_on_min wets the warm one",
			max(b.On, t.FirstOn), 0, tables.GapOnMin, tables.GapOnMinPower)
	}
}

// seam adds spots, time and heat of the whole seam.
func (g *timedRun) seam(s *Timed, add addFigure) {
	t, b := &g.times, &g.times.OnOff
	s.Seam = g.card.Used.Length.Or(tables.SeamShown.V)
	s.Count = max(1, int(math.Ceil(s.Seam/b.Step-1e-9)))
	first := max(b.On, t.FirstOn)
	time := func(on, off float64) float64 { return first + float64(s.Count-1)*(on+off) }
	add("seam_time", "s", "{f} + {n}·({t_on} + {t_off})", time(b.On, b.Off), time(min(t.OnMin, b.On),
		min(t.OffMin, b.Off)), time(max(t.OnMax, b.On), max(t.OffMax, b.Off)), Derived("f", "first spot", first, "s"),
		Derived("n", fmt.Sprintf("spots after it, for %.0f mm", s.Seam), float64(s.Count-1), "1"),
		Derived("t_on", "arc on", b.On, "s"), Derived("t_off", "arc off", b.Off, "s"))
	heat := g.in.Power * b.On / b.Step
	low, high := heat, heat // the card has the interval: it knows what moves volts and amps together
	if g.read() {
		weak, strong := g.board.readPower(&g.card)
		eta := 2 * g.board.etaPart()
		low, high = heat*(1-math.Hypot(1-weak, eta)), heat*(1+math.Hypot(strong-1, eta))
	}
	add("net_heat", "J/mm", "{eta}·{U}·{I}·{t_on}/{step}", heat, low, high,
		In("eta", tEta.name, g.board.inputs[inEta], ""), Derived("U", tVolts.name, g.o[oVolts], "V"), Derived("I",
			tAmps.name, g.o[oAmps], "A"), Derived("t_on", "arc on", b.On, "s"),
		Derived("step", "spot step", b.Step, "mm"))
}

// inputs are what the times depend on, strongest first.
func (g *timedRun) inputs() []Input {
	k := &g.board.inputs
	return []Input{Derived("", "net power of the arc", g.in.Power, "W"),
		g.assumed("stirring of the liquid filler", g.in.Stir, "1"),
		g.assumed("arc's half-width (sigma)", k[inSpread], "mm"), In("", "sheet's metal alone", k[inThick1], "mm"),
		In("", "root opening", k[inGap], "mm"), Derived("", "filler laid", g.in.Feed*60, "g/min"),
		In("", "filler solidus", g.in.Filler.Solidus, "C"), In("", "filler liquidus", g.in.Filler.Liquidus, "C"),
		In("", "base solidus", MeltsFirst(&g.card).Solidus.V, "C"),
		Derived("", "first spot on cells of half the side, longer by", 100*g.times.Grid, "%")}
}

// assumed is an input that counts as assumed until trials taught it.
func (g *timedRun) assumed(name string, v float64, unit string) Input {
	if g.card.Used.Rhythm.Set() {
		return Derived("", name+", by trials", v, unit)
	}
	return Assumed("", name, v, unit)
}

// limits names what ends each range.
func (g *timedRun) limits(s *Timed) {
	t := &g.times
	say := func(figure, end string, r thinsheet.Reason) {
		text := reasonOf(r, &g.card)
		if r == thinsheet.Falls {
			text = "longer lets the puddle fall: tension no longer carries its weight and the arc's push"
		}
		s.Limits = append(s.Limits, RangeLimit{figure, end, string(r), text})
	}
	if g.in.Surface {
		say("arc_on", "low", thinsheet.JointCold)
	} else {
		say("arc_on", "low", thinsheet.EdgeCold)
	}
	say("arc_on", "high", t.OnMaxBy)
	say("arc_off", "low", thinsheet.CentreLiquid)
	say("arc_off", "high", t.OffMaxBy)
	if t.OnOff.StepBy != "" {
		say("spot_step", "high", t.OnOff.StepBy)
	}
}

// widen computes the ranges for a gap a quarter wider, with less feed where this feed would be too hot.
func (g *timedRun) widen(e *effort.Account, job Job) (*Wider, error) {
	if !(g.in.Gap > 0) {
		return nil, nil
	}
	j := job
	j.Gap = Some(g.in.Gap * wider)
	j.ArcOn, j.ArcOff, j.SpotStep = Opt{}, Opt{}, Opt{}
	if !j.Amps.Set {
		j.Feed = Some(g.o[oFeed] * 0.06)
	}
	w, err := runTimed(e, j)
	if err == nil && w.side() < 0 && !job.Feed.Set && !job.Amps.Set {
		j.Feed = Opt{}
		w, err = w.better(e, j)
	}
	if err == nil {
		err = w.goOn(e, (*thinsheet.Run).Settle, (*thinsheet.Run).Off)
	}
	if over := e.Over(); over != nil {
		return nil, over
	}
	if err != nil {
		return nil, fmt.Errorf("gap a quarter wider: %w", err)
	}
	t := &w.times
	return &Wider{Gap: j.Gap.V, Feed: w.o[oFeedMin], Reason: string(t.Reason), Why: reasonOf(t.Reason, &w.card),
		On: [2]float64{t.OnMin, t.OnMax}, Off: [2]float64{t.OffMin, t.OffMax}, Step: t.OnOff.Step}, nil
}
