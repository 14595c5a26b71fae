package calc

import (
	"math"

	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// board is a job turned into numbers: the chain that applies, its knobs, and their bands.
type board struct {
	chain  chain
	knobs  [knobs]float64
	doubts [knobs]doubt
	effort *effort
}

// turn sets a knob that a table row gives.
func (b *board) turn(i knob, d tables.Datum) {
	b.knobs[i] = d.V
	b.doubts[i] = doubt{d.Low, d.High, false}
}

// fix sets a knob that is exact for this card: a setting, or a size taken as given.
func (b *board) fix(i knob, v float64) {
	b.knobs[i] = v
	b.doubts[i] = doubt{v, v, false}
}

// guess sets a knob that nobody gave.
func (b *board) guess(i knob, v, low, high float64) {
	b.knobs[i] = v
	b.doubts[i] = doubt{low, high, true}
}

// newBoard lays out the knobs of a completed job. Feed and travel may still be open.
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

func (b *board) chooseFormulas(card *Card) {
	u := &card.Used
	c := &b.chain
	c.joint = u.Joint
	c.arms = Paths(u.Joint)
	c.plug = u.Joint == "plug"
	c.pulsed = u.Mode == "pulsed"
	c.timed = u.Mode == "timed"
	c.ampsGiven = u.Amps.Set && !u.Feed.Set
	c.voltsGiven = u.Volts.Set
	c.travelGiven = u.Travel.Set
	c.timesGiven = [3]bool{u.ArcOn.Set, u.ArcOff.Set, u.SpotStep.Set}
	c.ferritic = card.Setup.Members[0].Metal.Family == tables.Steel
	for i, m := range card.Setup.Joined() {
		c.zinc[i] = m.Coating.Zinc
	}
	c.heatFactor = tables.HeatInputFactor.V
	c.loadBase, c.loadSlope, c.loadCap = tables.LoadLineBase.V, tables.LoadLineSlope.V, tables.LoadLineCap.V
	c.zincMelts, c.zincBoils = tables.ZincMelts.V, tables.ZincBoils.V
}

func (b *board) setFiller(card *Card) {
	f := &card.Setup.Filler
	b.turn(kDensity, f.Density)
	b.turn(kHLiq, f.HLiq)
	b.turn(kRhoE, f.Resistivity)
	b.turn(kPhi, f.Phi)
	b.turn(kToe, f.Toe)
	b.turn(kLiquidus, f.Liquidus)
	u := &card.Used
	if u.Phi.Set {
		two := 2 * u.PhiSigma.Or((f.Phi.High-f.Phi.Low)/4)
		b.knobs[kPhi] = u.Phi.V
		b.doubts[kPhi] = doubt{u.Phi.V - two, u.Phi.V + two, false}
	}
	if u.Phi.Set && u.PhiSigma.Set {
		b.chain.learned.wire, b.chain.learned.density = card.Used.Wire.V, f.Density.V
		b.chain.learned.hLiq, b.chain.learned.rhoE = f.HLiq.V, f.Resistivity.V
	}
	b.knobs[kWire] = u.Wire.V
	low, high := wireTolerance(u.Wire.V)
	b.doubts[kWire] = doubt{low, high, false}
}

// wireTolerance is the band of the diameter that is sold under a nominal size.
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
	b.turn(kEta, tables.ArcEfficiency)
	if u.Eta.Set {
		two := 2 * u.EtaSigma.Or(tables.EtaSigma.V)
		b.knobs[kEta] = u.Eta.V
		b.doubts[kEta] = doubt{u.Eta.V - two, u.Eta.V + two, false}
	}
	b.turn(kSpread, tables.ArcWidth)
	b.turn(kReinforce, tables.Reinforcement)
	b.turn(kZoneForm, tables.ZincBandForm)
	b.turn(kTimedForm, tables.TimedForm)
	bias := tables.DipVoltBand.V
	b.turn(kDeposit, tables.DepositionDip)
	b.fix(kModeFactor, tables.DipVoltFactor.V)
	if b.chain.pulsed {
		bias = tables.PulsedVoltBand.V
		b.turn(kDeposit, tables.DepositionPulsed)
		b.fix(kModeFactor, tables.PulsedVoltFactor.V)
	}
	b.fix(kVolts, u.Volts.V)
	b.doubts[kVoltBias] = doubt{-bias, bias, false}
	b.fix(kVoltFactor, 1)
	if u.VoltFactor.Set {
		two := math.Hypot(2*u.VoltFactorSigma.Or(tables.VoltFactorSigma.V), tables.LearnedFloor.V)
		b.knobs[kVoltFactor] = u.VoltFactor.V
		b.doubts[kVoltFactor] = doubt{u.VoltFactor.V - two, u.VoltFactor.V + two, false}
		b.fix(kVoltBias, 0) // what was learned replaces the doubt about power sources in general
	}
	form := tables.CurrentForm
	stick := tables.DefaultStickOut
	if card.Job.StickOut.Set {
		v := u.StickOut.V
		b.knobs[kStick] = v
		b.doubts[kStick] = doubt{v - tables.StickOutReading.V, v + tables.StickOutReading.V, false}
	} else {
		form = tables.CurrentFormUnmeasured
		b.guess(kStick, u.StickOut.V, stick.Low, stick.High)
	}
	if b.chain.learned.wire > 0 { // readings hold what the balance leaves out
		floor := tables.LearnedFloor.V
		form = tables.Datum{V: 1, Low: 1 - floor, High: 1 + floor, Unit: "1", Origin: tables.LearnedFloor.Origin}
	}
	b.turn(kForm, form)
	if b.chain.voltsGiven {
		b.fix(kVoltBias, 0)
	}
}

