package tui

import (
	"strings"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/choice"
)

// act does what a screen asked for.
func (m *root) act(a action) tea.Cmd {
	switch a := a.(type) {
	case goBack:
		m.back()
	case leave:
		return m.quit()
	case openHelp:
		m.openHelp()
	case openWords:
		m.page, m.words = nil, newWords(m.termUnder())
	case openPoints:
		m.read("cautions", func(th *theme, w int) block { return cautionPage(th, &m.session.card, w) })
	case openDrawing:
		m.read("cross-section", sectionBody(&m.session))
	case openMap:
		m.onMap = true
		return m.chart.want(m.ctx, anySetting(m.job), m.maps)
	case openBeat:
		m.onBeat = true
		return m.beat.want(m.ctx, timedJob(m.job), m.gaps)
	case openBooth:
		m.onBooth = true
		return m.playInBooth()
	case openPart:
		m.onPart = true
		return m.enterPage()
	case openShelf:
		m.onPart = true
		m.part.open(pageBook)
		return m.enterPage()
	case turnPage:
		m.part.turn(a.by)
		return m.enterPage()
	case findCards, loadCard, openRecord, openForm, enterRecord, markRecord, keepCard, keepTrial, keepReading, recall:
		return m.actBook(a)
	case openDrill:
		return m.drill.start(m.ctx)
	case drillPoints:
		m.read("cautions of this practice job", practiceCautions(&m.drill))
	case layBead:
		return m.drill.lay(m.ctx)
	case endDrill:
		return m.drill.compare(m.ctx)
	case keepDrill:
		return m.keepPractice()
	case stampNow:
		now := m.now
		return func() tea.Msg { return stamped{now()} }
	case enterPart:
		return m.enterPart(a.page)
	case openMarks:
		m.marks = a.page
	case answerStops:
		m.answerStops(a.ids)
	case sawBead:
		return m.sawBead(a.ids)
	case walkBy:
		return m.walkTo(m.walk.at + a.by)
	case walkDrill:
		return m.practiceAfterWalk()
	case startBeat:
		return m.beat.start()
	case otherUnits:
		m.nextUnits()
	case openWhy:
		w := newWhy(a.row)
		m.why = &w
	case openAsk:
		m.other = true
		m.pick = newPicker(a.ask, &m.session)
	case refuse:
		m.notice = &a.fault
	case explain:
		m.explain(a)
	case chose:
		m.chosen(a)
	case change:
		m.changed(a)
	}
	return nil
}

// back leaves the screen on top; on the first one there is nothing behind.
func (m *root) back() {
	switch {
	case m.walk != nil:
		m.endWalk()
	case m.onBooth:
		m.onBooth = false
		m.beat.halt()
	case m.page != nil:
		m.page = nil
	case m.words != nil:
		m.words = nil
	case m.why != nil:
		m.why = nil
	case m.marks != nil:
		m.marks = nil
	case m.other:
		m.other = false
		m.enter()
	case m.form != nil:
		m.form = nil
	case m.inputs != nil:
		m.inputs = nil
	case m.onPart:
		m.onPart = false
		m.fix.cancel()
		m.drill.cancel()
	case m.onMap:
		m.onMap = false
		m.chart.cancel()
		m.card.load(&m.session)
	case m.onBeat && m.beat.playing():
		m.beat.halt()
	case m.onBeat:
		m.onBeat = false
		m.beat.cancel()
		m.card.load(&m.session)
	case m.step == cardStep && m.beat.stop != nil:
		m.beat.cancel()
		m.notice = &fault{"given up: the times are the line-source estimate", "t follows the heat after all"}
	case m.step > 0:
		m.step--
		m.enter()
	default:
		m.notice = &fault{"this is the first step", "q quits"}
	}
}

// quit ends the program; a job that somebody put together asks for a second key.
func (m *root) quit() tea.Cmd {
	if m.example {
		return tea.Quit
	}
	m.leaving = true
	m.notice = &fault{"q again quits", "the card is not kept"}
	return nil
}

func (m *root) read(title string, body func(*theme, int) block) {
	m.page = &textPage{title: title, body: body}
}

func (m *root) explain(a explain) {
	if a.row == nil {
		return
	}
	row, ask := *a.row, a.ask
	m.read(row.Name, func(th *theme, w int) block { return reasonPage(th, &row, ask.Reasons(m.present(), row.ID), w) })
}

// chosen puts a choice on the job and opens the next step, or the card again.
func (m *root) chosen(a chose) {
	m.choose(m.taken(a.ask, a.id))
	if m.other {
		m.other = false
	} else {
		m.step = min(cardStep, m.step+1)
	}
	m.enter()
	m.askOn(a.ask.Name)
}

// askOn asks what a choice makes needful.
func (m *root) askOn(name string) {
	if m.step != cardStep || name != "mode" && name != "joint" {
		return
	}
	for _, c := range choice.Path(&m.job)[len(pathChoices()):] {
		if !c.Given(&m.job) {
			m.other, m.pick = true, newPicker(c, &m.session)
			m.done = "timed: times hang on joint and gap"
			return
		}
	}
}

// changed puts a changed job in place; one without a card is refused and the last one stays.
func (m *root) changed(a change) {
	if err := m.change(a.job); err != nil {
		m.notice = faultOf(err)
		return
	}
	m.done, m.why = a.done, nil
	m.card.load(&m.session)
}

func (m *root) nextUnits() {
	m.units = m.units.Next()
	m.card.load(&m.session)
	if m.picking() {
		m.pick.reload(&m.session)
	}
	if m.why != nil && m.card.row() != nil {
		m.why.row = *m.card.row()
	}
}

// enterPart is what enter means on a page beside the card.
func (m *root) enterPart(name string) tea.Cmd {
	switch name {
	case "correct":
		return m.enterCorrect()
	case pageWalk:
		return m.startWalk()
	}
	if page, ok := advice.EntryByName(name); ok && len(page.Needs) > 0 {
		m.inputs = newInputs(page)
		return nil
	}
	m.back()
	return nil
}

// answerStops puts the answer to what stops a job on the job.
func (m *root) answerStops(ids []string) {
	job := m.base()
	job.Hazard, _ = calc.HazardIDs(strings.Join(ids, ","))
	m.marks = nil
	m.changed(change{job: job, done: "the stops are answered"})
}

// sawBead takes what a test bead shows.
func (m *root) sawBead(ids []string) tea.Cmd {
	if len(ids) == 0 {
		m.notice = &fault{"nothing is marked", "space marks what the bead shows, good too"}
		return nil
	}
	m.marks = nil
	return m.fix.saw(m.ctx, &m.session.card, ids)
}

// actBook does what a screen asks of the book, where there is one.
func (m *root) actBook(a action) tea.Cmd {
	if m.keeper == nil {
		m.notice = &fault{"there is no book here", "start the program with one: brazebooth --book FILE"}
		return nil
	}
	switch a := a.(type) {
	case findCards:
		if m.part.name() == pageRecords {
			return m.records.find(m.keeper)
		}
		return m.shelf.find(m.keeper)
	case openRecord:
		return m.readRecord(a.entry)
	case openForm:
		m.form = newForm(a.form)
	case enterRecord:
		return m.enterRecord()
	case keepTrial:
		return m.keepTrial(a.acceptable)
	case markRecord:
		return m.markRecord(a)
	case loadCard:
		return m.loadCard(a.entry)
	case keepCard:
		return m.keepCard(a.name)
	case keepReading:
		return m.keepReading()
	case recall:
		return m.recall(a.source)
	}
	return nil
}
