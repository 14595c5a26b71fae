package tui

import (
	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/internal/quantity"
)

// textPage is text to read: help, the cautions, what a row of a list rests on. It is drawn anew at
// each size by its own function.
type textPage struct {
	title  string
	body   func(th *theme, w int) block
	scroll window
}

func (m *root) read(title string, body func(*theme, int) block) {
	m.push(&textPage{title: title, body: body})
}

func (p *textPage) about(*root) about { return about{keys: "esc back  ↑↓ scroll"} }

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
	if key.Matches(press, bound.Back, bound.On, bound.Why, bound.Cautions, bound.Help) {
		return goBack
	}
	return everywhere(press)
}

// window is the part of a longer block that is on the screen. The zero window stands at its beginning.
type window struct {
	top       int // line that is first
	high, all int // lines shown and there, as last drawn
}

// moved acts on the keys that move through a text; drawing keeps the window on it.
func (v *window) moved(press tea.KeyPressMsg) bool {
	page := max(1, v.high-1)
	switch {
	case key.Matches(press, bound.Up):
		v.top--
	case key.Matches(press, bound.Down):
		v.top++
	case key.Matches(press, bound.PageUp):
		v.top -= page
	case key.Matches(press, bound.PageDown), press.String() == "space":
		v.top += page
	case key.Matches(press, bound.Top):
		v.top = 0
	case key.Matches(press, bound.Bottom):
		v.top = v.all
	default:
		return false
	}
	return true
}

// of is the part of a block that is on the screen.
func (v *window) of(b block, h int) block {
	v.high, v.all = max(0, min(h, len(b))), len(b)
	v.top = max(0, min(v.top, v.all-v.high))
	return b[v.top : v.top+v.high]
}

// show moves the window, no further than needed, until the lines from first to last are in it, and returns the part to
// draw.
func (v *window) show(b block, first, last, h int) block {
	v.top = min(max(v.top, last-h+1), first)
	return v.of(b, h)
}

// draw returns the part of a text that is on the screen, with the lines that are not said so.
func (v *window) draw(th *theme, b block, w, h int) block {
	if len(b) <= h {
		return v.of(b, h)
	}
	out := append(block{}, v.of(b, max(1, h-1))...)
	r := newRow(w)
	if v.top > 0 {
		r.put(th.quiet, "↑ "+quantity.Count(v.top, "line"))
	}
	if below := v.all - v.top - v.high; below > 0 {
		r.blank(min(2, r.used)).put(th.quiet, "↓ "+quantity.Count(below, "line"))
	}
	return append(out, r.line())
}

// marked shows at the right edge of a window whether there is more above and below it: on its first and its last line,
// or on the nearest to them that has room.
func (v *window) marked(th *theme, b block, w int) block {
	out := append(block{}, b...)
	n := len(out)
	mark := func(sign string, i, by int) {
		for ; i >= 0 && i < n; i += by {
			if out[i].Width <= w-3 {
				out[i] = join(out[i], line{}, w-1, th.quiet, sign)
				return
			}
		}
	}
	if v.top > 0 {
		mark("↑", 0, 1)
	}
	if v.top+n < v.all {
		mark("↓", n-1, -1)
	}
	return out
}
