package tables

import "slices"

// Backing is what lies behind an open root. It carries the puddle, so that nothing has to hang.
type Backing struct {
	ID, Name string
	Changes  string // what is different for the heat
	Origin
}

// Chill is what a dry copper bar does, at BarDry, to a butt in sheet of one thickness.
type Chill struct {
	Sheet  float64 // mm
	Cooler Datum   // of the skin's peak, K
	Narrow Datum   // of each wetted width, mm
	Shrink Datum   // the pool's length without the bar over that with it
}

// BarDry and BarWet are the heat transfer from the back face into a copper bar: from dry sheet clamped on it, and from
// liquid filler in the gap. Over a groove it is nothing.
var (
	BarDry = Datum{2000, 500, 5000, "W/m2K", memoryMedium("handbooks: contact of clamped metal faces in air")}
	BarWet = Datum{10000, 5000, 30000, "W/m2K", memoryMedium("casting handbooks: metal freezing on a copper chill")}
)

var (
	backings = [...]Backing{
		{"copper-bar", "copper bar",
			"A sink at the back face: some at the dry sheet, five times as much under filler, none over a groove",
			worked("cross-sections with a sink behind them")},
		{"steel-strip", "steel strip",
			"A third member, heated in the gap: each half of the joint is sheet on strip, with a lap's contact",
			worked("half of the joint is a lap that begins in the middle of the gap")},
		{"patch", "patch", "Two laps, each with its own bead", worked("a lap's cross-section twice")},
	}

	chills = [...]Chill{
		{0.8, chill(100, 25, 250, "K"), chill(0.49, 0.12, 1.2, "mm"), chill(2.1, 1.3, 3.8, "1")},
		{1.5, chill(60, 15, 150, "K"), chill(0.30, 0.07, 0.75, "mm"), chill(1.6, 1.15, 2.5, "1")},
		{3, chill(30, 7, 75, "K"), chill(0.08, 0.02, 0.2, "mm"), chill(1.2, 1.05, 1.5, "1")},
	}
)

// chill is a figure of the rows above; its band is in proportion to BarDry's, an outer bound.
func chill(v, low, high float64, unit string) Datum {
	return Datum{v, low, high, unit, worked("cross-sections with a sink of 2000 W/m2K against ones without")}
}

// Backings lists the rows; read only.
func Backings() []Backing { return backings[:] }

// Chills lists what a copper bar does, by rising thickness; read only.
func Chills() []Chill { return chills[:] }

// BackingByID returns the row with exactly this id.
func BackingByID(id string) (Backing, bool) {
	i := slices.IndexFunc(backings[:], func(b Backing) bool { return b.ID == id })
	if i < 0 {
		return Backing{}, false
	}
	return backings[i], true
}
