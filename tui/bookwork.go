package tui

import (
	"context"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
)

// withBook does what needs the book, where there is one.
func withBook(a action) action {
	return func(m *root) tea.Cmd {
		if m.keeper == nil {
			return m.act(refuse("there is no book here", "start the program with one: brazebooth --book FILE"))
		}
		return a(m)
	}
}

// answered is an answer of the book with what is done about it.
type answered struct{ then action }

func (a answered) tell(m *root) (tea.Cmd, bool) { return m.act(a.then), true }

// asking asks the book beside the screens, where there is one; what wait returns is done with the answer.
func asking(wait func(ctx context.Context, k Keeper) action) action {
	return withBook(func(m *root) tea.Cmd {
		k := m.keeper
		return func() tea.Msg { return answered{wait(context.Background(), k)} }
	})
}

// loadCard opens a kept card; one that would take the place of a card that is not kept asks for a second key.
func loadCard(e Entry) action {
	return func(m *root) tea.Cmd {
		if job := m.session.base(); !m.session.example && job != m.shelf.safe && m.shelf.sure != e.ID {
			m.shelf.sure = e.ID
			return m.act(refuse("the card on the screen is not kept",
				"enter once more opens "+e.Name+" all the same; a name and enter on the row below keeps it"))
		}
		return m.act(asking(func(ctx context.Context, k Keeper) action {
			job, err := k.Load(ctx, e.ID)
			return func(m *root) tea.Cmd { return m.loaded(job, e.Name, err) }
		}))
	}
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

func keepCard(name string) action {
	return func(m *root) tea.Cmd {
		card, job := m.session.card, m.session.base()
		m.shelf.sure = ""
		return m.act(asking(func(ctx context.Context, k Keeper) action {
			said, err := k.Keep(ctx, name, &card)
			if err != nil {
				return bookFault("not kept: ", err, "the card stays on the screen").said
			}
			return func(m *root) tea.Cmd {
				m.done, m.shelf.safe = said, job
				if m.shelf.field.String() == name { // else something else is being typed by now
					m.shelf.field.clear()
				}
				m.shelf.list.goTo(0) // the newest, which is the one that was kept
				return m.shelf.find(m)
			}
		}))
	}
}

func openRecord(e Entry) action {
	return func(m *root) tea.Cmd {
		units := m.units.Lead()
		return m.act(asking(func(ctx context.Context, k Keeper) action {
			lines, err := k.Record(ctx, e.ID, units)
			return func(m *root) tea.Cmd { m.recordRead(e.Kind+" "+e.Name, lines, err); return nil }
		}))
	}
}

// recordRead opens a record over the page that asked, if that is still there.
func (m *root) recordRead(name string, lines []string, err error) {
	if !m.isOpen(&m.part) || m.part.name() != pageRecords {
		return
	}
	if err != nil {
		m.notice = bookFault("", err, "the list stays")
		return
	}
	m.read(name, func(th *theme, w int) block {
		var b block
		for _, l := range lines {
			switch {
			case l == "":
				b.skip()
			case width(l) <= w: // its columns stay
				b.add(newRow(w).put(th.plain, l).line())
			default:
				b.say(th.plain, 0, l, w)
			}
		}
		return b
	})
}

// keepTrial sends the last test bead to the book, once.
func keepTrial(acceptable bool) action {
	return withBook(func(m *root) tea.Cmd {
		p, n := &m.fix, len(m.fix.tries)
		switch {
		case n == 0:
			return m.act(refuse("no test bead was told of yet", "enter: say what the bead shows"))
		case p.kept == n:
			return m.act(refuse("this bead is kept already", "lay the next one"))
		}
		t, verdict := p.tries[n-1], "" // as the bead looks
		if acceptable {
			verdict = "acceptable"
		}
		p.kept, p.keeping = n, true
		source, row := m.meter.kept, p.row
		return m.act(asking(func(ctx context.Context, k Keeper) action {
			said, err := k.Trial(ctx, t.Job, t.Seen, verdict, source)
			return func(m *root) tea.Cmd {
				if p := &m.fix; row == p.row {
					if p.keeping = false; err != nil {
						p.kept = n - 1
					}
				}
				return m.kept(said, err, "k tries again")
			}
		}))
	})
}

// kept says that something is in the book, or why it is not.
func (m *root) kept(said string, err error, otherwise string) tea.Cmd {
	if err != nil {
		m.notice = bookFault("not kept: ", err, otherwise)
		return nil
	}
	m.done = said
	return nil
}

// doomed is what a page of the book is asked to delete, and what it deleted last.
type doomed struct {
	id   string // of the record whose deletion was asked for once
	last *Entry // what ctrl+z brings back
}

// press acts on the keys that delete and bring back; not ok for any other key, which also forgets what was asked for.
// Where something is typed the delete key is the field's, unless nothing stands behind the cursor.
func (d *doomed) press(msg tea.KeyPressMsg, f *field, at *Entry) (a action, ok bool) {
	asked := d.id
	d.id = ""
	switch {
	case key.Matches(msg, bound.Restore):
		if d.last == nil {
			return refuse("nothing was deleted on this page",
				"brazebooth book list --deleted shows what was before"), true
		}
		return markRecord(*d.last, false), true
	case !key.Matches(msg, bound.Delete), msg.String() == "delete" && f.at() < len([]rune(f.String())):
		return nil, false
	case at == nil:
		return refuse("no record under the cursor", "pick a row with ↑ ↓"), true
	case asked != at.ID:
		d.id = at.ID
		return refuse("delete "+at.Name+"?",
			"the same key once more marks it as deleted; it stays in the history"), true
	}
	return markRecord(*at, true), true
}

func markRecord(e Entry, deleted bool) action {
	return asking(func(ctx context.Context, k Keeper) action {
		if err := k.Mark(ctx, e.Kind, e.ID, deleted); err != nil {
			return bookFault("", err, "nothing was changed").said
		}
		return func(m *root) tea.Cmd { return m.marked(e, deleted) }
	})
}

// marked lists anew what stands on the page that asked.
func (m *root) marked(e Entry, deleted bool) tea.Cmd {
	page := &m.shelf
	if m.part.name() == pageRecords {
		page = &m.records
	}
	page.doomed.last = nil
	m.done = e.Name + ": back in the book"
	if deleted {
		page.doomed.last = &e
		m.done = e.Name + ": deleted; ctrl+z brings it back"
	}
	return page.find(m)
}
