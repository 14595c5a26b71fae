package tui

import (
	"context"
	"strings"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/report"
)

// withBook performs an action that needs the book; without a book it says so.
func withBook(a action) action {
	return func(m *root) tea.Cmd {
		if m.Book == nil {
			return m.act(refuse("there is no book here", "start the program with one: brazebooth --book FILE"))
		}
		return a(m)
	}
}

// answered carries the action that follows an answer of the book.
type answered struct{ then action }

func (a answered) tell(m *root) (tea.Cmd, bool) { return m.act(a.then), true }

// asking asks the book in the background, if there is one, and then acts on its answer.
func asking[T any](ask func(context.Context, Keeper) (T, error), then func(*root, T, error) tea.Cmd) action {
	return withBook(func(m *root) tea.Cmd {
		k := m.Book
		return func() tea.Msg {
			v, err := ask(context.Background(), k)
			return answered{func(m *root) tea.Cmd { return then(m, v, err) }}
		}
	})
}

// keeping tells whether a result is in the book: not yet, on its way, or kept.
type keeping struct{ sent, kept bool }

func (p *keeping) send(m *root, ask func(context.Context, Keeper) (string, error)) tea.Cmd {
	p.sent = true
	return m.act(asking(ask, func(m *root, said string, err error) tea.Cmd {
		p.sent, p.kept = err == nil, err == nil
		return m.kept(said, err, "k tries again")
	}))
}

// loadCard opens a saved card. If the present card is not saved and would be replaced, it asks for a second key press.
func loadCard(e Entry) action {
	return func(m *root) tea.Cmd {
		if m.unkept() && m.shelf.sure != e.ID {
			m.shelf.sure = e.ID
			return m.act(refuse("the card on the screen is not kept",
				"enter once more opens "+e.Name+" all the same; a name and enter on the row below keeps it"))
		}
		return m.act(asking(func(ctx context.Context, k Keeper) (calc.Job, error) { return k.Load(ctx, e.ID) },
			func(m *root, job calc.Job, err error) tea.Cmd { return m.loaded(job, e.Name, err) }))
	}
}

func (m *root) loaded(job calc.Job, name string, err error) tea.Cmd {
	switch {
	case !m.isOpen(&m.part) || m.part.name() != pageBook: // the page was left meanwhile: the card stays
		return nil
	case err != nil:
		bookFault("", err, "the card on the screen stays").said(m)
		return m.listed().findAgain(m)
	}
	m.close(&m.part)
	m.shelf.field = field{}
	m.along(cardStep)
	m.shelf.safe, m.shelf.sure = job, ""
	m.replace(job, name+": as it was kept, computed anew")
	return m.follow()
}

func keepCard(name string) action {
	return func(m *root) tea.Cmd {
		card, job := m.session.card, m.session.base()
		m.shelf.sure = ""
		return m.act(asking(func(ctx context.Context, k Keeper) (string, error) { return k.Keep(ctx, name, &card) },
			func(m *root, said string, err error) tea.Cmd {
				if m.kept(said, err, "the card stays on the screen"); err != nil {
					return nil
				}
				m.shelf.safe = job
				if m.shelf.field.String() == name { // otherwise the user is already typing something else
					m.shelf.field.clear()
				}
				m.shelf.list.goTo(0) // the newest, which is the one just saved
				return m.shelf.find(m)
			}))
	}
}

func openRecord(e Entry) action {
	return asking(func(ctx context.Context, k Keeper) ([]report.Block, error) { return k.Record(ctx, e.ID) },
		func(m *root, record []report.Block, err error) tea.Cmd { return m.recordRead(e, record, err) })
}

