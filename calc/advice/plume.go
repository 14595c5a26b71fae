package advice

import (
	"fmt"
	"math"
	"strings"

	"brazebooth/calc"
	"brazebooth/tables"
)

const fumeSource = "emission factors of welding wires times what melts, the wire's metals by how easily they boil; " +
	"no measurement on this wire"

// plume collects what goes into the air while the arc burns.
type plume struct {
	p         *Page
	operating tables.Datum // share of the shift during which the arc burns, %
	agents    []airborne
}

// airborne is an agent with its rate while the arc burns, mg/s.
type airborne struct {
	agent, name string
	rate        calc.Figure
}

// wire adds the wire's fume and its metals.
func (f *plume) wire(card *calc.Card) {
	rate, ok := card.Figure("deposition_rate")
	if !ok {
		return
	}
	melted := rate.Value / calc.Deposition(card.Used.Mode).V * arcShare(card) / 60 // g/s
	d := tables.FumeFactor
	spread := func(end float64, of float64) float64 { return math.Abs(math.Log(end / of)) }
	down := math.Exp(-math.Hypot(spread(d.Low, d.V), spread(rate.Low, rate.Value)))
	up := math.Exp(math.Hypot(spread(d.High, d.V), spread(rate.High, rate.Value)))
	fume := f.p.add("fume_rate", "mg/s", d.V*melted, d.V*melted*down, d.V*melted*up, calc.RowBasis("{e}·{m}", d.Origin,
		calc.In("e", "fume over wire melted", d.V, "g/kg"), calc.Derived("m", "wire melted", melted, "g/s")))
	known := tables.ProcessFume
	f.p.Because(known.Origin, "all particles of this process are published as %.0f to %.0f mg/s: the wire's fume "+
		"computed here is %.1f", known.Low, known.High, fume.Value)
	for _, e := range tables.FumeElements {
		if in, ok := content(&card.Setup.Filler, e.Element); ok {
			f.metal(&e, in, fume)
		}
	}
	f.chromium(fume)
}

// content is the share of an element in a wire, %, as the middle of its limits. Copper is the remainder. It
// returns false if the wire holds too little to count.
func content(w *tables.Filler, element string) (ends, bool) {
	const least = 0.5 // %: below it is an impurity
	rest := ends{100, 100, 100}
	for _, l := range w.Limits {
		if l.Element == element {
			return ends{l.Min, (l.Min + l.Max) / 2, l.Max}, l.Max >= least
		}
		if l.Element != "Cu+Ag" {
			rest.low, rest.mid, rest.high = rest.low-l.Max, rest.mid-(l.Min+l.Max)/2, rest.high-l.Min
		}
	}
	return rest, element == "Cu" && !w.Comparison()
}

// metal adds one of the wire's metals in the fume.
func (f *plume) metal(e *tables.FumeElement, in ends, fume calc.Figure) {
	part := func(content, enriched float64) float64 { return min(100, content*enriched) / 100 }
	d := e.Enriched
	v := part(in.mid, d.V)
	low := math.Exp(-math.Hypot(math.Log(fume.Value/fume.Low), math.Log(v/part(max(in.low, in.mid/4), d.Low))))
	high := math.Exp(math.Hypot(math.Log(fume.High/fume.Value), math.Log(part(in.high, d.High)/v)))
	r := f.p.add("fume_"+e.Name, "mg/s", fume.Value*v, fume.Value*v*low, min(fume.Value*v*high, fume.High),
		calc.RowBasis("{f}·min(100, {c}·{e})/100", d.Origin, fume.As("f"),
			calc.In("c", e.Name+" in the wire", in.mid, "%"), calc.In("e", "enriched in the fume", d.V, "1")))
	if e.Agent == "" {
		f.p.Because(Own(fumeSource), "for %s no limit of its own is listed here: it counts among the particles", e.Name)
		return
	}
	f.agents = append(f.agents, airborne{e.Agent, e.Name, r})
}

// chromium adds the hexavalent chromium from stainless sheet, which stays solid and gives off little.
func (f *plume) chromium(fume calc.Figure) {
	if !f.p.has(tables.Stainless) {
		return
	}
	s, c, h := tables.SheetShare, tables.StainlessChromium, tables.Hexavalent
	at := func(fume, s, c, h float64) float64 { return fume * s * c * h / 1e6 }
	r := f.p.add("fume_chromium", "mg/s", at(fume.Value, s.V, c.V, h.V), at(fume.Value, s.Low, c.Low, h.Low),
		at(fume.Value, s.High, c.High, h.High), calc.RowBasis("{f}·{s}·{c}·{h}/1000000", s.Origin, fume.As("f"),
			calc.Assumed("s", "share of the fume from the sheet", s.V, "%"),
			calc.In("c", "chromium in the sheet", c.V, "%"), calc.In("h", "of it hexavalent", h.V, "%")))
	f.agents = append(f.agents, airborne{"chromium-vi", "chromium(VI) of the sheet", r})
	f.p.Because(s.Origin, "the sheet's chromium is counted for a base that stays solid; where it melts there is many "+
		"times as much")
}

