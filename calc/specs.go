package calc

// The figures of a card in the order a welder needs them. Those whose output does not apply to the job are left out.

var settingSpecs = [...]figureSpec{
	{"wire_feed", oFeedMin, "m/min", "given", nil, "user", "given"},
	{"volts", oVolts, "V", "{m}·{f}·(14 + 0.05·{I})", []term{
		{"m", "the mode's volts over the load line", "", inModeFactor, noOut},
		{"f", "volts read over volts modelled", "", inVoltFactor, noOut}, tAmps},
		"conventional load line IEC 60974-1 scaled to the mode", OwnCalc},
	{"travel", oTravel, "mm/s", "given", nil, "user", "given"},
	{"arc_on", oOn, "s", "{sigma}²/(2·a)·(e^z − 1), a = {k}/{rhoc}, z = 4·pi·{k}·{t}·({T_liq} − {T0})/({eta}·{U}·{I})", []term{
		tSpread, tK1, tC1, tThick1, {"T_liq", "filler liquidus", "C", inLiquidus, noOut}, tRoom, tEta, tVolts, tAmps},
		"standing Gaussian source on a sheet (Carslaw and Jaeger, memory high); a line-source estimate", OwnCalc},
	{"arc_off", oOff, "s", "{t_on}/(e^z − 1), z = 4·pi·{k}·{t}·({T_toe} − {T0})/({eta}·{U}·{I})", []term{
		tOn, tK1, tThick1, tToe, tRoom, tEta, tVolts, tAmps},
		"line source switched off (Carslaw and Jaeger, memory high); an estimate, neither floor nor ceiling", OwnCalc},
	{"spot_step", oStep, "mm", "√({sigma}² + 2·{k}/{rhoc}·{t_on})", []term{tSpread, tK1, tC1, tOn},
		"how far the spot's heat has spread: half of the puddle's length", OwnCalc},
}

var resultSpecs = [...]figureSpec{
	{"current", oAmps, "A", "2·P/({phi} + √({phi}² + 4·R·P)), P = pi/4·{d}²·{v_w}·{rho}·{H_liq}/1000, R = {rho_e}·{L}/(pi/4·{d}²)",
		[]term{tPhi, tWire, tFeed, tRho, tHLiq, tRhoE, tStick}, wireSource, OwnCalc},
	{"deposition_rate", oDeposition, "g/min", "0.06·pi/4·{d}²·{v_w}·{rho}·{eta_d}", []term{tWire, tFeed, tRho, tDep},
		"definition; deposition efficiency as in its row", OwnCalc},
	{"wire_mass_per_length", oMassPerLength, "g/m", "pi/4·{d}²·{rho}", []term{tWire, tRho}, "definition", OwnCalc},
	{"arc_energy", oArcEnergy, "J/mm", "{U}·{I}/{v}", []term{tVolts, tAmps, tTravel},
		"AWS/ASME arc energy, no efficiency factor (memory high)", OwnCalc},
	{"heat_input", oHeatInput, "J/mm", "0.8·{U}·{I}/{v}", []term{tVolts, tAmps, tTravel},
		"ISO/TR 17671-1, EN 1011-1, k = 0.8 (memory high); for reports", OwnCalc},
	{"net_heat", oNet, "J/mm", "{eta}·{U}·{I}/{v}", []term{tEta, tVolts, tAmps, tTravel},
		"measured efficiency of gas metal arc, DuPont and Marder 1995 (abstract read)", OwnCalc},
	{"bead_area", oBead, "mm2", "pi/4·{d}²·{v_w}·{eta_d}/{v}", []term{tWire, tFeed, tDep, tTravel}, "mass balance", OwnCalc},
	{"bead_width", oWidth, "mm", "chord from toe to toe, each toe where the sheet's peak falls to {T_toe}", []term{
		tNet, tToe, tThick1, tC1, tK1},
		bandSource, OwnCalc},
	{"zinc_boiled_halfwidth", oBoiled1, "mm", boiledFormula, bandTerms1, bandSource, OwnCalc},
	{"zinc_boiled_halfwidth_2", oBoiled2, "mm", boiledFormula, bandTerms2, bandSource, OwnCalc},
	{"zinc_melted_halfwidth", oMelted1, "mm", meltedFormula, bandTerms1, bandSource, OwnCalc},
	{"zinc_melted_halfwidth_2", oMelted2, "mm", meltedFormula, bandTerms2, bandSource, OwnCalc},
	{"cooling_time", oCooling, "s", "", []term{tRoom, tNet}, "", OwnCalc}, // coolingBasis shows which of its two forms holds
	{"pulse_frequency", oPulse, "Hz", "pi/4·{d}²·{v_w}/(pi·{d}³/6)", []term{tWire, tFeed},
		"mass balance at one drop of the wire's diameter a pulse", OwnCalc},
}

const (
	bandSource    = "Rosenthal's moving source in thin sheet with loss from both faces (1941, memory high); not validated on zinc"
	boiledFormula = "half-width where the peak of the sheet reaches 907 °C: {H} shared by thickness {t} and effusivity, of conductivity {k} and heat capacity {rhoc}; travel {v}, loss {h}, from {T0}"
	meltedFormula = "half-width where the peak of the sheet reaches 419.5 °C: {H} shared by thickness {t} and effusivity, of conductivity {k} and heat capacity {rhoc}; travel {v}, loss {h}, from {T0}"
)

var (
	bandTerms1 = []term{tNet, tTravel, tThick1, tK1, tC1, tLoss, tRoom}
	bandTerms2 = []term{tNet, tTravel, tThick2, tK2, tC2, tLoss, tRoom}
)

// Formulas that replace a spec's own where the user gave the number or the program chose it.
const (
	GivenFormula   = "given"
	suggestFormula = "the feed and travel furthest, in relative terms, from every limit"
	usualFormula   = "a setting to begin with: no verdict on wetting and melting is computed here"
)
