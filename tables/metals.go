package tables

// Metals lists the base metals in the order in which a shop is likely to meet them.
var Metals = Rows[Metal]{mildSteel, galvanized, galvannealed, electroZinc, aluminized, hsla, dp600, dp800, dp1000,
	boronSteel, stainless304, stainless316, greyIron, ductileIron, copper, brass, siliconBronze, aluminiumBronze}

// GaugeSystem is one of the four sheet-gauge systems.
type GaugeSystem string

// The four systems in which one gauge number means four thicknesses.
const (
	MSG  GaugeSystem = "MSG"  // manufacturers' standard gauge: uncoated steel
	GSG  GaugeSystem = "GSG"  // galvanized sheet gauge: coated thickness
	USSG GaugeSystem = "USSG" // United States standard gauge: stainless
	BS   GaugeSystem = "B&S"  // Brown & Sharpe (AWG): copper alloys
)

// Family groups the metals that the same physics and cautions apply to.
type Family string

// Families of base metal.
const (
	Steel     Family = "steel"     // unalloyed and low-alloy ferritic sheet
	Stainless Family = "stainless" // austenitic
	CastIron  Family = "cast-iron"
	CopperFam Family = "copper"
	Bronze    Family = "bronze"
	BrassFam  Family = "brass"
)

// Metal is one base metal in the form in which it is sold.
type Metal struct {
	ID     string // mild-steel galvanized galvannealed ... aluminium-bronze
	Name   string
	Family Family
	System GaugeSystem // the gauge system it is sold by

	Coating string // id of the coating assumed when none is given; "none" for bare metal

	Conductivity Datum  // mean to about 1000 C, W/mmK
	HeatCapacity Datum  // volumetric, mean to about 1000 C, J/mm3K
	Density      Datum  // g/cm3
	Solidus      Datum  // C; V, the low end of the grade's range, decides whether it "stays solid"
	Liquidus     Datum  // C
	Latent       Datum  // J/g
	Tensile      Datum  // MPa
	Emissivity   Datum  // of the surface while it is brazed
	Note         string // one plain line for the list of metals
}
