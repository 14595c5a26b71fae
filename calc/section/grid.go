package section

import "math"

const (
	maxColumns = 80
	maxLayers  = 4
	maxArms    = 3
)

// skinShare is the skin's share of a sheet's thickness: 1 − √(2/3). With it the skin is q·t/3k above the mean
// under a steady flux q, as in the exact profile of a heated sheet.
var skinShare = 1 - math.Sqrt(2.0/3)

// Above thickSheet a member gets four layers, each thicker by the same ratio than the one above it; the first
// is a fifteenth of the thickness but at most thickestSkin. With two layers its surface would never get hot.
// thickestSkin was chosen for the least difference from a three-dimensional reference. Between thickSheet and
// layered one division passes into the other, so that nothing jumps as a member gets thicker: see split.
const (
	thickSheet   = 3.0 // mm
	layered      = 4.0 // mm
	skinFraction = 1.0 / 15
	thickestSkin = 0.6 // mm
)

// arm is one of the heat paths that meet at the joint: columns from the joint outward, layers from the bead's
// face down.
type arm struct {
	member  int
	columns int
	layers  int
	heated  bool
	sigma   float64 // of the source along the arm, mm
	centre  float64 // of the source, mm from the joint
	thick   float64
	base    curve
	wet     float64 // from the filler in the gap to a bar, in this step, W/K for each mm
	// By layer: its thickness, and twice the distance to the middle of the one above, mm.
	depth, apart [maxLayers]float64
	col          [maxColumns]column
	given        []int   // the cells that got another capacity in this step, column by column
	first        float64 // C, the lower solidus of base and filler
	hot          int     // the outermost column hotter than first at the start or end of this step; -1 for none
	// inner is the part of the arm that the joint sees: the innermost column's block.
	inner block
}

// column is one column of an arm, with everything that a step needs next to each other in memory.
type column struct {
	dy, y     float64
	closeness float64 // 1 over the distance to the column before, 1/mm
	share     float64 // of the source that falls on it
	filler    float64 // height of metal on it, mm
	source    float64 // heat that this step takes in, J/mm
	face      float64 // conductance of the bead's face to the air, W/K for each mm of travel
	behind    float64 // and of the back face to what is behind it
	air, back float64 // both times the temperature of the parts, W for each mm of travel
	lift      float64 // factor on a peak's rise for the heat along the seam
	cell      [maxLayers]cell
	chain     link
}

// cell is one layer of a column.
type cell struct {
	body    float64 // mm2
	through float64 // to the layer above: width over twice the distance
	t, e    float64 // C, J/mm
	cap     float64 // J/mmK
	k       float64 // W/mmK
	next    float64 // C, where the step ends
	peak    float64 // C
	stretch int32   // number of the straight piece of the enthalpy for which cap was found; -1 for none
}

// in are the columns in use.
func (a *arm) in() []column { return a.col[:a.columns] }

// layout sets the arm's columns: narrow at the joint, growing to a share of the source's width until past fine,
// but at most 28 of that width; then growing on to far. On an arm without an arc they grow from the joint on.
func (a *arm) layout(fine, far, finer float64) {
	a.split()
	wide := min(0.5*max(1, fine/4.5), 0.6*a.sigma)
	fine = min(fine, 28*wide)
	wide /= finer
	dy, edge := 0.4*wide, 0.0
	if !a.heated {
		dy, fine = 0.5/finer, 0
	}
	a.columns = 0
	for edge < far && a.columns < maxColumns {
		p := &a.col[a.columns]
		p.dy, p.y = dy, edge+dy/2
		if a.columns > 0 {
			p.closeness = 1 / (p.y - a.col[a.columns-1].y)
		}
		edge += dy
		a.columns++
		switch {
		case edge >= fine:
			dy *= 1 + 0.35/finer
		case dy < wide:
			dy = min(wide, (1+0.25/finer)*dy)
		}
	}
}

// end removes the columns beyond a length and makes the last one shorter or longer so that the arm ends there.
func (a *arm) end(length float64) {
	for a.columns > 2 && a.col[a.columns-1].y > length {
		a.columns--
	}
	last, before := &a.col[a.columns-1], &a.col[a.columns-2]
	edge := last.y - last.dy/2
	if length > last.y+last.dy/2 {
		return // the grid ends first
	}
	last.dy, last.y = length-edge, (length+edge)/2
	last.closeness = 1 / (last.y - before.y)
}

// split divides the thickness into layers. Four layers of which the lower three are almost no distance apart
// are equivalent to skin and core: the transition begins there.
func (a *arm) split() {
	skin := skinShare * a.thick
	if a.thick <= thickSheet {
		a.layers = 2
		a.depth[0], a.depth[1] = skin, a.thick-skin
		a.apart[1] = a.thick
		return
	}
	a.layers = maxLayers
	first := min(a.thick*skinFraction, thickestSkin)
	ratio := layerRatio(a.thick / first)
	share := min(1, (a.thick-thickSheet)/(layered-thickSheet))
	d := first
	for i := range maxLayers {
		as2 := skin
		if i > 0 {
			as2 = d / (a.thick - first) * (a.thick - skin)
			a.apart[i] = max(share, 1e-3) * d * (1 + 1/ratio)
		}
		a.depth[i] = (1-share)*as2 + share*d
		d *= ratio
	}
	a.apart[1] += (1 - share) * a.thick
}

// layerRatio solves 1 + r + r² + r³ = whole.
func layerRatio(whole float64) float64 {
	r := max(2, math.Cbrt(whole)) // above the root: Newton's rule approaches it from there
	for range 20 {
		off := 1 + r*(1+r*(1+r)) - whole
		step := off / (1 + r*(2+3*r))
		r -= step
		if math.Abs(step) < 1e-12*r {
			break
		}
	}
	return r
}

// layersWork is how many times as long a column of four layers takes as one of two.
const layersWork = 3

// work is the cost of solving some of the arm's columns once.
func (a *arm) work(columns int) int {
	if a.layers == 2 {
		return columns
	}
	return columns * layersWork
}

// aimAt sets each column's share of a Gaussian source.
func (a *arm) aimAt() {
	edge, before := 0.0, 0.0
	if a.heated {
		before = normal(-a.centre / a.sigma)
	}
	for j := range a.in() {
		p := &a.col[j]
		p.share = 0
		edge += p.dy
		if a.heated {
			upTo := normal((edge - a.centre) / a.sigma)
			p.share, before = upTo-before, upTo
		}
	}
}

// normal is the cumulative normal distribution.
func normal(x float64) float64 { return 0.5 * math.Erfc(-x/math.Sqrt2) }
