package advice

import (
	"fmt"
	"math"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// Cost computes what a seam takes in time, wire and gas, and, at the user's prices, in money; beside it the same seam
// in steel wire with the extra work that it brings.
func Cost(card *calc.Card) (Page, error) {
	p := Page{Name: "cost", Card: *card}
	travel, ok1 := card.Figure("travel")
	rate, ok2 := card.Figure("deposition_rate")
	if !ok1 || !ok2 || !(travel.Value > 0) {
		return p, mistake.In("travel", "none is computed for this job", "give feed and travel, as 250ipm and 6mm/s")
	}
	if card.Used.Joint == "plug" {
		return p, mistake.In("joint", "a plug has no seam to cost", "choose another joint, or time one plug and count")
	}
	length, err := p.beadLength(card)
	if err != nil {
		return p, err
	}
	time := p.seamTime(card, length, travel)
	wire := p.wire(card, time, rate)
	gas := p.gas(card, time)
	p.money(card, time, wire, gas, length)
	p.order(wire, gas)
	return p, nil
}

// beadLength is the length of bead laid, mm: the seam, or the turns and layers of an overlay, times the pieces.
func (p *Page) beadLength(card *calc.Card) (float64, error) {
	count := card.Used.Count.Or(1)
	if card.Used.Joint != "overlay" {
		length := p.seamLength(card) * count
		return length * p.passes(card), nil
	}
	over, _, err := laidOver(card)
	if err != nil {
		return 0, err
	}
	time, _ := over.Figure("arc_time")
	travel, _ := card.Figure("travel")
	p.because("the bead of the whole overlay, as on its own page", calc.OwnCalc, "mass balance")
	p.seam(card, overlayLength)
	return time.Value * travel.Value * count, nil
}

// passes is how many beads a bevelled butt takes: the groove over what one bead lays; other joints take one.
func (p *Page) passes(card *calc.Card) float64 {
	t := calc.MinCore(card.Setup.Joined())
	area, ok := card.Figure("bead_area")
	if card.Used.Joint != "butt" || t <= tables.SheetThickest.V || !ok {
		return 1
	}
	beads := func(angle, bead float64) float64 { return formula.GroovePasses(t, angle, bead) }
	b := tables.Bevel
	n := beads(b.V, area.Value)
	p.add("passes", "1", n, min(n, beads(b.Low, area.High)), max(n, beads(b.High, area.Low)), calc.Basis{Formula: "max(1, {t}²·tan({a}/2)/{A}), rounded up", Source: b.Source, Known: string(b.Known), Inputs: []calc.Input{
		{Symbol: "t", Name: "thinner member", Value: t, Unit: "mm"}, {Symbol: "a", Name: "groove's angle", Value: b.V, Unit: "deg", Assumed: true}, {Symbol: "A", Name: "one bead", Value: area.Value, Unit: "mm2", Derived: true}}})
	return n
}

// seamTime is how long the seams take, a timed arc's with its pauses and with the arc's own time beside it.
func (p *Page) seamTime(card *calc.Card, length float64, travel calc.Figure) calc.Figure {
	t := func(v float64) float64 { return length / v }
	name, share := "arc_time", arcShare(card)
	if share < 1 {
		name = "seam_time"
	}
	p.add(name, "s", t(travel.Value), t(travel.High), t(travel.Low), calc.Basis{Formula: "{L}/{v}", Source: "definition; starts, stops and a timed arc's first spot left out", Known: calc.OwnCalc,
		Inputs: []calc.Input{{Symbol: "L", Name: "seam in all", Value: length, Unit: "mm"}, {Symbol: "v", Name: "travel", Value: travel.Value, Unit: "mm/s", Derived: true}}})
	whole := p.Figures[len(p.Figures)-1]
	if share < 1 {
		p.add("arc_time", "s", whole.Value*share, whole.Low*share, whole.High*share, calc.Basis{Formula: "{s}·{on}/({on} + {off})", Source: "definition: the arc pauses the rest", Known: calc.OwnCalc,
			Inputs: []calc.Input{{Symbol: "s", Name: "seam time", Value: whole.Value, Unit: "s", Derived: true}, {Symbol: "on", Name: "arc on", Value: card.Used.ArcOn.V, Unit: "s"}, {Symbol: "off", Name: "arc off", Value: card.Used.ArcOff.V, Unit: "s"}}})
	}
	return whole
}

// wire is what melts, spatter included.
func (p *Page) wire(card *calc.Card, time, rate calc.Figure) calc.Figure {
	share := arcShare(card)
	per := share / 60 / p.efficiency(card) // g for each g/min and s
	p.add("wire_used", "g", time.Value*rate.Value*per, time.Low*rate.Low*per, time.High*rate.High*per, calc.Basis{Formula: "{t}·{m}/60/{e}", Source: "mass balance", Known: calc.OwnCalc,
		Inputs: []calc.Input{{Symbol: "t", Name: "arc time", Value: time.Value * share, Unit: "s", Derived: true}, {Symbol: "m", Name: "deposition", Value: rate.Value, Unit: "g/min", Derived: true},
			{Symbol: "e", Name: "deposition efficiency", Value: p.efficiency(card), Unit: "1"}}})
	return p.Figures[len(p.Figures)-1]
}

func (p *Page) gas(card *calc.Card, time calc.Figure) calc.Figure {
	flow, ok := card.Figure("gas_flow")
	if !ok {
		return calc.Figure{}
	}
	l := func(t, f float64) float64 {
		v, err := formula.GasVolume(f, t, 0, 0)
		if err != nil {
			return 0
		}
		return v
	}
	p.add("gas_used", "L", l(time.Value, flow.Value), l(time.Low, flow.Low), l(time.High, flow.High), calc.Basis{Formula: "{q}·{t}/60", Source: "definition; flow before and after the arc left out", Known: calc.OwnCalc,
		Inputs: []calc.Input{{Symbol: "q", Name: "gas flow", Value: flow.Value, Unit: "L/min"}, {Symbol: "t", Name: "time of the seams", Value: time.Value, Unit: "s", Derived: true}}})
	return p.Figures[len(p.Figures)-1]
}

// money is wire, gas and labour at the user's prices; what has no price has no cost.
func (p *Page) money(card *calc.Card, time, wire, gas calc.Figure, length float64) {
	u, unit := &card.Used, card.Used.Currency
	if unit == "" {
		unit = "money"
	}
	total := calc.Figure{Name: "total_cost", Unit: unit, Basis: calc.Basis{Source: "the user's prices", Known: calc.OwnCalc}}
	add := func(name, formula string, f calc.Figure, price calc.Input, per float64) {
		by := price.Value / per
		p.add(name, unit, f.Value*by, f.Low*by, f.High*by, calc.Basis{Formula: formula, Source: "the user's prices", Known: calc.OwnCalc,
			Inputs: []calc.Input{{Symbol: "n", Name: calc.FigureLabel(f.Name), Value: f.Value, Unit: f.Unit, Derived: true}, price}})
		total.Value, total.Low, total.High = total.Value+f.Value*by, total.Low+f.Low*by, total.High+f.High*by
		sum(&total.Basis, &p.Figures[len(p.Figures)-1])
	}
	if u.WirePrice.Set {
		add("wire_cost", "{n}/1000·{p}", wire, calc.Input{Symbol: "p", Name: "price of a kg", Value: u.WirePrice.V, Unit: unit}, 1000)
	}
	if u.GasPrice.Set {
		add("gas_cost", "{n}/1000·{p}", gas, calc.Input{Symbol: "p", Name: "price of a m³", Value: u.GasPrice.V, Unit: unit}, 1000)
	}
	hours := p.labour(card, time)
	if u.LabourRate.Set {
		add("labour_cost", "{n}·{p}", hours, calc.Input{Symbol: "p", Name: "rate of an hour", Value: u.LabourRate.V, Unit: unit}, 1)
	}
	if u.WirePrice.Set || u.GasPrice.Set || u.LabourRate.Set {
		p.Figures = append(p.Figures, total)
		p.because(fmt.Sprintf("labour and overhead are about %.0f %% of what such work costs", tables.LabourShare.V), string(tables.LabourShare.Known), tables.LabourShare.Source)
		p.steel(card, wire, gas, hours, length, total, unit)
		return
	}
	p.because("no price was given for wire, gas or labour: nothing in money", calc.OwnCalc, "the job")
}

// sum adds a figure to a formula that is a sum.
func sum(b *calc.Basis, f *calc.Figure) {
	symbol := string(rune('a' + len(b.Inputs)))
	if b.Formula != "" {
		b.Formula += " + "
	}
	b.Formula += "{" + symbol + "}"
	b.Inputs = append(b.Inputs, calc.Input{Symbol: symbol, Name: calc.FigureLabel(f.Name), Value: f.Value, Unit: f.Unit, Derived: true})
}

// labour is the working hours for the arc time, by the operating factor.
func (p *Page) labour(card *calc.Card, time calc.Figure) calc.Figure {
	f := tables.OperatingFactor
	if v := card.Used.Operating; v.Set {
		f = tables.Datum{V: v.V, Low: v.V, High: v.V, Unit: "%", Origin: f.Origin}
	} else {
		p.Card.Assumed = append(p.Card.Assumed, calc.Assumption{Field: "operating", Value: calc.Number(f.V) + "%", Why: "arc-on share of the time, from handbooks"})
	}
	h := func(t, share float64) float64 { return t / 3600 / (share / 100) }
	p.add("labour_time", "h", h(time.Value, f.V), h(time.Low, f.High), h(time.High, f.Low), calc.Basis{Formula: "{t}/3600/({o}/100)", Source: f.Source, Known: string(f.Known),
		Inputs: []calc.Input{{Symbol: "t", Name: "time of the seams", Value: time.Value, Unit: "s", Derived: true}, {Symbol: "o", Name: "operating factor", Value: f.V, Unit: "%", Assumed: !card.Used.Operating.Set}}})
	return p.Figures[len(p.Figures)-1]
}

// steel compares the same bead in steel wire: as much metal, as quickly, then grinding and zinc repair.
func (p *Page) steel(card *calc.Card, wire, gas, hours calc.Figure, length float64, total calc.Figure, unit string) {
	u := &card.Used
	if !u.SteelPrice.Set {
		p.because("steel wire was not priced: with its price, and minutes a metre of grinding and zinc repair, it is compared", calc.OwnCalc, "the job")
		return
	}
	steel, ok := tables.FillerByID("steel")
	if !ok {
		return
	}
	ratio := steel.Density.V / card.Setup.Filler.Density.V
	extra := (u.Grinding.V + u.ZincRepair.V) / 60 * length / 1000 // h
	cost := func(w, g, h float64) float64 {
		return w*ratio*u.SteelPrice.V/1000 + g*u.GasPrice.V/1000 + (h+extra)*u.LabourRate.V
	}
	v := cost(wire.Value, gas.Value, hours.Value)
	p.add("steel_cost", unit, v, cost(wire.Low, gas.Low, hours.Low), cost(wire.High, gas.High, hours.High), calc.Basis{Formula: "{w}/1000·{p} + {n}/1000·{q} + ({h} + ({g} + {z})/60·{L}/1000)·{r}",
		Source: "the user's prices and times; as much steel as bronze by volume, as quickly, then grinding and zinc repair", Known: calc.OwnCalc, Inputs: []calc.Input{
			{Symbol: "w", Name: "steel wire of the same volume", Value: wire.Value * ratio, Unit: "g", Derived: true}, {Symbol: "p", Name: "price of a kg of steel wire", Value: u.SteelPrice.V, Unit: unit},
			{Symbol: "n", Name: calc.FigureLabel("gas_used"), Value: gas.Value, Unit: "L", Derived: true}, {Symbol: "q", Name: "price of a m³ of gas", Value: u.GasPrice.V, Unit: unit},
			{Symbol: "h", Name: calc.FigureLabel("labour_time"), Value: hours.Value, Unit: "h", Derived: true}, {Symbol: "g", Name: "grinding", Value: u.Grinding.V, Unit: "min/m"}, {Symbol: "z", Name: "zinc repair", Value: u.ZincRepair.V, Unit: "min/m"},
			{Symbol: "L", Name: "seam in all", Value: length, Unit: "mm"}, {Symbol: "r", Name: "rate of an hour", Value: u.LabourRate.V, Unit: unit}}})
	text := fmt.Sprintf("bronze is cheaper here by %.3g %s, between the middles of both bands", v-total.Value, unit)
	if v < total.Value {
		text = fmt.Sprintf("steel is cheaper here by %.3g %s, between the middles of both bands, if its heat and its zinc damage may be", total.Value-v, unit)
	}
	p.because(text, calc.OwnCalc, "the two totals")
	p.because("no heat, distortion or strength is priced in this", calc.OwnCalc, "the two totals")
}

// order is whole spools and bottles for the high ends.
func (p *Page) order(wire, gas calc.Figure) {
	for _, s := range tables.Spools() {
		if s.ID == "8 in" || s.ID == "S200" {
			p.because(fmt.Sprintf("wire: %.0f of %s spools, %.3g kg each as sold in steel", math.Ceil(wire.High/1000/s.Mass.V), s.ID, s.Mass.V), string(s.Mass.Known), s.Mass.Source)
		}
	}
	for _, c := range tables.Cylinders() {
		if c.ID == "125 ft3" || c.ID == "50 L 200 bar" {
			p.because(fmt.Sprintf("gas: %.0f of %s bottles, %.3g m³ each", math.Ceil(gas.High/1000/c.Volume.V), c.ID, c.Volume.V), string(c.Volume.Known), c.Volume.Source)
		}
	}
}
