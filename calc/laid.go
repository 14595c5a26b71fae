package calc

// Laid is a card's job with every setting fixed at the card's values, so that one can be changed alone.
func Laid(card *Card) Job {
	j := card.Used
	for _, f := range [...]struct {
		name string
		opt  *Opt
	}{{"wire_feed", &j.Feed}, {"volts", &j.Volts}} {
		if g, ok := card.Figure(f.name); ok && !f.opt.Set {
			*f.opt = Some(g.Value)
		}
	}
	j.Amps = Opt{}
	return j
}