func (b *board) setMembers(card *Card) {
	for i, m := range card.Setup.Joined() {
		thick, conduct, capacity := kThick1, kConduct1, kHeatCap1
		if i == 1 {
			thick, conduct, capacity = kThick2, kConduct2, kHeatCap2
		}
		b.knobs[thick] = m.Core
		low, high := m.tolerance()
		b.doubts[thick] = doubt{low, high, false}
		b.turn(conduct, m.Metal.Conductivity)
		b.turn(capacity, m.Metal.HeatCapacity)
	}
	if b.chain.arms[1] == 0 {
		b.fix(kThick2, 1) // no second member: any number, since nothing reads it
		b.fix(kConduct2, 1)
		b.fix(kHeatCap2, 1)
	}
	b.turn(kLoss, tables.SurfaceLoss)
	u := &card.Used
	if card.Job.Preheat.Set {
		b.fix(kRoom, u.Preheat.V)
	} else {
		d := tables.RoomTemperature
		if u.Preheat.V != d.V { // cast iron, warmed
			d = tables.IronPreheat
		}
		b.guess(kRoom, u.Preheat.V, d.Low, d.High)
	}
	b.fix(kGap, u.Gap.V)
	if !card.Job.Gap.Set {
		b.guess(kGap, u.Gap.V, u.Gap.V, u.Gap.V)
	}
}

// tolerance is the 95 % band of the metal's thickness: of the gauge where it was bought by gauge, of
// a calliper where it was measured.
func (m Member) tolerance() (low, high float64) {
	half := tables.CalliperReading.V
	if m.Gauge != 0 {
		half = tables.GaugeTolerance(m.Gauge) * quantity.MMPerInch
	}
	half = min(half, m.Core*0.9)
	return m.Core - half, m.Core + half
}

func (b *board) setSettings(card *Card) {
	u := &card.Used
	b.fix(kFeed, u.Feed.V*1000/60)
	b.fix(kAmps, u.Amps.V)
	b.fix(kTravel, u.Travel.V)
	b.fix(kOn, u.ArcOn.V)
	b.fix(kOff, u.ArcOff.V)
	b.fix(kStep, u.SpotStep.V)
}
