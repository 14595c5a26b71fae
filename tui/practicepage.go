package tui

import (
	"context"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/choice"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// practicePage is jobs in a simulated booth: a list of levels, and the open job. It never touches the card, and saves
// something only when a key asks for it.
type practicePage struct {
	slow[practiceAsk, practiceAnswer]
	answer func(context.Context, *practice.Booth, practiceAsk) (practiceAnswer, error)

	list   listbox // of levels
	seed   uint64
	open   bool // a job is open over the list
	at     int  // the setting under the cursor
	typing bool // a value for it is being typed
	field  field

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

func (p *practicePage) press(m *root, press tea.KeyPressMsg) action {
	switch {
	case p.open && p.typing:
		return p.enterValue(press)
	case p.open:
		return p.pressJob(press, m.units)
	}
	return p.pressList(press)
}

func (p *practicePage) paste(_ *root, text string) action {
	if p.open && p.typing {
		p.field.insert(text)
	}
	return nil
}

// pressList handles the list of levels: a digit picks a row, − and + pick another booth.
func (p *practicePage) pressList(press tea.KeyPressMsg) action {
	n := len(practice.Levels())
	switch s := press.String(); {
	// these keys are meant for the job that is not there yet
	case p.stop != nil && everywhere(press) == nil:
		return refuse("the booth is being set up", "a moment, then the key once more; esc gives it up")
	case len(s) == 1 && s[0] >= '1' && s[0] < '1'+byte(n):
		p.list.goTo(int(s[0] - '1'))
	case p.list.moved(press):
	case s == "+" || s == "=":
		p.seed++
	case s == "-":
		p.seed = max(1, p.seed-1)
	case key.Matches(press, bound.On):
		return p.start
	case s == "p" || s == "right" || s == "6":
		return turnPage(1)
	case s == "left":
		return turnPage(-1)
	default:
		return everywhere(press)
	}
	return nil
}

// pressJob handles the open job: its settings are picked, changed and typed as on the card.
func (p *practicePage) pressJob(press tea.KeyPressMsg, units quantity.System) action {
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
		p.field.clear()
		p.field.insert(s)
	case pick != 0:
		if n := len(p.settings()); !p.over {
			p.at, p.scroll = (p.at+pick+n)%n, window{}
		}
	case turn != 0:
		set := p.settings()[p.at]
		p.now, p.scroll = set.Turned(p.now, set.At(&p.now).Or(tables.DefaultStickOut.V), turn, units), window{}
	case key.Matches(press, bound.Reset):
		p.now = p.last().Job
	case key.Matches(press, bound.On) && p.over:
		p.open, p.seed, p.scroll = false, p.seed+1, window{}
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
	case key.Matches(press, bound.Back):
		p.open, p.scroll = false, window{}
		p.cancel()
	default:
		return everywhere(press)
	}
	return nil
}

// enterValue edits the value typed for the setting under the cursor; enter sets it.
func (p *practicePage) enterValue(press tea.KeyPressMsg) action {
	switch {
	case press.String() == "esc", key.Matches(press, bound.On) && p.field.empty():
		p.typing = false
	case key.Matches(press, bound.On):
		now := p.now
		if err := p.settings()[p.at].Set(&now, p.field.String()); err != nil {
			return faultOf(err).said
		}
		p.now, p.typing = now, false
	default:
		p.field.edit(press)
	}
	return nil
}

func (p *practicePage) took(m *root, f slowFound[practiceAnswer]) tea.Cmd {
	if !p.found(f) || p.err != nil {
		return nil
	}
	switch p.of.what {
	case practiceOpens:
		*p = practicePage{slow: p.slow, answer: p.answer, list: p.list, seed: p.seed, open: true, job: p.have.job,
			card: p.have.card, target: p.have.target, keeping: new(keeping)}
		p.beads, p.now = []practice.Bead{p.have.bead}, p.job.Start
	case practiceLays:
		p.beads = append(p.beads, p.have.bead)
		p.scroll = window{}
		if p.have.bead.Verdict == practice.BeadGood {
			p.over = true
			return p.compare(m)
		}
	case practiceEnds:
		p.run, p.revealed = &p.have.run, &p.have.revealed
	}
	return nil
}
