package tui

import (
	"charm.land/bubbles/v2/key"
)

// top is the strip with the verdict: in full on card and booth view, on one line over the other screens.
func (m *root) top() block {
	lines := 1
	if m.practising() { // its own verdict: nothing of it is the card's
		lines = stripLines(m.w, m.h)
		return append(block{}, m.lamp.Draw(m.drill.strip(m.units), m.th.Theme, m.w, lines)...)
	}
	if _, full := m.front().(interface{ full() }); full {
		lines = stripLines(m.w, m.h)
	}
	b := append(block{}, m.lamp.Draw(m.strip(), m.th.Theme, m.w, lines)...)
	if lines == 1 && m.h >= 20 {
		b.skip()
	}
	return b
}

// footLine shows the keys that count here, as many as there is room for; help is always among them.
func footLine(th *theme, keys []key.Binding, help key.Binding, w int) line {
	r := newRow(w)
	need := keyWidth(help)
	for _, k := range keys {
		if r.used+keyWidth(k)+2+need > w {
			break
		}
		putKey(th, r, k)
		r.blank(2)
	}
	putKey(th, r, help)
	return r.line()
}

func keyWidth(k key.Binding) int { return width(k.Help().Key) + 1 + width(k.Help().Desc) }

func putKey(th *theme, r *row, k key.Binding) {
	r.put(th.bold, k.Help().Key).blank(1).put(th.quiet, k.Help().Desc)
}

// named gives a key other words where a screen has better ones.
func named(k key.Binding, shown, does string) key.Binding {
	k.SetHelp(shown, does)
	return k
}
