package advice

import (
	"brazebooth/calc"
	"brazebooth/tables"
)

// judgeWidth judges a part of given width: whether the sheet on each side of the seam stays flat under its pull.
func (s *shrinkage) judgeWidth() {
	p, width, source := s.p, s.p.Card.Used.PartWidth, Own(tables.PlateHeld.Source)
	switch {
	case !(s.pull.Value > 0):
	case !width.Set:
		p.Because(source, "whether this part stays flat is not judged, because its width is not known: give part-width")
	case s.p.Card.Used.Joint == "tee":
		p.Because(source, "whether this part stays flat is not judged, because its width does not say how much of it "+
			"stands and how much lies: hold each sheet beside the widths above")
	case width.V/2 <= s.yields():
		p.Because(source, "whether this part stays flat is not judged, because all of it yields, %.0f mm on each "+
			"side: a strip this narrow shrinks in length instead; try a test piece and measure it", width.V/2)
	default:
		s.judgeSide("panel_pull_held", "flat_width_held", "held straight at its outer edges", width.V/2)
		s.judgeSide("panel_pull_free", "flat_width_free", "with free edges", width.V/2)
	}
}

// judgeSide adds the seam's pull as a share of the pull that waves sheet of this width. The seam lies in the middle
// of the part, so that side is half its width. The pulls stand in the same ratio as the width to the one that
// just stays flat. If the page has no such figure, it already says whether every width waves.
func (s *shrinkage) judgeSide(name, limit, edge string, side float64) {
	p := s.p
	flat, ok := p.Figure(limit)
	if !ok {
		return
	}
	share := p.add(name, "%", 100*side/flat.Value, 100*side/flat.High, 100*side/flat.Low, calc.OwnBasis("100·{s}/{b}",
		flat.Basis.Source+"; the seam lies in the middle of the part", calc.Derived("s", "sheet on each "+
			"side", side, "mm"),
		flat.As("b")))
	verdict := "may wave"
	switch {
	case share.High < 100:
		verdict = "stays flat"
	case share.Low > 100:
		verdict = "waves"
	}
	p.Because(Own(flat.Basis.Source), "this part, %.0f mm on each side of the seam and %s, %s: its seam pulls %.0f %% "+
		"of what waves it (%.0f to %.0f)", side, edge, verdict, share.Value, share.Low, share.High)
}
