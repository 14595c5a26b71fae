package tui

import (
	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/tui/canvas"
)

// root is the only tea.Model: the session, the size of the terminal, and the stack of screens. At its bottom is the
// path, the questions that lead to the card, then the card.
type root struct {
	session
	th    theme
	w, h  int
	stack []screen

	// Screens that keep their state while they are not open.
	path    picker // the questions up to the card, at the bottom of the stack
	card    cardPage
	chart   mapPage
	beat    beatPage
	booth   boothPage
	part    partPage
	fix     correctPage
	shelf   bookPage
	records bookPage // of every kind
	meter   measurePage
	levels  levelsPage
	drill   practicePage

	good slow[calc.Job, spans] // of the card
	pics pictures

	notice  *fault // shown until the next key
	done    string // shown until the next key: something that succeeded
	leaving bool   // q was pressed once
	again   bool   // and it was pressed with the key before this one

	lamp  canvas.Cached[canvas.Strip]
	foots canvas.Cached[keysPart]
	above int // lines above the open screen, for the mouse
	frame tea.View
}

func newRoot(o Options) *root {
	m := &root{
		session: newSession(o),
		th:      newTheme(look{kind: o.Theme, dark: true, profile: o.Profile, comma: o.Comma}),
		shelf:   bookPage{kind: "card", looks: looksOnly(o.Book)},
		records: bookPage{looks: looksOnly(o.Book)},
		levels:  levelsPage{seed: 1},
	}
	m.beat.take, m.drill.take = beatFound, m.drill.took
	m.pics.asked = o.Pictures
	m.levels.list.set(len(practice.Levels()))
	m.th.look.units = m.Units
	m.push(&m.path)
	first := 0
	if o.Opening != (calc.Job{}) {
		first = cardStep
	}
	m.along(first)
	if o.Walk {
		startWalk(m) // its first step computes nothing
	}
	return m
}

// Init asks the terminal for its background and whether it shows pictures, which some terminals never answer, and
// starts computing a timed arc's heat.
func (m *root) Init() tea.Cmd {
	ask := tea.RequestBackgroundColor
	if m.Pictures {
		return tea.Batch(ask, tea.Raw(askPictures), m.follow())
	}
	return tea.Batch(ask, m.follow())
}

// Update handles a message and draws the next frame. Messages that change nothing draw nothing.
func (m *root) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	var cmd tea.Cmd
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		if msg.Width <= 0 || msg.Height <= 0 {
			return m, nil
		}
		m.w, m.h = msg.Width, msg.Height
	case tea.BackgroundColorMsg:
		m.th.look.dark = msg.IsDark()
		m.th = newTheme(m.th.look)
	case tea.ColorProfileMsg:
		m.th.look.profile = msg.Profile
		m.th = newTheme(m.th.look)
	case tea.EnvMsg:
		m.th.look.coarse = msg.Getenv("TERM") == "linux"
		m.th = newTheme(m.th.look)
	case tea.KeyPressMsg:
		cmd = tea.Batch(m.press(msg), m.follow())
	case tea.MouseMsg:
		cmd = tea.Batch(m.mouse(msg), m.follow())
	case tea.PasteMsg:
		cmd = tea.Batch(m.press(pasted(msg)), m.follow())
	case screenMsg:
		var draws bool
		if cmd, draws = msg.tell(m); !draws {
			return m, cmd
		}
	default:
		m.pics.answered(msg)
		return m, nil
	}
	m.frame = m.draw()
	if m.pics.can() {
		cmd = tea.Batch(cmd, m.settlePicture())
	}
	return m, cmd
}

// View returns the frame that Update drew.
func (m *root) View() tea.View { return m.frame }

// press handles the keys that work everywhere and passes the others to the open screen.
func (m *root) press(k tea.KeyPressMsg) tea.Cmd {
	m.again = m.leaving
	m.notice, m.done, m.leaving = nil, "", false
	if key.Matches(k, bound.Kill) && k.Text == "" {
		return tea.Quit
	}
	if k.Text == "" && !m.front().about(m).fills {
		if a := m.everyScreen(k); a != nil {
			return a(m)
		}
	}
	return m.act(m.front().press(m, k))
}

// everyScreen handles the keys that mean the same on every screen. None of them prints a character.
func (m *root) everyScreen(k tea.KeyPressMsg) action {
	_, reads := m.front().(*wordsPage)
	_, turns := m.front().(*cardPage)
	switch {
	case key.Matches(k, bound.Help):
		return openHelp
	case key.Matches(k, bound.Words) && !reads:
		return openWords
	case key.Matches(k, bound.Units):
		return otherUnits
	case key.Matches(k, bound.Shelf) && m.Book != nil && !m.isOpen(&m.drill):
		return func(m *root) tea.Cmd { m.along(m.step()); return openPage(pageBook)(m) }
	case key.Matches(k, bound.Undo) && !(m.front() == screen(&m.part) && (m.part.name() == pageBook ||
		m.part.name() == pageRecords)): // there it restores a record
		return undo
	case turns: // this screen uses tab for its rows
	case key.Matches(k, bound.Next):
		return func(m *root) tea.Cmd { return m.alongBy(1) }
	case key.Matches(k, bound.Prev):
		return func(m *root) tea.Cmd { return m.alongBy(-1) }
	}
	return nil
}

// follow starts the computations for a card that are too slow to run between two key presses.
func (m *root) follow() tea.Cmd { return tea.Batch(m.followHeat(), m.followSpans()) }

// followHeat starts computing the heat of a timed arc, and puts the times that follow from it on the card.
func (m *root) followHeat() tea.Cmd {
	if m.fault != nil || m.session.card.Used.Mode != "timed" && !m.isOpen(&m.beat) {
		return nil
	}
	job := timedJob(m.job)
	if !m.beat.ready(job) {
		return m.beat.want(m.Context, job, m.Gap)
	}
	if m.session.card.Used.Mode == "timed" && !m.followed {
		m.session.card, m.followed, m.session.pages = m.beat.have.Card, true, answers{}
		m.card.refresh(m)
	}
	return nil
}

// undo takes back the last change.
func undo(m *root) tea.Cmd {
	n := len(m.past)
	if n == 0 {
		return m.act(refuse("nothing was changed", "ctrl+z takes back a change of a setting"))
	}
	m.chosen, m.past = m.past[n-1], m.past[:n-1]
	m.compute()
	m.done = "taken back"
	m.refresh()
	return nil
}

func otherUnits(m *root) tea.Cmd {
	m.Units = m.Units.Next()
	m.th.look.units = m.Units
	m.beat.chart = heatChart(&m.beat.have, m.Units, m.th.look.comma)
	m.refresh()
	return nil
}
