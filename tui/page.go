package tui

import (
	"charm.land/bubbles/v2/key"
	"charm.land/bubbles/v2/viewport"
	tea "charm.land/bubbletea/v2"

	"brazebooth/internal/quantity"
)

// textPage is text to read: help, the cautions, the reasons for a row of a list. Its function draws it again for each
// size.
type textPage struct {
	title  string
	body   func(th *theme, w int) block
	scroll window
	of     drawing // the same as a picture; nil for none
}

func (m *root) read(title string, body func(*theme, int) block) tea.Cmd {
	m.push(&textPage{title: title, body: body})
	return nil
}

func (p *textPage) about(m *root) about {
	keys := "esc back" + p.scroll.key()
	if p.of != nil {
		keys = m.withPicture(keys)
	}
	return about{keys: keys}
}

func (p *textPage) view(m *root, w, h int) (b block, _ *tea.Cursor) {
	b.say(m.th.bold, 0, p.title, w)
	b.skip()
	w = min(w, textWidth)
	b.addAll(p.scroll.draw(&m.th, p.body(&m.th, w), w, h-len(b)))
	return b, nil
}

func (p *textPage) press(m *root, press tea.KeyPressMsg) action {
	if p.scroll.moved(press) {
		return nil
	}
	if key.Matches(press, bound.On, bound.Why, bound.Cautions, bound.Help) {
		return goBack
	}
	if p.of != nil && key.Matches(press, bound.Picture) {
		return asPicture(p.title, p.of)
	}
	return everywhere(press)
}

// window shows a part of a longer block, with Bubbles' viewport. The zero window is at the beginning.
type window struct {
	view viewport.Model
	long bool // the block drawn last is longer than the screen
}

// key is the key that scrolls, for the keys' line. It is empty if the whole text is on the screen.
func (v *window) key() string {
	if v.long {
		return keyGap + "↑↓ scroll"
	}
	return ""
}

func (v *window) moved(press tea.KeyPressMsg) bool {
	page := max(1, v.view.Height()-1) // one line of the page before stays
	switch {
	case key.Matches(press, bound.Up):
		v.view.ScrollUp(1)
	case key.Matches(press, bound.Down):
		v.view.ScrollDown(1)
	case key.Matches(press, bound.PageUp):
		v.view.ScrollUp(page)
	case key.Matches(press, bound.PageDown), press.String() == "space":
		v.view.ScrollDown(page)
	case key.Matches(press, bound.Top):
		v.view.GotoTop()
	case key.Matches(press, bound.Bottom):
		v.view.GotoBottom()
	default:
		return false
	}
	return true
}

// whole reports whether a block fits without scrolling.
func (v *window) whole(b block, h int) bool {
	if v.long = len(b) > h; v.long {
		return false
	}
	v.view.GotoTop()
	return true
}

func (v *window) fill(b block, w, h int) {
	lines := make([]string, len(b))
	for i, l := range b {
		lines[i] = l.Text
	}
	v.view.SetWidth(w)
	v.view.SetHeight(h)
	v.view.SetContentLines(lines)
}

// draw returns the part of a text that is on the screen, and says how many lines are not.
func (v *window) draw(th *theme, b block, w, h int) block {
	if v.whole(b, h) {
		return b
	}
	h = max(1, h-1)
	v.fill(b, w, h)
	r := newRow(w)
	if above := v.view.YOffset(); above > 0 {
		r.put(th.quiet, "↑ "+quantity.Count(above, "line"))
	}
	if below := len(b) - v.view.YOffset() - h; below > 0 {
		r.blank(min(2, r.used)).put(th.quiet, "↓ "+quantity.Count(below, "line"))
	}
	return append(linesOf(v.view.View()).fit(h), r.line())
}

// show moves the window, no further than needed, until the lines from first to last are in it, and returns the part to
// draw. Marks at its right edge show whether there is more above and below it: on its first and last line, or on the
// nearest lines with room.
func (v *window) show(th *theme, b block, first, last, w, h int) block {
	if v.whole(b, h) {
		return b
	}
	h = max(0, h)
	v.fill(make(block, len(b)), w, h) // empty, to place the window only: the lines of b are drawn already
	v.view.SetYOffset(min(max(v.view.YOffset(), last-h+1), first))
	out := append(block{}, b[v.view.YOffset():][:h]...)
	mark := func(sign string, i, by int) {
		for ; i >= 0 && i < len(out); i += by {
			if out[i].Width <= w-3 {
				out[i] = join(out[i], line{}, w-1, th.quiet, sign)
				return
			}
		}
	}
	if !v.view.AtTop() {
		mark("↑", 0, 1)
	}
	if !v.view.AtBottom() {
		mark("↓", len(out)-1, -1)
	}
	return out
}
