package calc

import (
	"fmt"

	"brazebooth/calc/learned"
)

// What a booth taught travels in its jobs, so that a card carries it and gives the same figures wherever it goes.

// TakeMeter writes what readings of the meter taught into a job.
func (j *Job) TakeMeter(l *learned.Meter) {
	if l.Phi.Used > 0 {
		j.Phi, j.PhiSigma = Some(l.Phi.Mean), Some(l.Phi.Sigma)
	}
	if l.Volts.Used > 0 {
		j.VoltFactor, j.VoltFactorSigma = Some(l.Volts.Mean), Some(l.Volts.Sigma)
	}
	if n := max(l.Phi.Used, l.Volts.Used); n > 0 {
		j.Readings, j.LearnedFor = Some(float64(n)), l.For
	}
}

// TakeEfficiency writes a learned arc efficiency into a job.
func (j *Job) TakeEfficiency(e *learned.Efficiency) {
	if e.Used > 0 {
		j.Eta, j.EtaSigma = Some(e.Mean), Some(e.Sigma)
	}
}

// TakePulled writes what pulled pieces taught into a job.
func (j *Job) TakePulled(p *learned.Pulled) {
	if p.Count > 0 {
		j.Pulled, j.PulledMean, j.PulledSigma = Some(float64(p.Count)), Some(p.Mean), Some(p.Sigma)
		j.PulledFor = p.For
	}
}

// LearnedKey names the filler, wire (mm) and mode of readings. What was learned with others is left out of a job.
func LearnedKey(filler string, wire float64, mode string) string {
	return filler + " " + Number(wire) + " " + mode
}

// Unlearned is a job without all that Learn copies.
func Unlearned(j Job) Job {
	j.Learn(&Job{})
	return j
}

// Learn copies from another job what readings, beads and pulled pieces taught, and nothing else.
func (j *Job) Learn(from *Job) {
	j.learnReadings(from)
	j.Eta, j.EtaSigma, j.Rhythm = from.Eta, from.EtaSigma, from.Rhythm
	j.FeedDial, j.VoltsDial = from.FeedDial, from.VoltsDial
	j.Pulled, j.PulledMean, j.PulledSigma = from.Pulled, from.PulledMean, from.PulledSigma
	j.PulledFor = from.PulledFor
}

// learnReadings copies what readings of the meter taught.
func (j *Job) learnReadings(from *Job) {
	j.Phi, j.PhiSigma, j.VoltFactor, j.VoltFactorSigma = from.Phi, from.PhiSigma, from.VoltFactor, from.VoltFactorSigma
	j.Readings, j.LearnedFor = from.Readings, from.LearnedFor
}

// WithoutReadings is a job without what readings of the meter taught.
func WithoutReadings(j Job) Job {
	j.learnReadings(&Job{})
	return j
}

// forThisWire leaves out what was learned with another filler, wire or mode, or with another arc, than a completed job
// has.
func forThisWire(j Job) Job {
	if j.VoltsDial.Pulsed != (j.Mode == "pulsed") {
		j.VoltsDial = learned.Dial{}
	}
	if j.Rhythm.For != LearnedKey(j.Filler, j.Wire.V, "timed") || j.Mode != "timed" {
		j.Rhythm = learned.Rhythm{}
	}
	if j.LearnedFor == "" || j.LearnedFor == LearnedKey(j.Filler, j.Wire.V, j.Mode) {
		return j
	}
	return WithoutReadings(j)
}

// PulledOf is what pulled pieces taught a card's job; false where none did, or only pieces of another joint.
func PulledOf(c *Card) (learned.Pulled, bool) {
	u := &c.Used
	if !u.Pulled.Set || u.PulledFor != PulledKey(c) {
		return learned.Pulled{}, false
	}
	return learned.Pulled{For: u.PulledFor, Count: int(u.Pulled.V), Mean: u.PulledMean.V,
		Sigma: u.PulledSigma.V}, true
}

// PulledKeyOf is PulledKey of a job. Errors as Solve.
func PulledKeyOf(j Job) (string, error) {
	var card Card
	err := resolve(j, &card)
	return PulledKey(&card), err
}

// PulledKey names what pieces must have in common: joint, filler, each member's metal and thickness to a tenth of a
// millimetre, the gap, if any, to a tenth, and what lies behind a butt. A closed joint teaches nothing of an open one.
func PulledKey(c *Card) string {
	key := c.Used.Joint + " " + c.Used.Filler
	for _, m := range c.Setup.Joined() {
		key += fmt.Sprintf(" %s %.1f", m.Metal.ID, m.Core)
	}
	if c.Used.Gap.V >= 0.05 {
		key += fmt.Sprintf(" gap %.1f", c.Used.Gap.V)
	}
	if b := c.Used.Backing; b != "" && b != "none" {
		key += " " + b
	}
	return key
}
