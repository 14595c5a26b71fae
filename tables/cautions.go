package tables

// CautionLines give the full text of the warnings that the card shows in one line.
var CautionLines = Rows[PracticeLine]{
	{"shock", TopicSafety, "Electric shock kills, and a small power source is enough: dry leather gloves without " +
		"holes, dry clothes and boots, dry boards or a mat where the ground is wet or the part large; cables, " +
		"gun and clamp whole, the work lead on the part itself. No arc in the rain, on a wet yard or in clothes wet " +
		"with sweat; switch off before a hand goes into the gun or the feeder.",
		memoryHigh("IEC 60974-9; ANSI Z49.1")},
	{"fume-zinc", TopicSafety, "Extraction on, head out of the plume, respirator: zinc fume gives metal fume fever. " +
		"It passes in a day or two; breathlessness, chest pain or fever that lasts is for a doctor, since cadmium " +
		"looks the same at first and can kill.",
		read("29 CFR 1910.252(c)(6); the rest common practice")},
	{"fume-copper", TopicSafety,
		"With bronze wire copper fume has a tight legal limit, 0.1 mg/m³: local extraction.",
		read("29 CFR 1910.1000 Table Z-1, as in NIOSH 1317380")},
	{"fume-delay", TopicSafety,
		"Zinc oxide breathed for 2 hours at the legal limit still gave an inflammation that peaked " +
			"about 9 hours later.", read("NIOSH NPGD0675 documents")},
	{"fume-room", TopicSafety,
		"A room under 284 m³ (10000 ft³) a welder, under 5 m high or obstructed needs mechanical ventilation.",
		read("29 CFR 1910.252(c)(2)")},
	{"fire-clear", TopicSafety, "Clear or cover what burns within 11 m (35 ft), both sides of the wall.",
		read("29 CFR 1910.252(a)")},
	{"fire-watch-min", TopicSafety, "Somebody watches for 60 minutes after the last arc, 30 at the very least.",
		read("NFPA 51B-2019; 29 CFR 1910.252(a)(2)(iii)(B)")},
	{"eye-shade", TopicSafety, "Start dark and go lighter until you see the puddle, never under the legal minimum; " +
		"bronze shines more than steel.", read("29 CFR 1910.133(a)(5); ANSI Z49.1 shade guide")},
	{"skin", TopicSafety, "Cover skin and throat: argon with bright bronze gives strong ultraviolet.", practice},
	{"phosgene", TopicSafety, "Never a chlorinated solvent or brake cleaner: arc light and heat turn its vapour into " +
		"phosgene. Take cans and rags away before the arc.", practice},
	{"argon-space", TopicSafety, "Argon is heavier than air and drives it out of pits, tanks and small rooms: " +
		"no arc there without ventilation and somebody outside.", memoryHigh("29 CFR 1910.146, 1910.252(c)(4)")},
	{"codes", TopicSafety,
		"Local codes, the vehicle or equipment maker's repair procedure and licensed practice come " +
			"before anything here.", practice},
}

// Hazard is a danger for which a job must not be started, whatever its numbers are.
type Hazard struct {
	ID, Name, Why, Instead string
	Origin
}

// Hazards lists the dangers that stop a job.
var Hazards = Rows[Hazard]{
	{"tank", "used tank or drum", "What it held, or its vapour, explodes in the heat; a trace is enough",
		"Have it cleaned, vented and tested by somebody who does that, or buy a new one",
		memoryHigh("29 CFR 1910.252(a)(3)")},
	{"sealed", "sealed or hollow part", "Trapped air and damp burst it",
		"Only where you know what was in it and that was no fuel or chemical: open or drill a vent, look inside, " +
			"then braze. Else treat it as a used tank", memoryHigh("29 CFR 1910.252(a)(3)")},
	{"coated", "coated or lined inside", "The lining burns to gas that poisons or explodes",
		"Strip it well back and vent it, or replace the part", memoryHigh("29 CFR 1910.252(a)(3)")},
	{"pressure", "holds pressure", "A joint without a qualified procedure can let go",
		"A qualified procedure and a licensed person", practice},
	{"gas", "gas or fuel line", "A leak burns or explodes, and the line may hold gas now",
		"A licensed gas fitter", practice},
	{"cadmium", "cadmium plate",
		"Its fume kills, and feels like zinc fever at first; gold or bright plate on old bolts and aircraft parts",
		"Do not heat it; use another part, or have it stripped chemically", memoryHigh("29 CFR 1910.252(c)(9)")},
	{"lead-paint", "lead paint", "Its fume and dust poison you and those who live near",
		"Test old paint; have it removed wet or chemically, not burnt or ground",
		memoryHigh("29 CFR 1910.252(c)(7), 1910.1025")},
	{"leaded-bronze", "leaded bronze", "Lead boils out of it, and the joint cracks",
		"Solder it, bolt it, or have it remade in unleaded bronze", memoryHigh("29 CFR 1910.252(c)(7), 1910.1025")},
	{"beryllium", "beryllium copper", "Its fume and dust scar the lungs for life",
		"Do not heat, grind or file it; replace the part", memoryHigh("29 CFR 1910.252(c)(8), 1910.1024")},
	{"confined", "confined space", "Argon drives the air out; one breath is enough to faint",
		"Ventilate, measure the oxygen, somebody outside with a line, or take the work out",
		memoryHigh("29 CFR 1910.146, 1910.252(c)(4)")},
	{"fire-part", "firebox, door, flue or grate",
		"It gets hotter than bronze stands, about 200 °C, and a leak lets carbon monoxide into the room",
		"Replace the part with the maker's", practice},
	{"vehicle", "vehicle's crash structure", "Heat and copper change what was designed to fold",
		"The vehicle maker's repair procedure, by a trained person", practice},
}

// HazardWords are the words that a user may type for hazards, in the order in which help lists them. "lead"
// means both paint and bronze with lead.
func HazardWords() []string {
	return []string{"tank", "sealed", "coated", "pressure", "gas", "cadmium", "lead", "beryllium", "confined",
		"vehicle", "fire-part"}
}
