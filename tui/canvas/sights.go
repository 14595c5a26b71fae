package canvas

// Parts that many drawings share: a sheet lapped onto another one, seen from the side; a bead along two sheets, seen
// from above. What comes later lies over what came before.
var (
	upper = mark{kind: rectangle, part: partFirst, a: 0, b: 4, c: 8, d: 6}
	lower = mark{kind: rectangle, part: partSecond, a: 0, b: 6, c: 18, d: 8}
	far   = mark{kind: rectangle, part: partFirst, a: 0, b: 0, c: 18, d: 4}
	near  = mark{kind: rectangle, part: partSecond, a: 0, b: 4, c: 18, d: 8}
	bead  = mark{kind: rectangle, part: partBead, a: 0, b: 2, c: 18, d: 6}
)

// sights are the drawings of what a test bead may show, by id.
var sights = map[string][]mark{
	"rolled-edge": {upper, lower,
		{kind: disc, part: partBead, a: 11.2, b: 3.2, c: 4, d: 2.8},
	},
	"thin-wide": {
		{kind: rectangle, part: partBead, a: 4, b: 3.4, c: 9, d: 4},
		{kind: slope, part: partBead, a: 7, b: 3.4, c: 17.5, d: 6}, upper, lower,
		{kind: rectangle, part: partBluing, a: 2, b: 4, c: 6, d: 6},
		{kind: rectangle, part: partBluing, a: 6, b: 6, c: 18, d: 7},
	},
	"zinc-gone-behind": {
		{kind: slope, part: partBead, a: 5, b: 0.6, c: 15, d: 4},
		{kind: rectangle, part: partFirst, a: 0, b: 2, c: 8, d: 4},
		{kind: rectangle, part: partSecond, a: 0, b: 4, c: 18, d: 6},
		{kind: rectangle, part: partMelted, a: 1, b: 6, c: 17, d: 7},
		{kind: rectangle, part: partBoiled, a: 4, b: 6, c: 14, d: 7},
	},
	"burn-through": {
		{kind: rectangle, part: partFirst, a: 0, b: 1, c: 7, d: 3},
		{kind: rectangle, part: partSecond, a: 0, b: 3, c: 8, d: 5},
		{kind: rectangle, part: partSecond, a: 13, b: 3, c: 18, d: 5},
		{kind: disc, part: partBead, a: 7.5, b: 2.2, c: 1.8, d: 2},
		{kind: disc, part: partBead, a: 10.2, b: 6.8, c: 1.4, d: 1.2},
	},
	"edges-melted": {lower,
		{kind: rectangle, part: partFirst, a: 0, b: 4, c: 4, d: 6},
		{kind: slope, part: partFirst, a: 4, b: 4, c: 7.5, d: 6},
		{kind: dome, part: partBead, a: 12, b: 6, c: 4.5, d: 1.8},
	},
	"undercut": {upper,
		{kind: rectangle, part: partSecond, a: 0, b: 6, c: 12, d: 8},
		{kind: slope, part: partSecond, a: 12, b: 6, c: 14, d: 8},
		{kind: rectangle, part: partSecond, a: 16, b: 6, c: 18, d: 8},
		{kind: slope, part: partBead, a: 6, b: 3, c: 12, d: 6},
	},
	"spatter": {
		{kind: slope, part: partBead, a: 6, b: 2.6, c: 14, d: 6}, upper, lower,
		{kind: rectangle, part: partBead, a: 3, b: 2, c: 4, d: 3},
		{kind: rectangle, part: partBead, a: 5, b: 0, c: 6, d: 1},
		{kind: rectangle, part: partBead, a: 10, b: 0, c: 11, d: 1},
		{kind: rectangle, part: partBead, a: 13, b: 2, c: 14, d: 3},
		{kind: rectangle, part: partBead, a: 15, b: 1, c: 16, d: 2},
		{kind: rectangle, part: partBead, a: 15, b: 4, c: 16, d: 5},
		{kind: rectangle, part: partBead, a: 17, b: 5, c: 18, d: 6},
	},
	"stubbing": {lower,
		{kind: rectangle, part: partTip, a: 7, b: 0, c: 11, d: 1.6},
		{kind: line, part: partWire, a: 9, b: 1.6, c: 9, d: 2.6, size: 1.1},
		{kind: line, part: partWire, a: 9, b: 2.6, c: 7.6, d: 3.8, size: 1.1},
		{kind: line, part: partWire, a: 7.6, b: 3.8, c: 9.6, d: 5.4, size: 1.1},
	},
	"burn-back": {lower,
		{kind: rectangle, part: partTip, a: 7, b: 0, c: 11, d: 2.2},
		{kind: disc, part: partBead, a: 9, b: 3, c: 1.7, d: 1.2},
	},
	"pores": {far, near, bead,
		{kind: rectangle, part: partHole, a: 2, b: 3, c: 3, d: 4},
		{kind: rectangle, part: partHole, a: 5, b: 4, c: 6, d: 5},
		{kind: rectangle, part: partHole, a: 8, b: 2, c: 10, d: 3},
		{kind: rectangle, part: partHole, a: 11, b: 4, c: 12, d: 5},
		{kind: rectangle, part: partHole, a: 13, b: 3, c: 14, d: 4},
		{kind: rectangle, part: partHole, a: 16, b: 4, c: 17, d: 5},
	},
	"crack": {far, near, bead,
		{kind: line, part: partHole, a: 0, b: 4.2, c: 4, d: 3.2, size: 0.9},
		{kind: line, part: partHole, a: 4, b: 3.2, c: 6.5, d: 5, size: 0.9},
		{kind: line, part: partHole, a: 6.5, b: 5, c: 11, d: 3.4, size: 0.9},
		{kind: line, part: partHole, a: 11, b: 3.4, c: 14, d: 5, size: 0.9},
		{kind: line, part: partHole, a: 14, b: 5, c: 18, d: 4, size: 0.9},
	},
	"drops-through": {
		{kind: rectangle, part: partFirst, a: 0, b: 2, c: 6.5, d: 4},
		{kind: rectangle, part: partSecond, a: 11.5, b: 2, c: 18, d: 4},
		{kind: rectangle, part: partBead, a: 6.5, b: 2.5, c: 11.5, d: 4},
		{kind: rectangle, part: partBead, a: 8, b: 4, c: 10, d: 6},
		{kind: disc, part: partBead, a: 9, b: 6.4, c: 2.2, d: 1.4},
	},
	"spots-apart": {far, near,
		{kind: disc, part: partBead, a: 3, b: 4, c: 2.2, d: 2.1},
		{kind: disc, part: partBead, a: 9, b: 4, c: 2.2, d: 2.1},
		{kind: disc, part: partBead, a: 15, b: 4, c: 2.2, d: 2.1},
	},
	"crater": {far, near,
		{kind: rectangle, part: partBead, a: 0, b: 2, c: 13, d: 6},
		{kind: disc, part: partBead, a: 13, b: 4, c: 3.2, d: 2},
		{kind: disc, part: partHole, a: 13, b: 4, c: 1.8, d: 1.1},
	},
	"good": {
		{kind: slope, part: partBead, a: 5, b: 2.6, c: 16.5, d: 6}, upper, lower,
	},
}
