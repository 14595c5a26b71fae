package tui

import (
	"time"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/calc/advice"
)

// cardStep is the path's last step; those before it are its questions.
const cardStep = 4

// root is the one model: the session, the size of the terminal, and the screen that is open.
type root struct {
	session
	th   theme
	keys keyMap
	w, h int

	step    int    // on the path
	pick    picker // of the step, or of one of the other choices
	other   bool   // pick is one of the other choices, opened from the card
	card    cardPage
	why     *whyPage
	chart   mapPage
	onMap   bool // the map lies over the card
	beat    beatPage
	onBeat  bool // the timed arc's page does
	onBooth bool // the booth view does
	part    partPage
	onPart  bool // a page beside the card does
	fix     correctPage
	shelf   bookPage
	records bookPage // of every kind
	meter   measurePage
	drill   practicePage
	keeper  Keeper
	now     func() time.Time
	form    *formPage   // a new record, over the records
	inputs  *inputsPage // what such a page asks for, over it
	marks   *marksPage  // a list of which several may be true, over that
	walk    *walk       // over everything
	words   *wordsPage  // the glossary, over everything but help
	page    *textPage   // help, cautions or the meaning of a row, over everything else

	notice  *fault // said once, gone with the next key
	done    string // the same, of something that went well
	leaving bool   // q was pressed once

	tried bool   // the card beside the list is that of the row under the cursor
	unfit *fault // why that row has no card
	frame tea.View
}

func newRoot(o Options) *root {
	m := &root{session: newSession(o), th: newTheme(o.Theme, true, o.Profile).commas(o.Comma), keys: newKeys(), keeper: o.Book, now: o.Now, records: bookPage{all: true},
		fix: correctPage{next: o.computing.next}, drill: practicePage{seed: 1, answer: o.computing.drills}}
	if m.now == nil {
		m.now = time.Now
	}
	if o.Job != (calc.Job{}) {
		m.step = cardStep
	}
	m.enter()
	if o.Walk {
		m.startWalk() // its first step computes nothing
	}
	return m
}

// Init asks the terminal for its background, an answer that may never come, and lets a timed arc's heat be followed.
func (m *root) Init() tea.Cmd { return both(tea.RequestBackgroundColor, m.follow()) }

// Update acts on a message and draws the next frame. Messages that change nothing draw nothing.
func (m *root) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	var cmd tea.Cmd
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		if msg.Width <= 0 || msg.Height <= 0 {
			return m, nil
		}
		m.w, m.h = msg.Width, msg.Height
	case tea.BackgroundColorMsg:
		m.th = newTheme(m.th.kind, msg.IsDark(), m.th.profile).commas(m.th.plain.comma)
	case tea.ColorProfileMsg:
		m.th = newTheme(m.th.kind, m.th.dark, msg.Profile).commas(m.th.plain.comma)
	case tea.KeyPressMsg:
		cmd = both(m.press(msg), m.follow())
	case slowFound[calc.Window]:
		m.chart.found(msg)
	case slowTick[calc.Window]:
		if !m.onMap || !m.chart.waits(msg) {
			return m, nil
		}
		cmd = m.chart.tick()
	case slowFound[calc.Timed]:
		m.beat.found(msg)
		cmd = both(m.follow(), m.playInBooth())
	case slowTick[calc.Timed]:
		if !m.beat.waits(msg) {
			return m, nil
		}
		cmd = m.beat.tick()
	case slowFound[advice.Page]:
		m.fix.found(msg)
	case slowTick[advice.Page]:
		if !m.fix.waits(msg) {
			return m, nil
		}
		cmd = m.fix.tick()
	case slowFound[practiceAnswer]:
		cmd = m.drill.took(m.ctx, msg)
	case slowTick[practiceAnswer]:
		if !m.drill.waits(msg) {
			return m, nil
		}
		cmd = m.drill.tick()
	case practiceKept:
		m.practiceKept(msg)
	case bookFound, bookLoaded, bookKept, bookMarked, recordRead, trialKept, formDone, recalled, measured, stamped:
		cmd = m.onBook(msg)
	case walked:
		cmd = m.walkTook(msg)
	case sourcesKnown:
		m.meter.sources = msg.names
	case beatTick:
		if cmd = m.beat.play(msg); cmd == nil {
			return m, nil
		}
	case tea.PasteMsg:
		m.notice, m.done = nil, ""
		cmd = both(m.act(m.child(msg)), m.follow())
	default:
		return m, nil
	}
	m.frame = m.draw()
	return m, cmd
}

// View returns the frame that Update drew.
func (m *root) View() tea.View { return m.frame }