// zinc adds the coating's zinc and the part of it that becomes fume as oxide.
func (f *plume) zinc(z ends, perLength calc.Basis, travel calc.Figure) {
	p, a := f.p, tables.ZincAirborne
	inputs := []calc.Input{calc.Derived("z", "zinc driven off", z.mid, "g/m"), travel.As("v")}
	source := airSource + "; rates are those while the arc burns"
	zinc := p.add("zinc_per_length", "g/m", z.mid, z.low, z.high, perLength)
	p.scaled("zinc_rate", "g/h", zinc, travel.Value*3.6, calc.OwnBasis("3.6·{z}·{v}", source, inputs...))
	burnt := tables.ZincOxideRatio.V * travel.Value // mg/s for each g/m
	spread := func(end, of, share float64) float64 { return math.Hypot(math.Log(end/of), math.Log(share/a.V)) }
	v := burnt * z.mid * a.V
	oxide := calc.Figure{Value: v, Low: v * math.Exp(-spread(z.low, z.mid, a.Low)),
		High: min(v*math.Exp(spread(z.high, z.mid, a.High)), burnt*z.high)}
	p.add("zinc_oxide_rate", "g/h", 3.6*v, 3.6*oxide.Low, 3.6*oxide.High, calc.OwnBasis("1.245·{a}·3.6·{z}·{v}",
		source+"; "+a.Source, append(inputs, calc.Assumed("a", "share of it that becomes fume", a.V, "1"))...))
	f.agents = append(f.agents, airborne{"zinc-oxide", "zinc oxide", oxide})
	p.Because(a.Origin, "of the zinc driven off some %.0f %% (%.0f to %.0f) is counted as fume: the rest is trapped "+
		"in the joint, goes into bronze and iron, or settles white beside the seam. Which hood it takes is judged "+
		"with the high end", 100*a.V, 100*a.Low, 100*a.High)
	if fume, ok := p.Figure("fume_rate"); ok {
		known := tables.ProcessFume
		p.Because(known.Origin, "with the wire's fume that is some %s mg/s; %.0f to %.0f mg/s are published for "+
			"coated sheet, with nothing said of coat and sheet", calc.Number(round2(fume.Value+v)),
			known.Low, known.High)
	}
}

// compareLimits compares the agents with their limits and says which hood, where, with which suction.
func (f *plume) compareLimits(card *calc.Card) {
	p := f.p
	index, tight, sure := ends{}, 0.0, 0.0
	var governs string
	var terms []string
	var in []calc.Input
	for i, a := range f.agents {
		limit, ok := strictest(a.agent)
		if !ok {
			continue
		}
		at := func(rate float64) float64 { return f.operating.V / 100 * rate / limit.Limit.V }
		index = ends{index.low + at(a.rate.Low), index.mid + at(a.rate.Value), index.high + at(a.rate.High)}
		if sure += at(a.rate.Value); a.agent == "zinc-oxide" { // its share of fume is only assumed
			sure += at(a.rate.High - a.rate.Value)
		}
		if v := at(a.rate.Value); v > tight {
			tight, governs = v, fmt.Sprintf("%s with %s %s mg/m³", a.name, limit.Body, calc.Number(limit.Limit.V))
		}
		f.limits(&a)
		terms = append(terms, fmt.Sprintf("{r%[1]d}/{C%[1]d}", i))
		in = append(in, calc.Derived(fmt.Sprintf("r%d", i), a.name, a.rate.Value, "mg/s"),
			calc.In(fmt.Sprintf("C%d", i), "strictest limit of "+a.name, limit.Limit.V, "mg/m3"))
	}
	p.hoodFlow()
	if !(index.mid > 0) {
		return
	}
	p.Because(Own(fumeSource), "the tightest is %s; the agents add up, each over its strictest limit", governs)
	in = append(in, calc.Input{Symbol: "o", Name: "arc-on share of the shift", Value: f.operating.V, Unit: "%",
		Assumed: !card.Used.Operating.Set})
	f.capture(index, sure, strings.Join(terms, " + "), in)
}

