package tui

import (
	"context"

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

// practiceAsk is a computation for the practice page.
type practiceAsk struct {
	what  practiceStep
	level int
	seed  uint64
	job   calc.Job // the setting of a bead
	bead  int      // its number, so that the same setting can be laid again
}

type practiceStep int

const (
	practiceOpens practiceStep = iota
	practiceLays
	practiceEnds
)

// practiceAnswer is the result. The question decides which fields are filled.
type practiceAnswer struct {
	job      practice.Booth
	card     calc.Card
	bead     practice.Bead
	target   practice.Bead // a good bead
	run      practice.Run
	revealed practice.Revealed
}

// ask starts a computation, again if it failed or was cancelled before.
func (p *practicePage) ask(m *root, a practiceAsk) tea.Cmd {
	p.cancelled, p.err = false, nil
	job := p.job
	return p.want(m.Context, a, func(ctx context.Context, a practiceAsk, _ func(float64)) (practiceAnswer, error) {
		return m.drills(ctx, &job, a)
	})
}

// drill computes an answer about a job; opening creates the job.
func drill(ctx context.Context, job *practice.Booth, a practiceAsk) (out practiceAnswer, err error) {
	switch a.what {
	case practiceOpens:
		if out.job, err = practice.New(ctx, a.level, a.seed); err != nil {
			return out, err
		}
		if out.card, err = calc.Solve(out.job.Start); err != nil {
			return out, err
		}
		if out.target, err = out.job.Bead(ctx, out.job.Best); err != nil {
			return out, err
		}
		out.bead, err = out.job.Bead(ctx, out.job.Start)
	case practiceLays:
		out.bead, err = job.Bead(ctx, a.job)
	case practiceEnds:
		if out.run, err = job.Par(ctx); err != nil {
			return out, err
		}
		out.revealed, err = job.Reveal(ctx, a.job)
	}
	return out, err
}

func (p *practicePage) lay(m *root) tea.Cmd {
	return p.ask(m, practiceAsk{practiceLays, p.job.Level, p.job.Seed, p.now, len(p.beads) + 1})
}

// compare lays the program's own beads and reveals what was behind the last bead.
func (p *practicePage) compare(m *root) tea.Cmd {
	p.over = true
	return p.ask(m, practiceAsk{practiceEnds, p.job.Level, p.job.Seed, p.last().Job, len(p.beads)})
}

// keepDrill sends the result of the job to the book, once.
func keepDrill() action {
	return withBook(func(m *root) tea.Cmd {
		p := &m.drill
		switch {
		case p.run == nil:
			return m.act(refuse("a job is kept when it is over", "lay a good bead, or s ends it"))
		case p.keeping.sent:
			return m.act(refuse("this job is kept already", "enter goes to the next"))
		}
		how := p.job.Went(len(p.beads), p.last().Verdict, p.run)
		return p.keeping.send(m, func(ctx context.Context, k Keeper) (string, error) { return k.Practice(ctx, how) })
	})
}