// press handles the keys that work everywhere and gives the others to the open screen.
func (m *root) press(k tea.KeyPressMsg) tea.Cmd {
	again := m.leaving
	m.notice, m.done, m.leaving = nil, "", false
	if m.onBooth && !key.Matches(k, m.keys.Kill) {
		return m.leaveBooth(key.Matches(k, m.keys.Cautions))
	}
	if k.Text == "" {
		switch {
		case key.Matches(k, m.keys.Kill):
			return tea.Quit
		case m.walk != nil: // it has its own keys
		case key.Matches(k, m.keys.Help):
			return m.act(openHelp{})
		case key.Matches(k, m.keys.Words) && m.words == nil:
			return m.act(openWords{})
		case key.Matches(k, m.keys.Units):
			return m.act(otherUnits{})
		case key.Matches(k, m.keys.Shelf) && m.keeper != nil && !m.practising():
			m.uncover()
			return m.act(openShelf{})
		case key.Matches(k, m.keys.Next):
			return m.along(1)
		case key.Matches(k, m.keys.Prev):
			return m.along(-1)
		}
	}
	a := m.child(k)
	if _, ok := a.(leave); ok && again {
		return tea.Quit
	}
	return m.act(a)
}

// both joins two commands, either of which may be none.
func both(a, b tea.Cmd) tea.Cmd {
	switch {
	case a == nil:
		return b
	case b == nil:
		return a
	}
	return tea.Batch(a, b)
}

// follow lets the heat of a timed arc be followed, and puts the times that came of it on the card.
func (m *root) follow() tea.Cmd {
	if m.old || m.session.card.Used.Mode != "timed" && !m.onBeat {
		return nil
	}
	job := timedJob(m.job)
	if !m.beat.ready(job) {
		return m.beat.want(m.ctx, job, m.gaps)
	}
	if m.session.card.Used.Mode == "timed" && !m.followed {
		m.session.card, m.followed, m.session.pages = m.beat.have.Card, true, answers{}
		m.card.load(&m.session)
	}
	return nil
}

// playInBooth lets the beat of a timed arc run in the booth view, once its heat was followed.
func (m *root) playInBooth() tea.Cmd {
	if !m.onBooth || m.session.card.Used.Mode != "timed" || !m.followed || m.beat.playing() {
		return nil
	}
	return m.beat.start()
}

// leaveBooth leads from the booth view back to the card, or to the cautions over it.
func (m *root) leaveBooth(cautions bool) tea.Cmd {
	m.back()
	if cautions {
		return m.act(openPoints{})
	}
	return nil
}

// child lets the open screen act.
func (m *root) child(msg tea.Msg) action {
	switch {
	case m.walk != nil:
		return m.walk.update(msg, &m.keys)
	case m.page != nil:
		return m.page.update(msg, &m.keys)
	case m.words != nil:
		return m.words.update(msg, &m.keys)
	case m.why != nil:
		return m.why.update(msg, &m.keys, &m.session)
	case m.marks != nil:
		return m.marks.update(msg, &m.keys)
	case m.other:
		return m.updatePick(msg)
	case m.form != nil:
		return m.form.update(msg, &m.keys)
	case m.inputs != nil:
		return m.inputs.update(msg, &m.keys, &m.session)
	case m.onPart:
		return m.updatePart(msg)
	case m.onMap:
		return m.chart.update(msg, &m.keys, &m.session)
	case m.onBeat:
		return m.beat.update(msg, &m.keys, &m.session)
	case m.picking():
		return m.updatePick(msg)
	}
	return m.card.update(msg, &m.keys, &m.session)
}

func (m *root) updatePick(msg tea.Msg) action {
	a := m.pick.update(msg, &m.keys, &m.session)
	m.tryOut()
	return a
}

// picking reports whether a list is open.
func (m *root) picking() bool { return m.other || m.step < cardStep }

// uncover closes whatever lies over the path and the card.
func (m *root) uncover() {
	m.page, m.words, m.why, m.onMap, m.onBeat, m.onPart, m.inputs, m.marks, m.form = nil, nil, nil, false, false, false, nil, nil, nil
	m.chart.cancel()
	m.beat.halt()
	m.fix.cancel()
	m.drill.cancel()
	m.other = false
	m.enter()
}

// along moves on the path without choosing; from one of the other choices it leads to the card.
func (m *root) along(by int) tea.Cmd {
	if !m.other {
		m.step = max(0, min(cardStep, m.step+by))
	}
	m.uncover()
	return nil
}

// enter opens the screen of the present step.
func (m *root) enter() {
	m.tried, m.unfit = false, nil
	if m.step < cardStep {
		m.pick = newPicker(pathChoices()[m.step], &m.session)
	}
	m.card.load(&m.session)
}

// tryOut computes the card of the row under the cursor, to stand beside the list.
func (m *root) tryOut() {
	m.tried, m.unfit = false, nil
	job, differs := m.pick.trial(&m.session)
	if !differs {
		return
	}
	if _, err := m.try(job); err != nil {
		m.unfit = faultOf(err)
		return
	}
	m.tried = true
}

// shown is the card that stands on the screen.
func (m *root) shown() *calc.Card {
	if m.tried {
		return &m.lookCard
	}
	return &m.session.card
}
