package report

import (
	"cmp"
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

func (h Head) words(o Options) []Line {
	c, wire := h.Card, "wire "+WireText(h.Card.Used.Wire.V)
	if h.WireOnly {
		return []Line{{Kind: Subject, Text: c.Setup.Filler.Name + ", " + wire}}
	}
	u := &c.Used
	first := memberText(c, 0, o) + ", " + jointText(c, o)
	list := []Line{{Kind: Subject, Lead: cmp.Or(h.Title, "Settings card"), Text: first}}
	if !c.Setup.One {
		list = append(list, Line{Kind: Subject, Text: "onto " + memberText(c, 1, o)})
	}
	with := []string{c.Setup.Filler.Name, wire, u.Mode, c.Setup.Gas.Name, u.Position}
	return append(list, Line{Kind: Subject, Text: strings.Join(with, ", ")})
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
		if o.Heard {
			coat = ", coat " + m.Coating.ID
		}
	}
	return m.Metal.ID + " " + size + coat
}

// WireText names a wire as it is printed on its spool, with its diameter.
func WireText(mm float64) string {
	w, ok := tables.WireNear(mm)
	switch {
	case !ok:
		return quantity.Show(mm, "mm", quantity.Both)
	case w.Inch > 0:
		return fmt.Sprintf("%s in (%.3f mm)", w.ID, mm)
	}
	return quantity.Show(mm, "mm", quantity.Metric)
}

func jointText(card *calc.Card, o Options) string {
	text := card.Used.Joint
	if g := card.Used.Gap.V; g > 0 {
		text += ", gap " + quantity.Show(g, "mm", o.Units)
	}
	if name := calc.BackingOf(card); name != "" {
		text += ", " + name + " behind"
	}
	return text
}

func (f Figures) words(o Options) []Line {
	var list []Line
	for i := range f.List {
		if f.List[i].Name == "gun_angle" && f.Of != OfKept {
			continue
		}
		row := RowOf(f.Card, &f.List[i], f.Of, o.Units)
		list = append(list, Line{Kind: FigureRow, Row: &row})
		if o.Why {
			list = append(list, basisLines(&f.List[i].Basis)...)
		}
	}
	if f.Of == OfPage {
		if text := assumedLine(&f, o.Units); text != "" {
			list = append(list, Line{Kind: RestsOn, Text: text})
		}
	}
	return list
}

// basisLines show how a figure was computed: formula, numbers, source and the inputs that move it most.
func basisLines(b *calc.Basis) []Line {
	list := []Line{{Kind: Formula, Text: b.Plain()}}
	if s := b.Substituted(); s != b.Plain() {
		list = append(list, Line{Kind: PutIn, Text: s})
	}
	list = append(list, Line{Kind: Source, Text: b.Source, Known: b.Known})
	if most := b.Telling(); len(most) > 0 {
		list = append(list, Line{Kind: LeansOn, Text: strings.Join(each(most[:min(3, len(most))],
			func(in *calc.Input) string { return fmt.Sprintf("%s (%+.1f %%)", in.Name, in.Sensitivity) }), ", ")})
	}
	return list
}

// whoDecides ends the cautions of every answer except the card, which says it in a caution of its own.
const whoDecides = "Local codes and licensed practice decide."

func (c Cautions) words(Options) []Line {
	var list []Line
	for i := range c.List {
		l := warningLine(&c.List[i])
		if first, _, more := strings.Cut(l.Text, ". "); c.Brief && more {
			l.Text = first + "."
		}
		list = append(list, l)
	}
	if c.Brief && len(list) > 0 {
		list = append(list, Line{Text: "The card has these in full. " + whoDecides})
	}
	return list
}

func (e Edges) words(o Options) []Line {
	var list []Line
	if e.Verdict {
		if z := e.Card.Zone; z == "" || z == "not-modelled" {
			return nil
		}
		list = append(list, Line{Kind: CardVerdict, Lead: "verdict", Text: VerdictText(e.Card)})
	}
	under := len(list)
	for i := range e.Card.Edges {
		x := &e.Card.Edges[i]
		list = append(list, Line{Kind: Edge, Lead: x.Name, Text: EdgeRoom(x, o.loud), Bad: !x.Met, N: under})
	}
	for i := range e.Card.Unjudged {
		x := &e.Card.Unjudged[i]
		list = append(list, Line{Kind: Edge, Lead: x.Name, Text: "not judged, because " + x.Why, N: under})
	}
	return list
}

// EdgeRoom says how much wire feed or travel can still change until an edge is reached, or by how much the edge is
// missed; the word is in capitals (loud) in a medium without colour.
func EdgeRoom(e *calc.Edge, loud bool) string {
	missed := "missed"
	if loud {
		missed = "MISSED"
	}
	switch far := e.Margin >= 999; {
	case e.Met && far:
		return "far from it"
	case e.Met:
		return fmt.Sprintf("%.0f %% to spare", e.Margin)
	}
	return missed + " by " + MissedBy(e.Margin)
}

// MissedBy is how much more or less feed or travel would meet a missed edge, or "far" if none that was tried does: up
// to a third less and half more.
func MissedBy(margin float64) string {
	if margin >= 999 {
		return "far"
	}
	return fmt.Sprintf("%.0f %%", margin)
}

// VerdictText is the verdict with its chance. If the heat is good but the setting is not, it says why.
func VerdictText(card *calc.Card) string {
	v := card.Verdict()
	chance, judged := card.Figure("chance")
	switch e := card.DecidingEdge(); {
	case v == "outside" && card.TooHotParts() != "":
		v += ": the heat is good, the preheat is not"
	case v == "outside" && e != nil: // a saved card has no edges
		v += ": the heat is good, " + e.Name + " is not met"
	case v == "stop":
		return v + ": not to be done, whatever the heat"
	case v == "marginal":
		v += ": every edge is met, by less than even odds"
	}
	if judged {
		v += fmt.Sprintf("; chance of a good bead %.0f in 100", chance.Value)
	}
	if card.AboutEven() {
		v += ", about even"
	}
	return v
}

func (Section) words(Options) []Line { return nil }

func (n Notes) words(Options) []Line {
	return each(n.List, func(x *calc.Note) Line {
		return Line{Kind: Setting, Lead: x.Name, Text: x.Text, Known: x.Known, Source: x.Source}
	})
}

func (a Assumed) words(o Options) []Line {
	return under("Assumed, since it was not given:", each(a.List, func(x *calc.Assumption) Line {
		return Line{Kind: Assume, Lead: x.Field, Value: Typed(x.Field, x.Value, o.Units), Text: x.Why}
	}))
}

func (c Checks) words(o Options) []Line {
	return each(c.List, func(x *advice.Check) Line {
		return Line{Kind: CheckFirst, Lead: x.Field, Value: Typed(x.Field, x.Value, o.Units), Text: x.Text()}
	})
}

// Typed is the value of a job's field as a person types it, in the units of a system. Values that are no numbers, such
// as a metal's name, are the same in all units.
func Typed(field, value string, sys quantity.System) string {
	_, _, unit, _ := calc.Span(field)
	return quantity.Typed(field, value, unit, sys)
}

// AssumedText lists the assumed values.
func AssumedText(list []calc.Assumption, sys quantity.System) string {
	return strings.Join(each(list, func(a *calc.Assumption) string {
		return plain.Line(strings.ReplaceAll(a.Field, "_", " ")+" "+Typed(a.Field, a.Value, sys), 60)
	}), ", ")
}