// limits states an agent's rate beside every body's limits, in one sentence.
func (f *plume) limits(a *airborne) {
	var list []string
	for _, l := range tables.ExposureLimits {
		if l.Agent == a.agent && (l.Span == tables.ShiftMean || l.Span == tables.Ceiling) {
			list = append(list, fmt.Sprintf("%s %s (%s, %s)", l.Body, calc.Number(l.Limit.V), l.Span, l.Form))
		}
	}
	least, _ := strictest(a.agent)
	f.p.Because(least.Limit.Origin, "%s in the plume, %s to %s mg/s; limits in mg/m³: %s", a.name,
		calc.Number(round2(a.rate.Low)), calc.Number(round2(a.rate.High)), strings.Join(list, ", "))
}

// strictest is the lowest limit of an agent as a mean over a shift.
func strictest(agent string) (least tables.ExposureLimit, found bool) {
	for _, l := range tables.ExposureLimits {
		if l.Agent == agent && l.Span == tables.ShiftMean && (!found || l.Limit.V < least.Limit.V) {
			least, found = l, true
		}
	}
	return least, found
}

// capture is the share of the plume that the hood must catch in a room with the least mechanical ventilation
// that the law allows. The general air needed for what a hood misses is only given in words, because its
// interval is too wide. sure is the index by which the hood is judged: the middle values, but zinc oxide at its
// high end.
func (f *plume) capture(index ends, sure float64, sum string, in []calc.Input) {
	p, room, hood := f.p, tables.VentilationFlow, tables.HoodCapture
	need := func(index float64) float64 { return 100 * max(0, 1-room.V/60/index) }
	c := p.add("capture_needed", "%", need(index.mid), need(index.low), need(index.high), calc.OwnBasis(
		"100·max(0, 1 − {V}/60/({o}/100·("+sum+")))",
		fumeSource+"; 29 CFR 1910.1000(d)(2), the sum of C/L at most one, in a room with the law's least ventilation",
		append([]calc.Input{calc.In("V", "air of the room for one welder", room.V, "m3/min")}, in...)...))
	flow := func(index, caught float64) string {
		return calc.Number(upTo2(CleanAir(3.6*index*(1-caught/100), 1)))
	}
	p.Because(hood.Origin, "general air is the last resort: what a hood misses that catches %.0f %% asks for some %s "+
		"m³/h (%s to %s), too wide to plan a fan by; without a hood it takes %.0f times as much, which no room has",
		hood.V, flow(index.mid, hood.V), flow(index.low, hood.High), flow(index.high, hood.Low), 100/(100-hood.V))
	caught := hood.V
	if sure > index.mid { // with zinc a hood that catches little must be enough too
		caught = hood.Low
	}
	if high := need(sure); max(c.Value, high) > caught {
		end := ""
		if math.Round(high) > math.Round(c.Value) {
			end = fmt.Sprintf(", %.0f %% with zinc at its high end", high)
		}
		p.Warn("hood-alone", hood.Source, "A movable hood catches some %.0f %% in practice (%.0f to %.0f), and this "+
			"asks for about %.0f %%%s: extraction on the gun or a hood that encloses the joint, and a fitted "+
			"respirator.",
			hood.V, hood.Low, hood.High, c.Value, end)
	}
}

// CleanAir returns the clean air, m³/h, that dilutes a rate in g/h to a limit in mg/m³ if it mixes perfectly.
func CleanAir(rate, limit float64) float64 { return 1000 * rate / limit }

// hoodFlow is the suction of a movable hood by its distance from the arc.
func (p *Page) hoodFlow() {
	h := tables.HoodFlows
	const cubicFoot = 0.3048 * 0.3048 * 0.3048 * 60 // m3/h for each ft3/min, exact
	near, far := h[0], h[len(h)-1]
	p.add("hood_flow", "m3/h", upTo2(near.Flow.V*cubicFoot), upTo2(near.Flow.V*cubicFoot), upTo2(far.Flow.V*cubicFoot),
		calc.RowBasis("row of the table for the hood's distance, rounded up", near.Flow.Origin,
			calc.In("", "at 100 to 150 mm", near.Flow.V, "ft3/min"),
			calc.In("", "at 250 to 300 mm", far.Flow.V, "ft3/min")))
	var flows []string
	for _, row := range h {
		flows = append(flows, fmt.Sprintf("%.0f m³/h (%.0f cfm) at %.0f to %.0f mm", upTo2(row.Flow.V*cubicFoot),
			row.Flow.V, math.Round(row.From*25.4/50)*50, math.Round(row.To*25.4/50)*50))
	}
	p.Because(near.Flow.Origin, "a movable hood first: its opening beside or behind the arc, so that the plume is "+
		"drawn away from the face, with a flange, at most 300 mm off; it draws %s: %.1f m/s at the work",
		strings.Join(flows, ", "), tables.HoodSpeed.V)
}
