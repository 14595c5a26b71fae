package advice

import (
	"fmt"
	"math"

	"brazebooth/calc"
	"brazebooth/tables"
)

// pair adds what matters only because there are two members.
func (p *Page) pair(card *calc.Card) {
	if card.Setup.One {
		return
	}
	m := &card.Setup.Members
	p.split(card)
	if r, ok := tables.PairRuleOf(m[0].Metal.Family, m[1].Metal.Family); ok {
		p.Because(r.Origin, "%s", r.Text)
	}
	p.governing(card)
	if !card.Job.Aim.Set && !calc.AimKnown(&card.Setup.Members) {
		p.Because(ownSection, "the arc is taken at the joint's line, and that is not judged: copper and its alloys "+
			"carry more heat away and melt sooner than iron, and no test on such a pair stands behind the "+
			"cross-section; try both sides on scrap")
	}
	if a := card.Used.Aim.V; math.Abs(a) >= calc.LeastAim || card.Job.Aim.Set && a != 0 {
		p.Because(ownSection, "the arc is taken %.1f mm off the joint's line, toward the %s member", math.Abs(a),
			map[bool]string{true: "second", false: "first"}[a > 0])
	}
	p.attacks(card)
}

// attacks warns what liquid copper and, on a coated member, liquid zinc do to stainless and high-strength
// steel.
func (p *Page) attacks(card *calc.Card) {
	if !p.has(tables.Stainless) && !calc.Applies("high-strength", card) {
		return
	}
	p.lineUnder("", "liquid-copper")
	if calc.Applies("zinc", card) {
		p.lineUnder("", "zinc-hot")
	}
}

func (p *Page) has(f tables.Family) bool { return calc.Applies(string(f), &p.Card) }

// split is how the heat divides between the members: by thickness times thermal effusivity, times each one's
// arms.
func (p *Page) split(card *calc.Card) {
	m := &card.Setup.Members
	arms := calc.Paths(card.Used.Joint)
	pull := func(i int, k, c float64) float64 { return arms[i] * calc.Draws(m[i].Core, k, c) }
	share := func(i int, own, other func(tables.Datum) float64) float64 {
		a := pull(i, own(m[i].Metal.Conductivity), own(m[i].Metal.HeatCapacity))
		b := pull(1-i, other(m[1-i].Metal.Conductivity), other(m[1-i].Metal.HeatCapacity))
		return 100 * a / (a + b)
	}
	mid := func(d tables.Datum) float64 { return d.V }
	low := func(d tables.Datum) float64 { return d.Low }
	high := func(d tables.Datum) float64 { return d.High }
	for i, name := range [...]string{"heat_share_1", "heat_share_2"} {
		from, to := share(i, low, high), share(i, high, low)
		if m[0].Metal.Family == m[1].Metal.Family { // their errors move together and cancel
			from, to = share(i, mid, mid), share(i, mid, mid)
		}
		p.add(name, "%", share(i, mid, mid), from, to,
			calc.OwnBasis("100·a/(a + b), a = {n1}·{t1}·√({k1}·{rhoc1}), b = {n2}·{t2}·√({k2}·{rhoc2})",
				"line source at a junction of plates (Carslaw and Jaeger, contact of media: heat divides as "+
					"their effusivities)", append(pullInputs("1", "this member", arms[i], &m[i]),
					pullInputs("2", "the other member", arms[1-i], &m[1-i])...)...))
	}
}

// pullInputs lists the properties by which a member draws heat; mark distinguishes its symbols.
func pullInputs(mark, which string, arms float64, m *calc.Member) []calc.Input {
	return []calc.Input{{Symbol: "n" + mark, Name: "arms of " + which, Value: arms, Unit: "1"},
		{Symbol: "t" + mark, Name: "metal alone of " + which, Value: m.Core, Unit: "mm"},
		{Symbol: "k" + mark, Name: "conductivity of " + which, Value: m.Metal.Conductivity.V, Unit: "W/mmK"},
		{Symbol: "rhoc" + mark, Name: "heat capacity of " + which, Value: m.Metal.HeatCapacity.V, Unit: "J/mm3K"}}
}

// governing says which member comes closest to melting and which wets least.
func (p *Page) governing(card *calc.Card) {
	if card.Zone == "not-modelled" || card.Zone == "" {
		return
	}
	m, ok := calc.HeatOf(card)
	if !ok {
		return
	}
	names := [2]string{"first", "second"}
	hot, cold := 0, 0
	if m[1].Skin-m[1].Solid > m[0].Skin-m[0].Solid {
		hot = 1
	}
	if m[1].Wet < m[0].Wet {
		cold = 1
	}
	melts := "comes closest to melting"
	if m[hot].Skin >= m[hot].Solid {
		melts = "melts first"
	}
	text := fmt.Sprintf("the %s member %s (skin %.0f °C, solid up to %.0f °C), the %s wets least (%.1f mm)",
		names[hot], melts, m[hot].Skin, m[hot].Solid, names[cold], m[cold].Wet)
	if hot == cold {
		text += ": the arc's aim cannot please both, the heat must"
	} else {
		text += fmt.Sprintf(": where the bead sits to one side, aim a little toward the %s member", names[cold])
	}
	p.Because(ownSection, "%s", text)
}
