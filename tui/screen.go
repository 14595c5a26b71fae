package tui

import (
	"slices"

	tea "charm.land/bubbletea/v2"
)

// screen is one layer of the stack that root holds, a plain struct in a file of its own. Opening pushes it, esc pops
// it. Only the screen on top gets keys and is drawn.
type screen interface {
	// press handles a key. The root performs the returned action.
	press(m *root, press tea.KeyPressMsg) action
	// view draws at most h lines of w columns. The cursor is the place where typed text goes, nil for none.
	view(m *root, w, h int) (block, *tea.Cursor)
	// about is what help, glossary and the keys' line need to know.
	about(m *root) about
}

// about is what the rest of the program needs to know about an open screen.
type about struct {
	help string // the heading in the help that has its keys
	term string // the word at which the glossary opens
	keys string // for the keys' line, most important first, written as shown: two blanks apart

	full  bool // the verdict above it is shown in full, not on one line
	fills bool // it takes the whole terminal and every key except ctrl+c
}

// Further abilities of a screen.
type (
	// leaver does something when it is popped.
	leaver interface{ left(m *root) }
	// backer handles esc itself before it is popped, and reports whether there was something to take back.
	backer interface{ back(m *root) bool }
	// refresher lays itself out again when the units or the card change.
	refresher interface{ refresh(m *root) }
)

// action is what a screen asks the root to do; nil is nothing. A screen never changes the session itself.
type action func(m *root) tea.Cmd

// screenMsg is a message from a computation. It knows which screen it is for. draws is false if nothing changed.
type screenMsg interface {
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

// isOpen reports whether a screen is on the stack, at the top or below.
func (m *root) isOpen(s screen) bool { return slices.Contains(m.stack, s) }

// close pops a screen and all screens above it, if it is open.
func (m *root) close(s screen) {
	for m.isOpen(s) {
		m.pop()
	}
}

// refresh updates every open screen after a change of units or card.
func (m *root) refresh() {
	for _, s := range m.stack {
		if r, ok := s.(refresher); ok {
			r.refresh(m)
		}
	}
}

// topmost finds the uppermost screen of a type.
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

// goBack leaves the screen on top. Behind the first screen there is nothing.
func goBack(m *root) tea.Cmd {
	s := m.front()
	if b, ok := s.(backer); ok && b.back(m) {
		return nil
	}
	switch {
	case len(m.stack) > 1:
		m.pop()
	case m.step() > 0:
		return m.alongBy(-1)
	default:
		return m.act(refuse("this is the first step", "q quits"))
	}
	switch s.(type) {
	case *picker, *cardPage:
		m.enter()
	}
	return nil
}

// leave ends the program. If the user has put a job together, it asks for a second key press.
func leave(m *root) tea.Cmd {
	if m.example || m.again {
		return tea.Quit
	}
	m.leaving = true
	hint := "the card is kept"
	if m.unkept() {
		hint = "the card is not kept"
	}
	return m.act(refuse("q again quits", hint))
}

// unkept reports whether the user has put a job together that is not in the book.
func (m *root) unkept() bool { return !m.example && m.base() != m.shelf.safe }

// refuse says why nothing was done, and what to do instead.
func refuse(what, hint string) action { return (&fault{what, hint}).said }

// said is the action that shows the fault.
func (f *fault) said(m *root) tea.Cmd {
	m.notice = f
	return nil
}

// clicker is a screen with something to click on. x and y are cells of its own drawing.
type clicker interface {
	click(m *root, x, y int) action
}

// mouse handles a click, and the wheel like the arrows up and down, except on the card, where these would change
// settings. Nothing requires a mouse.
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

// click goes to a chip or a dial. On the one under the cursor it does the same as enter.
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

// click goes to a row of the list. On the one under the cursor it chooses it.
func (p *picker) click(m *root, _, y int) action {
	if p.list.clicked(y - p.first) {
		return p.on()
	}
	p.tryOut(&m.session)
	return nil
}

// click goes to a row of the list. On the one under the cursor it opens it.
func (p *restPage) click(m *root, _, y int) action {
	if p.list.clicked(y - 2) {
		return p.press(m, tea.KeyPressMsg{Code: tea.KeyEnter})
	}
	return nil
}
