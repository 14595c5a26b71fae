package tui

import (
	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/choice"
	"brazebooth/tables"
)

// practicePage is a job in a simulated booth. It never touches the card, and saves something only when a key asks for
// it.
type practicePage struct {
	slow[practiceAsk, practiceAnswer]

	at int // the setting under the cursor
	valueField

	job      practice.Booth // with level 0 there is none yet
	card     calc.Card      // of the start, computed by the program without the booth's hidden values
	target   practice.Bead  // a good bead in this booth: the page shows how it looks, but not its setting
	now      calc.Job       // the setting on the machine
	beads    []practice.Bead
	over     bool
	run      *practice.Run
	revealed *practice.Revealed
	why      bool // the hidden values are shown
	sure     bool // the key that ends the job was pressed once
	keeping  *keeping
	scroll   window
}

func (p *practicePage) settings() []*choice.Choice { return choice.Hand(p.now.Mode == "timed") }

func (p *practicePage) last() *practice.Bead { return &p.beads[len(p.beads)-1] }

func (p *practicePage) left(*root) {
	p.cancel()
	p.scroll = window{}
}

func (p *practicePage) about(*root) about {
	a := about{help: "on a practice job", term: calc.FigureLabel(p.settings()[p.at].Figure),
		keys: "enter lay the bead  ←→ pick  ↑↓ change  s end  g words  r as laid  pgdn scroll  c cautions  u units  " +
			"esc levels"}
	switch {
	case p.over:
		a.keys = "enter next booth  * why  k keep  pgdn scroll  c cautions  esc levels"
	case p.typing:
		a.keys = "enter set  esc leave it"
	}
	return a
}

// press handles a key: the settings are picked, changed and typed as on the card.
func (p *practicePage) press(m *root, press tea.KeyPressMsg) action {
	if p.typing {
		return p.edit(press, p.setValue)
	}
	sure := p.sure
	p.sure = false
	pick, turn := settingKey(press)
	switch s := press.String(); {
	case (p.over && press.Text == "" || s == "space" || key.Matches(press, bound.PageUp, bound.PageDown)) &&
		p.scroll.moved(press):
	case p.over && (turn != 0 || key.Matches(press, bound.EndPractice)):
		return refuse("this job is over", "enter goes to the next")
	case !p.over && len(s) == 1 && s[0] >= '0' && s[0] <= '9':
		p.typing, p.scroll = true, window{}
		p.field.insert(s)
	case pick != 0:
		if n := len(p.settings()); !p.over {
			p.at, p.scroll = (p.at+pick+n)%n, window{}
		}
	case turn != 0:
		set := p.settings()[p.at]
		p.now, p.scroll = set.Turned(p.now, set.At(&p.now).Or(tables.DefaultStickOut.V), turn, m.Units), window{}
	case key.Matches(press, bound.Reset):
		p.now = p.last().Job
	case key.Matches(press, bound.On) && p.over:
		return func(m *root) tea.Cmd { m.levels.seed++; return goBack(m) }
	case key.Matches(press, bound.On) && p.now == p.last().Job: // that would be the same bead once more
		return refuse("the same setting", "change something first: ←→ picks it, ↑↓ changes it")
	case key.Matches(press, bound.On):
		return p.lay
	case key.Matches(press, bound.EndPractice) && !sure:
		p.sure = true
		return refuse("s once more ends this job", "the program's beads and what the booth hid are shown then")
	case key.Matches(press, bound.EndPractice):
		return p.compare
	case key.Matches(press, bound.KeepBead):
		return keepDrill()
	case key.Matches(press, bound.Why) && !p.over:
		return refuse("what the booth hides is shown when the job is over", "s ends it")
	case key.Matches(press, bound.Why):
		p.why, p.scroll = !p.why, window{}
	case key.Matches(press, bound.Cautions):
		return p.cautions
	default:
		return everywhere(press)
	}
	return nil
}

// setValue sets the setting under the cursor to the typed value.
func (p *practicePage) setValue() action {
	now := p.now
	if err := p.settings()[p.at].Set(&now, p.field.String()); err != nil {
		return faultOf(err).said
	}
	p.now, p.valueField = now, valueField{}
	return nil
}

func (p *practicePage) took(m *root, f slowFound[practiceAnswer]) tea.Cmd {
	if !p.found(f) || p.err != nil {
		return nil
	}
	switch p.of.what {
	case practiceOpens:
		*p = practicePage{slow: p.slow, job: p.have.job, card: p.have.card, target: p.have.target,
			now: p.have.job.Start, beads: []practice.Bead{p.have.bead}, keeping: new(keeping)}
		if m.front() == screen(&m.part) && m.part.name() == pagePractice { // otherwise enter opens it later
			m.push(p)
		}
	case practiceLays:
		p.beads = append(p.beads, p.have.bead)
		p.scroll = window{}
		if p.have.bead.Verdict == practice.BeadGood {
			return p.compare(m)
		}
	case practiceEnds:
		p.run, p.revealed = &p.have.run, &p.have.revealed
	}
	return nil
}
