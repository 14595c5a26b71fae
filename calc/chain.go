package calc

import (
	"math"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// input is an input quantity in the sense of the GUM: a number that figures rest on. It is a setting, a size, a
// property, or what a model leaves out.
type input int

const (
	inWire       input = iota // mm
	inFeed                    // mm/s
	inAmps                    // A, where the current was given and the feed follows
	inStick                   // mm
	inDensity                 // g/cm3
	inHLiq                    // J/g
	inRhoE                    // ohm mm
	inPhi                     // V
	inForm                    // a factor about 1: what the energy balance leaves out
	inDeposit                 // deposition efficiency
	inVolts                   // V, where given
	inVoltBias                // V: what the mode's load line leaves out
	inVoltFactor              // measured over modelled volts
	inModeFactor              // of the mode's load line
	inEta                     // arc efficiency
	inTravel                  // mm/s
	inRoom                    // C
	inThick1                  // core, mm
	inThick2
	inConduct1 // W/mmK
	inConduct2
	inHeatCap1 // J/mm3K
	inHeatCap2
	inLoss      // W/m2K each side
	inGap       // mm
	inBarDry    // W/m2K, from dry sheet into a copper bar
	inBarWet    // W/m2K, from liquid filler into it
	inToe       // C, where the last liquid filler freezes
	inLiquidus  // C
	inSpread    // mm, the arc's sigma
	inOn        // s
	inOff       // s
	inStep      // mm
	inReinforce // metal above an open root over metal in it
	inZoneForm  // a factor about 1: what the closed forms leave out of a zinc band
	inTimedForm // a factor about 1: what the line source leaves out of on and off times
	inDetach    // A2s: what throws one drop from this wire
	inArcSlope  // V/A: rise of the arc's volts with current
	inputCount
)

// out is one computed number.
type out int

const (
	oFeed    out = iota // mm/s
	oFeedMin            // m/min
	oAmps
	oVolts
	oTravel        // mm/s
	oMassPerLength // g/m of the wire itself
	oMassPerSeam   // g/m of seam, spatter included
	oLengthPerMass // m/kg
	oMelt          // g/min
	oDeposition    // g/min
	oArcEnergy
	oHeatInput
	oNet
	oBead
	oWet1 // mm, closed-form half-width at the toe isotherm
	oWet2
	oWidth
	oBoiled1
	oBoiled2
	oMelted1
	oMelted2
	oCooling
	oPulse
	oPeak       // A, of a pulse
	oBase       // A, between pulses
	oAtPeak     // share of the time at the peak
	oEffective  // A, root mean square of the pulses
	oPulsePower // true power of the pulses over volts times amps of the means, %
	oOn
	oOff
	oStep
	oDuty // arc-on fraction
	outs
)

// chain tells which formulas apply to one job, without its numbers. It is small, is copied freely and allocates
// nothing.
type chain struct {
	joint                                          string
	arms                                           [2]float64 // heat paths in each member
	ampsGiven, voltsGiven, pulsed, timed, ferritic bool
	timesGiven                                     [3]bool // on, off, step
	travelGiven                                    bool
	plug                                           bool
	backed                                         bool // by a bar or strip, which the closed forms leave out
	// Of a pulsed arc: the spray transition, A, and the least peak squared times time that throws a drop, A2s.
	transition, shortest float64
	zinc                 [2]bool
	arcOnly              bool // the caller does not need what the heat does to the sheet
	// What was learned with a wire includes the errors of its diameter, density and resistivity, so the current is then
	// computed from their nominal figures. All are zero where nothing was learned.
	learned struct{ wire, density, hLiq, rhoE float64 }
	// scale nudges one computed number, to find how another depends on it; else all are 1.
	scale [outs]float64
}

// eval computes every output from the inputs. Outputs that do not apply stay NaN and are never shown: a figure is built
// only where its spec applies.
func (c *chain) eval(k *[inputCount]float64, o *[outs]float64) error {
	if err := c.electric(k, o); err != nil {
		return err
	}
	if c.timed {
		if err := c.onOff(k, o); err != nil {
			return err
		}
	}
	if c.plug || c.timed && math.IsNaN(o[oDuty]) {
		return nil
	}
	return c.heat(k, o)
}

func (c *chain) set(o *[outs]float64, i out, v float64) { o[i] = v * c.scale[i] }

// electric computes wire and arc: feed, current, volts, deposit. All other outputs become NaN.
func (c *chain) electric(k *[inputCount]float64, o *[outs]float64) (err error) {
	for i := range o {
		o[i] = math.NaN()
	}
	wire, density, hLiq, rhoE := k[inWire], k[inDensity], k[inHLiq], k[inRhoE]
	if l := &c.learned; l.wire > 0 {
		wire, density, hLiq, rhoE = l.wire, l.density, l.hLiq, l.rhoE
	}
	feed, amps := k[inFeed], k[inAmps]
	if c.ampsGiven {
		feed, err = formula.FeedFromCurrent(wire, amps/k[inForm], density, hLiq, rhoE, k[inPhi], k[inStick])
		if err != nil {
			return err
		}
	}
	c.set(o, oFeed, feed)
	o[oFeedMin] = o[oFeed] * 0.06
	if !c.ampsGiven {
		amps, err = formula.CurrentFromFeed(wire, o[oFeed], density, hLiq, rhoE, k[inPhi], k[inStick])
		if err != nil {
			return err
		}
		amps *= k[inForm]
	}
	c.set(o, oAmps, amps)
	volts := k[inVolts]
	if !c.voltsGiven {
		volts = k[inModeFactor]*k[inVoltFactor]*formula.LoadLine(o[oAmps]) + k[inVoltBias]
	}
	c.set(o, oVolts, volts)
	o[oMassPerLength] = formula.MassPerLength(k[inWire], k[inDensity])
	o[oLengthPerMass] = formula.LengthPerMass(k[inWire], k[inDensity])
	o[oMelt] = formula.MeltRate(k[inWire], o[oFeed], k[inDensity]) * 60
	o[oDeposition] = o[oMelt] * k[inDeposit]
	return c.pulse(k, o)
}

// pulse computes a pulsed arc's waveform and its true power, which mean volts times mean amps leave too low, since both
// are high at the same time. The source of the measured efficiency names no pulsed arc, and without pulses the product
// of the means is the true power. So the efficiency is taken of the true power, and the gain counts once.
func (c *chain) pulse(k *[inputCount]float64, o *[outs]float64) (err error) {
	if !c.pulsed {
		return nil
	}
	if o[oPulse], err = formula.PulseFrequency(k[inWire], o[oFeed], k[inWire]); err != nil {
		return err
	}
	w, err := formula.OnePulse(o[oAmps], o[oPulse], c.transition, k[inDetach], c.shortest)
	if err != nil {
		return err
	}
	o[oPeak], o[oBase], o[oAtPeak] = w.Peak, w.Base, w.Share
	c.set(o, oEffective, w.Effective())
	gain, err := formula.PulseGain(o[oEffective], o[oAmps], o[oVolts], k[inArcSlope])
	c.set(o, oPulsePower, 100*gain)
	return err
}

// heat computes a travelling arc: heat per length, bead, and the bands beside it.
func (c *chain) heat(k *[inputCount]float64, o *[outs]float64) error {
	if err := c.lineHeat(k, o); err != nil || c.arcOnly {
		return err
	}
	if err := c.bands(k, o); err != nil {
		return err
	}
	var err error
	if c.ferritic && !c.backed && k[inRoom] <= tables.CoolingStart.V {
		o[oCooling], err = formula.CoolingTime(o[oNet], c.meanPath(k), k[inRoom], c.joint)
	}
	return err
}

// lineHeat computes the heat and the metal per millimetre of seam.
func (c *chain) lineHeat(k *[inputCount]float64, o *[outs]float64) error {
	duty := 1.0
	if c.timed {
		duty = o[oDuty]
	}
	if !c.timed || c.travelGiven {
		c.set(o, oTravel, k[inTravel])
	}
	v := o[oTravel]
	energy, err := formula.ArcEnergy(o[oVolts], o[oAmps]*duty, v)
	if err != nil {
		return err
	}
	if c.pulsed {
		energy *= o[oPulsePower] / 100
	}
	o[oArcEnergy] = energy
	o[oHeatInput] = tables.HeatInputFactor.V * energy
	c.set(o, oNet, k[inEta]*energy)
	bead, err := formula.BeadArea(k[inWire], o[oFeed]*duty, k[inDeposit], v)
	if err != nil {
		return err
	}
	c.set(o, oBead, bead)
	o[oMassPerSeam] = o[oMassPerLength] * o[oFeed] * duty / v
	return nil
}
