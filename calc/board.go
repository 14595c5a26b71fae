package calc

import (
	"math"

	"brazebooth/calc/effort"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// board is a job turned into numbers: the chain that applies, its input quantities, and their intervals.
type board struct {
	chain     chain
	inputs    [inputCount]float64
	intervals [inputCount]interval
	effort    *effort.Account
	partStays bool // the whole part does not warm up, whatever its size
}

// fromTable sets an input to a row of tables.
func (b *board) fromTable(i input, d tables.Datum) {
	b.inputs[i] = d.V
	b.intervals[i] = interval{d.Low, d.High, false}
}

// exact sets an input that is exact for this card: a setting, or a size taken as given.
func (b *board) exact(i input, v float64) {
	b.inputs[i] = v
	b.intervals[i] = interval{v, v, false}
}

// assume sets an input that the job left open.
func (b *board) assume(i input, v, low, high float64) {
	b.inputs[i] = v
	b.intervals[i] = interval{low, high, true}
}

// within sets an input with an interval that reaches equally far to both sides.
func (b *board) within(i input, v, half float64) {
	b.inputs[i] = v
	b.intervals[i] = interval{v - half, v + half, false}
}

// newBoard lays out the inputs of a completed job. Feed and travel may still be open.
func newBoard(card *Card) *board {
	b := new(board)
	for i := range b.chain.scale {
		b.chain.scale[i] = 1
	}
	b.chooseFormulas(card)
	b.setFiller(card)
	b.setArc(card)
	b.setMembers(card)
	b.setSettings(card)
	return b
}

// laidOut completes a job and turns it into numbers; its work counts on the account, which may be nil. Errors as Solve.
func laidOut(e *effort.Account, job Job) (*board, *Card, error) {
	card := new(Card)
	if err := resolve(job, card); err != nil {
		return nil, nil, err
	}
	b := newBoard(card)
	b.effort = e
	return b, card, nil
}

func (b *board) chooseFormulas(card *Card) {
	u := &card.Used
	c := &b.chain
	c.joint = Lies(card)
	c.arms = Paths(u.Joint)
	c.plug = u.Joint == "plug"
	c.backed = u.backed() != ""
	c.pulsed = u.Mode == "pulsed"
	c.timed = u.Mode == "timed"
	c.ampsGiven = u.Amps.Set && !u.Feed.Set
	c.voltsGiven = u.Volts.Set
	c.travelGiven = u.Travel.Set
	c.timesGiven = [3]bool{u.ArcOn.Set, u.ArcOff.Set, u.SpotStep.Set}
	c.ferritic = true // the standard for cooling times is for ferritic steel alone
	for i, m := range card.Setup.Joined() {
		c.zinc[i] = m.Coating.Zinc
		c.ferritic = c.ferritic && m.Metal.Family == tables.Steel
	}
}

// electric computes wire and arc at the board's own setting.
func (b *board) electric() (o [outs]float64, err error) {
	err = b.chain.electric(&b.inputs, &o)
	return o, err
}

func (b *board) setFiller(card *Card) {
	f := &card.Setup.Filler
	b.fromTable(inDensity, f.Density)
	b.fromTable(inHLiq, f.HLiq)
	b.fromTable(inRhoE, f.Resistivity)
	b.fromTable(inPhi, f.Phi)
	b.fromTable(inToe, f.Toe)
	b.fromTable(inLiquidus, f.Liquidus)
	u := &card.Used
	if u.Phi.Set {
		b.within(inPhi, u.Phi.V, 2*u.PhiSigma.Or((f.Phi.High-f.Phi.Low)/4))
	}
	if u.Phi.Set && u.PhiSigma.Set {
		b.chain.learned.wire, b.chain.learned.density = card.Used.Wire.V, f.Density.V
		b.chain.learned.hLiq, b.chain.learned.rhoE = f.HLiq.V, f.Resistivity.V
	}
	low, high := wireTolerance(u.Wire.V)
	b.fromTable(inWire, tables.Datum{V: u.Wire.V, Low: low, High: high})
}

// wireTolerance is the interval of the diameter, mm, of wire that is sold under a nominal size.
func wireTolerance(mm float64) (low, high float64) {
	if w, ok := tables.WireNear(mm); ok {
		return mm + w.Diameter.Low - w.Diameter.V, mm + w.Diameter.High - w.Diameter.V
	}
	// An unusual size: the widest tolerance of the standard sizes below 1.6 mm.
	t := tables.UnusualWireTolerance
	return mm + t.Low, mm + t.High
}

func (b *board) setArc(card *Card) {
	u := &card.Used
	b.fromTable(inEta, tables.ArcEfficiency)
	if u.Eta.Set {
		b.within(inEta, u.Eta.V, 2*u.EtaSigma.Or(tables.EtaSigma.V))
	}
	b.fromTable(inSpread, tables.ArcWidth)
	if r := &u.Rhythm; r.Set() {
		b.within(inSpread, r.Spread, 2*r.Spread*math.Sqrt(r.CovOf(1, 1)))
		eta := b.inputs[inEta] * r.Power
		b.within(inEta, eta, 2*eta*math.Sqrt(r.CovOf(2, 2)))
	}
	b.fromTable(inReinforce, tables.Reinforcement)
	b.fromTable(inZoneForm, tables.ZincBandForm)
	b.fromTable(inTimedForm, tables.TimedForm)
	factor, bias := voltsOf(u.Mode)
	b.fromTable(inDeposit, Deposition(u.Mode))
	b.exact(inModeFactor, factor)
	b.setPulse(u.Wire.V)
	b.exact(inVolts, u.Volts.V)
	b.intervals[inVoltBias] = interval{-bias, bias, false}
	b.exact(inVoltFactor, 1)
	if u.VoltFactor.Set {
		two := math.Hypot(2*u.VoltFactorSigma.Or(tables.VoltFactorSigma.V), tables.LearnedFloor.V)
		b.within(inVoltFactor, u.VoltFactor.V, two)
		b.exact(inVoltBias, 0) // readings replace the doubt about power sources in general
	}
	form := tables.CurrentForm
	stick := tables.DefaultStickOut
	if card.Job.StickOut.Set {
		b.within(inStick, u.StickOut.V, tables.StickOutReading.V)
	} else {
		form = tables.CurrentFormUnmeasured
		b.assume(inStick, u.StickOut.V, stick.Low, stick.High)
	}
	if b.chain.learned.wire > 0 { // readings include what the energy balance leaves out
		floor := tables.LearnedFloor.V
		form = tables.Datum{V: 1, Low: 1 - floor, High: 1 + floor, Unit: "1", Origin: tables.LearnedFloor.Origin}
	}
	b.fromTable(inForm, form)
	if b.chain.voltsGiven {
		b.exact(inVoltBias, 0)
	}
	if b.chain.voltsGiven && card.Job.Feed.Set && card.Job.Amps.Set { // read off a meter, not set
		b.within(inVolts, u.Volts.V, 2*tables.ReadingSigma.V*u.Volts.V)
	}
}

func (b *board) setMembers(card *Card) {
	for i, m := range card.Setup.Joined() {
		own := ofMember[i]
		b.within(own.thick, m.Core, m.tolerance())
		b.fromTable(own.conduct, m.Metal.Conductivity)
		b.fromTable(own.capacity, m.Metal.HeatCapacity)
	}
	if b.chain.arms[1] == 0 {
		b.exact(inThick2, 1) // no second member: any number, since nothing reads it
		b.exact(inConduct2, 1)
		b.exact(inHeatCap2, 1)
	}
	b.fromTable(inLoss, tables.SurfaceLoss)
	u := &card.Used
	if card.Job.Preheat.Set {
		b.exact(inRoom, u.Preheat.V)
	} else {
		d := tables.RoomTemperature
		if u.Preheat.V != d.V { // cast iron, warmed
			d = tables.IronPreheat
		}
		b.assume(inRoom, u.Preheat.V, d.Low, d.High)
	}
	b.exact(inGap, u.Gap.V)
	if u.backed() == copperBar {
		b.fromTable(inBarDry, tables.BarDry)
		b.fromTable(inBarWet, tables.BarWet)
	}
	if !card.Job.Gap.Set {
		b.assume(inGap, u.Gap.V, u.Gap.V, u.Gap.V)
	}
}

// ofMember are the inputs of each member.
var ofMember = [2]struct{ thick, conduct, capacity input }{
	{inThick1, inConduct1, inHeatCap1}, {inThick2, inConduct2, inHeatCap2},
}

// tolerance is half of the 95 % interval of the metal's thickness, mm: of the gauge, or else of a calliper.
func (m Member) tolerance() float64 {
	half := tables.CalliperReading.V
	if m.Gauge != 0 {
		half = tables.GaugeTolerance(m.Gauge) * quantity.MMPerInch
	}
	return min(half, m.Core*0.9)
}

func (b *board) setSettings(card *Card) {
	u := &card.Used
	b.exact(inFeed, u.Feed.V*1000/60)
	b.exact(inAmps, u.Amps.V)
	b.exact(inTravel, u.Travel.V)
	b.exact(inOn, u.ArcOn.V)
	b.exact(inOff, u.ArcOff.V)
	b.exact(inStep, u.SpotStep.V)
}
