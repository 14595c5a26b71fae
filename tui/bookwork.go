package tui

import (
	"context"

	tea "charm.land/bubbletea/v2"
)

// withBook does what needs the book, where there is one.
func withBook(a action) action {
	return func(m *root) tea.Cmd {
		if m.keeper == nil {
			m.notice = &fault{"there is no book here", "start the program with one: brazebooth --book FILE"}
			return nil
		}
		return a(m)
	}
}

// findCards asks for what is typed on the open page of the book.
func findCards(m *root) tea.Cmd {
	return withBook(func(m *root) tea.Cmd {
		if m.part.name() == pageRecords {
			return m.records.find(m.keeper)
		}
		return m.shelf.find(m.keeper)
	})(m)
}

// loadCard opens a kept card; one that would take the place of a card that is not kept asks for a second key.
func loadCard(e Entry) action {
	return withBook(func(m *root) tea.Cmd {
		if job := m.session.base(); !m.session.example && job != m.shelf.safe && m.shelf.sure != e.ID {
			m.shelf.sure = e.ID
			m.notice = &fault{"the card on the screen is not kept", "enter once more opens " + e.Name +
				" all the same; a name and enter on the row below keeps it"}
			return nil
		}
		k := m.keeper
		return func() tea.Msg {
			job, err := k.Load(context.Background(), e.ID)
			return bookLoaded{job, e.Name, err}
		}
	})
}

func (msg bookLoaded) tell(m *root) (tea.Cmd, bool) {
	if !m.isOpen(&m.part) || m.part.name() != pageBook { // left meanwhile: the card stays
		return nil, true
	}
	if msg.err != nil {
		m.notice = bookFault("", msg.err, "the card on the screen stays")
		return nil, true
	}
	m.close(&m.part)
	m.shelf.field = field{}
	m.along(cardStep)
	m.shelf.safe, m.shelf.sure = msg.job, ""
	m.changed(msg.job, msg.name+": as it was kept, computed anew")
	return m.follow(), true
}

// keepCard keeps the present card.
func keepCard(name string) action {
	return withBook(func(m *root) tea.Cmd {
		k, card := m.keeper, m.session.card
		m.shelf.sure = ""
		job := m.session.base()
		return func() tea.Msg {
			said, err := k.Keep(context.Background(), name, &card)
			return bookKept{name, job, said, err}
		}
	})
}

func (msg bookKept) tell(m *root) (tea.Cmd, bool) {
	if msg.err != nil {
		m.notice = bookFault("not kept: ", msg.err, "the card stays on the screen")
		return nil, true
	}
	m.done, m.shelf.safe = msg.said, msg.job
	if m.shelf.field.String() == msg.name { // else something else is being typed by now
		m.shelf.field.clear()
	}
	m.shelf.list.goTo(0) // the newest, which is the one that was kept
	return m.shelf.find(m.keeper), true
}
