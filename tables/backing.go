package tables

// Backing is what lies behind the open root of a butt. It carries the puddle, so the liquid metal need not hold
// itself.
type Backing struct {
	ID, Name string
	Line     string // what it means
	Changes  string // how it changes heat and metal; "" if not at all
	Origin
}

var (
	// BarDry and BarWet are the heat transfer from the back face into a copper bar: from dry sheet clamped on
	// it, and from liquid filler in the gap. Over the bar's groove no heat passes.
	BarDry = constant("BarDry", 2000, 500, 5000, "W/m2K",
		memoryMedium("handbooks: contact of clamped metal faces in air"))
	BarWet = constant("BarWet", 10000, 5000, 30000, "W/m2K",
		memoryMedium("casting handbooks: metal freezing on a copper chill"))

	// StripGap is the least root opening through which filler reaches a strip and joins it.
	StripGap = constant("StripGap", 0.5, 0.5, 1, "mm", practice)
)

// Backings lists the backings of a butt; the first is "none".
var Backings = Rows[Backing]{
	{"none", "none", "Nothing behind the root: the liquid has to hold itself", "", practice},
	{"copper-bar", "copper bar", "A flat copper bar clamped behind the root; it comes off again",
		"Draws heat from the back face, five times as much from liquid bronze in the gap; nothing has to hang",
		worked("cross-sections with a sink behind them")},
	{"steel-strip", "steel strip", "A strip of the sheet's metal behind the root; it stays on",
		"A third member, heated through the gap; bronze joins both edges to it and nothing has to hang",
		worked("half of the joint is a lap that begins in the middle of the gap")},
	{"patch", "patch", "A piece of the sheet behind the opening, brazed along both edges; it stays on",
		"The butt becomes two laps, each with a bead of its own", worked("a lap's cross-section")},
}
