package tui

import (
	"slices"

	tea "charm.land/bubbletea/v2"
)

// screen is one layer of the stack that root holds: a plain struct in a file of its own. Opening pushes it, esc pops
// it; only the one on top gets keys and is drawn.
type screen interface {
	// press acts on a key; what it returns is done by the root.
	press(m *root, press tea.KeyPressMsg) action
	// view draws at most h lines of w columns. The cursor is where typing goes, nil for nowhere.
	view(m *root, w, h int) (block, *tea.Cursor)
	// about is what help, glossary and the keys' line have to know.
	about(m *root) about
}

// about is what other screens need to know of an open one.
type about struct {
	help string // the heading of the help under which its keys stand
	term string // the word that the glossary opens at
	keys string // for the keys' line, most needed first, as it shows them: two blanks apart

	full  bool // the verdict stands over it in full, not on one line
	fills bool // it takes the whole terminal and every key but ctrl+c
}

// What a screen may be besides.
type (
	// paster takes pasted text.
	paster interface {
		paste(m *root, text string) action
	}
	// leaver does something when it is popped.
	leaver interface{ left(m *root) }
	// backer takes esc once more before it is popped: it reports whether there was something to take back.
	backer interface{ back(m *root) bool }
	// refresher lays itself out anew when units or card change under it.
	refresher interface{ refresh(m *root) }
	// starter begins anew when the screen over it has changed what it goes by.
	starter interface{ start(m *root) }
)

// action is what a screen asks of the root; nil is nothing. A screen never changes the session itself.
type action func(m *root) tea.Cmd

// told is a message that was made beside a screen: it knows whom it concerns. draws is false where nothing changed.
type told interface {
	tell(m *root) (cmd tea.Cmd, draws bool)
}

func (m *root) act(a action) tea.Cmd {
	if a == nil {
		return nil
	}
	return a(m)
}

func (m *root) front() screen { return m.stack[len(m.stack)-1] }

func (m *root) push(s screen) { m.stack = append(m.stack, s) }

func (m *root) pop() {
	s := m.front()
	m.stack[len(m.stack)-1] = nil
	m.stack = m.stack[:len(m.stack)-1]
	if l, ok := s.(leaver); ok {
		l.left(m)
	}
}

// isOpen reports whether a screen is on the stack, on top or not.
func (m *root) isOpen(s screen) bool { return slices.Contains(m.stack, s) }

// close pops a screen and whatever lies over it, if it is open.
func (m *root) close(s screen) {
	for m.isOpen(s) {
		m.pop()
	}
}

// refresh lets every open screen take in other units or another card.
func (m *root) refresh() {
	for _, s := range m.stack {
		if r, ok := s.(refresher); ok {
			r.refresh(m)
		}
	}
}

// topmost finds the uppermost screen of a kind.
func topmost[T screen](m *root) (T, bool) {
	for i := len(m.stack) - 1; i >= 0; i-- {
		if s, ok := m.stack[i].(T); ok {
			return s, true
		}
	}
	var none T
	return none, false
}

func opening(s screen) action { return func(m *root) tea.Cmd { m.push(s); return nil } }

// goBack leaves the screen on top; on the first one there is nothing behind.
func goBack(m *root) tea.Cmd {
	s := m.front()
	if b, ok := s.(backer); ok && b.back(m) {
		return nil
	}
	if len(m.stack) == 1 {
		return m.act(refuse("this is the first step", "q quits"))
	}
	m.pop()
	switch s.(type) {
	case *picker, *cardPage:
		m.enter()
	}
	return nil
}

// leave ends the program; a job that somebody put together asks for a second key.
func leave(m *root) tea.Cmd {
	if m.example || m.again {
		return tea.Quit
	}
	m.leaving = true
	return m.act(refuse("q again quits", "the card is not kept"))
}

// refuse says why nothing was done, and what to do instead.
func refuse(what, hint string) action { return (&fault{what, hint}).said }

// said is the action that says it.
func (f *fault) said(m *root) tea.Cmd {
	m.notice = f
	return nil
}

// clicker is a screen on which something can be clicked: x and y are cells of its own drawing.
type clicker interface {
	click(m *root, x, y int) action
}

// mouse acts on a click, and on the wheel as on the arrows up and down; on the card a wheel would turn settings, so
// there it does nothing. A mouse is never needed.
func (m *root) mouse(msg tea.MouseMsg) tea.Cmd {
	at := msg.Mouse()
	switch msg.(type) {
	case tea.MouseClickMsg:
		if c, ok := m.front().(clicker); ok && at.Button == tea.MouseLeft {
			m.notice, m.done = nil, ""
			return m.act(c.click(m, at.X-m.margin(), at.Y-m.above))
		}
	case tea.MouseWheelMsg:
		if m.front().about(m).fills || m.front() == screen(&m.card) {
			return nil
		}
		switch at.Button {
		case tea.MouseWheelUp:
			return m.press(tea.KeyPressMsg{Code: tea.KeyUp})
		case tea.MouseWheelDown:
			return m.press(tea.KeyPressMsg{Code: tea.KeyDown})
		}
	}
	return nil
}

// click goes to a chip or a dial; on the one under the cursor it does what enter does.
func (p *cardPage) click(m *root, x, y int) action {
	l := m.cardLayout()
	at := -1
	switch {
	case y < l.chips:
		at = p.chips(m, false).At(x, m.w-2*m.margin(), l.chips)
	case y < l.chips+l.dials:
		from, _ := p.span(dialGroup)
		n := len(p.dials(m))
		if n == 0 || x >= l.left {
			return nil
		}
		at = from + min(n-1, max(0, x)*n/l.left)
	}
	if at < 0 || at >= len(p.rows) || p.typing {
		return nil
	}
	if at == p.at {
		return p.press(m, tea.KeyPressMsg{Code: tea.KeyEnter})
	}
	p.goTo(at)
	return nil
}

// click goes to a row of the list; on the one under the cursor it chooses.
func (p *picker) click(m *root, _, y int) action {
	return p.list.clicked(y-p.first, func() action { p.tryOut(&m.session); return nil }, p.on)
}

// click goes to a row of the list; on the one under the cursor it opens.
func (p *restPage) click(m *root, _, y int) action {
	return p.list.clicked(y-2, func() action { return nil }, func() action {
		return p.press(m, tea.KeyPressMsg{Code: tea.KeyEnter})
	})
}
