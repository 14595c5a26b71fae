package advice

import (
	"fmt"
	"math"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// Pulse is the page of a pulsed arc: peak, pulse time, base and frequency that throw one drop a pulse at this feed,
// and what they make of current and power.
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

// waveform is a square pulse that throws one drop. Its time lies between what detaches a drop and what leaves the arc
// alight between pulses; bronze melts at less current than steel at the same feed, so that the second often decides.
type waveform struct {
	page       *Page
	mean       calc.Figure // A
	frequency  calc.Figure // Hz
	transition float64     // A
	detach     tables.Datum
	peak       float64 // A
	time       ends    // s
	alight     bool    // a time exists at which both hold
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
		return nil, fmt.Errorf("at %.0f A, over the %.0f A of the spray transition, the arc throws drops without pulses",
			mean.Value, transition)
	}
	w := &waveform{mean: mean, frequency: frequency, transition: transition, detach: tables.PulseDetach}
	scale := math.Pow(transition/tables.PulseTransition.V, 2) * math.Pow(d/tables.PulseWire.V, 1.5)
	w.detach.V, w.detach.Low, w.detach.High = w.detach.V*scale, w.detach.Low*scale, w.detach.High*scale
	w.choosePeak()
	return w, w.chooseTime()
}

// choosePeak takes the usual peak, or as much more, up to its high end, as leaves the arc alight after a usual pulse.
func (w *waveform) choosePeak() {
	over, least := tables.PulsePeakOver, tables.PulseBaseLeast.V
	spare, charge := w.mean.Value-least, w.detach.V*w.frequency.Value
	most := over.High * w.transition
	if root := charge*charge - 4*spare*charge*least; spare > 0 && root > 0 {
		most = min(most, (charge+math.Sqrt(root))/(2*spare))
	}
	w.peak = max(over.V*w.transition, most)
}

func (w *waveform) chooseTime() (err error) {
	if w.time.low, err = formula.PulseTime(w.peak, w.detach.Low, w.transition); err != nil {
		return err
	}
	w.time.high, _ = formula.PulseTime(w.peak, w.detach.High, w.transition)
	w.time.mid, _ = formula.PulseTime(w.peak, w.detach.V, w.transition)
	least := tables.PulseBaseLeast.V
	alight := (w.mean.Value - least) / (w.frequency.Value * (w.peak - least))
	w.alight = alight > w.time.low
	if w.alight && alight < w.time.high {
		w.time.high = alight
		w.time.mid = min(w.time.mid, math.Sqrt(w.time.low*alight))
	}
	return nil
}

// shape adds the four figures that a pulse is set by.
func (w *waveform) shape() {
	p, over, least := w.page, tables.PulsePeakOver, tables.PulseBaseLeast
	peak := calc.OwnBasis("{k}·{I_s}", over.Source+"; spray transition by AWS (memory high)",
		calc.In("k", "peak over spray transition", w.peak/w.transition, ""),
		calc.In("I_s", "spray transition", w.transition, "A"))
	p.add("pulse_peak", "A", w.peak, over.Low*w.transition, over.High*w.transition, peak)
	time := calc.RowBasis("from what {D} detaches at {I_p} to what leaves {I_b} between pulses",
		w.detach.Origin)
	time.Inputs = []calc.Input{calc.Derived("D", "what detaches one drop from this wire", w.detach.V, "A2s"),
		calc.Derived("I_p", "peak", w.peak, "A"), calc.In("I_b", "least current between pulses", least.V, "A")}
	p.add("pulse_time", "ms", 1000*w.time.mid, 1000*w.time.low, 1000*w.time.high, time)
	p.take(w.frequency)
	if !w.alight {
		p.Warn("pulse-base", least.Source, "At %.0f A mean the shortest pulse that throws a drop leaves less than the "+
			"%.0f A that an arc in argon needs between pulses: more wire feed, or a thinner wire.", w.mean.Value, least.V)
		return
	}
	base := p.add("pulse_base", "A", w.base(w.time.mid), w.base(w.time.high), w.base(w.time.low), calc.OwnBasis(
		"({I} − {I_p}·{f}·{t_p}/1000)/(1 − {f}·{t_p}/1000)",
		"definition of the mean; its band is that of the pulse time", w.inputs()...))
	p.add("effective_current", "A", w.rms(w.time.mid), w.rms(w.time.low), w.rms(w.time.high), calc.OwnBasis(
		"√({I_p}²·{f}·{t_p}/1000 + {I_b}²·(1 − {f}·{t_p}/1000))",
		"definition; it loads cable, tip and power source", append(w.inputs(), base.As("I_b"))...))
}

func (w *waveform) inputs() []calc.Input {
	return []calc.Input{w.mean.As("I"), calc.Derived("I_p", "peak", w.peak, "A"), w.frequency.As("f"),
		calc.Derived("t_p", "pulse time", 1000*w.time.mid, "ms")}
}

// base is the current between pulses of so many seconds, A; 0 where the pulses carry all of it.
func (w *waveform) base(time float64) float64 {
	b, _ := formula.PulseBase(w.mean.Value, w.peak, w.frequency.Value, time)
	return b
}

func (w *waveform) rms(time float64) float64 {
	return formula.PulseEffective(w.peak, w.base(time), w.frequency.Value*time)
}

// power adds what the pulses add to mean volts times mean amps.
func (w *waveform) power(card *calc.Card) {
	volts, ok := card.Figure("volts")
	rms, ok2 := w.page.Figure("effective_current")
	if !ok || !ok2 {
		return
	}
	slope, mean := tables.ArcSlope, w.mean.Value
	percent := func(r, effective float64) float64 {
		return 100 * (1 + r*(effective*effective-mean*mean)/(volts.Value*mean))
	}
	v := percent(slope.V, rms.Value)
	w.page.add("pulse_power", "%", v, percent(slope.Low, max(rms.Low, mean)), percent(slope.High, rms.High), calc.OwnBasis(
		"100·(1 + {r}·({I_e}² − {I}²)/({U}·{I}))",
		"mean of the product of volts and amps, ISO/TR 18491 (memory high); "+slope.Source,
		calc.In("r", "rise of the arc's volts with current", slope.V, "V/A"), rms.As("I_e"), w.mean.As("I"), volts.As("U")))
	w.page.Because(Own("ISO/TR 18491 (memory high)"), "the arc's true power is about %.0f %% of mean volts times mean "+
		"amps, from which the card counts the heat: read the power where the power source shows it", v)
}
