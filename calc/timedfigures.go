package calc

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"brazebooth/calc/thinsheet"
	"brazebooth/tables"
)

const timedSource = "own computation in the sheet's plane, stirring assumed; published on and off times for arc brazing were not found"

// fill writes the run's figures and what ends each range.
func (g *timedRun) fill(s *Timed) {
	t, b := &g.times, &g.times.OnOff
	add := func(name, unit, formula string, value, low, high float64, in ...Input) {
		s.Figures = append(s.Figures, Figure{name, value, low, high, unit,
			Basis{Formula: formula, Inputs: append(in, g.inputs()...), Source: timedSource, Known: OwnCalc}})
	}
	setting := func(name, formula string, given bool, v, low, high float64, in ...Input) {
		if given { // a setting that is given has no interval; the range has figures of its own
			s.Figures = append(s.Figures, GivenFigure(name, v, "s"))
			return
		}
		add(name, "s", formula, v, min(low, v), max(high, v), in...)
	}
	setting("arc_on", "√({a}·{b})", g.in.FixedOn > 0, b.On, t.OnMin, t.OnMax, Derived("a", "shortest on", t.OnMin, "s"), Derived("b", "longest on", t.OnMax, "s"))
	setting("arc_off", "until half of the filler's freezing range is behind in the puddle's middle", g.in.FixedOff > 0, b.Off, t.OffMin, t.OffMax)
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
	g.ends(add)
	depLow, depHigh := g.board.intervals[inDeposit].low/k[inDeposit], g.board.intervals[inDeposit].high/k[inDeposit]
	add("fill_per_spot", "mm3", "1000·{m}/60·{t_on}/{rho}", volume, volume*depLow, volume*depHigh,
		Derived("m", "filler laid", g.in.Feed*60, "g/min"), Derived("t_on", "arc on", b.On, "s"), Input{Symbol: "rho", Name: tRho.name, Value: k[inDensity], Unit: tRho.unit})
	g.seam(s, add)
	g.limits(s)
	s.Trace = heatTrace(t.Trace)
}

// stepReason says where the step comes from: the fill of a spot of this volume, or the puddle, or, where the first
// spots were limited by the one and the later ones by the other, between both.
func (g *timedRun) stepReason(volume float64) (formula string, in []Input) {
	b, k := &g.times.OnOff, &g.board.inputs
	switch fill := volume / g.in.Section; {
	case b.StepBy == thinsheet.StepOverlap:
		return "half of the puddle's length, so that the next spot finds liquid or hot metal", nil
	case math.Abs(fill-b.Step) > 1e-9*b.Step:
		return "what the spot fills, levelled into the gap, on average with what the first spots' puddles allowed", nil
	}
	return "{V}/({g}·{t}·(1 + {r}))", []Input{Derived("V", "fill of one spot", volume, "mm3"), {Symbol: "g", Name: "root opening", Value: k[inGap], Unit: "mm"},
		{Symbol: "t", Name: "thinner sheet's metal alone", Value: MinCore(g.card.Setup.Joined()), Unit: "mm"}, {Symbol: "r", Name: "metal above the gap over metal in it", Value: k[inReinforce]}}
}

// heatTrace is a run's trace from its own start.
func heatTrace(points []thinsheet.Point) []HeatPoint {
	list := make([]HeatPoint, len(points))
	for i, p := range points {
		list[i] = HeatPoint{p.Time - points[0].Time, p.On, p.Edge, p.Centre, p.Back}
	}
	return list
}

// addFigure puts a figure of the run on the answer.
type addFigure func(name, unit, formula string, value, low, high float64, in ...Input)

