package tables

// Limit is one element's composition limit in mass per cent; Min 0 means a maximum only.
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
	HLiq         Datum // enthalpy from 20 C to all liquid, J/g; it goes with Phi and is never mixed with another source's
	Phi          Datum // calibration voltage referred to HLiq, V
	Fitted       bool  // true where Phi and HLiq were fitted as one pair (cusi3, cual8)
	Resistivity  Datum // averaged over the electrode extension, ohm mm
	Conductivity Datum // at 20 C, W/mK
	Toe          Datum // temperature at which the last liquid at the toe freezes: the wetted edge's isotherm, C
	Tensile      Datum // guide tensile strength of the deposit, MPa
}

// Comparison reports whether the filler is here only to compare with (steel wire).
func (f Filler) Comparison() bool { return f.ID == "steel" }
