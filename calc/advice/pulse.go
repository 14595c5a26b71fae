package advice

import (
	"fmt"
	"math"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// Pulse is the page of a pulsed arc: peak, pulse time, base and frequency that detach one drop with each pulse
// at this feed, and the effect of the pulses on current and power.
func Pulse(card *calc.Card) (Page, error) {
	p := Page{Name: "pulse", Card: *card}
	if card.Used.Mode != "pulsed" {
		return p, mistake.In("mode", "the arc of this job is not pulsed", "choose the mode pulsed")
	}
	w, err := newWaveform(card)
	if err != nil {
		p.Because(ownJob, "not judged, because %v; try another feed, or a wire of a usual size", err)
		return p, nil
	}
	w.page = &p
	w.shape()
	w.power(card)
	p.Because(w.detach.Origin, "peak and pulse time are a pair: a higher peak wants a shorter pulse, by its square. "+
		"Two drops a pulse spatter, less than one lets the wire dip")
	p.Because(practice, "a power source with curves of its own sets all this from the wire feed: then these figures "+
		"are for comparison, and its trim sets the arc's length")
	return p, nil
}

// waveform is the pulse of the card's current with the ends of its figures.
type waveform struct {
	formula.Waveform
	page       *Page
	mean       calc.Figure // A
	frequency  calc.Figure // Hz
	transition float64     // A
	detach     tables.Datum
	peak, time ends    // A, s; over all peaks of the band, each with the times that suit it
	low, high  float64 // A, the base current over the same peaks and times
}

func newWaveform(card *calc.Card) (*waveform, error) {
	mean, ok := card.Figure("current")
	frequency, ok2 := card.Figure("pulse_frequency")
	if !ok || !ok2 {
		return nil, fmt.Errorf("no current is computed")
	}
	d := card.Used.Wire.V
	transition, err := formula.SprayTransition(d)
	if err != nil {
		return nil, err
	}
	if mean.Value >= transition {
		return nil, fmt.Errorf("at %.0f A, over the %.0f A of the spray transition, the arc throws drops without "+
			"pulses", mean.Value, transition)
	}
	w := &waveform{mean: mean, frequency: frequency, transition: transition, detach: calc.PulseDetach(d)}
	w.Waveform, err = formula.OnePulse(mean.Value, frequency.Value, transition, w.detach.V, w.detach.Low)
	w.bands()
	return w, err
}

// bands computes the ends of peak, time and base. A pulse's time goes as one over the square of its peak, so
// that each peak in the band has its own times. Peaks at which no pulse both detaches a drop and keeps the arc
// alight are left out.
func (w *waveform) bands() {
	over, tr := tables.PulsePeakOver, tables.PulseTransition // its uncertainty holds for the transition of every wire
	w.peak = ends{math.Inf(1), w.Peak, 0}
	w.time = ends{math.Inf(1), w.Time, 0}
	w.low, w.high = w.Base, w.Base
	if !w.Alight { // the shortest that detaches a drop, although the arc then goes out
		w.time.mid = w.detach.Low / (w.Peak * w.Peak)
	}
	from, to := over.Low*tr.Low/tr.V*w.transition, over.High*tr.High/tr.V*w.transition
	const steps = 64
	for i := range steps + 1 {
		peak := from * math.Pow(to/from, float64(i)/steps)
		short, long := w.times(peak, w.mean.High)
		if short > long {
			continue
		}
		w.peak.low, w.peak.high = min(w.peak.low, peak), max(w.peak.high, peak)
		w.time.low, w.time.high = min(w.time.low, short), max(w.time.high, long)
		if short, long = w.times(peak, w.mean.Value); w.Alight && short <= long {
			w.low, w.high = min(w.low, w.base(peak, long)), max(w.high, w.base(peak, short))
		}
	}
	w.peak.low, w.peak.high = min(w.peak.low, w.Peak), max(w.peak.high, w.Peak)
	w.time.low, w.time.high = min(w.time.low, w.time.mid), max(w.time.high, w.time.mid)
	w.widenByMean()
}

// widenByMean widens the base's band by that of the mean current at this feed: a change of the mean shows in the
// current between the pulses.
func (w *waveform) widenByMean() {
	between := 1 - w.Share
	if !(between > 0) {
		return
	}
	less, more := (w.mean.Value-w.mean.Low)/between, (w.mean.High-w.mean.Value)/between
	w.low = max(0, w.Base-math.Hypot(w.Base-w.low, less))
	w.high = w.Base + math.Hypot(w.high-w.Base, more)
}

// times are the shortest and the longest pulse, s, of a peak in A that detaches one drop. If any pulse does and
// leaves the arc alight, long also keeps it alight at this mean, A.
func (w *waveform) times(peak, mean float64) (short, long float64) {
	short, long = w.detach.Low/(peak*peak), w.detach.High/(peak*peak)
	if least := tables.PulseBaseLeast.V; w.Alight {
		long = min(long, (mean-least)/(w.frequency.Value*(peak-least)))
	}
	return short, long
}

// shape adds the four figures that define a pulse.
func (w *waveform) shape() {
	p, over, least := w.page, tables.PulsePeakOver, tables.PulseBaseLeast
	peak := calc.OwnBasis("{k}·{I_s}", over.Source+"; spray transition by AWS (memory high)",
		calc.In("k", "peak over spray transition", w.Peak/w.transition, ""),
		calc.In("I_s", "spray transition", w.transition, "A"))
	p.add("pulse_peak", "A", w.Peak, w.peak.low, w.peak.high, peak)
	time := calc.RowBasis("from what {D} detaches at {Ip} to what leaves {Ib} between pulses",
		w.detach.Origin)
	time.Inputs = []calc.Input{calc.Derived("D", "what detaches one drop from this wire", w.detach.V, "A2s"),
		calc.Derived("Ip", "peak", w.Peak, "A"), calc.In("Ib", "least current between pulses", least.V, "A")}
	p.add("pulse_time", "ms", 1000*w.time.mid, 1000*w.time.low, 1000*w.time.high, time)
	p.take(w.frequency)
	if !w.Alight {
		p.Warn("pulse-base", least.Source, "At %.0f A mean the shortest pulse that throws a drop leaves less than the "+
			"%.0f A that an arc in argon needs between pulses: more wire feed, or a thinner wire.", w.mean.Value,
			least.V)
		return
	}
	p.add("pulse_base", "A", w.Base, w.low, w.high, calc.OwnBasis(
		"({I} − {Ip}·{f}·{t_p}/1000)/(1 − {f}·{t_p}/1000)",
		"definition of the mean; its band is that of peak and pulse time together and that of the mean", w.inputs()...))
}

func (w *waveform) inputs() []calc.Input {
	return []calc.Input{w.mean.As("I"), calc.Derived("Ip", "peak", w.Peak, "A"), w.frequency.As("f"),
		calc.Derived("t_p", "pulse time", 1000*w.time.mid, "ms")}
}

// base is the current between pulses, A, for a peak in A that lasts time seconds.
func (w *waveform) base(peak, time float64) float64 {
	share := w.frequency.Value * time
	return (w.mean.Value - peak*share) / (1 - share)
}

// power adds the current that loads the power source, and how the true power compares with mean volts times
// mean amps.
func (w *waveform) power(card *calc.Card) {
	p := w.page
	if rms, ok := card.Figure("effective_current"); ok && w.Alight {
		p.take(rms)
	}
	if gain, ok := card.Figure("pulse_power"); ok && w.Alight {
		p.take(gain)
		p.Because(Own("ISO/TR 18491 (memory high)"), "the arc's true power is about %.0f %% of mean volts times mean "+
			"amps, and the card counts its heat with that; read the power where the power source shows it", gain.Value)
	}
}
