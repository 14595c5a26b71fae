package report

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// picture draws a block in characters.
func (w *writer) picture(b Block, o *Options) {
	switch b := b.(type) {
	case Beat:
		on, all := beatBar(b.Timed, 60)
		w.line("  beat  %s%s", strings.Repeat("#", on), strings.Repeat("-", all-on))
	case Trace:
		sys := o.Units.Lead()
		w.line("Temperature over the last beats, %s (e root edge, c puddle's middle, * both):",
			quantity.Label("C", sys))
		for _, l := range tracePlot(b.Timed, 76, 12, sys) {
			w.line("%s", l)
		}
	case Grid:
		w.grid(b.Window, b.Given, o.Units.Lead())
	case Sketch:
		lines, perColumn := BeadDrawing(b.Bead, 60, 12)
		if perColumn > 0 {
			behind := ""
			if b.Bead.Section.Backing > 0 {
				behind = "  = backing"
			}
			scale := quantity.Sentence(fmt.Sprintf("ten columns are %.1f mm", 10*perColumn), o.Units)
			lines = append(lines, "/ first member  \\ second  o bead"+behind+"; "+scale)
		} else if len(lines) > 0 {
			lines = append(lines, SketchText)
		}
		for _, l := range lines {
			w.line("    %s", l)
		}
	}
}

// ZoneMark is the character for a zone of a window, so that no meaning rests on colour.
func ZoneMark(zone string) byte {
	if mark, ok := map[string]byte{"good": '+', "cold": '.', "hot": 'x', "burn-through": '#'}[zone]; ok {
		return mark
	}
	return '?'
}

// PointMark is the mark of one point. A good point at which another edge is not met is marked by a comma.
func PointMark(m *calc.Window, i, j int) byte {
	k := i*len(m.Travels) + j
	if m.Zones[k] == "good" && m.Margins[k] < 0 {
		return ','
	}
	return ZoneMark(m.Zones[k])
}

// grid draws a window: a column for each wire feed, a row for each travel with the fastest at the top, S for the
// suggestion.
func (w *writer) grid(m *calc.Window, given *calc.Card, sys quantity.System) {
	si, sj := m.At(m.Suggestion.Feed, m.Suggestion.Travel)
	gi, gj, on := givenPoint(m, given)
	for j := len(m.Travels) - 1; j >= 0; j-- {
		var row strings.Builder
		for i := range m.Feeds {
			switch {
			case on && i == gi && j == gj:
				row.WriteByte(givenMark)
			case i == si && j == sj:
				row.WriteByte('S')
			default:
				row.WriteByte(PointMark(m, i, j))
			}
		}
		label := ""
		if j%4 == 0 || j == len(m.Travels)-1 {
			label = axisPoint(m.Travels[j], "mm/s", sys)
		}
		w.line("%8s │%s", label, row.String())
	}
	w.line("%8s └%s", quantity.Label("mm/s", sys), strings.Repeat("─", len(m.Feeds)))
	first, last := axisPoint(m.Feeds[0], "m/min", sys), axisPoint(m.Feeds[len(m.Feeds)-1], "m/min", sys)
	room := max(1, len(m.Feeds)-len(first)-len(last))
	w.line("%10s%s%s%s  wire feed, %s", "", first, strings.Repeat(" ", room), last, quantity.Label("m/min", sys))
	w.line("")
	legend := "+ good   . cold   x hot   # burn-through   S suggestion"
	if !m.Card.Met() {
		legend = strings.Replace(legend, "suggestion", "nearest miss", 1)
	}
	if on {
		legend += "   " + string(givenMark) + " as given"
	}
	w.line("%s", legend)
	w.line(", good heat, but another edge is not met: joint filled, arc, zinc, hand speed")
}

// axisPoint is a feed or a travel of a window, rounded as it can be set by hand.
func axisPoint(v float64, unit string, sys quantity.System) string {
	figure := "travel"
	if unit == "m/min" {
		figure = "wire_feed"
	}
	text, _, _ := quantity.Dialed(figure, v, v*0.97, v*1.03, unit, false, sys)
	return text
}
