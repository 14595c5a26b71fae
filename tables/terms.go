package tables

import "slices"

// Term is a word of the trade as the screens use it: its meaning in two plain sentences, its unit, and its
// source.
type Term struct {
	Word string
	Also []string // its other names on labels, flags and in figures
	Says string
	Unit string // "" if the word has no figure or the figure no unit
	Origin
}

var (
	awsTerms = memoryMedium("AWS A3.0, Standard Welding Terms and Definitions")
	isoTerms = memoryMedium("ISO/TR 25901, vocabulary of welding and allied processes")
	ownTerm  = Origin{"this program's own word", Own}
)

// Terms is the glossary: first the words of a job, then those of the shop.
var Terms = slices.Concat(jobTerms[:], shopTerms[:])

// jobTerms are in the order of a job: the choices, the settings, what follows from them, what is looked at,
// what is kept.
var jobTerms = [...]Term{
	{"arc brazing", []string{"brazing", "gas metal arc brazing", "mig brazing", "fit"},
		"A bronze wire melts in an arc under argon and wets steel that stays solid. It is brazing, not welding: the " +
			"joint holds by the bond of the bronze.", "",
		memoryHigh("ISO 4063, process 973")},
	{"metal", []string{"base metal", "material", "parent metal", "metal2", "second metal"},
		"What is joined. Its melting range and how fast it leads heat away decide how hot the bronze may be laid.", "",
		awsTerms},
	{"gauge", []string{"thickness", "gauge2", "second gauge"}, "A sheet's number: the higher, the thinner, and each " +
		"kind of metal has its own list. Type millimetres or inches where a number could be misread.", "mm or in",
		memoryHigh("manufacturers' standard gauge for uncoated steel, galvanized sheet gauge")},
	{"coating", []string{"zinc coat", "coating2", "second coating"},
		"The zinc or aluminium on the sheet, by its mass on both sides together. More zinc means more fume, more " +
			"spatter and a wider bare strip.", "g/m² or oz/ft²",
		memoryHigh("ASTM A653, EN 10346")},
	{"joint", []string{"lap", "butt", "tee", "corner", "edge", "plug"}, "How the two pieces meet: one over the other " +
		"(lap), edge to edge (butt), standing on (tee), at an angle (corner), side by side (edge), through a hole " +
		"(plug). It decides how the heat splits and where the bead has to wet.", "", awsTerms},
	{"gap", []string{"root opening", "opening"}, "The open space at the root before the arc. Bronze bridges a small " +
		"one at a steady arc; a wider one needs a timed arc.", "mm", awsTerms},
	{"wire", []string{"wire size", "wire diameter", "diameter"}, "The diameter of the bronze wire. Thinner wire " +
		"needs less current to run steadily, so thin sheet wants thin wire.", "mm or in",
		memoryHigh("AWS A5.7, ISO 24373")},
	{"filler", []string{"bronze", "alloy", "filler metal"}, "The alloy of the wire. It melts below the sheet and is " +
		"named by what is in it: CuSi3 is copper with three parts of silicon in a hundred.", "",
		memoryHigh("ISO 24373, AWS A5.7")},
	{"mode", []string{"dip", "short arc", "short circuit", "short circuiting", "dip transfer", "transfer", "pulsed",
		"timed"},
		"How the arc runs: the wire dips into the puddle and shorts (dip), each pulse throws one drop (pulsed), " +
			"or the arc is switched on and off by the trigger or a timer (timed). Dip runs on every power source.", "",
		isoTerms},
	{"shielding gas", []string{"argon", "gas", "gas flow", "flow", "gas used"},
		"Argon keeps air from the arc and the puddle. Too little lets air in, too much stirs air in.", "L/min",
		awsTerms},
	{"position", []string{"flat", "horizontal", "vertical-up", "vertical-down", "overhead"},
		"How the seam lies while it is laid. Bronze runs easily, so flat or slightly downhill is the easiest.", "",
		awsTerms},
	{"use", nil, "What the joint is for: looks, tightness, load, wear or bearing. It decides which wire suits " +
		"and which page warns.", "", ownTerm},
	{"hazard", []string{"stops"}, "What stops a job before any figure: a container that held fuel, pressure, gas, " +
		"cadmium, lead, a closed space, a vehicle. Answer it honestly; the program cannot see it.", "",
		memoryHigh("29 CFR 1910.252; ANSI Z49.1")},

	{"wire feed", []string{"feed", "wire feed speed", "wire speed", "feed speed", "wfs"},
		"How fast the wire comes out of the gun. It sets how much bronze is laid and, with the stick-out, the current.",
		"m/min or in/min", awsTerms},
	{"volts", []string{"arc voltage", "voltage"}, "The voltage over the arc while it burns, as a meter at the gun " +
		"shows it. More volts make the arc longer and the bead wider and hotter.", "V", awsTerms},
	{"travel", []string{"travel speed", "welding speed", "speed"},
		"How fast the gun moves along the seam. Slower puts more heat and more bronze into every millimetre.",
		"mm/s or in/min", awsTerms},
	{"stick-out", []string{"stickout", "electrode extension"}, "The length of wire from the contact tip to the arc. " +
		"The longer it is, the more the wire warms itself and the less current the same feed draws.", "mm", awsTerms},
	{"polarity", nil, "Which side of the arc the gun is on. Bronze wire runs with the gun positive, on direct current.",
		"", awsTerms},
	{"gun angle", []string{"push"}, "How far the gun leans from square, and which way. Pushing, with the wire " +
		"pointing ahead, lays flatter and steadier than dragging.", "degrees", awsTerms},
	{"inductance", nil, "How fast the current may rise when the wire shorts. More quiets a dip arc and wets better; " +
		"less helps where the wire stubs.", "", practice},
	{"aim", []string{"arc aim"},
		"Where the arc points, off the middle of the joint. It goes toward the member that takes more heat.", "mm",
		ownTerm},
	{"least preheat", []string{"soak", "soak through", "soak across"}, "How warm the parts must be before this " +
		"wire's strongest arc wets them. The heat needs its time through the part and along it; measure on " +
		"the far face.", "°C or °F, s", ownTerm},
	{"part that warms", []string{"part-width", "part width", "part-mass", "part mass", "seam rise", "next start"},
		"A small part is hotter at the end of its seam than at the start. The card judges both ends, and says where " +
			"the next bead would start.", "K, °C or °F", ownTerm},
	{"preheat", []string{"interpass", "layer temperature"}, "The temperature of the parts before the arc, or before " +
		"the next layer. Warm parts wet sooner and crack less, and melt sooner too.", "°C or °F", awsTerms},
	{"arc on", []string{"arc-on", "on", "arc on min", "arc on max", "first spot on"},
		"How long a timed arc burns for one spot. Shorter leaves an edge unwetted, longer melts it.", "s", ownTerm},
	{"arc off", []string{"arc-off", "off", "arc off min", "arc off max"}, "The pause between two spots. If it is " +
		"shorter, the puddle is all liquid and may fall through; if it is longer, the puddle is frozen.", "s", ownTerm},
	{"spot step", []string{"spot-step", "step", "fill per spot"},
		"How far the gun moves between two spots of a timed arc. It has to leave no gap unfilled.", "mm", ownTerm},
	{"timed arc", []string{"beat", "rhythm"},
		"An arc that is switched on and off while the gun moves on: on, off, step, and again. It lets bronze bridge " +
			"an opening that a steady arc would fall through.", "", ownTerm},

	{"current", []string{"amps", "amperage"}, "What flows through the wire and the arc. On a wire-feed machine it " +
		"follows from feed and stick-out; it is read, not set.", "A", awsTerms},
	{"deposition", []string{"deposition rate", "wire used", "wire mass", "wire weight", "wire in seam", "wire length",
		"melted"},
		"How much bronze gets into the seam. A little of the wire is lost as spatter and smoke.", "g/min or g/m",
		awsTerms},
	{"arc energy", nil, "Volts times amps over travel: what the arc spends on each millimetre, before any loss. " +
		"Not all of it reaches the sheet.", "J/mm", memoryHigh("ISO/TR 18491")},
	{"heat input", nil,
		"Arc energy times 0.8, as procedures report it. Use it to compare with procedures, not to " +
			"compute temperatures.",
		"J/mm", memoryHigh("ISO/TR 17671-1, EN 1011-1")},
	{"net heat", nil, "The part of the arc's energy that goes into the sheet, by measured efficiency. Temperatures " +
		"and zinc bands are computed from it.", "J/mm", memoryHigh("DuPont and Marder 1995")},
	{"bead area", []string{"bead"},
		"The cross-section of the laid bronze: wire feed over travel. It has to fill the joint.", "mm²", awsTerms},
	{"bead width", nil, "From toe to toe across the bead. It grows with heat and with bronze.", "mm", awsTerms},
	{"wetted", []string{"wets", "wetting", "wetted 1", "wetted 2"},
		"Where bronze spread over a face that was hot enough and clean enough to hold it. Only there is a bond.", "mm",
		awsTerms},
	{"toe angle", []string{"wetting angle", "toe", "toe angle 1", "toe angle 2"},
		"The angle inside the bead where it meets the sheet. A small one runs out smoothly; a large one stands like " +
			"a drop and lets go.", "degrees",
		memoryMedium("ISO 5817, no. 505")},
	{"throat", nil, "The shortest way through a fillet's bronze. The load on the bronze goes through it.",
		"mm", awsTerms},
	{"leg", nil, "How far a fillet reaches up one side. With it the throat can be measured on a finished bead.", "mm",
		awsTerms},
	{"base peak", []string{"base stays solid", "base peak temperature"}, "The hottest that the sheet's skin gets " +
		"beside the bead. It must stay below the sheet's melting: that is what makes it brazing.", "°C or °F", ownTerm},
	{"dial", []string{"feed's dial", "volts' dial", "feed dial", "volts dial"},
		"Where the knob of a power source stands, by its own marks. What a mark gives is learned from readings in " +
			"the book; outside the marks that were read the program does not say.", "marks", ownTerm},
	{"plug hole", []string{"hole", "plug volume", "plug time", "rim below", "middle below", "plug wets below",
		"pull-out capacity", "allowable pull"},
		"The hole in the upper sheet through which a plug is laid. It must show enough of the sheet below for the " +
			"arc to burn there, and not on the hole's wall.", "mm", awsTerms},
	{"burn-through", []string{"no burn-through", "burns through"},
		"The sheet melts through and the puddle falls out. Less heat, more travel or a backing keeps it up.", "",
		awsTerms},
	{"joint filled", nil,
		"The bronze that is laid is enough for the gap, leg or throat. With less, a groove stays open.", "", ownTerm},
	{"gap bridged", []string{"largest gap", "root sag", "root opening bridged"},
		"The liquid spans the root opening and holds itself in it until it freezes. Computed from surface tension, " +
			"weight and the arc's push; no test on beads stands behind it.", "mm", ownTerm},
	{"metal stays up", []string{"largest bead", "bead hangs"},
		"Out of the flat position the puddle hangs by its surface tension alone. A bead that is too large runs or " +
			"drips before it freezes.", "mm2", ownTerm},
	{"arc steady", []string{"dip floor", "spray"}, "The current is high enough for a regular dip arc and low enough " +
		"not to spray. Outside that range the arc stutters or spatters.", "", practice},
	{"hand speed", nil, "A travel that a hand can hold evenly. A faster or slower one needs a carriage.",
		"mm/s", practice},
	{"verdict", []string{"zone", "good", "cold", "hot", "marginal", "outside", "other edge", "not-modelled"}, "What " +
		"the setting is by the computed cross-section: good, cold, hot, burns through, or past another edge. Good " +
		"means every edge is met; marginal, that the chance of it is under 50 in 100; outside, that the heat is good " +
		"but another edge is not met.", "",
		ownTerm},
	{"chance", []string{"chance of a good bead"}, "How likely a setting meets every edge, since heat, current and " +
		"each edge are uncertain. Of 100 such settings about this many would be good.", "%", ownTerm},
	{"margin", []string{"nearest edge"}, "How much feed or travel may go astray before the nearest edge is reached. " +
		"Below zero an edge is already passed.", "%", ownTerm},
	{"window", []string{"operating window", "map"}, "All feeds and travels that give a good bead for this job. " +
		"A wide one forgives a hand; a narrow one wants practice.", "",
		memoryMedium("welding handbooks: operating window, tolerance box")},
	{"zinc boiled", []string{"zinc boiled 1", "zinc boiled 2", "zinc band", "zinc limit"},
		"How far from the bead's middle the zinc is gone, 907 °C and more. A strip up to 1 or 2 mm is still " +
			"protected by the zinc beside it.", "mm", memoryHigh("boiling point of zinc; TWI Job Knowledge 134")},
	{"zinc melted", []string{"zinc melted 2"},
		"How far the zinc was liquid, 419.5 °C and more. It is still there, but uneven.", "mm",
		memoryHigh("melting point of zinc")},
	{"cooling time", nil, "From 800 to 500 °C beside the bead. Short times harden steels with more carbon.", "s",
		memoryHigh("EN 1011-2, t8/5")},
	{"pulses", []string{"pulse frequency", "pulse", "pulse peak", "pulse time", "pulse base", "pulse power",
		"effective current", "effective"},
		"How many drops a second a pulsed arc throws, one for each pulse. It rises with the wire feed.", "Hz, A, ms, %",
		practice},
	{"inputs", []string{"assumed", "basis", "band"}, "What a figure was computed from, and how far it may be off. " +
		"The true value lies within the band in 95 of 100 cases, as far as the program can tell.", "", ownTerm},

	{"flux", []string{"brazing flux"}, "A salt that dissolves oxide and keeps the air off in flame brazing. None is " +
		"needed here: the gas keeps the air off and the arc breaks the oxide where it burns; a flux would only add " +
		"fume and residue that corrodes.", "", practice},
	{"prepare", []string{"tack", "tacks", "tack pitch", "tip bore", "vent gap"}, "What is done before the arc: " +
		"clean to metal, fit up, tack. Half of what goes wrong with a bead was there before it.", "", practice},
	{"seam", []string{"length", "seam length", "seam pieces", "count", "pieces", "seam time"},
		"The joint along its length. Long ones in thin sheet are laid in short pieces, back and forth, " +
			"so that nothing warps.", "mm or in", awsTerms},
	{"overlay", []string{"layer", "layers", "layer height", "overlay pitch", "pitch", "build-up"},
		"Bronze laid on a face to build it up or to slide well: beads side by side, layer on layer. The pitch " +
			"is from bead to bead.", "mm", awsTerms},
	{"shaft", []string{"shaft-dia", "shaft speed", "feed per turn", "spindle"},
		"A round part that turns under the gun. Its speed makes the travel, and the gun moves one pitch a turn.",
		"mm, 1/min", ownTerm},
	{"interpass hold", []string{"hold", "next hold"},
		"How long to wait before the next layer. The part must cool to where the layer does not run off.", "s",
		awsTerms},
	{"machine", []string{"power source", "rated-amps", "rated amps", "load line", "rated volts", "power-source"},
		"What feeds the arc. Its plate says how many amps it gives for what share of ten minutes.", "A, V",
		memoryHigh("IEC 60974-1")},
	{"duty cycle", []string{"rated-duty", "rated duty", "duty"},
		"How much of ten minutes the arc may burn at a current. Above it the machine gets too hot and stops.", "%",
		memoryHigh("IEC 60974-1")},
	{"nozzle", []string{"nozzle-bore", "nozzle bore", "gas ceiling"},
		"The cup around the tip that the gas comes out of. A narrow one turns turbulent at less flow.", "mm", awsTerms},
	{"spool", []string{"lot"}, "A roll of wire with its lot number. What is left on it is weighed.", "kg", practice},

	{"strength", []string{"throat capacity", "bond capacity", "sheet capacity", "capacity"},
		"What the joint carries before it lets go: through the bronze, at the bond, or in the sheet. The least " +
			"of the three governs.", "N", ownTerm},
	{"load", []string{"allowable load", "load share"},
		"The pull along the joint that is meant to stay on it. Prying and peeling are far worse and are not computed.",
		"N", ownTerm},
	{"safety factor", []string{"safety"},
		"What the weak end of the strength is divided by before it is allowed. A qualified person chooses it.", "",
		memoryMedium("engineering handbooks")},
	{"service temperature", []string{"service-temp"},
		"How hot the joint gets in use. Bronze loses strength above about 200 °C.", "°C", practice},
	{"distortion", []string{"shrinkage", "shrinkage force", "shrinkage across", "flat, edge held", "flat, edge free",
		"pull, edge held", "pull, edge free", "angular change", "warping", "buckling"},
		"What a seam does to the sheet's shape as it cools. It pulls it together along and across, and makes thin " +
			"sheet wavy.",
		"N, mm, °, %", awsTerms},
	{"haz", []string{"heat-affected zone", "hardness", "zone hardness", "sheet hardness", "changed zone",
		"softened width", "softened", "softened 2", "changed zone 2", "zone hardness 2", "sheet hardness 2",
		"softened width 2", "softened hardness 2", "softened strength 2", "softened hardness", "softened strength",
		"carbon equivalent"},
		"The metal beside the bead that the heat changed without melting it. Steel may harden there, high-strength " +
			"and cold-worked metal turns soft.", "HV, mm", awsTerms},
	{"air", []string{"zinc fume", "zinc rate", "zinc oxide rate", "zinc per length", "clean air",
		"fume", "fume rate", "fume copper", "fume manganese", "fume silicon", "fume aluminium", "fume nickel",
		"fume tin", "fume chromium", "hood flow", "capture needed"},
		"What wire and zinc put into the air you breathe, and the share of it that the hood must catch. Extraction " +
			"at the source comes first, the respirator second.", "mg/s, g/h, m³/h, %",
		memoryHigh("29 CFR 1910.252(c); OSHA, NIOSH and ACGIH limits")},
	{"shade", []string{"shade suggested", "shade minimum", "eye shade"}, "How dark the filter before the eyes is. " +
		"Start dark and go lighter until you see the puddle, never below the least.", "",
		memoryHigh("ANSI Z49.1 shade guide; ISO 16321")},
	{"correct", []string{"test bead", "bead signs"},
		"A short bead on scrap of the same sheet, looked at and peeled. It shows what one setting to change.", "",
		practice},
	{"measure", []string{"reading", "wire pull", "pull"}, "Amps, volts and the wire that comes in six seconds, " +
		"read at the booth. Each reading narrows the card's bands for that machine.", "A, V, mm", practice},
	{"cost", []string{"wire cost", "gas cost", "labour", "labour time", "labour cost", "total cost", "arc time",
		"operating", "operating factor", "wire-price", "gas-price", "labour-rate", "steel-price", "steel cost",
		"grinding", "zinc-repair", "zinc repair time", "zinc repair cost"},
		"What a seam takes of time, wire, gas and money at your prices. The operating factor is the share of the " +
			"time in which the arc burns.", "your money",
		memoryMedium("cost chapters of welding handbooks")},
	{"heat share", []string{"heat share 1", "heat share 2"},
		"How much of the heat each member takes. The one that takes less sees the higher temperature.", "%", ownTerm},

	{"book", []string{"card", "trial", "revision", "records", "record"},
		"The shop's own record: cards, test beads, readings. Nothing in it is overwritten; a change is a new revision.",
		"", ownTerm},
	{"sheet", nil, "The card and every page beside it as one text, to print or to send. The metal sheet is " +
		"called by its gauge.", "", ownTerm},
	{"walk", []string{"first walk"},
		"A short way over the screens with the example on them, one key a step. It comes once by itself, on the " +
			"first start, and later from the pages.", "", ownTerm},
	{"practice", []string{"learn", "booth"}, "Jobs of a booth that the program makes up, with a heat of its own that " +
		"you do not see. You set, it lays the bead, you correct; nothing is kept unless you say so.", "", ownTerm},
	{"decide, set, check, keep", []string{"decide", "set", "check", "keep"}, "The order of the work, in which the " +
		"pages stand: whether to braze, with what setting, how it came out, what to remember. The card " +
		"is the middle of it.", "", ownTerm},
	{"solidus", []string{"liquidus", "melting range"}, "Where a metal begins to melt, and where it is all liquid. " +
		"Bronze wets between and above them while steel is still far below.", "°C or °F", awsTerms},
	{"inches and millimetres", []string{"units", "metric", "inch", "imperial", "both"},
		"The two ways figures are shown; u changes them. The program computes in millimetres, so nothing is " +
			"lost in between.",
		"", ownTerm},
}
