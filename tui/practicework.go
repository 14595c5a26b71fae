package tui

import (
	"context"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/calc/practice"
)

// practiceAsk is what is computed beside the practice page.
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

// practiceAnswer is what came of it; which parts are filled goes by what was asked.
type practiceAnswer struct {
	job      practice.Booth
	card     calc.Card
	bead     practice.Bead
	target   practice.Bead // a good one
	run      practice.Run
	revealed practice.Revealed
}

// start opens the chosen job, or the same one where it was left.
func (p *practicePage) start(m *root) tea.Cmd {
	level := p.list.at() + 1
	if p.job.Level == level && p.job.Seed == p.seed && len(p.beads) > 0 {
		p.open = true
		return nil
	}
	return p.ask(m.ctx, practiceAsk{what: practiceOpens, level: level, seed: p.seed})
}

// ask lets an answer come; one that failed or was given up is asked for anew.
func (p *practicePage) ask(ctx context.Context, a practiceAsk) tea.Cmd {
	p.gave, p.err = false, nil
	job := p.job
	return p.want(ctx, a, func(ctx context.Context, a practiceAsk, _ func(float64)) (practiceAnswer, error) {
		return p.answer(ctx, &job, a)
	})
}

// drill answers what is asked of a job; a job that opens is none yet.
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

// compare lays the program's own beads and looks behind the last one.
func (p *practicePage) compare(m *root) tea.Cmd {
	p.over = true
	return p.ask(m.ctx, practiceAsk{practiceEnds, p.job.Level, p.job.Seed, p.last().Job, len(p.beads)})
}

// keepDrill sends how the job went to the book, once.
func keepDrill() action {
	return withBook(func(m *root) tea.Cmd {
		p := &m.drill
		switch {
		case p.run == nil:
			return m.act(refuse("a job is kept when it is over", "lay a good bead, or s ends it"))
		case p.kept || p.keeping:
			return m.act(refuse("this job is kept already", "enter goes to the next"))
		}
		p.keeping = true
		how := p.job.Went(len(p.beads), p.last().Verdict, p.run)
		return m.act(asking(func(ctx context.Context, k Keeper) action {
			said, err := k.Practice(ctx, how)
			return func(m *root) tea.Cmd {
				if p := &m.drill; p.job.Level == how.Level && p.job.Seed == how.Seed {
					p.keeping, p.kept = false, err == nil
				}
				return m.kept(said, err, "k tries again")
			}
		}))
	})
}

func (m *root) practising() bool {
	return m.isOpen(&m.part) && m.part.name() == pagePractice && m.drill.open
}
