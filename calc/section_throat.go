package calc

import (
	"math"

	"brazebooth/calc/hang"
	"brazebooth/calc/section"
	"brazebooth/tables"
)

// throat adds the least section of the bead that carries load; its low edge is what is safe to count.
func (l *sectionList) throat() {
	joint := Lies(l.card)
	formula := throatFormula[joint]
	if formula == "" {
		return
	}
	gap := l.card.Used.Gap.V
	if Grooved(l.card) && MinCore(l.card.Setup.Joined()) > tables.GrooveMost.V {
		return // no groove so deep is planned here
	}
	if gap > 0 && joint != "butt" {
		formula += "; over the gap it is measured from the lower edge of the member that ends there"
	}
	grows := &tables.RootGrows
	of := func(grows float64) reading {
		return reading{of: func(x *variant) float64 {
			return ofBead(x, throat(joint, gap, grows, x))
		}}
	}
	r := of(grows.V)
	effects := append(l.byWidths(&r), l.byArea(&r))
	if joint == "butt" && gap > 0 {
		at := &l.v.variants.at
		v := r.of(at)
		effects = append(effects, effect{byModel, math.Log(of(grows.High).of(at) / v),
			math.Log(of(grows.Low).of(at) / v)})
	}
	f := l.add("throat", "mm", formula, r, effects...)
	switch joint {
	case "lap":
		f.Low = min(f.Low, l.sheetLeg())
	case "butt": // never more than the thinner sheet
		f.High = max(f.Value, min(f.High, MinCore(l.card.Setup.Joined())))
	}
	if l.v.variants.unwetted() {
		f.Low = 0
		f.Basis.Formula += "; nothing where an end of the bands leaves a member dry"
	}
}

// sheetLeg is the low edge of the throat of a lap's fillet whose leg is no longer than the sheet is thick, mm, as codes
// for sheet count it: the cap above the sheet's edge may be ground off or missing.
func (l *sectionList) sheetLeg() float64 {
	r := reading{of: func(x *variant) float64 {
		leg := min(x.wet[1], x.thick[0])
		return ofBead(x, filletThroat(leg, leg, l.card.Used.Gap.V))
	}}
	return l.figure("throat", "mm", "", r, l.byWidths(&r)...).Low
}

var throatFormula = map[string]string{
	"lap": "shortest way from the root to the bead's surface; its low edge 0.707 of the smaller of the width wetted " +
		"below and the upper sheet's thickness",
	"tee": "height of the triangle between the two wetted widths, less what a hollow bead lacks of it",
	"butt": "bronze over the root line, cap and what gets into the root, less what a pull beside its middle costs; " +
		"no more than the thinner sheet",
}

func throat(joint string, gap, grows float64, x *variant) float64 {
	switch joint {
	case "lap":
		// A gap takes the share of it that it takes of a plain fillet.
		leg, share := min(x.wet[1], x.thick[0]), 1.0
		if gap > 0 && leg > 0 {
			share = filletThroat(leg, leg, gap) / filletThroat(leg, leg, 0)
		}
		return share * section.LapThroat(x.wet[0], x.wet[1], x.thick[0], x.toes.Phi)
	case "tee":
		hollow := max(0, -section.Cap(x.toes)) // how deep a concave surface hangs under its chord
		return max(0, filletThroat(x.wet[0], x.wet[1], gap)-hollow)
	}
	return buttThroat(gap, grows, x)
}

// filletThroat is hang.Throat, 0 where a leg is 0.
func filletThroat(z, w, gap float64) float64 {
	a, err := hang.Throat(z, w, gap)
	if err != nil {
		return 0
	}
	return a
}

// buttThroat is the height of bronze, mm, that carries a pull in the middle of a butt's sheets, over the root line. The
// base stays solid, so that a closed root holds none: the cap alone bridges it, beside the pull's line. Bronze gets
// into an opening as far as tables.RootGrows says, where the back is hot enough to be wetted.
func buttThroat(gap, grows float64, x *variant) float64 {
	t := min(x.thick[0], x.thick[1])
	d := rootDepth(gap, grows, x)
	up := section.Cap(x.toes)
	h := d + up
	if !(h > 0) {
		return 0
	}
	// It reaches from t − d to t + up: its middle lies (t − d + up)/2 over the sheet's.
	return min(t, section.OffMiddle(h, (t-d+up)/2))
}

// rootDepth is how deep the bronze fills an opening, mm: the share 1 − e^(−gap/grows) of the thinner sheet, less where
// the back is wetted over less than the sheet's thickness.
func rootDepth(gap, grows float64, x *variant) float64 {
	t := min(x.thick[0], x.thick[1])
	if !(gap > 0) || !(t > 0) {
		return 0
	}
	back := min(1, min(x.back[0], x.back[1])/t)
	return t * back * -math.Expm1(-gap/grows)
}
