package advice

import (
	"brazebooth/calc"
	"brazebooth/tables"
)

// pulled adds, beside the table's load, what the shop's own pull tests of this joint prove: the lower tolerance
// bound for this length, and the allowable load from it.
func (p *Page) pulled(card *calc.Card, length float64) {
	own, ok := calc.PulledOf(card)
	if !ok {
		return
	}
	source := Own("the shop's own pulled pieces of this joint, lognormal, one-sided tolerance bound (Owen 1963)")
	bound, k, err := own.Bound()
	if err != nil {
		p.Because(source, "of this joint %d of your own pieces were pulled: from %.0f on they give a "+
			"bound of their own",
			own.Count, tables.PulledLeast.V)
		return
	}
	safety := factor(card)
	f := p.add("pulled_bound", "kN", bound*length/1000, bound*length/1000, bound*length/1000, calc.OwnBasis(
		"exp({m} − {k}·{s})·{L}/1000", source.Source, calc.In("m", "mean of ln(N/mm)", own.Mean, ""),
		calc.In("k", "tolerance factor", k, ""), calc.In("s", "deviation of ln(N/mm)", own.Spread(), ""),
		calc.In("L", "length of the seam", length, "mm")))
	v := downTo2(f.Value / safety.Value)
	p.add("pulled_allowable", "kN", v, v, v, calc.OwnBasis("{B}/{S}, rounded down to two figures", source.Source,
		f.As("B"), safety))
	p.Because(source, "by %d of your own pieces 95 in 100 carry %s kN on this length, with a confidence of 95 in "+
		"100: it holds for pieces laid and pulled like these. The lower of this and the table's load is the safe one",
		own.Count, calc.Digits(f.Value, 3))
}
