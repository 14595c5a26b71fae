package advice

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"

	"brazebooth/calc"
	"brazebooth/internal/crew"
	"brazebooth/tables"
)

// Ranked is one filler compared with a job.
type Ranked struct {
	ID       string  `json:"id"`
	Name     string  `json:"name"`
	Score    float64 `json:"score"` // sum of its reasons' points; only for ranking
	RuledOut bool    `json:"ruled_out"`
	// CannotWet is true if the bead does not wet both members at the setting that would be suggested for this
	// filler.
	CannotWet bool     `json:"cannot_wet,omitzero"`
	For       []Reason `json:"for"`
	Against   []Reason `json:"against"`
	Colour    string   `json:"colour"`
	Tensile   float64  `json:"tensile"` // guide strength of the deposit, MPa
	// Margin, Wire and Cost are for the setting that would be suggested for this filler.
	Margin *float64 `json:"margin,omitempty"`         // to the nearest edge, %
	Wire   *float64 `json:"wire_per_metre,omitempty"` // g/m
	Cost   *float64 `json:"cost_per_metre,omitempty"` // at the given price, in the job's currency
}

// Fillers ranks every brazing wire for this pair of metals: by the trade's rules, by what melts first, and by
// how much room the computed window leaves with it. The page's reasons are about the pair: where the arc
// points, how the heat splits, which member governs. It takes up to half a second.
func Fillers(ctx context.Context, card *calc.Card) (Page, error) {
	p := Page{Name: "filler", Card: *card}
	all := tables.Fillers
	list := make([]Ranked, 0, len(all))
	for i := range all {
		if !all[i].Comparison() {
			list = append(list, Ranked{ID: all[i].ID, Name: all[i].Name, Colour: all[i].Colour,
				Tensile: all[i].Tensile.V, For: []Reason{}, Against: []Reason{}})
		}
	}
	var wg crew.Crew
	for i := range list {
		wg.Go(func() { list[i].judge(ctx, card) })
	}
	wg.Wait()
	if err := ctx.Err(); err != nil {
		return Page{}, err
	}
	slices.SortStableFunc(list, func(a, b Ranked) int {
		for _, last := range [...][2]bool{{a.RuledOut, b.RuledOut}, {a.CannotWet, b.CannotWet}} {
			if last[0] != last[1] {
				return map[bool]int{false: -1, true: 1}[last[0]]
			}
		}
		return cmp.Compare(b.Score, a.Score)
	})
	p.Ranking = list
	p.pair(card)
	if list[0].ID != card.Used.Filler {
		p.Because(Own("the rules and the window"), "the card has %s; the first of this list is %s",
			card.Used.Filler, list[0].ID)
	}
	return p, nil
}

// judge collects the points for and against a filler.
func (r *Ranked) judge(ctx context.Context, card *calc.Card) {
	f, _ := tables.Fillers.ByID(r.ID)
	r.RuledOut = calc.RuledOut(&f, card)
	r.rules(&f, card)
	r.room(ctx, card)
}

// rules applies the trade's rules and compares what melts first.
func (r *Ranked) rules(f *tables.Filler, card *calc.Card) {
	for _, rule := range tables.FillerRules {
		if rule.Filler == r.ID && calc.Applies(rule.On, card) {
			r.point(rule.Points, rule.Origin, "%s", rule.Text)
		}
	}
	r.melting(card, f)
	if !f.Fitted {
		r.point(-0.5, tables.Origin{Source: f.Phi.Source, Known: tables.Worked},
			"its current is less well known: read the amps on the first bead")
	}
	if r.ID == "cumn13al8" {
		r.point(-1, tables.Origin{Source: "manganese limits, OSHA CH_250200", Known: tables.Read},
			"manganese fume: a respirator fitted for it")
	}
	if card.Used.Use == "load" {
		mild, _ := tables.Fillers.ByID("cusi3")
		if d := f.Tensile.V - mild.Tensile.V; d != 0 {
			r.point(d/100, f.Tensile.Origin, "guide strength %.0f MPa, silicon bronze %.0f MPa", f.Tensile.V,
				mild.Tensile.V)
		}
	}
}

