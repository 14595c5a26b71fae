package linear

import (
	"brazebooth/calc/advice"
	"brazebooth/internal/choice"
	"brazebooth/internal/report"
)

// readPage reads out a page beside the card.
func (t *talk) readPage(page *advice.Entry) {
	p, err := page.Answer(t.ctx, &t.card)
	if err != nil {
		t.fault(err)
		return
	}
	t.part = &p
	t.tell(report.Page(&p, choice.Open(&t.job, page.Needs)))
}
