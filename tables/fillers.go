package tables

// fillers in the order that a booth reaches for them.
//
// HLiq of a filler without a fit is (HeatCold + HeatHot)/2 · (liquidus − 20 C) + Latent; a test repeats
// the sum. Resistivity over the extension is the 20 C value plus 150 K of Matthiessen's slope, copper's
// 0.0067 uOhm cm/K whatever the alloying: 24.6 + 1.0 = 25.6 uOhm cm, CuSi3's fitted 0.256e-3 ohm mm.
var fillers = [...]Filler{cusi3, cual8, cual10fe, cusn6, cusn1, cumn13al8, cual9ni5, steelWire}

// Fillers lists every filler; read only.
func Fillers() []Filler { return fillers[:] }

// FillerByID returns the filler with exactly this id.
func FillerByID(id string) (Filler, bool) {
	return byID(fillers[:], id, func(r *Filler) string { return r.ID })
}

// Places that several fillers' rows name.
const (
	a57Limits  = "AWS A5.7/A5.7M:2007 Table 1"
	a57Tensile = "AWS A5.7/A5.7M:2007 guide annex, tensile strength of weld metal: a guide minimum, no acceptance limit"
	alloyPages = "open alloy database, page of the alloy (its melting, conductivity and heat cells; its densities of " +
		"copper alloys are 4 to 11 % off and not used)"
	fitPair = "fitted as one pair with the other of calibration voltage and heat to all liquid, " +
		"from bronze wires in argon"
	matthies = "20 C resistivity and copper's 0.0067 uOhm cm/K by Matthiessen's rule over 150 K; high end with 50 % " +
		"more slope over 270 K"
	enthalpy = "mean of cold and hot specific heat times the rise to the liquidus, and the heat of fusion"
)

// unfittedPhi is the calibration voltage of a filler for which no current was fitted.
var unfittedPhi = Datum{3.25, 2.6, 3.9, "V", worked("the fitted fillers' voltage, widened to 20 %")}
