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
		p.because("not judged, because "+err.Error()+"; try another feed, or a wire of a usual size", calc.OwnCalc, "the job")
		return p, nil
	}
	w.page = &p
	w.shape()
	w.power(card)
	p.because("peak and pulse time are a pair: a higher peak wants a shorter pulse, by its square. Two drops a pulse spatter, less than one lets the wire dip", string(tables.MemoryMedium), tables.PulseDetach.Source)
	p.because("a power source with curves of its own sets all this from the wire feed: then these figures are for comparison, and its trim sets the arc's length", "common practice, no source", "common practice, no source")
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
		return nil, fmt.Errorf("at %.0f A, over the %.0f A of the spray transition, the arc throws drops without pulses", mean.Value, transition)
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
	w.peak = over.V * w.transition
	spare, charge := w.mean.Value-least, w.detach.V*w.frequency.Value
	most := over.High * w.transition
	if root := charge*charge - 4*spare*charge*least; spare > 0 && root > 0 {
		most = min(most, (charge+math.Sqrt(root))/(2*spare))
	}
	w.peak = max(w.peak, most)
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
	p.add("pulse_peak", "A", w.peak, over.Low*w.transition, over.High*w.transition, calc.Basis{
		Formula: "{k}·{I_s}", Source: over.Source + "; spray transition by AWS (memory high)", Known: string(over.Known), Inputs: []calc.Input{
			{Symbol: "k", Name: "peak over spray transition", Value: w.peak / w.transition}, {Symbol: "I_s", Name: "spray transition", Value: w.transition, Unit: "A"}}})
	p.add("pulse_time", "ms", 1000*w.time.mid, 1000*w.time.low, 1000*w.time.high, calc.Basis{
		Formula: "between what detaches one drop, {D}/{I_p}², and what leaves {I_b} between pulses", Source: w.detach.Source, Known: string(w.detach.Known), Inputs: []calc.Input{
			{Symbol: "D", Name: "what detaches one drop from this wire", Value: w.detach.V, Unit: "A2s", Derived: true}, {Symbol: "I_p", Name: "peak", Value: w.peak, Unit: "A", Derived: true},
			{Symbol: "I_b", Name: "least current between pulses", Value: least.V, Unit: "A"}}})
	p.Figures = append(p.Figures, w.frequency)
	if !w.alight {
		p.warn("pulse-base", fmt.Sprintf("At %.0f A mean the shortest pulse that throws a drop leaves less than the %.0f A that an arc in argon needs between pulses: more wire feed, or a thinner wire.", w.mean.Value, least.V), least.Source)
		return
	}
	base := w.base(w.mean.Value, w.time.mid)
	p.add("pulse_base", "A", base, w.base(w.mean.Value, w.time.high), w.base(w.mean.Value, w.time.low), calc.Basis{
		Formula: "({I} − {I_p}·{f}·{t_p}/1000)/(1 − {f}·{t_p}/1000)", Source: "definition of the mean; its band is that of the pulse time", Known: calc.OwnCalc, Inputs: w.inputs()})
	rms := func(t float64) float64 {
		return formula.PulseEffective(w.peak, w.base(w.mean.Value, t), w.frequency.Value*t)
	}
	p.add("effective_current", "A", rms(w.time.mid), rms(w.time.low), rms(w.time.high), calc.Basis{
		Formula: "√({I_p}²·{f}·{t_p}/1000 + {I_b}²·(1 − {f}·{t_p}/1000))", Source: "definition; it loads cable, tip and power source", Known: calc.OwnCalc,
		Inputs: append(w.inputs(), calc.Input{Symbol: "I_b", Name: "base", Value: base, Unit: "A", Derived: true})})
}

func (w *waveform) inputs() []calc.Input {
	return []calc.Input{{Symbol: "I", Name: "mean current", Value: w.mean.Value, Unit: "A", Derived: true}, {Symbol: "I_p", Name: "peak", Value: w.peak, Unit: "A", Derived: true},
		{Symbol: "f", Name: "pulses", Value: w.frequency.Value, Unit: "Hz", Derived: true}, {Symbol: "t_p", Name: "pulse time", Value: 1000 * w.time.mid, Unit: "ms", Derived: true}}
}

// base is the current between pulses, A; 0 where the pulses carry all of it.
func (w *waveform) base(mean, time float64) float64 {
	b, err := formula.PulseBase(mean, w.peak, w.frequency.Value, time)
	if err != nil {
		return 0
	}
	return b
}

// power adds what the pulses add to mean volts times mean amps.
func (w *waveform) power(card *calc.Card) {
	p := w.page
	volts, ok := card.Figure("volts")
	rms, ok2 := calc.FigureNamed(p.Figures, "effective_current")
	if !ok || !ok2 {
		return
	}
	slope := tables.ArcSlope
	more := func(r, effective float64) float64 {
		return 100 * r * (effective*effective - w.mean.Value*w.mean.Value) / (volts.Value * w.mean.Value)
	}
	v := more(slope.V, rms.Value)
	p.add("pulse_power", "%", 100+v, 100+max(0, more(slope.Low, max(rms.Low, w.mean.Value))), 100+more(slope.High, rms.High), calc.Basis{
		Formula: "100·(1 + {r}·({I_e}² − {I}²)/({U}·{I}))", Source: "mean of the product of volts and amps, ISO/TR 18491 (memory high); " + slope.Source, Known: calc.OwnCalc,
		Inputs: []calc.Input{{Symbol: "r", Name: "rise of the arc's volts with current", Value: slope.V, Unit: "V/A"}, {Symbol: "I_e", Name: "effective current", Value: rms.Value, Unit: "A", Derived: true},
			{Symbol: "I", Name: "mean current", Value: w.mean.Value, Unit: "A", Derived: true}, {Symbol: "U", Name: "volts", Value: volts.Value, Unit: "V", Derived: true}}})
	p.because(fmt.Sprintf("the arc's true power is about %.0f %% of mean volts times mean amps, from which the card counts the heat: read the power where the power source shows it", 100+v), calc.OwnCalc, "ISO/TR 18491 (memory high)")
}
