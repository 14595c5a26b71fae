package tui

import (
	"cmp"
	"fmt"
	"strings"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"

	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tui/canvas"
)

func openSection(m *root) tea.Cmd {
	high := max(4, min(m.h/2, m.h-6))
	p := &textPage{title: "cross-section", body: func(th *theme, w int) block {
		return sectionBody(th, &m.session, w, high)
	}}
	if m.session.card.Section.Drawn {
		p.of = sectionPictured
	}
	m.push(p)
	return nil
}

// sectionBody is the joint's cross-section to scale and the edges of the operating window.
func sectionBody(th *theme, s *session, w, high int) (b block) {
	c := &s.card
	j, ok := jointOf(&c.Section)
	if !ok {
		why := cmp.Or(warningText(c, "not-modelled"), "this joint is not modelled.")
		b.say(th.plain, 0, "There is no drawing: "+why, w)
		return b
	}
	b.addAll(drawnJoint(th, j, w, high, s.units))
	b.skip()
	b.add(newRow(w).put(th.bold, "edges of the operating window").line())
	b.addAll(s.finding(th, []report.Block{report.Edges{Card: c}}, w, false))
	return b
}

// drawnJoint is a joint to scale, and under it what its scale is and what the ground of the zinc says.
func drawnJoint(th *theme, j canvas.Joint, w, high int, units quantity.System) block {
	b := block(j.Draw(th.Theme, w, high))
	for len(b) > 1 && strings.TrimSpace(ansi.Strip(b[0].Text)) == "" { // the joint stands on the last line
		b = b[1:]
	}
	text := fmt.Sprintf("to scale: ten columns are %s", quantity.Show(10*j.Scale(w, high), "mm", units))
	if j.Melted != [2]float64{} || j.MeltedBack != [2]float64{} {
		text += "; marked on the sheet: how far the zinc melts, and boils"
	}
	b.say(th.quiet, 0, text, w)
	return b
}
