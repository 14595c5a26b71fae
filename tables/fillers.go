package tables

// Fillers lists the wires in the order in which a shop would choose them.
//
// HLiq of a filler without a fit is (HeatCold + HeatHot)/2 · (liquidus − 20 C) + Latent; a test repeats the
// sum. Resistivity over the extension is the value at 20 C plus 150 K of Matthiessen's slope, which is copper's
// 0.0067 uOhm cm/K for any alloy: 24.6 + 1.0 = 25.6 uOhm cm, CuSi3's fitted 0.256e-3 ohm mm.
var Fillers = Rows[Filler]{cusi3, cual8, cual10fe, cusn6, cusn1, cumn13al8, cual9ni5, steelWire}

// Documents that the rows of several fillers name.
const (
	a57Limits  = "AWS A5.7/A5.7M:2007 Table 1"
	a57Tensile = "AWS A5.7/A5.7M:2007 guide annex, tensile strength of weld metal: a guide minimum, no acceptance limit"
	alloyPages = "open alloy database, page of the alloy (its melting, conductivity and heat cells; its densities of " +
		"copper alloys are 4 to 11 % off and not used)"
	fitPair = "fitted as one pair with the other of calibration voltage and heat to all liquid, from bronze wires in " +
		"argon"
	matthies = "20 C resistivity and copper's 0.0067 uOhm cm/K by Matthiessen's rule over 150 K; high end with 50 % " +
		"more slope over 270 K"
	enthalpy = "mean of cold and hot specific heat times the rise to the liquidus, and the heat of fusion"
)

// unfittedPhi is the calibration voltage of a filler whose current was not fitted.
var unfittedPhi = Datum{3.25, 2.6, 3.9, "V", worked("the fitted fillers' voltage, widened to 20 %")}

// Limit is the composition limit of one element, in mass per cent; Min 0 means that there is only a maximum.
type Limit struct {
	Element  string
	Min, Max float64
}

// Filler is one brazing wire alloy.
type Filler struct {
	ID   string // cusi3, cual8, cual10fe, cusn6, cusn1, cumn13al8, cual9ni5, steel
	Name string // the trade's plain name: "silicon bronze CuSi3"

	AWS, UNS, ISO, DIN string // designations, "" where there is none

	Limits       []Limit
	LimitsOrigin Origin
	Colour, Use  string
	UseOrigin    Origin

	Density      Datum // g/cm3
	Solidus      Datum // C
	Liquidus     Datum // C
	HeatCold     Datum // specific heat at 20 C, J/gK
	HeatHot      Datum // specific heat near the liquidus, J/gK
	Latent       Datum // heat of fusion, J/g
	HLiq         Datum // enthalpy from 20 C to all liquid, J/g; belongs with Phi, never with another source's
	Phi          Datum // calibration voltage referred to HLiq, V
	Fitted       bool  // Phi and HLiq were fitted together (cusi3, cual8)
	Resistivity  Datum // averaged over the electrode extension, ohm mm
	Conductivity Datum // at 20 C, W/mK
	Toe          Datum // temperature at which the last liquid at the toe freezes, C: the isotherm of the wetted edge
	Tensile      Datum // guide tensile strength of the deposit, MPa
}

// Comparison reports whether the filler is listed only for comparison (steel wire).
func (f Filler) Comparison() bool { return f.ID == "steel" }
