package tables

// Ventilation.
var (
	VentilationFlow = constant("VentilationFlow", 57, 57, 57, "m3/min",
		read("29 CFR 1910.252(c)(2): 2000 cfm a welder unless local exhaust or airline respirators"))
	VentilationVolume = constant("VentilationVolume", 284, 284, 284, "m3",
		read("29 CFR 1910.252(c)(2): mechanical ventilation under 10000 ft3 a welder"))
	VentilationCeiling = constant("VentilationCeiling", 5, 4.88, 5, "m",
		read("29 CFR 1910.252(c)(2): mechanical ventilation under a ceiling of 16 ft"))
	HoodSpeed = constant("HoodSpeed", 0.508, 0.508, 0.508, "m/s", read("29 CFR 1910.252(c)(3): 100 ft/min at the work"))
)

// HoodFlow is the exhaust that a 3 in flanged slot needs at a distance from the arc.
type HoodFlow struct {
	From, To float64 // in
	Flow     Datum   // ft3/min
	Duct     float64 // in, at 4000 ft/min
}

var hoodFlowOrigin = read("29 CFR 1910.252(c)(3) table")

// HoodFlows lists the exhaust table.
var HoodFlows = []HoodFlow{
	{4, 6, Datum{150, 150, 150, "ft3/min", hoodFlowOrigin}, 3},
	{6, 8, Datum{275, 275, 275, "ft3/min", hoodFlowOrigin}, 3.5},
	{8, 10, Datum{425, 425, 425, "ft3/min", hoodFlowOrigin}, 4.5},
	{10, 12, Datum{600, 600, 600, "ft3/min", hoodFlowOrigin}, 5.5},
}

// Fire.
var (
	FireWatch = constant("FireWatch", 60, 30, 60, "min",
		read("NFPA 51B-2019, 60 min; 29 CFR 1910.252(a)(2)(iii)(B) and NFPA 51B-2014, 30 min"))
	FireMonitoring = constant("FireMonitoring", 3, 0, 3, "h", read("NFPA 51B-2019, up to 3 h after the watch"))
)

// Shade is the filter shade for one range of arc current, gas metal arc.
type Shade struct {
	Above, UpTo float64 // A; Above < current <= UpTo; the first row starts at 0
	Minimum     Datum   // the least that the law requires
	Suggested   Datum   // what to start with; 0 if the guide gives none
	Note        string
}

func shade(n float64, o Origin) Datum { return Datum{n, n, n, "shade", o} }

var (
	shadeLaw   = read("29 CFR 1910.133(a)(5)")
	shadeGuide = read("ANSI Z49.1 shade guide as reproduced")
)

// Shades are the filter shades by current: the current while the arc is on, for a pulsed arc its peak. State
// tables differ: California and Michigan give 11 for gas-shielded work on nonferrous metal and 12 on ferrous at
// any current.
var Shades = []Shade{
	{0, 60, shade(7, shadeLaw), shade(0, shadeGuide),
		"Start dark, 10 or 11, and go lighter until you see the puddle; never under the minimum"},
	{60, 160, shade(10, shadeLaw), shade(11, shadeGuide), ""},
	{160, 250, shade(10, shadeLaw), shade(12, shadeGuide), ""},
	{250, 500, shade(10, shadeLaw), shade(14, shadeGuide), ""},
}

// ShadeFor returns the row for the current of a burning arc in A. It returns false for a current outside the
// table (not above 0, or over 500) and for NaN.
func ShadeFor(amps float64) (Shade, bool) {
	for i := range Shades {
		if amps > Shades[i].Above && amps <= Shades[i].UpTo {
			return Shades[i], true
		}
	}
	return Shade{}, false
}
