package report

import (
	"cmp"
	"fmt"
	"strings"

	"brazebooth/calc"
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
