package canvas

// Parts that many drawings share: a sheet lapped onto another one, seen from the side; a bead along two sheets, seen
// from above. What comes later lies over what came before.
var (
	upper = mark{rectangle, partFirst, places{{0, 4, 8, 6}}}
	lower = mark{rectangle, partSecond, places{{0, 6, 18, 8}}}
	far   = mark{rectangle, partFirst, places{{0, 0, 18, 4}}}
	near  = mark{rectangle, partSecond, places{{0, 4, 18, 8}}}
	bead  = mark{rectangle, partBead, places{{0, 2, 18, 6}}}
)

// sights are the drawings of what a test bead may show, by id.
var sights = map[string][]mark{
	"rolled-edge": {upper, lower,
		{disc, partBead, places{{11.2, 3.2, 4, 2.8}}},
	},
	"thin-wide": {
		{rectangle, partBead, places{{4, 3.4, 9, 4}}},
		{slope, partBead, places{{7, 3.4, 17.5, 6}}}, upper, lower,
		{rectangle, partBluing, places{{2, 4, 6, 6}, {6, 6, 18, 7}}},
	},
	"zinc-gone-behind": {
		{slope, partBead, places{{5, 0.6, 15, 4}}},
		{rectangle, partFirst, places{{0, 2, 8, 4}}},
		{rectangle, partSecond, places{{0, 4, 18, 6}}},
		{rectangle, partMelted, places{{1, 6, 17, 7}}},
		{rectangle, partBoiled, places{{4, 6, 14, 7}}},
	},
	"burn-through": {
		{rectangle, partFirst, places{{0, 1, 7, 3}}},
		{rectangle, partSecond, places{{0, 3, 8, 5}, {13, 3, 18, 5}}},
		{disc, partBead, places{{7.5, 2.2, 1.8, 2}, {10.2, 6.8, 1.4, 1.2}}},
	},
	"edges-melted": {lower,
		{rectangle, partFirst, places{{0, 4, 4, 6}}},
		{slope, partFirst, places{{4, 4, 7.5, 6}}},
		{dome, partBead, places{{12, 6, 4.5, 1.8}}},
	},
	"undercut": {upper,
		{rectangle, partSecond, places{{0, 6, 12, 8}}},
		{slope, partSecond, places{{12, 6, 14, 8}}},
		{rectangle, partSecond, places{{16, 6, 18, 8}}},
		{slope, partBead, places{{6, 3, 12, 6}}},
	},
	"spatter": {
		{slope, partBead, places{{6, 2.6, 14, 6}}}, upper, lower,
		{rectangle, partBead, places{{3, 2, 4, 3}, {5, 0, 6, 1}, {10, 0, 11, 1}, {13, 2, 14, 3},
			{15, 1, 16, 2}, {15, 4, 16, 5}, {17, 5, 18, 6}}},
	},
	"stubbing": {lower,
		{rectangle, partTip, places{{7, 0, 11, 1.6}}},
		{wire, partWire, places{{9, 1.6, 9, 2.6}, {9, 2.6, 7.6, 3.8}, {7.6, 3.8, 9.6, 5.4}}},
	},
	"burn-back": {lower,
		{rectangle, partTip, places{{7, 0, 11, 2.2}}},
		{disc, partBead, places{{9, 3, 1.7, 1.2}}},
	},
	"pores": {far, near, bead,
		{rectangle, partHole, places{{2, 3, 3, 4}, {5, 4, 6, 5}, {8, 2, 10, 3}, {11, 4, 12, 5}, {13, 3, 14, 4},
			{16, 4, 17, 5}}},
	},
	"crack": {far, near, bead,
		{crack, partHole, places{{0, 4.2, 4, 3.2}, {4, 3.2, 6.5, 5}, {6.5, 5, 11, 3.4}, {11, 3.4, 14, 5},
			{14, 5, 18, 4}}},
	},
	"drops-through": {
		{rectangle, partFirst, places{{0, 2, 6.5, 4}}},
		{rectangle, partSecond, places{{11.5, 2, 18, 4}}},
		{rectangle, partBead, places{{6.5, 2.5, 11.5, 4}, {8, 4, 10, 6}}},
		{disc, partBead, places{{9, 6.4, 2.2, 1.4}}},
	},
	"spots-apart": {far, near,
		{disc, partBead, places{{3, 4, 2.2, 2.1}, {9, 4, 2.2, 2.1}, {15, 4, 2.2, 2.1}}},
	},
	"crater": {far, near,
		{rectangle, partBead, places{{0, 2, 13, 6}}},
		{disc, partBead, places{{13, 4, 3.2, 2}}},
		{disc, partHole, places{{13, 4, 1.8, 1.1}}},
	},
	"good": {
		{slope, partBead, places{{5, 2.6, 16.5, 6}}}, upper, lower,
	},
}
