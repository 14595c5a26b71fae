package tables

// PracticeLine is one piece of advice in the words of the trade.
type PracticeLine struct {
	Code, Topic, Text string
	Origin
}

// Topics of practice lines.
const (
	TopicFit     = "does it fit"
	TopicFiller  = "filler and gas"
	TopicHand    = "technique"
	TopicFeed    = "feeding soft wire"
	TopicMetal   = "metals that bite"
	TopicAfter   = "after the bead"
	TopicMeasure = "measuring at the booth"
	TopicRecord  = "records"
	TopicSafety  = "safety"
	TopicClean   = "clean"
	TopicFitUp   = "fit up"
	TopicWarm    = "warm"
	TopicLay     = "lay"
)

// PracticeLines are in the order of a job.
var PracticeLines = Rows[PracticeLine]{
	{"sheet-range", TopicFit,
		"Sheet from 0.2 mm to about 3 mm. Above that strength limits it; there brazing suits wear overlay and repairs.",
		read("TWI Job Knowledge 134")},
	{"sheet-usual", TopicFit, "Most useful from 28 to 18 gauge.", practice},
	{"suits", TopicFit, "Suits zinc-coated sheet, high-strength steel where the heated zone must stay small, " +
		"unlike metals, a golden finish, wear and bearing overlay.",
		read("TWI Job Knowledge 134; the rest common practice")},
	{"zinc-strip", TopicFit, "Zinc protects a bare strip only 1 to 2 mm wide.", read("TWI Job Knowledge 134")},
	{"unsuited", TopicFit, "Not above about 200 °C in service, not for structural or pressure parts without a " +
		"qualified procedure, not for brass sheet, aluminium or capillary sockets.",
		memoryMedium("brazing handbooks; brass from the C26000 alloy data")},
	{"casting-repair", TopicFit, "A casting that carries nothing and stays under 200 °C may be repaired above 3 mm: " +
		"a leg, a cold hinge lug. A firebox, door, flue or grate may not.", practice},
	{"bronze-cost", TopicFit, "Bronze wire costs several times steel wire and is soft to feed; it saves grinding, " +
		"zinc repair and heat.", practice},
	{"melting-points", TopicFit,
		"Silicon bronze melts near 980 °C (1800 °F), mild steel near 1480 °C (2700 °F): the sheet stays solid " +
			"while the filler flows.", practice},
	{"deposit-strength", TopicFit, "A silicon bronze deposit holds about 345 MPa (50 ksi), steel wire " +
		"about 480 MPa (70 ksi).", practice},

	{"cusi3-general", TopicFiller, "CuSi3 for bare and zinc-coated steel.", practice},
	{"cual8-general", TopicFiller, "CuAl8 for aluminized sheet, stainless, more strength, sea water, overlay.",
		memoryMedium("DVS 0938-2 and welding handbooks")},
	{"cual10fe-dp", TopicFiller, "CuAl10Fe was the stronger on dual-phase steel at every heat input.",
		read("abstract of doi 10.1088/2053-1591/ab4835")},
	{"copper-dp", TopicFiller, "Never pure copper wire on dual-phase steel: cracks from liquid copper, and pores.",
		read("abstract of doi 10.1088/2053-1591/ab4835")},
	{"cusn-general", TopicFiller, "CuSn on bronzes and copper.", practice},
	{"cumn-general", TopicFiller, "Manganese aluminium bronze for stainless and propellers; its fume holds manganese.",
		memoryMedium("welding handbooks")},
	{"gas-argon", TopicFiller, "Argon, about 12 L/min (25 cfh).", read("trade magazine 2016")},
	{"gas-co2", TopicFiller, "No 18 % CO2: pores, cracks, a melted base.", read("Technologies 2025 13(11):525")},
	{"pulsed-heat", TopicFiller, "Pulsed is hottest, flattest and widest, and wets best; wetting too far thins the " +
		"throat. Plain dip becomes unsteady as wire feed rises.",
		read("abstract of doi 10.1007/s00170-024-14488-6")},

	{"polarity", TopicHand, "Direct current, gun positive.", memoryHigh("AWS Welding Handbook, gas metal arc")},
	{"push", TopicHand, "Push 10 to 20°, do not drag: steadier arc, less heat.", practice},
	{"stick-out", TopicHand, "Stick-out 10 to 15 mm from contact tip to arc.", practice},
	{"inductance", TopicHand, "More inductance quiets the arc, wets better and spatters less; too much stubs and " +
		"starts cold. A dial's number means nothing on another power source.", practice},
	{"weave", TopicHand, "A slight weave washes both toes; stringers on thin sheet.", practice},
	{"work-lead", TopicHand, "Work lead close to the joint, on bare metal.", practice},
	{"long-seam", TopicHand, "Long seams on sheet: skip or back-step, tack every 25 to 50 mm, let it cool between.",
		practice},
	{"no-glow", TopicHand, "Hot bronze gives no colour warning: it looks cold at 500 °C.", practice},
	{"count-travel", TopicHand, "Travel is hard to feel: count the seconds for 100 mm (4 in).", practice},
	{"position", TopicHand, "Flat is easiest; vertical down runs faster and colder; overhead wants a smaller feed.",
		practice},
	{"clean", TopicHand, "Degrease and let it dry; take off paint, wax, adhesive and grinding grit.", practice},
	{"coat-thick", TopicHand, "Coats to about 15 µm are easy, thicker ones want trials.", memoryMedium("DVS 0938-2")},
	{"vent-gap", TopicHand,
		"Zinc laps with no gap trap vapour: leave about as much as the two coats are thick, up to 0.1 mm.",
		read("a text on laser joining of zinc-coated laps")},
	{"gap", TopicHand, "Over a gap let each puddle freeze before the next is laid on it; a large hole gets a patch.",
		read("welding manuals")},
	{"gap-continuous", TopicHand, "A 0.6 mm butt gap in zinc-coated DP600 was bridged without pausing.",
		read("TU Berlin, figure of a gap-bridging test")},
	{"preheat-silicon", TopicHand, "Silicon bronze base: no preheat, let it cool under 65 °C between beads.",
		memoryHigh("AWS A5.7 annex")},
	{"preheat-aluminium", TopicHand, "Aluminium bronze under 10 % Al: under 150 °C between beads.",
		memoryMedium("AWS A5.7 annex")},
	{"preheat-heavy", TopicHand, "Heavy plate, and stainless before an overlay: warm it just to take the chill off; " +
		"watch the heat between beads.", practice},
	{"crater", TopicHand, "Before you stop, go back about 6 mm over the bead: no crater.",
		read("GMAW/FCAW Handbook 2018 pp. 155-156")},

	{"clean-steel", TopicClean,
		"Brush or grind rust, scale and paint off, 25 mm to each side, both faces where the bead comes.", practice},
	{"clean-zinc", TopicClean,
		"Leave the zinc on; wipe off oil and white rust. Bare metal only where the work lead sits.", practice},
	{"clean-stainless", TopicClean, "A stainless brush that touches nothing else; degrease, let it dry.", practice},
	{"clean-copper", TopicClean, "Bright with a brush or pad just before: its oxide keeps the filler off.", practice},
	{"clean-iron", TopicClean,
		"Casting skin, soaked oil and graphite off, down to bright metal: file or rotary burr, a disc smears graphite.",
		practice},
	{"solvent-never", TopicClean, "Never a chlorinated solvent or brake cleaner: arc light and heat turn its vapour " +
		"into phosgene. Take cans and rags away before the arc.", practice},
	{"tacks", TopicFitUp, "Tack every 25 to 50 mm, brush each tack, run the bead over it.", practice},
	{"tacks-held", TopicFitUp,
		"As few tacks and clamps as will hold it: this metal must be free to shrink while the filler is liquid.",
		read("Savage, Nippes and Mushala 1978; abstract of doi 10.1088/2053-1591/ab4835")},
	{"backing", TopicFitUp,
		"A copper bar behind a thin butt holds the puddle and draws heat: try it on scrap with the bar.", practice},
	{"copper-bar", TopicFitUp, "Flat copper bar, 6 mm or thicker and longer than the seam, brushed bright, clamped " +
		"on the back every 50 mm: where it stands off it neither cools nor carries.", practice},
	{"steel-strip", TopicFitUp, "Strip of the sheet's own metal and thickness, three times as wide as the opening " +
		"and at least 20 mm, bare and bright on both faces that meet, tacked to one sheet and pressed " +
		"tight.", practice},
	{"patch", TopicFitUp, "Patch of the same sheet, 15 mm wider than the opening all round, corners rounded, bare " +
		"where it laps, tacked tight. Lay each edge's bead from the middle out and let it cool.", practice},
	{"fit-tight", TopicFitUp, "The members lie tight, without a gap that the bead would have to bridge.", practice},
	{"bevel-iron", TopicFitUp, "Bevel 60 to 90° to sound metal; drill a small hole at each end of a crack first.",
		read("US Army TM 9-237 for the bevel; the rest common practice")},
	{"bevel-plate", TopicFitUp, "Above about 3 mm bevel a butt 60 to 90°, root edge rounded.", practice},
	{"strip-zinc", TopicClean,
		"Strip the zinc at least 25 mm back on both faces where stainless or hardened steel is joined to it, " +
			"wherever an overlay comes, and before any preheat; then give the sheet as bare.", practice},
	{"warm-iron", TopicWarm, "Cast iron: at least 150 to 200 °F (66 to 93 °C) through and through, so that it does " +
		"not chill the filler; the rest of the casting too, where it is held.", practice},
	{"iron-local", TopicWarm, "A local peak from 1100 °C begins to melt grey iron: hard, brittle, cracked.",
		memoryMedium("iron-carbon-silicon diagram")},
	{"chill-off", TopicWarm, "Heavy section: warm it until it feels hand-warm, to take the chill off.", practice},
	{"no-preheat", TopicWarm, "No preheat: thin sheet only gets hotter.", practice},
	{"skip", TopicLay, "Skip pieces, each laid back toward the finished end; let one cool while the next is laid.",
		practice},
	{"seal-overlap", TopicLay,
		"To hold water each piece runs about 6 mm over the end of the one before, and over every tack.", practice},
	{"iron-short", TopicLay, "Beads of about 25 mm, peen each while it is warm, let it cool until a hand bears it.",
		practice},

	{"rolls", TopicFeed, "U-groove rolls with light pressure; guides close to the rolls.",
		read("Gas Metal Arc Welding Handbook 2008 p. 34")},
	{"liner", TopicFeed, "Polymer or PTFE-graphite liner; short gun or push-pull.",
		memoryMedium("Gas Metal Arc Welding Handbook 2008")},
	{"contact-tip", TopicFeed, "Contact tip 0.1 to 0.2 mm over the wire.",
		memoryMedium("Gas Metal Arc Welding Handbook 2008")},
	{"bird-nest", TopicFeed, "Bird-nest: blocked liner or tip, stubbing, burnt-back wire, or rolls too tight.",
		memoryMedium("Gas Metal Arc Welding Handbook 2008")},

	{"liquid-copper", TopicMetal, "Liquid copper runs into the grain of stressed stainless and high-strength steel: " +
		"keep them unclamped and unstressed while hot, short at heat, argon only, aluminium-bearing wire.",
		read("Savage, Nippes and Mushala 1978; abstract of doi 10.1088/2053-1591/ab4835")},
	{"silicon-stainless", TopicMetal, "Silicon bronze on stainless pulls two ways: a silicide layer shields the " +
		"steel, a wide freezing range lengthens the contact. Avoid it where stainless is highly stressed.",
		read("abstract of doi 10.1080/02670836.2021.1929718")},
	{"cast-iron-melts", TopicMetal, "Grey iron begins to melt near 1130 °C: take care from 1100 °C.",
		memoryMedium("iron-carbon-silicon diagram")},
	{"cast-iron-how", TopicMetal, "Cast iron: clean off graphite and grit, bevel 60 to 90°, braze both sides where " +
		"you can, warm it so that it does not chill the filler, short beads, peen, cool slowly.",
		read("US Army TM 9-237; the rest common practice")},
	{"zinc-hot", TopicMetal, "Hot zinc embrittles stainless and hardened steel: strip it at least 25 mm back first.",
		practice},

	{"cool", TopicAfter, "Let it cool slowly, castings under dry sand or a blanket; brush, look at both faces.",
		practice},
	{"copper-bar-off", TopicAfter, "Let the seam go black before the bar comes off, and tap it off sideways, without " +
		"levering. Bronze that sticks to it means an opening too wide or a bar too hot: file it clean.", practice},
	{"steel-strip-stays", TopicAfter, "The strip stays, and behind it a crevice that holds water: seal both its " +
		"edges where it gets wet, and do not count on it where the joint is shaken.", practice},
	{"patch-stays", TopicAfter, "The patch stays, and with it a crevice between the sheets: seal its edges on the " +
		"back where it gets wet.", practice},
	{"mend-zinc", TopicAfter, "Mend the burnt zinc on both faces: brush to metal a little beyond it, then zinc-rich " +
		"paint, zinc spray or zinc solder.", memoryHigh("ASTM A780")},
	{"leak-test", TopicAfter,
		"Before paint: fill it with water, or soap and look for bubbles; never with pressure behind it.", practice},
	{"couple", TopicAfter,
		"In the wet, bronze makes the steel or zinc beside it corrode: paint or seal over the joint.", practice},
	{"fire-watch", TopicAfter,
		"Fire watch 60 minutes, then up to 3 hours' monitoring; the older minimum is 30 minutes.",
		read("NFPA 51B-2019; 29 CFR 1910.252(a)")},
	{"shaft", TopicAfter,
		"A shaft takes the work lead on itself, never through a bearing; turning, it catches sleeves and cables.",
		practice},
	{"shaft-fatigue", TopicAfter, "An overlay lowers a shaft's fatigue strength: where its failure can hurt " +
		"somebody, lay none without an engineer.", practice},

	{"measure-feed", TopicMeasure, "Wire feed: cold-feed button, gas off, run 6 seconds, cut, measure: length times " +
		"ten is a minute's. Twice; within 3 % is good. The trigger makes the wire live: without a cold feed unclip " +
		"the work lead and keep the gun clear of work, hands and eyes. Sharp end.", practice},
	{"measure-travel", TopicMeasure, "Travel: time a bead of 100 mm (4 in) with a watch or a phone's film.", practice},
	{"measure-stick-out", TopicMeasure, "Stick-out: rule from contact tip to work, less the arc's length.", practice},
	{"measure-arc", TopicMeasure,
		"Amps and volts: the meter while the arc runs, after the first second, not the set value.", practice},
	{"measure-gas", TopicMeasure, "Gas: a flow tube on the nozzle, not the regulator's gauge.", practice},
	{"measure-sheet", TopicMeasure,
		"Gap and thickness: feeler or calliper on the cleaned edge; coated sheet with its coating.", practice},

	{"test-bead", TopicRecord,
		"A test bead on scrap of the same sheet first, always; a peel or bend of it is the cheapest proof.", practice},
	{"record-fields", TopicRecord, "Write down filler class and heat number, diameter, gas and flow, polarity, amps, " +
		"volts, feed, travel, stick-out, gap, lap, coating, base and thickness, position, preheat, what you saw, " +
		"macro, peel or shear.", practice},
	{"process-number", TopicRecord, "Arc weld brazing is process 972, gas metal arc weld brazing 973.",
		memoryHigh("ISO 4063:2009; 972 read in ISO 17779:2021 and ISO 13585:2021")},
	{"imperfections", TopicRecord, "ISO 18279:2023 classes imperfections and sets no limits.",
		read("ISO 18279:2023, abstract")},
	{"acceptance", TopicRecord, "One code takes discontinuities up to 20 % of the lap in a macro and 25 % of the " +
		"faying area in a peel, no cracks.", read("AWS B2.2:2016")},
}