// ends adds the ends of both ranges with their intervals: the model's own, joined with that of the arc's power.
func (g *timedRun) ends(add addFigure) {
	t, b := &g.times, &g.times.OnOff
	weak, strong := g.board.powerInterval()
	banded := func(name, formula string, v float64, form, steep tables.Datum) {
		low := math.Exp(-math.Hypot(math.Log(form.Low), steep.V*math.Log(strong)))
		high := math.Exp(math.Hypot(math.Log(form.High), steep.V*math.Log(weak)))
		add(name, "s", formula, v, v*low, v*high)
	}
	wet := "until the back face of both root edges has reached the filler's liquidus"
	if g.in.Surface {
		wet = "until the joint's line has reached the filler's liquidus"
	}
	banded("arc_on_min", wet, t.OnMin, tables.GapOnMin, tables.GapOnMinPower)
	banded("arc_on_max", "until a fifth of the base metal is molten at the root edge, in the repeating cycle", t.OnMax, tables.GapOnMax, tables.GapOnMaxPower)
	banded("arc_off_min", "until the puddle's middle falls to the filler's liquidus", t.OffMin, tables.GapOff, tables.GapOffPower)
	banded("arc_off_max", "until it falls to the filler's solidus", t.OffMax, tables.GapOff, tables.GapOffPower)
	if t.FirstOn > 0 {
		banded("first_spot_on", "arc on, or longer until the cold joint is wet as arc_on_min wets the warm one", max(b.On, t.FirstOn), tables.GapOnMin, tables.GapOnMinPower)
	}
}

// seam adds what the whole seam takes.
func (g *timedRun) seam(s *Timed, add addFigure) {
	t, b := &g.times, &g.times.OnOff
	s.Seam = g.card.Used.Length.Or(tables.SeamShown.V)
	s.Count = max(1, int(math.Ceil(s.Seam/b.Step-1e-9)))
	first := max(b.On, t.FirstOn)
	time := func(on, off float64) float64 { return first + float64(s.Count-1)*(on+off) }
	add("seam_time", "s", "{f} + {n}·({t_on} + {t_off})", time(b.On, b.Off), time(min(t.OnMin, b.On), min(t.OffMin, b.Off)), time(max(t.OnMax, b.On), max(t.OffMax, b.Off)),
		Derived("f", "first spot", first, "s"), Derived("n", fmt.Sprintf("spots after it, for %.0f mm", s.Seam), float64(s.Count-1), "1"), Derived("t_on", "arc on", b.On, "s"), Derived("t_off", "arc off", b.Off, "s"))
	heat := g.in.Power * b.On / b.Step
	add("net_heat", "J/mm", "{eta}·{U}·{I}·{t_on}/{step}", heat, heat, heat, Input{Symbol: "eta", Name: tEta.name, Value: g.board.inputs[inEta]}, Derived("U", tVolts.name, g.o[oVolts], "V"), Derived("I", tAmps.name, g.o[oAmps], "A"),
		Derived("t_on", "arc on", b.On, "s"), Derived("step", "spot step", b.Step, "mm"))
}

// powerInterval is the relative interval of volts times amps.
func (b *board) powerInterval() (low, high float64) {
	s := new(spread)
	if err := b.chain.propagate(&b.inputs, &b.intervals, s); err != nil || !(s.value[oAmps]*s.value[oVolts] > 0) {
		return 0.7, 1.4 // never seen: the chain gave these values a moment ago
	}
	part := func(edge *[outs]float64) float64 {
		return math.Hypot(edge[oAmps]/s.value[oAmps]-1, edge[oVolts]/s.value[oVolts]-1)
	}
	return 1 - min(part(&s.low), 0.9), 1 + part(&s.high)
}

// inputs are what the times rest on, strongest first.
func (g *timedRun) inputs() []Input {
	k := &g.board.inputs
	return []Input{
		{Name: "net power of the arc", Value: g.in.Power, Unit: "W", Derived: true},
		{Name: "stirring of the liquid filler", Value: tables.Stirring.V, Unit: "1", Assumed: true},
		{Name: "arc's half-width (sigma)", Value: k[inSpread], Unit: "mm", Assumed: true},
		{Name: "sheet's metal alone", Value: k[inThick1], Unit: "mm"},
		{Name: "root opening", Value: k[inGap], Unit: "mm"},
		{Name: "filler laid", Value: g.in.Feed * 60, Unit: "g/min", Derived: true},
		{Name: "filler solidus", Value: g.in.Filler.Solidus, Unit: "C"},
		{Name: "filler liquidus", Value: g.in.Filler.Liquidus, Unit: "C"},
		{Name: "base solidus", Value: g.lowestSolidus(), Unit: "C"},
		{Name: "first spot on cells of half the side, longer by", Value: 100 * g.times.Grid, Unit: "%", Derived: true},
	}
}

