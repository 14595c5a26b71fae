package calc

import (
	"math"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// Reading is what was measured at a booth while the arc ran; what was not read is 0. Withdrawn ones are left out.
type Reading struct {
	Feed      float64 // m/min, from a timed pull
	StickOut  float64 // mm, tip to arc
	Amps      float64 // A; 0 where not read
	Volts     float64 // V; 0 where not read
	Confirmed bool    // an outlier that somebody checked and lets stand

	FeedDial, VoltsDial Opt // where the power source's dials stood
}

// Posterior is the normal distribution that a booth's readings leave.
type Posterior struct {
	Mean, Sigma float64
	Used        int   // readings that narrowed it
	Flagged     []int // indices of readings beyond three predictive deviations, left out until confirmed
}

// Learned is what the readings of one power source with one wire teach.
type Learned struct {
	For        string    // the readings' filler, wire and mode, by LearnedKey
	Phi, Volts Posterior // calibration voltage, V; measured over modelled volts
}

// Learn computes both posteriors in closed form: normal prior, normal likelihood, one reading after the other. A
// reading more than three deviations from what the earlier ones predict is flagged and left out unless it was
// confirmed. Priors and the readings' deviation are those of tables.
func Learn(f *tables.Filler, wire float64, mode string, readings []Reading) (Learned, error) {
	if err := formula.Positive([4]string{"wire diameter"}, wire, 1, 1, 1); err != nil {
		return Learned{}, err
	}
	l := learnedOf(&Job{Filler: f.ID, Wire: Some(wire), Mode: mode}, f)
	for i := range readings {
		l.take(i, &readings[i], f, wire, mode)
	}
	return l, nil
}

// read takes the meter readings that a completed job gives at its feed, with the meter's own doubt, into what is known
// of its power source. One far from all that is known teaches nothing.
func (j *Job) read(f *tables.Filler) {
	if !j.Feed.Set || !j.Amps.Set {
		return
	}
	l := learnedOf(j, f)
	l.take(0, &Reading{Feed: j.Feed.V, StickOut: j.StickOut.V, Amps: j.Amps.V, Volts: j.Volts.V}, f, j.Wire.V, j.Mode)
	before := j.Readings.Or(0)
	if l.Put(j); j.Readings.Set {
		j.Readings.V = before + float64(max(l.Phi.Used, l.Volts.Used))
	}
}

// learnedOf is what is known before a reading: what a job was taught, or else the priors of tables.
func learnedOf(j *Job, f *tables.Filler) Learned {
	return Learned{For: LearnedKey(j.Filler, j.Wire.V, j.Mode),
		Phi:   Posterior{Mean: j.Phi.Or(f.Phi.V), Sigma: j.PhiSigma.Or((f.Phi.High - f.Phi.Low) / 4)},
		Volts: Posterior{Mean: j.VoltFactor.Or(1), Sigma: j.VoltFactorSigma.Or(tables.VoltFactorSigma.V)}}
}

// take updates both posteriors with one reading, whose place in the list is i.
func (l *Learned) take(i int, r *Reading, f *tables.Filler, wire float64, mode string) {
	if r.Amps > 0 && r.Feed > 0 {
		phi, sigma := phiSeen(f, wire, r)
		l.Phi.take(i, phi, sigma, r.Confirmed)
	}
	if r.Volts > 0 && r.Amps > 0 {
		factor, _ := voltsOf(mode)
		seen := r.Volts / (factor * formula.LoadLine(r.Amps))
		l.Volts.take(i, seen, seen*tables.ReadingSigma.V, r.Confirmed)
	}
}

// phiSeen is the calibration voltage, V, that one reading shows, P/I − I·R, and its deviation, by that of the amps; a
// reading's feed and stick-out are taken as measured.
func phiSeen(f *tables.Filler, wire float64, r *Reading) (phi, sigma float64) {
	power := formula.WireArea(wire) * r.Feed * 1000 / 60 * f.Density.V * 1e-3 * f.HLiq.V
	drop := r.Amps * f.Resistivity.V * r.StickOut / formula.WireArea(wire)
	return power/r.Amps - drop, (power/r.Amps + drop) * tables.ReadingSigma.V
}

// take updates the posterior with one observation, or flags it.
func (p *Posterior) take(i int, seen, sigma float64, confirmed bool) {
	if math.Abs(seen-p.Mean) > 3*math.Hypot(p.Sigma, sigma) && !confirmed {
		p.Flagged = append(p.Flagged, i)
		return
	}
	a, b := 1/(p.Sigma*p.Sigma), 1/(sigma*sigma)
	p.Mean = (p.Mean*a + seen*b) / (a + b)
	p.Sigma = 1 / math.Sqrt(a+b)
	p.Used++
}

// Put writes what was learned into a job, so that its card carries it and gives the same figures wherever it goes.
func (l *Learned) Put(j *Job) {
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

// LearnedKey names the filler, wire (mm) and mode of readings.
func LearnedKey(filler string, wire float64, mode string) string {
	return filler + " " + Number(wire) + " " + mode
}

// Unlearned is a job without what readings and verdicts taught.
func Unlearned(j Job) Job {
	j.Learn(&Job{})
	return j
}

// Learn takes what readings and verdicts taught from another job, and nothing else.
func (j *Job) Learn(from *Job) {
	j.learnReadings(from)
	j.Eta, j.EtaSigma, j.Rhythm = from.Eta, from.EtaSigma, from.Rhythm
	j.FeedDial, j.VoltsDial = from.FeedDial, from.VoltsDial
	j.Pulled, j.PulledMean, j.PulledSigma = from.Pulled, from.PulledMean, from.PulledSigma
	j.PulledFor = from.PulledFor
}

// learnReadings takes what readings of the meter taught.
func (j *Job) learnReadings(from *Job) {
	j.Phi, j.PhiSigma, j.VoltFactor, j.VoltFactorSigma = from.Phi, from.PhiSigma, from.VoltFactor, from.VoltFactorSigma
	j.Readings, j.LearnedFor = from.Readings, from.LearnedFor
}

// WithoutReadings is a job without what readings of the meter taught.
func WithoutReadings(j Job) Job {
	j.learnReadings(&Job{})
	return j
}

// forThisWire leaves out what was learned with another filler, wire or mode than a completed job has.
func forThisWire(j Job) Job {
	if j.Rhythm.For != LearnedKey(j.Filler, j.Wire.V, "timed") || j.Mode != "timed" {
		j.Rhythm = Rhythm{}
	}
	if j.LearnedFor == "" || j.LearnedFor == LearnedKey(j.Filler, j.Wire.V, j.Mode) {
		return j
	}
	return WithoutReadings(j)
}

// learned says what the readings did to the intervals of current and volts.
func (w *warnings) learned(s *spread) {
	n := w.card.Job.Readings // of the booth; this job's own are told where they are compared
	if !n.Set {
		return
	}
	before := Card{}
	open := Unlearned(w.card.Used)
	open.Feed, open.Amps = Some(s.value[oFeedMin]), Opt{}
	if !w.card.Job.Volts.Set {
		open.Volts = Opt{}
	}
	if resolve(open, &before) != nil {
		return
	}
	before.Job.StickOut = w.card.Job.StickOut
	was, err := newBoard(&before).spread()
	if err != nil {
		return
	}
	w.tell("learned", Info, "readings of this power source with this wire, normal posterior",
		"Narrowed by %.0f readings on this power source: current %.0f to %.0f A, before %.0f to %.0f; volts %.1f to "+
			"%.1f, before %.1f to %.1f.", n.V, s.low[oAmps], s.high[oAmps], was.low[oAmps], was.high[oAmps],
		s.low[oVolts],
		s.high[oVolts], was.low[oVolts], was.high[oVolts])
}
