package practice

import (
	"context"
	"fmt"

	"brazebooth/calc/advice"
	"brazebooth/calc/correct"
	"brazebooth/internal/mistake"
)

// mostBeads limits the program's own run.
const mostBeads = 8

// Run is what the program's own corrections do from the start of a practice job: its beads are laid in the
// simulated booth and corrected by their looks, without knowing the truth.
type Run struct {
	Steps []RunStep
	Good  bool
	Why   string // why no good bead was reached
}

// RunStep is one bead and what the program changed after it.
type RunStep struct {
	Bead   Bead
	Change *advice.Change // nil after the last bead, and if something other than a setting was to change
	Do     string         // what else was to be done
	Why    string
}

// Par lays the program's own beads: correct.Next corrects each one by all looks so far.
func (p *Booth) Par(ctx context.Context) (Run, error) {
	var run Run
	var tries []correct.Try
	job := p.Start
	for range mostBeads {
		b, err := p.Bead(ctx, job)
		if f := mistake.Of(err); f != nil {
			run.Why = "The program's next setting is outside what a hand can hold: " + f.Error() + "; " + f.Hint + "."
			return run, nil
		}
		if err != nil {
			return run, err
		}
		run.Steps = append(run.Steps, RunStep{Bead: b})
		if b.Verdict == BeadGood {
			run.Good = true
			return run, nil
		}
		tries = append(tries, correct.Try{Job: job, Seen: b.Seen})
		part, err := correct.Next(ctx, tries)
		if err != nil {
			return run, err
		}
		c, step := part.Correction, &run.Steps[len(run.Steps)-1]
		step.Change, step.Do, step.Why = c.Change, c.Do, c.Why
		switch {
		case c.Do != "" && !correct.OfHeat(c.Causes[0].ID):
			continue // taken as done: the next bead has the same setting
		case c.Change == nil:
			run.Why = "The program saw nothing to change: " + c.Why
			return run, nil
		case c.Change.What == "mode":
			run.Why = "The program gave this arc up: " + c.Why
			return run, nil
		}
		job = c.Next
		correct.RoundSetting(&job)
	}
	run.Why = fmt.Sprintf("No good bead within %d beads.", mostBeads)
	return run, nil
}
