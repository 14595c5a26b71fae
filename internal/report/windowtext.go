package report

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// ZoneMark is the character that stands for a zone on a map, so that no meaning rests on colour.
func ZoneMark(zone string) byte {
	switch zone {
	case "good":
		return '+'
	case "cold":
		return '.'
	case "hot":
		return 'x'
	case "burn-through":
		return '#'
	}
	return '?'
}

// WindowText writes an operating window as plain text of at most 80 columns: a map of travel upward and
// wire feed to the right, where S is the suggestion, then what surrounds it. given is the card of the setting that was
// asked about, nil for none.
func WindowText(m *calc.Window, given *calc.Card, o Options) string {
	w := writer{comma: o.Comma}
	w.head(&m.Card, o)
	for _, l := range m.Card.Warnings {
		if l.Severity == calc.Stop {
			w.para("STOP  ", l.Text)
			w.line("")
		}
	}
	w.windowMap(m, given, o)
	w.line("")
	legend := "+ good   . cold   x hot   # burn-through   S suggestion"
	if _, _, on := givenPoint(m, given); on {
		legend += "   " + string(givenMark) + " as given"
	}
	w.line("%s", legend)
	w.line(", good heat, but another edge is not met: joint filled, arc, zinc, hand speed")
	if words := m.CoarserWords(); words != "" {
		w.para("", "The map is "+words+".")
	}
	if len(m.Aims) > 0 {
		w.para("", "Unequal sheets: at each setting the arc is aimed where it suits, at the joint or toward the thicker one; the card of a setting says how far.")
	}
	w.line("")
	w.givenText(m, given, o)
	w.windowVerdict(m, o)
	if list := dangers(&m.Card, nil); len(list) > 0 {
		w.line("")
		w.short(list)
	}
	return w.String()
}

// windowMap draws the map: columns of wire feed, rows of travel, the fastest on top.
func (w *writer) windowMap(m *calc.Window, given *calc.Card, o Options) {
	sys := lead(o.Units)
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
			label, _ = quantity.Band(m.Travels[j], m.Travels[j]*0.97, m.Travels[j]*1.03, "mm/s", sys)
		}
		w.line("%8s │%s", label, row.String())
	}
	w.line("%8s └%s", quantity.Label("mm/s", sys), strings.Repeat("─", len(m.Feeds)))
	first, _ := quantity.Band(m.Feeds[0], m.Feeds[0]*0.97, m.Feeds[0]*1.03, "m/min", sys)
	last, _ := quantity.Band(m.Feeds[len(m.Feeds)-1], m.Feeds[len(m.Feeds)-1]*0.97, m.Feeds[len(m.Feeds)-1]*1.03, "m/min", sys)
	room := max(1, len(m.Feeds)-len(first)-len(last))
	w.line("%10s%s%s%s  wire feed, %s", "", first, strings.Repeat(" ", room), last, quantity.Label("m/min", sys))
}

// PointMark is the mark of one point: a good point that another edge rules out is marked by a comma.
func PointMark(m *calc.Window, i, j int) byte {
	k := i*len(m.Travels) + j
	if m.Zones[k] == "good" && m.Margins[k] < 0 {
		return ','
	}
	return ZoneMark(m.Zones[k])
}

func (w *writer) windowVerdict(m *calc.Window, o Options) {
	sys := o.Units
	at := quantity.Show(m.Suggestion.Feed, "m/min", sys) + " at " + quantity.Show(m.Suggestion.Travel, "mm/s", sys)
	if m.Good {
		w.para("", fmt.Sprintf("Suggested: %s. Chance that it meets every edge, over everything uncertain: %.0f %%.%s", at, m.Chance.Good, spoiled(m)))
	} else {
		w.para("", "No feed and travel meet every edge. The nearest miss: "+at+".")
	}
	w.line("")
	for _, e := range m.Card.Edges {
		w.line("  %-18s %s", e.Name, edgeText(&e))
	}
	if len(m.Remedies) == 0 {
		return
	}
	w.line("")
	w.line("What would open a good zone:")
	for _, r := range m.Remedies {
		w.line("  %-28s %s", r.Change, remedyText(&r))
	}
}

// edgeText makes an edge that is not met stand out where nothing has a colour.
func edgeText(e *calc.Edge) string { return strings.Replace(e.Words(), "not met", "NOT MET", 1) }

func spoiled(m *calc.Window) string {
	if words := m.Chance.Words(); words != "" {
		return " Most often missed: " + words + "."
	}
	return ""
}

func remedyText(r *calc.Remedy) string {
	switch {
	case r.Late:
		return "untried: this job takes long to compute"
	case !r.Tried:
		return "untried: the model has no equations for it"
	case r.Opens:
		return fmt.Sprintf("opens one, %.0f %% wide to its nearest edge", r.Margin)
	}
	return "tried: does not"
}
