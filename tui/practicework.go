package tui

import (
	"context"
	"fmt"
	"strings"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/calc/practice"
)

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

// start opens the chosen job; the same job as before is opened where it was left.
func (p *practicePage) start(m *root) tea.Cmd {
	level := p.list.at() + 1
	if p.job.Level == level && p.job.Seed == p.seed && len(p.beads) > 0 {
		p.open = true
		return nil
	}
	return p.ask(m.ctx, practiceAsk{what: practiceOpens, level: level, seed: p.seed})
}

// ask starts a computation, again if it failed or was cancelled before.
func (p *practicePage) ask(ctx context.Context, a practiceAsk) tea.Cmd {
	p.cancelled, p.err = false, nil
	job := p.job
	return p.want(ctx, a, func(ctx context.Context, a practiceAsk, _ func(float64)) (practiceAnswer, error) {
		return p.answer(ctx, &job, a)
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
	return p.ask(m.ctx, practiceAsk{practiceLays, p.job.Level, p.job.Seed, p.now, len(p.beads) + 1})
}

// compare lays the program's own beads and reveals what was behind the last bead.
func (p *practicePage) compare(m *root) tea.Cmd {
	p.over = true
	return p.ask(m.ctx, practiceAsk{practiceEnds, p.job.Level, p.job.Seed, p.last().Job, len(p.beads)})
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

func (m *root) practising() bool {
	return m.isOpen(&m.part) && m.part.name() == pagePractice && m.drill.open
}

func (p *practicePage) about(m *root) about {
	a := about{help: "on a practice job", keys: "enter open  ↑↓ pick  −+ booth  ←→ pages  esc card"}
	if !m.practising() {
		return a
	}
	a.term = calc.FigureLabel(p.settings()[p.at].Figure)
	switch {
	case p.over:
		a.keys = "enter next booth  * why  k keep  pgdn scroll  c cautions  esc levels"
	case p.typing:
		a.keys = "enter set  esc leave it"
	default:
		a.keys = "enter lay the bead  ←→ pick  ↑↓ change  s end  g words  r as laid  pgdn scroll  c cautions  " +
			"u units  esc levels"
	}
	return a
}

func (p *practicePage) view(m *root, w, h int) (block, *tea.Cursor) {
	if p.open {
		return p.viewJob(m, w, h)
	}
	return p.draw(&m.th, w, h), nil
}

// draw is the list of levels, and below it the task of the level under the cursor in full.
func (p *practicePage) draw(th *theme, w, h int) block {
	levels := practice.Levels()
	at := p.list.at()
	var below block
	shortened := func(name string) string { // its full form is shown below
		return fewer(name, " ", func(name string) bool { return width(name) <= w-5 })
	}
	if name := levels[at].Name; shortened(name) != name {
		below.say(th.quiet, 0, name, w)
	}
	title, opens := "practise correcting test beads: ", "enter opens the job: "
	if w < narrowWidth-2 {
		title, opens = "", "enter: "
	}
	switch {
	case p.stop != nil:
		below.say(th.quiet, 0, "the booth is being set up …", w)
	case p.err != nil:
		below.say(th.watch, 0, "▲ "+faultOf(p.err).what, w)
	default:
		below.say(th.bold, 0, opens+practice.WorkOf(at+1, p.seed).Line(), w)
	}
	var b, rest block
	b.say(th.bold, 0, fmt.Sprintf("%sbooth %d, − + another", title, p.seed), w)
	rest.skip()
	rest.say(th.quiet, 0, "A simulated booth hides a heat of its own, as far from the card's as a real one's may be. "+
		"You set, it lays the bead, you correct. Nothing is kept but by a key at the end.", w)
	room := h - 1 - len(b) - len(below) // the caution is below
	b.addAll(p.list.draw(max(1, room), func(i int, chosen bool) line {
		text := fmt.Sprintf(" %d  %s ", levels[i].Level, shortened(levels[i].Name))
		if !chosen {
			text = strings.TrimRight(text, " ")
		}
		return newRow(w).put(th.under(chosen, th.plain), text).line()
	}))
	b.addAll(below)
	if len(b)+len(rest) < h {
		b.addAll(rest)
	}
	return pinned(th, b, w, h)
}

// pinned adds a caution below a text that is never scrolled away. In a job, c shows it in full together with the
// card's.
func pinned(th *theme, b block, w, h int) block {
	text := "▲ test beads on scrap first"
	switch {
	case w >= besideWidth:
		text = "▲ simulated beads are no licence: at the booth test beads on scrap come first"
	case w >= 39:
		text = "▲ no licence: test beads on scrap first"
	}
	out := append(b.fit(h-1), line{})
	out[h-1] = newRow(w).put(th.watch, text).line()
	return out
}
