package tui

import (
	"context"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
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

// answered is an answer of the book with what is done about it.
type answered struct{ then action }

func (a answered) tell(m *root) (tea.Cmd, bool) { return m.act(a.then), true }

// asking asks the book beside the screens, where there is one: ask takes what it needs from the root and returns what
// waits for the answer, nil for nothing.
func asking(ask func(m *root) func(ctx context.Context, k Keeper) action) action {
	return withBook(func(m *root) tea.Cmd {
		wait, k := ask(m), m.keeper
		if wait == nil {
			return nil
		}
		return func() tea.Msg { return answered{wait(context.Background(), k)} }
	})
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
	return asking(func(m *root) func(context.Context, Keeper) action {
		if job := m.session.base(); !m.session.example && job != m.shelf.safe && m.shelf.sure != e.ID {
			m.shelf.sure = e.ID
			m.notice = &fault{"the card on the screen is not kept", "enter once more opens " + e.Name +
				" all the same; a name and enter on the row below keeps it"}
			return nil
		}
		return func(ctx context.Context, k Keeper) action {
			job, err := k.Load(ctx, e.ID)
			return func(m *root) tea.Cmd { return m.loaded(job, e.Name, err) }
		}
	})
}

func (m *root) loaded(job calc.Job, name string, err error) tea.Cmd {
	switch {
	case !m.isOpen(&m.part) || m.part.name() != pageBook: // left meanwhile: the card stays
		return nil
	case err != nil:
		m.notice = bookFault("", err, "the card on the screen stays")
		return nil
	}
	m.close(&m.part)
	m.shelf.field = field{}
	m.along(cardStep)
	m.shelf.safe, m.shelf.sure = job, ""
	m.changed(job, name+": as it was kept, computed anew")
	return m.follow()
}

// keepCard keeps the present card.
func keepCard(name string) action {
	return asking(func(m *root) func(context.Context, Keeper) action {
		card, job := m.session.card, m.session.base()
		m.shelf.sure = ""
		return func(ctx context.Context, k Keeper) action {
			said, err := k.Keep(ctx, name, &card)
			if err != nil {
				return refuse(*bookFault("not kept: ", err, "the card stays on the screen"))
			}
			return func(m *root) tea.Cmd {
				m.done, m.shelf.safe = said, job
				if m.shelf.field.String() == name { // else something else is being typed by now
					m.shelf.field.clear()
				}
				m.shelf.list.goTo(0) // the newest, which is the one that was kept
				return m.shelf.find(m.keeper)
			}
		}
	})
}
