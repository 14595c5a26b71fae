package practice

import (
	"fmt"

	"brazebooth/calc"
)

// Level is one step of the practice: its name, and the works to practise on.
type Level struct {
	Level int    `json:"level"`
	Name  string `json:"name"`
	Works []Work `json:"works"` // the seed picks one
}

// Work is a piece of work to practise on.
type Work struct {
	Name string `json:"name"`
	job  calc.Job
}

// Line is the work in a few words, with a note if its arc is timed.
func (w Work) Line() string {
	if w.job.Mode == "timed" {
		return w.Name + ", timed arc"
	}
	return w.Name
}

// levels go from the widest computed window to the narrowest, then to thin, coated or open joints. They are
// choices, not figures: the comment after each is the margin on its own card, in % of feed or travel, when it
// was chosen.
var levels = [...]Level{
	{1, "thick bare sheet, wide window", []Work{
		{"tank stand, outside corner", calc.Job{Metal: "mild-steel", Gauge: 12, Joint: "corner"}},        // 62
		{"planter box for the market garden", calc.Job{Metal: "mild-steel", Gauge: 14, Joint: "corner"}}, // 50
	}},
	{2, "middling bare sheet over a small opening", []Work{
		{"planter side, two sheets edge to edge",
			calc.Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: calc.Some(0.5)}}, // 45
		{"downpipe collar", calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "butt", Gap: calc.Some(0.5)}},
		// 40
	}},
	{3, "zinc-coated sheet", []Work{
		{"gutter of a rainwater tank, outside corner", calc.Job{Metal: "galvanized", Gauge: 18, Joint: "corner"}}, // 42
		{"overflow of a rainwater tank", calc.Job{Metal: "galvanized", Gauge: 18, Joint: "lap"}},                  // 24
	}},
	{4, "narrow window: a build-up, or two sheets that draw heat", []Work{
		{"worn seat on a shaft",
			calc.Job{Metal: "mild-steel", Joint: "overlay", ShaftDia: calc.Some(25), Wire: calc.Some(1.143)}}, // 9
		{"bracket on a planter", calc.Job{Metal: "mild-steel", Gauge: 16, Joint: "tee"}},
		// 13
	}},
	{5, "thin zinc-coated lap, or a timed arc over an open root", []Work{
		{"rainwater tank lid", calc.Job{Metal: "galvanized", Gauge: 22, Joint: "lap"}}, // 28, at the fast end of a hand
		{"patch in a planter side",
			calc.Job{Metal: "mild-steel", Gauge: 16, Joint: "butt", Mode: "timed", Gap: calc.Some(2)}},
	}},
}

// Levels lists the levels; read only.
func Levels() []Level { return levels[:] }

// Outcome is the stored result of a practice job.
type Outcome struct {
	Level   int    `json:"level"`
	Seed    uint64 `json:"seed"`
	Work    string `json:"work"`
	Beads   int    `json:"beads"`   // laid, including the first and the last
	Verdict string `json:"verdict"` // on the last bead
	Program int    `json:"program"` // beads of the program's own run
	Reached bool   `json:"reached"` // whether that run reached a good bead
}

// Went is the outcome of a job after so many beads, beside the program's own run.
func (p *Booth) Went(beads int, verdict string, run *Run) Outcome {
	return Outcome{Level: p.Level, Seed: p.Seed, Work: p.Work, Beads: beads, Verdict: verdict, Program: len(run.Steps),
		Reached: run.Good}
}

// Line is the outcome in one line.
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
