package tui

import (
	"context"

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
