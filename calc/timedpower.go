package calc

import (
	"math"

	"brazebooth/tables"
)

// read reports whether the current was read beside a wire feed.
func (g *timedRun) read() bool { return g.card.Job.Feed.Set && g.card.Job.Amps.Set }

// readPower is powerInterval where the job's own readings of a meter narrow it. The power counts with up to its fourth
// power, so that a reading of both narrows the times more than anything else.
func (b *board) readPower(card *Card) (low, high float64) {
	low, high = b.powerInterval()
	j := &card.Job
	if !(j.Feed.Set && j.Amps.Set) {
		return low, high
	}
	two := 2 * tables.ReadingSigma.V
	if j.Volts.Set {
		return 1 - math.Sqrt2*two, 1 + math.Sqrt2*two
	}
	s, err := b.spread()
	if err != nil {
		return low, high
	}
	weak, strong := s.low[oVolts]/s.value[oVolts]-1, s.high[oVolts]/s.value[oVolts]-1
	return 1 - math.Hypot(weak, two), 1 + math.Hypot(strong, two)
}

// powerInterval is the relative interval of volts times amps.
func (b *board) powerInterval() (low, high float64) {
	s, err := b.spread()
	if err != nil || !(s.value[oAmps]*s.value[oVolts] > 0) {
		return 0.7, 1.4 // never seen: the chain gave these values a moment ago
	}
	part := func(edge *[outs]float64) float64 {
		return math.Hypot(edge[oAmps]/s.value[oAmps]-1, edge[oVolts]/s.value[oVolts]-1)
	}
	return 1 - min(part(&s.low), 0.9), 1 + part(&s.high)
}