// limits names what ends each range.
func (g *timedRun) limits(s *Timed) {
	t := &g.times
	say := func(figure, end string, r thinsheet.Reason) {
		s.Limits = append(s.Limits, RangeLimit{figure, end, string(r), reasonText[r]})
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

// reasonText says what each reason means to a welder.
var reasonText = map[thinsheet.Reason]string{
	thinsheet.EdgeCold:     "shorter, and a root edge is not wetted through",
	thinsheet.JointCold:    "shorter, and the filler does not wet the joint's line",
	thinsheet.EdgeMelts:    "longer melts the base metal at the root edge",
	thinsheet.Patience:     "longer is no rhythm; the edge would still bear it",
	thinsheet.CentreLiquid: "shorter, and the arc strikes into a puddle that is all liquid and can fall through",
	thinsheet.Frozen:       "longer, and the puddle is frozen before the next spot",
	thinsheet.NextCold:     "longer, and the next spot no longer wets both edges",
	thinsheet.StepFill:     "further apart leaves the gap unfilled",
	thinsheet.StepOverlap:  "further apart no longer overlaps the last puddle by half",
	thinsheet.NeverWets:    "The root edges never reach the filler's liquidus at this setting: more wire feed, or warm the parts.",
	thinsheet.MeltsFirst:   "The root edge melts on top before its back is wet: less wire feed, or thinner sheet.",
	thinsheet.TooHot:       "Too hot for timed arc: the edge melts before a hand or a timer can let go. Less wire feed or a thinner wire.",
	thinsheet.TwoSettings:  "No one timer setting: the cold first spot needs longer than a warm one bears. Hold the first spot longer, or warm the parts, then keep these times.",
	thinsheet.WideGap:      "The gap is wider than the arc's own width: it finds little sheet to land on. Not modelled; close the gap, back it or set a patch in.",
	thinsheet.TooThick:     "Above about 3 mm the heat flows in three dimensions: not modelled.",
	thinsheet.NoCycle:      "The cycle did not settle within fourteen spots: take these times as a start only.",
	roundHole:              "A plug is round: the plane's model has no hole in it. Not modelled.",
	openFillet:             "An open root is modelled between edges that face each other (butt, corner): close this joint, or give it as a butt.",
}

// sentence says what prevents a rhythm, or that the times are the project's own.
func (g *timedRun) sentence() string {
	r := g.times.Reason
	if r == thinsheet.TwoSettings && g.times.FirstOn == 0 {
		return "A cold first spot never wets at this heat; once the sheet is warm these times do. Warm the parts first, or more wire feed for the first spot."
	}
	if r != "" {
		return reasonText[r]
	}
	if list := g.strained(); len(list) > 0 {
		return list[0].Text
	}
	return "By this computation one timer setting keeps the rhythm; good to about a factor of two, stirring assumed, published times not found. Try it on scrap with the same gap."
}

// warn says what a welder must know of these times; fume, eyes and fire come before it.
func (g *timedRun) warn(card *Card, s *Timed) {
	var list []Warning
	if g.times.OnOff.On > 0 {
		list = append(list, Warning{"timed-own", Caution,
			"On and off times are this program's own computation, good to about a factor of two: reading amps and volts narrows them most. Try them on scrap with the same gap.", timedSource})
	}
	if s.Reason != "" {
		list = append(list, Warning{"timed-" + s.Reason, Caution, s.Why, timedSource})
	}
	list = append(list, g.strained()...)
	if g.card.Job.Travel.Set {
		list = append(list, Warning{"travel-unused", Info, "A timed arc has no travel to set: it follows from step, on and off. The one given was left out.", timedSource})
	}
	if gap := g.card.Used.Gap.V; gap > 0 && gap <= tables.ClosedGap.V {
		list = append(list, Warning{"gap-closed", Info, fmt.Sprintf("A root opening of %g mm is taken as closed.", gap), timedSource})
	}
	card.Warnings = append(card.Warnings, list...)
	slices.SortStableFunc(card.Warnings, func(a, b Warning) int { return cmp.Compare(rank(a.Severity), rank(b.Severity)) })
}

// strained says where given times leave the range, and where the range is too narrow for a hand.
func (g *timedRun) strained() []Warning {
	t, b := &g.times, &g.times.OnOff
	if !(b.On > 0) || !(t.OnMin > 0) {
		return nil
	}
	var list []Warning
	tell := func(code, format string, args ...any) {
		list = append(list, Warning{"timed-" + code, Caution, fmt.Sprintf(format, args...), timedSource})
	}
	const slack = 1.001 // a time read off the card and typed back
	switch {
	case b.On > t.OnMax*slack:
		tell("on-long", "On for %.2f s melts the base metal at the root edge, which bears about %.2f s: shorter, or less wire feed.", b.On, t.OnMax)
	case b.On*slack < t.OnMin:
		tell("on-short", "On for %.2f s does not wet the joint, which needs about %.2f s: longer, or more wire feed.", b.On, t.OnMin)
	}
	switch {
	case b.Off > t.OffMax*slack:
		tell("off-long", "Off for %.2f s freezes the puddle before the next spot, after about %.2f s: shorter.", b.Off, t.OffMax)
	case b.Off*slack < t.OffMin:
		tell("off-short", "Off for %.2f s strikes into a puddle that is all liquid until about %.2f s: it can fall through. Longer.", b.Off, t.OffMin)
	}
	switch {
	case g.in.FixedStep == 0:
	case b.Step > 1.01*b.StepMost && b.StepBy == thinsheet.StepFill:
		tell("step-fill", "A step of %.1f mm leaves the gap unfilled: a spot fills about %.1f mm.", b.Step, b.StepMost)
	case b.Step > 1.01*b.StepMost:
		tell("step-far", "A step of %.1f mm does not overlap the last puddle by half: about %.1f mm does.", b.Step, b.StepMost)
	case b.Step < 0.25*b.StepMost:
		tell("step-short", "A step of %.1f mm piles metal and heat up: about %.1f mm would do.", b.Step, b.StepMost)
	}
	if b.Off < tables.QuickestOff.V && g.in.FixedOff == 0 {
		tell("off-quick", "Off for %.2f s is a timer's to keep, not a hand's.", b.Off)
	}
	if room := t.OnMax - t.OnMin; room < tables.NarrowestOn.V && g.in.FixedOn == 0 {
		tell("narrow", "On has only %.3f s of room, less than a hand repeats and far less than its ends are sure of: treat it as a start for trials on scrap, or change feed or gap.", room)
	}
	return list
}

// widen computes the ranges of a gap a quarter wider.
func (g *timedRun) widen(e *effort, s *Timed) error {
	if !(g.in.Gap > 0) {
		return nil
	}
	in := g.in
	in.Gap *= wider
	in.Section *= wider
	in.FixedOn, in.FixedOff, in.FixedStep = 0, 0, 0
	if err := acquire(e.ctx); err != nil {
		return err
	}
	t, err := e.bridge(&in, nil)
	release()
	if over := e.over(); over != nil {
		return over
	}
	if err != nil {
		return fmt.Errorf("gap a quarter wider: %w", err)
	}
	s.Wider = &Wider{Gap: in.Gap, Reason: string(t.Reason), Why: reasonText[t.Reason], On: [2]float64{t.OnMin, t.OnMax}, Off: [2]float64{t.OffMin, t.OffMax}, Step: t.OnOff.Step}
	return nil
}