func (r *Ranked) point(points float64, o tables.Origin, format string, args ...any) {
	r.Score += points
	reason := newReason(o, format, args)
	reason.Weight = math.Abs(points)
	if points < 0 {
		r.Against = append(r.Against, reason)
	} else {
		r.For = append(r.For, reason)
	}
}

// melting compares the filler's liquidus with the solidus of the base that melts first.
func (r *Ranked) melting(card *calc.Card, f *tables.Filler) {
	first := calc.MeltsFirst(card)
	gap := first.Solidus.V - f.Liquidus.V
	text := fmt.Sprintf("the %s begins to melt at %.0f °C, this filler is liquid at %.0f °C", plainFamily[first.Family],
		first.Solidus.V, f.Liquidus.V)
	switch {
	case first.Family == tables.BrassFam:
		r.point(-5, first.Solidus.Origin, "%s", text+": brass melts and boils off zinc first")
	case gap <= 0 && first.Family == tables.Bronze:
		r.point(-1, first.Solidus.Origin, "%s", text+": that is welding")
	case gap <= 0:
		r.point(-5, first.Solidus.Origin, "%s", text+": the base melts first")
	case gap < 100:
		r.point(-1, first.Solidus.Origin, "%s", text+fmt.Sprintf(": only %.0f K of room", gap))
	default:
		r.point(math.Min(1, gap/500), first.Solidus.Origin, "%s", text)
	}
}

// plainFamily names the families as they are called in a sentence.
var plainFamily = map[tables.Family]string{tables.Steel: "steel", tables.Stainless: "stainless steel",
	tables.CastIron: "iron", tables.CopperFam: "copper", tables.Bronze: "bronze", tables.BrassFam: "brass"}

// room says how much room the computed window leaves with this filler while feed and travel are open, and what
// a metre of seam takes.
func (r *Ranked) room(ctx context.Context, card *calc.Card) {
	job := card.Job
	if r.ID != card.Used.Filler {
		job = calc.WithoutReadings(job)
	}
	job.Filler, job.Feed, job.Amps, job.Travel, job.Volts = r.ID, calc.Opt{}, calc.Opt{}, calc.Opt{}, calc.Opt{}
	c, err := calc.SolveContext(ctx, job)
	if err != nil {
		return
	}
	r.wetting(&c)
	against := -2.0 // an edge that is missed by far has no margin
	if m, ok := c.Figure("margin"); ok {
		r.Margin, against = &m.Value, math.Max(-2, m.Value/10)
	}
	switch near := c.DecidingEdge(); {
	case near == nil:
	case !near.Met:
		r.point(against, ownSection, "no setting that a hand can hold is good with it")
	case r.Margin != nil:
		r.point(math.Min(2, *r.Margin/10), ownSection, "a good setting with %.0f %% to the nearest edge", *r.Margin)
	}
	g, ok := wirePerMetre(&c)
	if !ok {
		return
	}
	r.Wire = &g
	if card.Job.WirePrice.Set {
		v := g / 1000 * card.Job.WirePrice.V
		r.Cost = &v
	}
}

// wetting notes that a filler does not wet at the setting that would be suggested for it. It notes nothing if
// no section is computed.
func (r *Ranked) wetting(c *calc.Card) {
	for _, e := range c.Edges {
		if e.Name == "wets" && !e.Met {
			r.CannotWet = true
			r.point(-3, ownSection, "it does not wet this joint: at the best setting that is found a member stays too "+
				"cold, or the bead stands too steep")
		}
	}
}

// wirePerMetre is the wire that a metre of seam takes, including spatter, g.
func wirePerMetre(c *calc.Card) (float64, bool) {
	rate, ok1 := c.Figure("deposition_rate")
	travel, ok2 := c.Figure("travel")
	if !ok1 || !ok2 || !(travel.Value > 0) {
		return 0, false
	}
	return rate.Value / 60 / travel.Value * 1000 * arcShare(c) / calc.Deposition(c.Used.Mode).V, true
}
