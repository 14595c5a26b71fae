package linear

import (
	"brazebooth/calc"
	"brazebooth/internal/report"
)

// readTimed reads out on, off and step of a timed arc on this joint.
func (t *talk) readTimed(string) {
	s, err := calc.SolveTimed(t.ctx, t.job, nil)
	if err != nil {
		t.fault(err)
		return
	}
	t.tell(report.Timed(&s))
	if t.job.Mode != "timed" {
		t.voice.show("mode timed puts this on the card.")
	}
}
