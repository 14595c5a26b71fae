package advice

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/tables"
)

const bondSource = "arc-brazed fillets that failed in their bond, Materials 18(10):2339, 2025, Table A1 (read), as " +
	"F/(l·L) on the leg that an equal-legged fillet stands on; predictive band of a small sample, lognormal, Student " +
	"t. Its low edge is that of the same tests on the throat's low edge: a lap's pull also peels, and the tests' own " +
	"scatter stands for beads that wet poorly"

// loadLines are the three places where a seam may break, each with its capacity.
type loadLines struct {
	a, face             calc.Figure // throat and wetted face, mm
	length              float64     // mm
	throat, bond, sheet calc.Figure // kN
}

// lines computes the capacities of throat, bond and sheet.
func (p *Page) lines(card *calc.Card, a calc.Figure, length float64) loadLines {
	l := loadLines{a: a, face: wettedFace(card, a), length: length}
	p.throatCapacity(card, &l)
	p.bondCapacity(card, &l)
	l.sheet = p.sheetCapacity(length)
	return l
}

// guideRatio is the filler's guide strength divided by that of the wire that was tested.
func guideRatio(card *calc.Card) float64 {
	tested, _ := tables.Fillers.ByID("cual8")
	return card.Setup.Filler.Tensile.V / tested.Tensile.V
}

// throatCapacity is what the bronze carries. Value and high end are those of the tests; the low end is at most
// the filler's guide strength over √3. Fillers other than the tested one are scaled by their guide strengths.
func (p *Page) throatCapacity(card *calc.Card, l *loadLines) {
	mid, low, high, _ := formula.Predictive(formula.FilletStress(false))
	ratio, unit := guideRatio(card), l.length/1000
	low = min(low*ratio, card.Setup.Filler.Tensile.V/math.Sqrt(3))
	l.throat = p.add("throat_capacity", "kN", mid*ratio*l.a.Value*unit, low*l.a.Low*unit, high*ratio*l.a.High*unit,
		calc.OwnBasis("{f}·{a}·{L}/1000", filletSource+"; its low edge no higher than the guide strength over √3",
			calc.Derived("f", "stress at failure", mid*ratio, "MPa"), l.a.As("a"),
			calc.In("L", "length of one fillet", l.length, "mm"),
			calc.In("", "filler's guide strength over the tested one's", ratio, "1")))
}

// bondCapacity is what the layer between bronze and base carries on the narrower wetted face. A stronger filler
// does not make it stronger.
func (p *Page) bondCapacity(card *calc.Card, l *loadLines) {
	mid, low, high, _ := formula.Predictive(formula.FaceStress())
	_, onThroat, _, _ := formula.Predictive(formula.FilletStress(true))
	ratio, unit := min(1, guideRatio(card)), l.length/1000
	w := l.face.Value * unit * ratio
	most := math.Exp(math.Hypot(math.Log(high/mid), math.Log(l.face.High/l.face.Value)))
	l.bond = p.add("bond_capacity", "kN", mid*w, min(low*w, onThroat*ratio*l.a.Low*unit), mid*w*most,
		calc.OwnBasis("{f}·{w}·{L}/1000", bondSource,
			calc.Derived("f", "stress of the bond at failure", mid*ratio, "MPa"),
			calc.Derived("w", "narrower wetted face", l.face.Value, "mm"),
			calc.In("L", "length of one bead", l.length, "mm"),
			calc.In("", "filler's guide strength over the tested one's, at most 1", ratio, "1")))
}

