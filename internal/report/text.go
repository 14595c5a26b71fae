package report

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// Options say how a card is written as text.
type Options struct {
	Units quantity.System
	Comma bool     // a decimal comma instead of the point
	Why   bool     // the reason under each figure
	Open  []string // flags that would tell more
}

// width is the widest line.
const width = 80

// Text writes the card as plain text of at most 80 columns.
func Text(card *calc.Card, o Options) string {
	w := writer{comma: o.Comma}
	w.head(card, o)
	w.stops(card)
	w.figures(card, o)
	w.edges(card)
	w.notes(card)
	w.warnings(card)
	w.assumed(card)
	return w.String()
}

// WireText is Text for a card that concerns the wire alone.
func WireText(card *calc.Card, o Options) string {
	w := writer{comma: o.Comma}
	w.para("", fmt.Sprintf("%s, wire %s", card.Setup.Filler.Name, wireText(card.Used.Wire.V)))
	w.line("")
	w.figures(card, o)
	w.warnings(card)
	return w.String()
}

type writer struct {
	strings.Builder
	comma bool // in numbers
}

func (w *writer) line(format string, args ...any) {
	text := strings.TrimRight(fmt.Sprintf(format, args...), " ")
	if w.comma {
		text = quantity.Comma(text)
	}
	w.WriteString(text)
	w.WriteByte('\n')
}

// para writes text behind a mark, wrapped and indented under itself.
func (w *writer) para(mark, text string) {
	room := width - plain.Width(mark)
	for i, l := range wrap(text, room) {
		if i > 0 {
			mark = strings.Repeat(" ", plain.Width(mark))
		}
		w.line("%s%s", mark, l)
	}
}

// cite is para for what others wrote: a section 4.5 stays one.
func (w *writer) cite(mark, text string) {
	as := writer{}
	as.para(mark, text)
	w.WriteString(as.String())
}

// Wrapped is text behind a mark in lines of at most 80 columns.
func Wrapped(mark, text string) string {
	var w writer
	w.para(mark, text)
	return w.String()
}

