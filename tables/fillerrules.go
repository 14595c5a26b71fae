package tables

// FillerRule is a reason for or against a filler on a metal or for a use. On is a metal's id, a Family, "zinc",
// "high-strength", "overlay", or a use's id. Out excludes the filler there.
type FillerRule struct {
	Filler, On string
	Points     float64
	Out        bool
	Text       string
	Origin
}

var (
	dualPhase = read("abstract of doi 10.1088/2053-1591/ab4835")
	dvs       = memoryMedium("DVS 0938-2 and welding handbooks")
	handbooks = memoryMedium("welding handbooks")
	silicide  = read("abstract of doi 10.1080/02670836.2021.1929718")
)

// FillerRules lists the rules.
var FillerRules = []FillerRule{
	{"cusi3", string(Steel), 3, false, "the usual wire for bare steel", practice},
	{"cusi3", "zinc", 1, false, "the usual wire for zinc-coated steel", practice},
	{"cusi3", string(CopperFam), 1, false, "wets copper well", practice},
	{"cusi3", string(Bronze), 1, false, "silicon bronze on bronze", practice},
	{"cusi3", string(CastIron), 1, false, "flows well on cleaned iron, softer than aluminium bronze", practice},
	{"cusi3", "aluminized", -2, false, "the aluminium-silicon coat wants aluminium in the wire", dvs},
	{"cusi3", string(Stainless), -2, false,
		"wide freezing range: copper stays liquid in contact for longer; avoid it where stainless is highly stressed",
		silicide},
	{"cusi3", "high-strength", -1, false, "no aluminium layer to keep copper out of the grain", dualPhase},
	{"cusi3", "wear", -1, false, "softer than aluminium bronze", practice},
	{"cusi3", "bearing", -1, false, "aluminium bronze and tin bronze run better", practice},
	{"cusi3", "decorative", 1, false, "golden copper, polishes", practice},

	{"cual8", "aluminized", 3, false, "wets the aluminium-silicon coat", dvs},
	{"cual8", string(Stainless), 3, false, "the safer choice against copper penetration", silicide},
	{"cual8", string(Steel), 1.5, false, "stronger than silicon bronze", dvs},
	{"cual8", "high-strength", 2, false, "its interface layer keeps copper out of the grain", dualPhase},
	{"cual8", "aluminium-bronze", 3, false, "its own alloy", practice},
	{"cual8", string(CopperFam), 0.5, false, "joins copper to steel and stainless", practice},
	{"cual8", string(CastIron), 1, false, "takes to cleaned iron", practice},
	{"cual8", "overlay", 3, false, "the usual overlay for wear and bearing", dvs},
	{"cual8", "seal", 0.5, false, "stands sea water", dvs},
	{"cual8", "wear", 2, false, "hard enough to rub", dvs},
	{"cual8", "bearing", 2, false, "a bearing bronze", dvs},
	{"cual8", "decorative", 0.5, false, "pale gold", practice},

	{"cual10fe", "high-strength", 4, false, "the stronger on dual-phase steel at every heat input", dualPhase},
	{"cual10fe", string(CastIron), 4, false, "hard and strong on cast iron", practice},
	{"cual10fe", string(Steel), 1, false, "harder and stronger than CuAl8", practice},
	{"cual10fe", string(Stainless), 2, false, "aluminium-bearing", silicide},
	{"cual10fe", "aluminium-bronze", 2, false, "repairs aluminium bronze", practice},
	{"cual10fe", "overlay", 2, false, "a harder overlay", practice},
	{"cual10fe", "wear", 2.5, false, "the hardest of these that is easily had", practice},

	{"cusn6", string(Bronze), 2, false, "for bronzes", practice},
	{"cusn6", string(CopperFam), 1.5, false, "for copper", practice},
	{"cusn6", string(CastIron), 0.5, false, "used on cast iron", practice},
	{"cusn6", string(Steel), -1, false, "cracks hot: it freezes over a wide range", practice},
	{"cusn6", string(Stainless), -2, false, "cracks hot, no aluminium to keep copper out of the grain", practice},
	{"cusn6", "bearing", 2, false, "a bearing bronze", practice},

	{"cusn1", string(CopperFam), 3, false, "for copper and earthing: conducts best, copper's colour", practice},
	{"cusn1", string(Steel), -1.5, false, "the weakest of these, and melts highest", practice},
	{"cusn1", string(Stainless), -3, false, "nearly pure copper on austenite", silicide},
	{"cusn1", "high-strength", -5, true,
		"never pure copper wire on dual-phase steel: cracks from liquid copper, and pores", dualPhase},

	{"cumn13al8", string(Stainless), 1.5, false, "high strength, aluminium-bearing", handbooks},
	{"cumn13al8", string(Bronze), 1, false, "propellers and sea-water bronze", handbooks},
	{"cumn13al8", "overlay", 1, false, "hard", handbooks},
	{"cumn13al8", "load", 1, false, "the strongest deposit of these", handbooks},

	{"cual9ni5", "aluminium-bronze", 3, false, "for nickel aluminium bronze and sea water", handbooks},
	{"cual9ni5", string(Stainless), 1, false, "aluminium-bearing", silicide},
	{"cual9ni5", "seal", 1, false, "stands sea water best", handbooks},
	{"cual9ni5", "load", 1, false, "strong and tough", handbooks},
	{"cual9ni5", "overlay", 1, false, "tough overlay", handbooks},
}

// PairRule is the requirement of a joint between two different metals. A and B are like On of a FillerRule, in
// either order.
type PairRule struct {
	A, B, Text string
	Origin
}

// PairRules lists the requirements of mixed joints.
var PairRules = []PairRule{
	{string(CopperFam), string(Steel), "Copper draws the heat away: point the arc at the copper, let the bead wash " +
		"onto the steel; the steel needs next to no heat of its own.", practice},
	{string(CopperFam), string(Stainless), "Copper draws the heat away: point the arc at the copper. Keep the " +
		"stainless unstressed: liquid copper is all around it.", practice},
	{string(CastIron), string(Steel), "Clean graphite off the iron, let it cool slowly: the steel shrinks more " +
		"quickly than the iron.", practice},
	{string(CastIron), string(Stainless),
		"Clean graphite off the iron, keep the stainless unstressed, short beads, slow cooling.", practice},
	{string(Stainless), string(Steel),
		"Stainless carries heat off half as fast as mild steel and gets hot first: point the arc at the steel.",
		worked("conductivities of the two rows")},
	{string(Bronze), string(Steel),
		"The bronze member melts at about the filler's own temperature, the steel does not: point the arc at the " +
			"steel.", practice},
	{string(Bronze), string(Stainless),
		"The bronze member melts at about the filler's own temperature: point the arc at the stainless, and keep it " +
			"unstressed.", practice},
	{string(Bronze), string(CopperFam),
		"The bronze member melts before the copper is warm: point the arc at the copper.", practice},
}

// PairRuleOf returns the rule of a pair of families, in either order.
func PairRuleOf(a, b Family) (PairRule, bool) {
	for _, r := range PairRules {
		if r.A == string(a) && r.B == string(b) || r.A == string(b) && r.B == string(a) {
			return r, true
		}
	}
	return PairRule{}, false
}
