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
	scroll reader
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

func (p *textPage) update(m *root, msg tea.Msg) action {
	k := &m.keys
	press, ok := msg.(tea.KeyPressMsg)
	if !ok {
		return nil
	}
	if p.scroll.moved(press, k) {
		return nil
	}
	return led(press, lead{k.Leave, leave}, lead{k.Units, otherUnits}, lead{k.Back, goBack}, lead{k.On, goBack},
		lead{k.Why, goBack}, lead{k.Cautions, goBack}, lead{k.Help, goBack})
}

// scrolled acts on the keys that move through a text; draw keeps the window on it.
func (v *window) scrolled(press tea.KeyPressMsg, k *keyMap) bool {
	switch {
	case key.Matches(press, k.Up):
		v.top--
	case key.Matches(press, k.Down):
		v.top++
	case key.Matches(press, k.PageUp):
		v.top -= 8
	case key.Matches(press, k.PageDown):
		v.top += 8
	default:
		return false
	}
	return true
}

// draw returns the part of the text that is on the screen, with the lines that are not said so.
func (v *window) draw(th *theme, b block, w, h int) block {
	if len(b) <= h {
		v.top = 0
		return b
	}
	h--
	v.top = max(0, min(v.top, len(b)-h))
	out := append(block{}, b[v.top:v.top+h]...)
	return append(out, more(th, v.top, len(b)-h-v.top, w))
}