func wrap(text string, room int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && plain.Width(line)+1+plain.Width(word) > room {
			lines = append(lines, line)
			line = ""
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	return append(lines, line)
}

func (w *writer) head(card *calc.Card, o Options) {
	u := &card.Used
	w.para("", "Settings card: "+memberText(card, 0, o)+", "+jointText(card, o))
	if !card.Setup.One {
		w.para("", "onto "+memberText(card, 1, o))
	}
	w.para("", fmt.Sprintf("%s, wire %s, %s, %s, %s", card.Setup.Filler.Name, wireText(u.Wire.V),
		u.Mode, card.Setup.Gas.Name, u.Position))
	w.line("")
}

func memberText(card *calc.Card, i int, o Options) string {
	m := &card.Setup.Members[i]
	size := quantity.Show(m.Thickness, "mm", o.Units)
	if m.Gauge != 0 {
		size = fmt.Sprintf("%d ga %s, %s", m.Gauge, m.Metal.System, size)
	}
	coat := ""
	if m.Coating.ID != "none" {
		coat = " " + m.Coating.ID
	}
	return m.Metal.ID + " " + size + coat
}

// wireText names a wire as its spool does, with its diameter.
func wireText(mm float64) string {
	w, ok := tables.WireNear(mm)
	switch {
	case !ok:
		return quantity.Show(mm, "mm", quantity.Both)
	case w.Inch > 0:
		return fmt.Sprintf("%s in (%.3f mm)", w.ID, mm)
	}
	return w.ID
}

func jointText(card *calc.Card, o Options) string {
	if g := card.Used.Gap.V; g > 0 {
		return card.Used.Joint + ", gap " + quantity.Show(g, "mm", o.Units)
	}
	return card.Used.Joint
}

func (w *writer) figures(card *calc.Card, o Options) {
	unit := unitColumn(card.Figures, o)
	for i := range card.Figures {
		f := &card.Figures[i]
		if f.Name == "gun_angle" {
			continue // the note says it in words
		}
		value, band := quantity.Band(f.Value, f.Low, f.High, f.Unit, lead(o.Units))
		if f.Low == f.High {
			band = ""
		}
		w.line("  %-13s %9s %-*s %-13s %s", calc.FigureLabel(f.Name), value, unit, quantity.Label(f.Unit, lead(o.Units)), band, aside(card, f, o))
		if o.Why {
			w.reason(f)
		}
	}
	w.line("")
}

// unitColumn is as wide as the longest unit among the figures needs it: "lb/1000 ft" is longer than any metric one.
func unitColumn(figures []calc.Figure, o Options) int {
	n := 7
	for i := range figures {
		n = max(n, plain.Width(quantity.Label(figures[i].Unit, lead(o.Units))))
	}
	return n
}

// lead is the system of the columns; where both are asked for the other stands beside them.
func lead(s quantity.System) quantity.System {
	if s == quantity.Both {
		return quantity.Metric
	}
	return s
}

// aside is what stands beside a figure: the same in inch units, and what a hand must know.
func aside(card *calc.Card, f *calc.Figure, o Options) string {
	var parts []string
	if o.Units == quantity.Both && quantity.Label(f.Unit, quantity.Inch) != quantity.Label(f.Unit, quantity.Metric) {
		value, _ := quantity.Band(f.Value, f.Low, f.High, f.Unit, quantity.Inch)
		parts = append(parts, value+" "+quantity.Label(f.Unit, quantity.Inch))
	}
	if r := remark(card, f, o); r != "" {
		parts = append(parts, r)
	}
	return strings.Join(parts, ", ")
}

// room stands beside the range of a suggested setting, which is no doubt but what the hand may choose.
const room = "good between"

// usual stands there where no setting is judged.
const usual = "usual; not judged"

func remark(card *calc.Card, f *calc.Figure, o Options) string {
	switch f.Name {
	case "wire_feed":
		if f.Usual() {
			return usual
		}
		if f.Suggested() {
			return room
		}
	case "gas_flow":
		if !card.Job.Flow.Set && o.Units != quantity.Both && len(f.Basis.Inputs) > 0 {
			bore := f.Basis.Inputs[0]
			return quantity.Show(bore.Value, "mm", o.Units) + " nozzle" + map[bool]string{true: " assumed"}[bore.Assumed]
		}
	case "travel":
		pace := fmt.Sprintf("%.1f s for 100 mm", quantity.Seconds100(f.Value))
		if o.Units == quantity.Inch {
			pace = fmt.Sprintf("%.1f s for 4 in", quantity.Seconds4in(f.Value))
		}
		if f.Suggested() && o.Units != quantity.Both { // which leaves no room for it
			pace = room + "; " + pace
		}
		if f.Usual() && o.Units != quantity.Both {
			pace = "usual; " + pace
		}
		return pace
	case "seam_length":
		if !card.Job.Length.Set {
			return "assumed"
		}
	case "stickout":
		if card.Job.StickOut.Set {
			return "tip to arc"
		}
		return "assumed; tip to arc"
	case "heat_input":
		return "for reports, k 0.8"
	case "net_heat":
		return "reaches the sheet"
	}
	return ""
}

// reason writes formula, numbers, source and what the figure leans on.
func (w *writer) reason(f *calc.Figure) {
	const in = "      "
	b := &f.Basis
	w.para(in, b.Plain())
	if s := b.Substituted(); s != b.Plain() {
		w.para(in+"= ", s)
	}
	w.cite(in+"source: ", b.Source+" ("+b.Known+")")
	if most := leanings(b); most != "" {
		w.para(in+"leans on: ", most)
	}
}

// leanings names the three inputs that move the figure most.
func leanings(b *calc.Basis) string {
	var parts []string
	list := b.Telling()
	for _, in := range list[:min(3, len(list))] {
		parts = append(parts, fmt.Sprintf("%s (%+.1f %%)", in.Name, in.Sensitivity))
	}
	return strings.Join(parts, ", ")
}

// edges writes the thermal verdict and the borders of the operating window.
func (w *writer) edges(card *calc.Card) {
	if card.Zone == "" || card.Zone == "not-modelled" {
		return
	}
	w.line("  zone          %s", verdictText(card))
	for i := range card.Edges {
		w.line("    %-18s %s", card.Edges[i].Name, edgeText(&card.Edges[i]))
	}
	w.line("")
}

// verdictText is the verdict with what stands against a good heat.
func verdictText(card *calc.Card) string {
	switch v := card.Verdict(); v {
	case "outside":
		return v + ": the heat is good, " + card.NearestEdge().Name + " is not met"
	case "stop":
		return v + ": not to be done, whatever the heat"
	default:
		return v
	}
}

func (w *writer) notes(card *calc.Card) {
	for _, n := range card.Notes {
		w.para(fmt.Sprintf("  %-13s ", n.Name), n.Text)
	}
	if len(card.Notes) > 0 {
		w.line("")
	}
}

func (w *writer) warnings(card *calc.Card) {
	for _, l := range card.Warnings {
		if l.Severity == calc.Stop {
			continue // said at the top
		}
		w.para(strings.ToUpper(string(l.Severity))+"  ", l.Text)
	}
	if len(card.Warnings) > 0 {
		w.line("")
	}
}

func (w *writer) assumed(card *calc.Card) {
	if len(card.Assumed) == 0 {
		return
	}
	w.line("Assumed, since it was not given:")
	for _, a := range card.Assumed {
		w.para(fmt.Sprintf("  %-12s %-12s ", a.Field, a.Value), a.Why)
	}
}
