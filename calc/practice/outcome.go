package practice

import "fmt"

// Outcome is how a practice job went, in the form that is kept.
type Outcome struct {
	Level   int    `json:"level"`
	Seed    uint64 `json:"seed"`
	Work    string `json:"work"`
	Beads   int    `json:"beads"`   // laid, the start's and the last one too
	Verdict string `json:"verdict"` // on the last
	Program int    `json:"program"` // beads of the program's own run
	Reached bool   `json:"reached"` // whether that run reached a good one
}

// Went is how a job went after so many beads, beside the program's own run.
func (p *Booth) Went(beads int, verdict string, run *Run) Outcome {
	return Outcome{Level: p.Level, Seed: p.Seed, Work: p.Work, Beads: beads, Verdict: verdict, Program: len(run.Steps), Reached: run.Good}
}

// Line is the outcome in a line.
func (p *Outcome) Line() string {
	return fmt.Sprintf("level %d seed %d, %s", p.Level, p.Seed, p.Short())
}

// Short is Line without level and seed.
func (p *Outcome) Short() string {
	program := fmt.Sprintf("the program %d", p.Program)
	if !p.Reached {
		program += " and none good"
	}
	return fmt.Sprintf("%d beads, the last %s, %s: %s", p.Beads, p.Verdict, program, p.Work)
}
