package tui

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/joint"
	"brazebooth/internal/report"
	"brazebooth/tui/canvas"
)

// handSettings are the settings made by hand: the name of each for little room, how less and more of it is called, and
// the ends of its dial's bar, in its unit. The first track that holds the value and the span is used, so that the bar
// keeps its scale while the value changes.
var handSettings = map[string]struct {
	short, less, more string
	tracks            [][2]float64
}{
	"wire_feed": {"feed", "less wire", "more wire", [][2]float64{{0, 10}, {0, 25}, {0, 60}}},
	"volts":     {"", "lower volts", "higher volts", [][2]float64{{10, 20}, {8, 40}}},
	"travel":    {"", "slower", "faster", [][2]float64{{0, 16}, {0, 60}}},
	"gas_flow":  {"gas", "less gas", "more gas", [][2]float64{{0, 25}, {0, 60}}},
	"stickout":  {"", "shorter stick-out", "longer stick-out", [][2]float64{{0, 30}, {0, 60}}},
	"spot_step": {"", "shorter step", "longer step", [][2]float64{{0, 6}, {0, 20}}},
	"arc_on":    {"on", "shorter on", "longer on", [][2]float64{{0, 1}, {0, 4}, {0, 10}}},
	"arc_off":   {"off", "shorter off", "longer off", [][2]float64{{0, 1}, {0, 4}, {0, 10}}},
}

// dialOf is a setting as a dial.
func dialOf(r *cardRow, c *calc.Card, as look) canvas.Dial {
	f, v := r.fig.Figure, &r.fig.Value
	d := canvas.Dial{Name: guessMark(r.tag) + r.label, Unit: v.Unit, Number: as.number(v.Number),
		Widest: as.number("88.8"), Also: r.fig.Other.String(), Span: as.number(v.Band()), Yours: r.tag == "yours"}
	d.Short = handSettings[r.name].short
	if r.name == "travel" && d.Also == "" {
		d.Also = r.short
	}
	d.State, d.Bar = stateOf(c), canvas.Bar{Value: f.Value}
	low, high := f.Value, f.Value
	if v.Band() != "" {
		d.Bar.Span, d.Bar.Kind = [2]float64{f.Low, f.High}, canvas.LikelySpan
		if r.fig.Range == report.GoodBetween {
			d.Bar.Kind = canvas.GoodSpan
		}
		low, high = min(low, f.Low), max(high, f.High)
	}
	d.Bar.Low, d.Bar.High = track(r.name, low, high)
	return d
}

// track is the first track of a figure that contains two values, or its longest one.
func track(name string, low, high float64) (from, to float64) {
	for _, t := range handSettings[name].tracks {
		if from, to = t[0], t[1]; from <= low && high <= to {
			break
		}
	}
	return from, to
}

// dials are all settings to dial. Typed text replaces the number.
func (p *cardPage) dials(m *root) canvas.Dials {
	list := dialsOf(m, dialled(p.rows), &m.session.card)
	if from, _ := p.span(dialGroup); p.at >= from && p.at-from < len(list) {
		d := &list[p.at-from]
		d.Cursor = true
		if p.typing {
			d.Number = p.field.String()
		}
	}
	return list
}

// dialled are the rows of a card that are dialled.
func dialled(rows []cardRow) (list []cardRow) {
	for i := range rows {
		if rows[i].kind == dialRow {
			list = append(list, rows[i])
		}
	}
	return list
}

// dialsOf are rows of a card as dials; grey if nothing should be dialled.
func dialsOf(m *root, rows []cardRow, c *calc.Card) canvas.Dials {
	list := make(canvas.Dials, len(rows))
	for i := range rows {
		list[i] = dialOf(&rows[i], c, m.th.look)
		list[i].Bar.Off = m.fault != nil || stateOf(c) == canvas.Stop
		m.spanned(&list[i], &rows[i].fig)
		if m.unsettled(rows[i].name) {
			m.beat.estimated(&list[i])
		}
	}
	return list
}

// chips are the choices. The hint below the picked one says what the arrows change it to.
func (p *cardPage) chips(m *root, hint bool) canvas.Chips {
	l := chipsOf(&m.th, p.rows, m.shown())
	if r := p.row(); r.kind == chipRow {
		if l.Cursor = p.at; hint {
			l.Hint = m.chipHint(r, m.w-2)
		}
	}
	return l
}

// chipsOf are the choices of a card, which are the first of its rows.
func chipsOf(th *theme, rows []cardRow, c *calc.Card) canvas.Chips {
	l := canvas.Chips{Cursor: -1}
	for i := 0; i < len(rows) && rows[i].kind == chipRow; i++ {
		r := &rows[i]
		l.List = append(l.List, canvas.Chip{Name: r.chipName(), Value: th.look.number(r.chipText(c)),
			Assumed: r.tag == "assumed"})
	}
	return l
}

// chipHint names the values before and after a choice's value in its list.
func (m *root) chipHint(r *cardRow, w int) string {
	rows, now := r.ask.Rows(m.present()), r.ask.Now(&m.session.card)
	at := slices.IndexFunc(rows, func(x choice.Row) bool { return x.ID == now })
	var parts []string
	if at > 0 {
		parts = append(parts, "↑ "+rows[at-1].Name)
	}
	if at >= 0 && at+1 < len(rows) {
		parts = append(parts, "↓ "+rows[at+1].Name)
	}
	if len(rows) == 0 {
		parts = append(parts, "enter: type it")
	} else {
		parts = append(parts, fmt.Sprintf("enter: all %d", len(rows)))
	}
	for len(parts) > 1 && width(strings.Join(parts, "   ")) > w-4 {
		parts = parts[:len(parts)-1]
	}
	return strings.Join(parts, "   ")
}

// jointOf is a joint with its bead for the drawing; false if there is none.
func jointOf(s *calc.Section) (canvas.Joint, bool) {
	_, ok := joint.KindOf(s.Joint)
	return canvas.Joint{Section: report.SectionOf(s)}, ok && s.Drawn
}

func edgesOf(c *calc.Card) canvas.Edges {
	l := make(canvas.Edges, len(c.Edges), len(c.Edges)+len(c.Unjudged))
	for i, e := range c.Edges {
		l[i] = canvas.Edge{Name: e.Name, Margin: e.Margin}
		if !e.Met {
			l[i].Margin = -e.Margin
		}
	}
	for _, e := range c.Unjudged {
		l = append(l, canvas.Edge{Name: e.Name, Margin: math.Inf(1)})
	}
	return l
}

func guessMark(tag string) string {
	if tag == "assumed" {
		return "~"
	}
	return ""
}
