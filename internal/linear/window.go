package linear

import (
	"brazebooth/calc"
	"brazebooth/internal/report"
)

// readMap says in words what the map of all settings shows.
func (t *talk) readMap(string) {
	m, err := calc.WindowOf(t.ctx, t.job, calc.FullWindow, nil)
	if err != nil {
		t.fault(err)
		return
	}
	var given *calc.Card
	if j := &t.job; j.Feed.Set || j.Amps.Set || j.Travel.Set {
		given = &t.card
	}
	t.tell(report.Window(&m, given))
}