// wettedFace is the narrower of the faces that the bead holds on to, mm. The upper sheet of a lap is also held
// by its edge, a butt by the bronze in its root. Without a section, or if leg or throat were measured on a
// joint other than a lap, it is the leg of an equal-legged fillet of that throat.
func wettedFace(card *calc.Card, a calc.Figure) calc.Figure {
	leg := calc.Figure{Value: a.Value * math.Sqrt2, Low: a.Low * math.Sqrt2, High: a.High * math.Sqrt2}
	one, ok1 := card.Figure("wetted_width_1")
	two, ok2 := card.Figure("wetted_width_2")
	measured := card.Job.Throat.Set || card.Job.Leg.Set
	joint, s := card.Used.Joint, &card.Section
	if !ok1 || !ok2 || !s.Drawn || measured && joint != "lap" {
		return leg
	}
	switch s.Joint {
	case "lap":
		one = wider(one, s.Thick[0])
	case "butt":
		one, two = wider(one, s.Root), wider(two, s.Root)
	}
	if two.Value < one.Value {
		one = two
	}
	if measured && !(one.Value > 0) { // computed as not wetted, although a bead was measured
		return leg
	}
	return one
}

func wider(f calc.Figure, by float64) calc.Figure {
	f.Value, f.Low, f.High = f.Value+by, f.Low+by, f.High+by
	return f
}

// Where a pulled seam breaks.
const (
	InSheet  = "in the sheet beside the bead"
	InBronze = "in the bronze, through its throat"
	InBond   = "in the bond between bronze and base"
)

// breaksIn is the place where the seam breaks by the middle values. The sheet counts with the middle of its
// range, because the value in many tables is the grade's guaranteed minimum.
func (l *loadLines) breaksIn() string {
	sheet := (l.sheet.Low + l.sheet.High) / 2
	switch least := min(l.throat.Value, l.bond.Value, sheet); least {
	case sheet:
		return InSheet
	case l.throat.Value:
		return InBronze
	}
	return InBond
}

// breaks says where the seam is likeliest to break, where else it may, and which low edge sets the allowable
// load.
func (p *Page) breaks(card *calc.Card, l *loadLines) {
	place := l.breaksIn()
	text := "by the middle values it breaks " + place
	bead := min(l.throat.Low, l.bond.Low)
	switch {
	case place == InSheet && bead < l.sheet.High:
		text += "; the intervals overlap: a weak bead breaks before the sheet, in its bronze or its bond"
	case place != InSheet && l.throat.Low < l.bond.High && l.bond.Low < l.throat.High:
		text += "; throat and bond overlap: either may go first"
	}
	p.Because(fillets, "%s", text)
	if !dryEnd(card) {
		least := slices.MinFunc([]calc.Figure{l.throat, l.bond, l.sheet}, func(a, b calc.Figure) int {
			return cmp.Compare(a.Low, b.Low)
		})
		p.Because(fillets, "the allowable load comes from the low edge of the %s, the lowest of the three",
			calc.FigureLabel(least.Name))
	}
	p.closedRoot(card)
}

// closedRoot says how much of a butt's sheet thickness the bronze replaces, and what would give the rest.
func (p *Page) closedRoot(card *calc.Card) {
	t := calc.MinCore(card.Setup.Joined())
	f, ok := card.Figure("throat")
	given := card.Job.Throat.Set || card.Job.Leg.Set
	if given && card.Used.Joint == "butt" {
		p.Warn("cap-no-throat", calc.SectionSource, "The throat of a butt is the bronze between the sheets' edges, in "+
			"line with the pull. A cap over a closed root does not count: the pull bends it, and it carries only a "+
			"fraction of its height.")
	}
	if card.Used.Joint != "butt" || !ok || given {
		return
	}
	if f.Value > 0.9*t {
		return
	}
	if card.Used.Gap.V == 0 {
		fuller := "With a root opening the bronze goes through: see prepare."
		if calc.Grooved(card) {
			fuller = fmt.Sprintf("The page passes plans a V of %.0f° over a root opening of %.0f mm: what that "+
				"carries is not in this load; saw a test piece, and give its throat.", tables.Bevel.V,
				tables.VeeOpening.V)
		}
		p.Warn("closed-root", calc.SectionSource, "A closed square butt has no full throat: the base stays solid and "+
			"no bronze gets down the root, so only the cap carries, beside the line of the pull. It counts as %.2f mm "+
			"of the %.1f mm. %s", f.Value, t, fuller)
		return
	}
	rest := "A wider opening or more heat at the back gives"
	if backed(card) { // the same metal in a wider opening stands lower over it
		rest = "A second bead over it, or more metal at a closer opening, gives"
	}
	p.Because(ownSection, "of the butt's %.1f mm the bronze carries as much as %.2f mm would, as it does not fill "+
		"the root. %s the rest; cut a test piece", t, f.Value, rest)
}

