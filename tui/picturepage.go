package tui

import (
	"cmp"
	"context"
	"fmt"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tui/canvas"
)

// picturePage shows the map, the cross-section or the heat of a timed arc as the picture that the commands write, on a
// terminal that shows pictures. Its cells stay blank, because the picture covers them.
type picturePage struct {
	slow[pictureOf, string]
	name string
	of   drawing
	room [2]int // in columns and lines
}

// pictureOf is what a picture depends on.
type pictureOf struct {
	job   calc.Job
	units quantity.System
	room  [2]int
}

// drawing draws a picture of what the session shows as PNG, with this many dots per inch of an A4 sheet.
type drawing func(ctx context.Context, s *session, comma bool, dpi int) ([]byte, error)

// asPicture opens the picture of what a screen shows. On a terminal without pictures it says how to switch them on.
func asPicture(name string, of drawing) action {
	return func(m *root) tea.Cmd {
		if !m.pics.can() {
			return m.act(refuse("no pictures here",
				"start with --pictures, on a terminal with Kitty graphics or Sixel"))
		}
		m.push(&picturePage{name: name, of: of})
		return nil
	}
}

// withPicture adds the key for pictures to others, if the terminal shows pictures.
func (m *root) withPicture(keys string) string {
	if m.pics.can() {
		keys += "  v picture"
	}
	return keys
}

func (p *picturePage) about(*root) about { return about{keys: "esc back  u units"} }

func (p *picturePage) press(_ *root, press tea.KeyPressMsg) action {
	if key.Matches(press, bound.On, bound.Back, bound.Picture) {
		return goBack
	}
	return everywhere(press)
}

// view leaves room for the picture, and says that it is being drawn until it is there.
func (p *picturePage) view(m *root, w, h int) (b block, _ *tea.Cursor) {
	p.room = [2]int{w, h}
	switch {
	case p.err != nil:
		b.fault(&m.th, faultOf(p.err), w)
	case !p.ready(p.wanted(m)):
		b.say(m.th.quiet, 0, p.name+" as a picture: being drawn", w)
	}
	return b, nil
}

func (p *picturePage) wanted(m *root) pictureOf { return pictureOf{m.job, m.Units, p.room} }

// make starts drawing the picture as large as there is room for.
func (p *picturePage) make(m *root) tea.Cmd {
	pics, now, comma := m.pics, m.session, m.th.look.comma
	return p.want(m.Context, p.wanted(m), func(ctx context.Context, of pictureOf, _ func(float64)) (string, error) {
		const sheetWide, sheetHigh = 297 / 25.4, 210 / 25.4 // in
		dpi := min(float64(of.room[0]*pics.cell.Width)/sheetWide, float64(of.room[1]*pics.cell.Height)/sheetHigh)
		b, err := p.of(ctx, &now, comma, max(1, int(dpi)))
		if err != nil {
			return "", err
		}
		return pics.encoded(b)
	})
}

// mapPicture is a map with the present setting in it.
func mapPicture(w calc.Window) drawing {
	return func(ctx context.Context, s *session, comma bool, dpi int) ([]byte, error) {
		c, err := calc.ChartOf(ctx, &w)
		if err != nil {
			return nil, err
		}
		return (&report.Map{Window: &w, Chart: &c, Given: &s.card, Units: s.Units, Comma: comma}).PNG(dpi)
	}
}

// heatPicture is the heat of a timed arc.
func heatPicture(timed calc.Timed) drawing {
	return func(_ context.Context, s *session, comma bool, dpi int) ([]byte, error) {
		return report.Heat{Timed: &timed, Units: s.Units, Comma: comma}.PNG(dpi)
	}
}

// sectionPicture is the joint to scale.
func sectionPicture(_ context.Context, s *session, comma bool, dpi int) ([]byte, error) {
	return report.Joint{Card: &s.card, Units: s.Units, Comma: comma}.PNG(dpi)
}

func openSection(m *root) tea.Cmd {
	high := max(4, min(m.h/2, m.h-6))
	p := &textPage{title: "cross-section", body: func(th *theme, w int) block {
		return sectionBody(th, &m.session, w, high)
	}}
	if m.session.card.Section.Drawn {
		p.of = sectionPicture
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
	b.addAll(drawnJoint(th, j, w, high, s.Units))
	b.skip()
	b.say(th.bold, 0, "edges: how much wire feed or travel can still change", w)
	b.addAll(s.finding(th, []report.Block{report.Edges{Card: c}}, w, false))
	return b
}

// drawnJoint is a joint to scale, and below it the scale and the meaning of the colours of the zinc.
func drawnJoint(th *theme, j canvas.Joint, w, high int, units quantity.System) block {
	b := block(j.Draw(th.Theme, w, high))
	// The joint ends on the last line, so empty lines are at the top.
	for len(b) > 1 && b[0].Width == 0 {
		b = b[1:]
	}
	text := fmt.Sprintf("to scale: ten columns are %s", quantity.Show(10*j.Scale(w, high), "mm", units))
	if j.Melted != [2]float64{} || j.MeltedBack != [2]float64{} {
		text += "; marked on the sheet: how far the zinc melts, and boils"
	}
	b.say(th.quiet, 0, text, w)
	return b
}
