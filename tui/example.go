package tui

import "brazebooth/calc"

// ExampleJob is the job that the screens open with: the lid seam of a new, unused, open rainwater
// tank in galvanized sheet.
func ExampleJob() calc.Job {
	return calc.Job{
		Metal: "galvanized", Gauge: 16, Coating: "G60", Joint: "lap",
		Filler: "cusi3", Wire: calc.Some(0.889), Mode: "dip", Position: "flat",
	}
}

const (
	ExampleTitle = "example: lid seam of a new, unused, open rainwater tank"
	ownTitle     = "your job"
)
