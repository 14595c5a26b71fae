package calc

import (
	"brazebooth/calc/formula"
	"brazebooth/calc/learned"
	"brazebooth/tables"
)

// Reading is what was measured at a booth while the arc ran; 0 for what was not read. Withdrawn readings are left out
// by the caller.
type Reading struct {
	Feed      float64 // m/min, from a timed pull
	StickOut  float64 // mm, tip to arc
	Amps      float64 // A; 0 where not read
	Volts     float64 // V; 0 where not read
	Confirmed bool    // somebody checked a reading that lies far off

	FeedDial, VoltsDial Opt // the positions of the power source's dials
}

// Learn is what the readings of one power source with one wire teach, one reading after the other, see
// learned.Meter. Priors and the readings' deviation are those of tables.
func Learn(f *tables.Filler, wire float64, mode string, readings []Reading) (learned.Meter, error) {
	if err := formula.Positive([7]string{"wire diameter"}, wire); err != nil {
		return learned.Meter{}, err
	}
	l := meterOf(&Job{Filler: f.ID, Wire: Some(wire), Mode: mode}, f)
	factor, _ := voltsOf(mode)
	for i := range readings {
		r := &readings[i]
		l.Take(i, &learned.Reading{Feed: r.Feed, StickOut: r.StickOut, Amps: r.Amps, Volts: r.Volts,
			Confirmed: r.Confirmed}, f, wire, factor)
	}
	return l, nil
}

// read adds the meter readings that a completed job gives at its feed, with the meter's own doubt, to what is known of
// its power source. A reading far from all that is known teaches nothing.
func (j *Job) read(f *tables.Filler) {
	if !j.Feed.Set || !j.Amps.Set {
		return
	}
	l := meterOf(j, f)
	factor, _ := voltsOf(j.Mode)
	l.Take(0, &learned.Reading{Feed: j.Feed.V, StickOut: j.StickOut.V, Amps: j.Amps.V, Volts: j.Volts.V}, f, j.Wire.V,
		factor)
	before := j.Readings.Or(0)
	if j.TakeMeter(&l); j.Readings.Set {
		j.Readings.V = before + float64(max(l.Phi.Used, l.Volts.Used))
	}
}

// meterOf is what is known before a reading: what a job was taught, or else the priors of tables.
func meterOf(j *Job, f *tables.Filler) learned.Meter {
	return learned.Meter{For: LearnedKey(j.Filler, j.Wire.V, j.Mode),
		Phi:   learned.Posterior{Mean: j.Phi.Or(f.Phi.V), Sigma: j.PhiSigma.Or((f.Phi.High - f.Phi.Low) / 4)},
		Volts: learned.Posterior{Mean: j.VoltFactor.Or(1), Sigma: j.VoltFactorSigma.Or(tables.VoltFactorSigma.V)}}
}

// learned says how readings changed the intervals of current and volts.
func (w *warnings) learned(s *spread) {
	n := w.card.Job.Readings // of the booth; a reading on this job has a warning of its own
	if !n.Set {
		return
	}
	open := Unlearned(w.card.Job)
	open.Feed, open.Amps = Some(s.value[oFeedMin]), Opt{}
	was, ok := arcOf(open)
	if !ok {
		return
	}
	w.tell("learned", Info, "readings of this power source with this wire, normal posterior",
		"Narrowed by %.0f readings on this power source: current %.0f to %.0f A, before %.0f to %.0f; volts %.1f to "+
			"%.1f, before %.1f to %.1f.", n.V, s.low[oAmps], s.high[oAmps], was.low[oAmps], was.high[oAmps],
		s.low[oVolts],
		s.high[oVolts], was.low[oVolts], was.high[oVolts])
}

// arcOf is what wire and arc of a job give; its travel does not matter to them. False where nothing is computed.
func arcOf(job Job) (*spread, bool) {
	job.Travel = Some(tables.HandSpeedLow.V)
	b, _, err := laidOut(nil, job)
	if err != nil {
		return nil, false
	}
	s, err := b.spread()
	return s, err == nil
}
