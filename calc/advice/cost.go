package advice

import (
	"cmp"
	"math"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// Cost computes the time, wire and gas that a seam takes and, at the user's prices, the money. It compares them
// with the same seam in steel wire and the extra work that steel brings.
func Cost(card *calc.Card) (Page, error) {
	p := Page{Name: "cost", Card: *card}
	if card.Used.Joint == "plug" {
		return p.plugCost(card)
	}
	travel, ok1 := card.Figure("travel")
	rate, ok2 := card.Figure("deposition_rate")
	if !ok1 || !ok2 || !(travel.Value > 0) {
		hint := "give feed and travel, as 250ipm and 6mm/s"
		if card.Used.Mode == "timed" { // its travel follows from its times
			hint = "this timed arc has no rhythm: choose the mode dip"
		}
		return p, mistake.In("travel", "none is computed for this job", hint)
	}
	length, passes, err := p.beadLength(card)
	if err != nil {
		return p, err
	}
	time := p.seamTime(card, length, travel)
	wire := p.wire(card, time, rate)
	gas := p.gas(card, time)
	p.money(card, time, wire, gas, length.Value/passes.Value)
	p.order(wire, gas)
	return p, nil
}

// beadLength is the length of bead laid, mm: every pass of the seam, or all turns and layers of an overlay,
// times the number of pieces. passes are those of the seam.
func (p *Page) beadLength(card *calc.Card) (laid, passes calc.Figure, err error) {
	count := card.Used.Count.Or(1)
	passes = calc.Figure{Value: 1, Low: 1, High: 1}
	if card.Used.Joint != "overlay" {
		length := p.seamLength(card)
		if f, ok := card.Figure("passes"); ok {
			passes = p.take(f)
		}
		laid.Value, laid.Low = passes.Value*length*count, passes.Low*length*count
		laid.High = passes.High * length * count
		return laid, passes, nil
	}
	over, _, err := overlayBead(card)
	if err != nil {
		return laid, passes, err
	}
	time, _ := over.Figure("arc_time")
	travel, _ := card.Figure("travel")
	p.Because(Own("mass balance"), "the bead of the whole overlay, as on its own page")
	p.seam(card, overlayLength)
	v := time.Value * travel.Value * count
	return calc.Figure{Value: v, Low: v, High: v}, passes, nil
}

// seamTime is how long the seams take. For a timed arc this includes the pauses, and the arc-on time is added
// too.
func (p *Page) seamTime(card *calc.Card, length, travel calc.Figure) calc.Figure {
	name, share := "arc_time", arcShare(card)
	if share < 1 {
		name = "seam_time"
	}
	whole := p.add(name, "s", length.Value/travel.Value, length.Low/travel.High, length.High/travel.Low,
		calc.OwnBasis("{L}/{v}", "definition; starts, stops and a timed arc's first spot left out",
			calc.In("L", "every pass of every seam", length.Value, "mm"), travel.As("v")))
	if share < 1 {
		p.scaled("arc_time", "s", whole, share,
			calc.OwnBasis("{s}·{on}/({on} + {off})", "definition: the arc pauses the rest", whole.As("s"),
				calc.In("on", "arc on", card.Used.ArcOn.V, "s"), calc.In("off", "arc off", card.Used.ArcOff.V, "s")))
	}
	return whole
}

// wire adds the wire that is melted, including spatter.
func (p *Page) wire(card *calc.Card, time, rate calc.Figure) calc.Figure {
	share := arcShare(card)
	per := share / 60 / calc.Deposition(card.Used.Mode).V // g for each g/min and s
	return p.add("wire_used", "g", time.Value*rate.Value*per, time.Low*rate.Low*per, time.High*rate.High*per,
		calc.OwnBasis("{t}·{m}/60/{e}", "mass balance", calc.Derived("t", "arc time", time.Value*share, "s"),
			rate.As("m"), calc.In("e", "deposition efficiency", calc.Deposition(card.Used.Mode).V, "1")))
}

func (p *Page) gas(card *calc.Card, time calc.Figure) calc.Figure {
	flow, ok := card.Figure("gas_flow")
	if !ok {
		return calc.Figure{}
	}
	l := func(t, f float64) float64 { v, _ := formula.GasVolume(f, t); return v }
	return p.add("gas_used", "L", l(time.Value, flow.Value), l(time.Low, flow.Low), l(time.High, flow.High),
		calc.OwnBasis("{q}·{t}/60", "definition; flow before and after the arc left out",
			calc.In("q", "gas flow", flow.Value, "L/min"), calc.Derived("t", "time of the seams", time.Value, "s")))
}

// money adds the cost of wire, gas and labour at the user's prices; anything without a price is left out.
func (p *Page) money(card *calc.Card, time, wire, gas calc.Figure, length float64) {
	hours := p.labour(card, time)
	if failed := failing(card); failed != "" {
		p.Warn("no-price", calc.SectionSource, "%s. No cost is given: a bead that has to be laid again costs at "+
			"least twice as much. Change the setting first; the window computes which opens a good zone.", failed)
		return
	}
	travel, _ := card.Figure("travel")
	feed, _ := card.Figure("wire_feed")
	if (travel.Usual() || feed.Usual()) && card.Used.Mode != "timed" && card.Used.Joint != "plug" {
		p.Warn("no-price", calc.SectionSource, "No verdict is computed for this joint, so this setting is only where "+
			"a test begins. No cost is given: find feed and travel on a test bead, give both, and ask again.")
		return
	}
	u, unit := &card.Used, cmp.Or(card.Used.Currency, "money")
	var parts []calc.Figure
	add := func(name, formula string, f calc.Figure, price calc.Input, per float64) {
		parts = append(parts, p.scaled(name, unit, f, price.Value/per, calc.OwnBasis(formula, "the user's prices",
			f.As("n"), price)))
	}
	if u.WirePrice.Set {
		add("wire_cost", "{n}/1000·{p}", wire, calc.In("p", "price of a kg", u.WirePrice.V, unit), 1000)
	}
	if u.GasPrice.Set {
		add("gas_cost", "{n}/1000·{p}", gas, calc.In("p", "price of a m³", u.GasPrice.V, unit), 1000)
	}
	rate := calc.In("p", "rate of an hour", u.LabourRate.V, unit)
	if u.LabourRate.Set {
		add("labour_cost", "{n}·{p}", hours, rate, 1)
	}
	if repair, ok := p.repairTime(card, length); ok && u.LabourRate.Set {
		add("zinc_repair_cost", "{n}·{p}", repair, rate, 1)
	}
	if len(parts) == 0 {
		p.Because(ownJob, "no price was given for wire, gas or labour, so no cost is computed")
		return
	}
	total := p.total(unit, parts)
	p.Because(tables.LabourShare.Origin, "labour and overhead are about %.0f %% of what such work costs",
		tables.LabourShare.V)
	p.steel(card, wire, gas, hours, length, total, unit)
}

// total adds the sum of some costs.
func (p *Page) total(unit string, parts []calc.Figure) calc.Figure {
	sum := calc.NewFigure("total_cost", unit, 0, 0, 0, calc.OwnBasis("", "the user's prices"))
	var terms []string
	for i, f := range parts {
		symbol := string(rune('a' + i))
		terms = append(terms, "{"+symbol+"}")
		sum.Value, sum.Low, sum.High = sum.Value+f.Value, sum.Low+f.Low, sum.High+f.High
		sum.Basis.Inputs = append(sum.Basis.Inputs, f.As(symbol))
	}
	sum.Basis.Formula = strings.Join(terms, " + ")
	return p.take(sum)
}

// labour is the working time, h, that the arc time needs at the operating factor.
func (p *Page) labour(card *calc.Card, time calc.Figure) calc.Figure {
	f := p.operating(card)
	h := func(t, share float64) float64 { return t / 3600 / (share / 100) }
	return p.add("labour_time", "h", h(time.Value, f.V), h(time.Low, f.High), h(time.High, f.Low),
		calc.RowBasis("{t}/3600/({o}/100)", f.Origin, calc.Derived("t", "time of the seams", time.Value, "s"),
			calc.Input{Symbol: "o", Name: "operating factor", Value: f.V, Unit: "%",
				Assumed: !card.Used.Operating.Set}))
}

// steel compares the bead with one in steel wire: the same volume at the same speed, then grinding and zinc
// repair.
func (p *Page) steel(card *calc.Card, wire, gas, hours calc.Figure, length float64, total calc.Figure, unit string) {
	u := &card.Used
	if !u.SteelPrice.Set {
		p.Because(ownJob, "steel wire was not priced: with its price, and minutes a metre of grinding and zinc "+
			"repair, it is compared")
		return
	}
	steel, ok := tables.Fillers.ByID("steel")
	if !ok {
		return
	}
	ratio := steel.Density.V / card.Setup.Filler.Density.V
	repair := 0.0
	if boilsZinc(card) {
		repair = u.ZincRepair.V
	}
	extra := (u.Grinding.V + repair) / 60 * length / 1000 // h
	cost := func(w, g, h float64) float64 {
		return w*ratio*u.SteelPrice.V/1000 + g*u.GasPrice.V/1000 + (h+extra)*u.LabourRate.V
	}
	v := cost(wire.Value, gas.Value, hours.Value)
	p.add("steel_cost", unit, v, cost(wire.Low, gas.Low, hours.Low), cost(wire.High, gas.High, hours.High),
		calc.OwnBasis("{w}/1000·{p} + {n}/1000·{q} + ({h} + ({g} + {z})/60·{L}/1000)·{r}", "the user's prices and "+
			"times; as much steel as bronze by volume, as quickly, then grinding and zinc repair", calc.Derived("w",
			"steel wire of the same volume", wire.Value*ratio, "g"), calc.In("p", "price of a kg of steel wire",
			u.SteelPrice.V, unit), gas.As("n"), calc.In("q", "price of a m³ of gas", u.GasPrice.V, unit), hours.As("h"),
			calc.In("g", "grinding", u.Grinding.V, "min/m"), calc.In("z", "zinc repair", repair, "min/m"),
			calc.In("L", "seam in all", length, "mm"), calc.In("r", "rate of an hour", u.LabourRate.V, unit)))
	cheaper, proviso := "bronze", ""
	if v < total.Value {
		cheaper, proviso = "steel", ", if its heat and the damage to the zinc are acceptable"
	}
	both := Own("the two totals")
	p.Because(both, "%s is cheaper here by %s %s, by the middle of both bands%s", cheaper,
		calc.Digits(math.Abs(v-total.Value), 3), unit, proviso)
	p.Because(both, "this comparison does not price heat, distortion or strength")
}
