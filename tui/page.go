package tui

import (
	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"
)

// textPage is text to read: help, the cautions, what a row of a list rests on. It is drawn anew at
// each size by its own function.
type textPage struct {
	title  string
	body   func(th *theme, w int) block
	scroll window
}

// read opens a text.
func (m *root) read(title string, body func(*theme, int) block) {
	m.push(&textPage{title: title, body: body})
}

func (p *textPage) about(*root) about {
	return about{keys: "esc back  ↑↓ scroll"}
}

func (p *textPage) view(m *root, w, h int) (block, *tea.Cursor) {
	var b block
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