// recordRead opens a record over the page that asked for it, if that is still open.
func (m *root) recordRead(e Entry, record []report.Block, err error) tea.Cmd {
	if !m.isOpen(&m.part) || m.part.name() != pageRecords {
		return nil
	}
	if err != nil {
		bookFault("", err, "the list stays").said(m)
		return m.listed().findAgain(m)
	}
	return m.read(e.Kind+" "+e.Name, func(th *theme, w int) (b block) {
		text := report.Text(record, report.Options{Units: m.Units.Lead(), Width: max(w, narrowWidth)})
		for l := range strings.SplitSeq(strings.TrimRight(text, "\n"), "\n") {
			if width(l) <= w { // its columns stay aligned
				b.add(newRow(w).put(th.plain, l).line())
			} else {
				b.say(th.plain, 0, l, w)
			}
		}
		return b
	})
}

// keepTrial sends the last test bead to the book, once; without a verdict it is judged by its look.
func keepTrial(verdict string) action {
	return withBook(func(m *root) tea.Cmd {
		p, n := &m.fix, len(m.fix.tries)
		switch {
		case n == 0:
			return m.act(refuse("no test bead was told of yet", "enter: say what the bead shows"))
		case p.keeping.sent:
			return m.act(refuse("this bead is kept already", "lay the next one"))
		}
		t, source := p.tries[n-1], m.meter.kept
		return p.keeping.send(m, func(ctx context.Context, k Keeper) (string, error) {
			return k.Cut(ctx, t.Job, t.Seen, verdict, source, Measured{})
		})
	})
}

// kept says that something was saved, or why it was not.
func (m *root) kept(said string, err error, otherwise string) tea.Cmd {
	if err != nil {
		return bookFault("not kept: ", err, otherwise).said(m)
	}
	m.done = said
	return nil
}

// Keeper is the shop's book as the screens need it; nil if there is none. Its texts are safe for a terminal. An error
// about wrong input is a *mistake.Error, which says what to type instead.
type Keeper interface {
	// Keep saves a card under a name and says where.
	Keep(ctx context.Context, name string, card *calc.Card) (said string, err error)
	// List lists the records of a kind, "" for every kind, by the beginnings of words, newest first.
	List(ctx context.Context, kind, text string) ([]Entry, error)
	// Load returns the job of a saved card.
	Load(ctx context.Context, id string) (calc.Job, error)
	// Record returns everything about one record.
	Record(ctx context.Context, id string) ([]report.Block, error)
	// Mark marks a record as deleted, or undoes that. Its history stays.
	Mark(ctx context.Context, kind, id string, deleted bool) error
	// Cut saves a test bead: how it was laid (a whole job), what it showed, separated by commas, the verdict (good,
	// acceptable or bad; "" to judge by what it showed), the power source's name, "" if none was named, and its sizes
	// if it was cut. It says where it saved it.
	Cut(ctx context.Context, job calc.Job, seen, verdict, source string, m Measured) (said string, err error)
	// Recall returns the job with what a power source's readings and verdicts taught.
	Recall(ctx context.Context, source string, job calc.Job) (calc.Job, error)
	// Enter saves a record that is typed in, of kind source, spool or person, or changed fields of a known one. The
	// names of the fields are those of the command's flags. An error says what to type instead.
	Enter(ctx context.Context, kind string, given map[string]string) (said string, err error)
	// Practice saves how a job in a simulated booth went, and says where. Nothing is ever learned from it.
	Practice(ctx context.Context, how practice.Outcome) (said string, err error)
	// Measure saves a reading of a power source, with the travel (mm/s) if it was timed, and returns the job with what
	// this and the earlier readings teach. After an error nothing was saved.
	Measure(ctx context.Context, source string, r calc.Reading, travel float64, job calc.Job) (taught calc.Job,
		said string, err error)
}

// Entry is one record in a list. It is an alias, so that a Keeper need not import this package.
type Entry = struct{ ID, Kind, Name, At, Line string }

// Measured is the sizes of a bead, mm; 0 if not measured: from toe to toe, from the joint to the toe on the second
// member, the least thickness that carries load, and from the joint to where the first member still has its zinc. It is
// an alias, like Entry.
type Measured = struct{ Width, Leg, Throat, Zinc float64 }