// shortestSeam is the shortest seam that counts as carrying a load, mm.
func shortestSeam(throat float64) float64 {
	return max(tables.ShortestSeam.V, tables.ShortestSeamThroats.V*throat)
}

// shortSeam cautions a seam that is too short to count on.
func (p *Page) shortSeam(l *loadLines) {
	if least := shortestSeam(l.a.Value); l.length < least {
		p.Warn("short-seam", tables.ShortestSeam.Source, "A seam of %s mm is mostly start and crater: codes let no "+
			"fillet under %.0f mm carry a load, and the shortest that was pulled had 90 mm. Count on none of this "+
			"load: lay a longer seam, or pull a test piece.", calc.Number(l.length), math.Ceil(least))
	}
}

// needs says which length or throat would carry a given load. Both are rounded up, and so is the load, because
// the allowable load is rounded down: a seam that follows the advice is then allowed the load.
func (p *Page) needs(card *calc.Card, l *loadLines) {
	if !card.Job.Load.Set || !(card.Job.Load.V > 0) {
		return
	}
	safety := card.Used.Safety.Or(tables.DesignSafety.V)
	want := upTo2(card.Job.Load.V) * safety
	bead := min(l.throat.Low, l.bond.Low)
	text := fmt.Sprintf("for %s kN at a safety factor of %s: ", calc.Number(card.Job.Load.V), calc.Number(safety))
	seam, least := math.Ceil(want/min(bead, l.sheet.Low)*l.length), math.Ceil(shortestSeam(l.a.Value))
	if text += fmt.Sprintf("a seam of %.0f mm with this throat", max(seam, least)); seam < least {
		text += ", the shortest that counts as carrying"
	}
	if l.length >= shortestSeam(l.a.Value) {
		text += thickerThroat(card, l, want)
	}
	p.Because(fillets, "%s", text)
}

// thickerThroat ends needs with the throat that carries want, kN, at the job's own length, or says why none does.
func thickerThroat(card *calc.Card, l *loadLines, want float64) string {
	least, _, _, _ := calc.Span("throat")
	// A measured throat has no interval, so it must reach what the low end of the computed throat lacks.
	need := max(least, math.Ceil(100*l.a.Low*want/min(l.throat.Low, l.onThroat(card)*l.a.Low))/100)
	switch {
	case l.sheet.Low*(1+lastBit) < want:
		return "; at this length no throat helps, since the sheet itself is too weak: thicker sheet"
	case card.Used.Joint == "lap" && need > math.Sqrt2/2*card.Setup.Members[0].Core:
		return fmt.Sprintf("; at this length it would take a throat of %.2f mm, more than a lap of this sheet has",
			need)
	case card.Used.Joint == "butt" && need > calc.MinCore(card.Setup.Joined()):
		return "; at this length it would take more bronze than the sheet is thick"
	case card.Used.Joint == "butt":
		return fmt.Sprintf(", or at this length %.2f mm of bronze through the root, in line with the sheets", need)
	}
	return fmt.Sprintf(", or a throat of %.2f mm at this length", need)
}

// onThroat is the low edge of the bond for each millimetre of throat, kN/mm.
func (l *loadLines) onThroat(card *calc.Card) float64 {
	_, low, _, _ := formula.Predictive(formula.FilletStress(true))
	return low * min(1, guideRatio(card)) * l.length / 1000
}
