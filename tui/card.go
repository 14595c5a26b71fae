package tui

import (
	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/internal/choice"
)

// cardPage is the card: settings first, the cautions under them, then what follows from the settings
// and what else was chosen.
type cardPage struct {
	rows []cardRow
	at   int // row under the cursor
	all  window
	rest window
}

// load lays out the session's card and keeps the cursor on the row it was on.
func (p *cardPage) load(s *session) {
	name := ""
	if p.at < len(p.rows) {
		name = p.rows[p.at].name
	}
	p.rows = buildRows(s, &s.card)
	for i := range p.rows {
		if p.rows[i].name == name {
			p.at = i
			return
		}
	}
	p.at = max(0, min(p.at, len(p.rows)-1))
}

func (p *cardPage) row() *cardRow {
	if p.at < len(p.rows) {
		return &p.rows[p.at]
	}
	return nil
}

// move shifts the cursor.
func (p *cardPage) move(by int) { p.at = max(0, min(len(p.rows)-1, p.at+by)) }

func (p *cardPage) about(m *root) about {
	k := &m.keys
	a := about{help: "on the card", keys: []key.Binding{named(k.Down, "↑↓", "select"), named(k.More, "←→", "change"), named(k.On, "enter", "why"),
		named(k.Cautions, "c", "cautions"), named(k.Keep, "k", "keep"), named(k.Map, "m", "map"), named(k.Pages, "p", "pages"), named(k.Beat, "t", "timed"), named(k.Words, "g", "words"), named(k.Drawing, "x", "section"), named(k.Booth, "b", "booth"), named(k.Reset, "r", "reset"),
		named(k.Units, "u", "units"), named(k.Back, "esc", "back"), k.Leave}}
	if r := p.row(); r != nil {
		a.term = r.label
	}
	return a
}

// back gives up following the heat of a timed arc, while that runs.
func (p *cardPage) back(m *root) bool {
	if m.beat.stop == nil {
		return false
	}
	m.beat.cancel()
	m.notice = &fault{"given up: the times are the line-source estimate", "t follows the heat after all"}
	return true
}

// refresh lays the card out anew.
func (p *cardPage) refresh(m *root) { p.load(&m.session) }

func (p *cardPage) update(m *root, msg tea.Msg) action {
	k, s := &m.keys, &m.session
	press, ok := msg.(tea.KeyPressMsg)
	row := p.row()
	if !ok || row == nil || p.moved(press, k) {
		return nil
	}
	switch {
	case key.Matches(press, k.Less):
		return row.turn(s, -1)
	case key.Matches(press, k.More):
		return row.turn(s, 1)
	case key.Matches(press, k.Reset):
		return row.reset(s)
	case key.Matches(press, k.ResetAll):
		return resetAll(s)
	case key.Matches(press, k.On) && row.ask != nil:
		return openAsk(row.ask)
	case key.Matches(press, k.On), key.Matches(press, k.Why):
		return openWhy(*row)
	}
	return p.pages(press, k)
}

// moved acts on the keys that shift the cursor.
func (p *cardPage) moved(press tea.KeyPressMsg, k *keyMap) bool {
	switch {
	case key.Matches(press, k.Up):
		p.move(-1)
	case key.Matches(press, k.Down):
		p.move(1)
	case key.Matches(press, k.PageUp):
		p.move(-8)
	case key.Matches(press, k.PageDown):
		p.move(8)
	case key.Matches(press, k.Top):
		p.move(-len(p.rows))
	case key.Matches(press, k.Bottom):
		p.move(len(p.rows))
	default:
		return false
	}
	return true
}

// pages acts on the keys that lead to another screen.
func (p *cardPage) pages(press tea.KeyPressMsg, k *keyMap) action {
	switch {
	case key.Matches(press, k.Cautions):
		return openPoints
	case key.Matches(press, k.Drawing):
		return openSection
	case key.Matches(press, k.Map):
		return openMap
	case key.Matches(press, k.Beat):
		return openBeat
	case key.Matches(press, k.Pages):
		return openPart
	case key.Matches(press, k.Keep):
		return openShelf
	case key.Matches(press, k.Booth):
		return openBooth
	case key.Matches(press, k.Back):
		return goBack
	}
	return everywhere(press, k)
}

// everywhere acts on the keys that mean the same on the card, the map and the timed arc's page.
func everywhere(press tea.KeyPressMsg, k *keyMap) action {
	switch {
	case key.Matches(press, k.Units):
		return otherUnits
	case key.Matches(press, k.Help):
		return openHelp
	case key.Matches(press, k.Words):
		return openWords
	case key.Matches(press, k.Leave):
		return leave
	}
	return nil
}

// turn changes the row by one step, or says what could be changed instead.
func (r *cardRow) turn(s *session, by int) action {
	if r.ask != nil {
		job, ok := s.neighbour(r.ask, by)
		if !ok {
			return refuse(fault{"the list of " + r.label + " ends here", "enter shows the list"})
		}
		return change(job, "")
	}
	set := choice.SettingOf(r.name)
	if set == nil {
		return refuse(fault{r.label + " follows from the settings", "change wire feed, volts, travel or stick-out"})
	}
	return change(set.Turned(s.base(), r.fig.Figure.Value, by, s.units), "")
}

// reset leaves the row's value open again.
func (r *cardRow) reset(s *session) action {
	job := s.job
	if r.ask != nil {
		r.ask.Clear(&job)
	} else if set := choice.SettingOf(r.name); set != nil {
		set.Clear(&job)
	}
	if job == s.job {
		return refuse(fault{r.label + " is not yours", "R puts every suggestion back"})
	}
	return change(job, r.label+": suggestion back")
}

// resetAll leaves every setting open again; the choices stay.
func resetAll(s *session) action {
	job := s.job
	for _, set := range choice.Settings() {
		set.Clear(&job)
	}
	if job == s.job {
		return refuse(fault{"every setting is the suggested one", "− and + change one"})
	}
	return change(job, "all suggestions back")
}
