package tables

// How the gun is held and moved, depending on how the seam lies. None of it is from a standard: no brazing
// standard covers the gun, and what welding handbooks say agrees with common practice.

// Hold is how the gun is held and moved in a position.
type Hold struct {
	Position string
	Lean     Datum  // from square to the seam, along it
	Way      string // "push", the wire pointing ahead, or "drag", pointing back at the bead
	Why      string // why this lean, in a few words
	Move     string // how the gun is moved
}

// Holds are how the gun is held and moved, by position.
var Holds = Rows[Hold]{
	{"flat", GunAngle, "push", "steadier arc, less heat", "A straight bead, the wire at the puddle's front edge."},
	{"horizontal", Datum{10, 5, 15, "deg", practice}, "push",
		"steadier arc; the nearer to square, the less the bead sags",
		"Straight beads without a weave. Dwell on the upper member, the puddle comes down to the lower one by itself."},
	{"vertical-up", Datum{10, 0, 15, "deg", practice}, "push", "the arc stays ahead of the shelf",
		"A narrow weave with a stop at each toe and a quick step over the middle, on the shelf that has just frozen."},
	{"vertical-down", Datum{10, 5, 15, "deg", practice}, "drag", "the arc points up at the puddle and holds it",
		"Straight and fast, no weave, always ahead of the puddle: metal that overtakes the arc lies on cold sheet."},
	{"overhead", Datum{5, 0, 10, "deg", practice}, "push", "nearly square, so that the drops go where they are aimed",
		"Short stick-out, narrow straight beads, no weave; rest the gun arm. A bead freezes before one beside it."},
}

// aims are where the gun points across the seam, by joint: for level and vertical seams, and for a horizontal
// one, where the metal sags to the lower member.
var aims = map[string]struct{ usual, horizontal string }{
	"lap": {"Across the seam 45 to 70° from the lower sheet, the wire on that sheet at the upper one's edge.",
		"Across the seam 45 to 60° from the lower sheet, the wire 1 mm up the upper one's edge."},
	"tee": {"Across the seam 45° between both members, the wire in the corner.",
		"Across the seam 40 to 45° from the lower member, the wire 1 mm up the standing one."},
	"butt": {"Square across the seam, the wire over its middle.",
		"Across the seam 5 to 15° below square, so that the arc pushes up; the wire on the upper edge."},
	"corner": {"Across the seam halfway between both members, the wire in the notch.",
		"Across the seam halfway between both members and 5 to 10° below that; the wire on the upper edge."},
	"edge": {"In line with both sheets, the wire over the line where their edges meet.",
		"In line with both sheets and 5 to 10° below that; the wire on the upper sheet's edge."},
	"overlay": {"Square across the bead, the wire on the last bead's toe.",
		"Across the bead 5 to 15° below square; lay the lowest bead first, each next one on its upper toe."},
	"plug": {"Square to the sheet, from the middle of the hole outward in one turn.",
		"A little below square, from the hole's lower edge up and round."},
}

// AimOn returns where the gun points across the seam of a joint in a position, or "" for a joint without a row.
func AimOn(joint, position string) string {
	if position == "horizontal" {
		return aims[joint].horizontal
	}
	return aims[joint].usual
}
