// Package practice sets up simulated booths: a booth whose heat differs from the computed one as much as a real one
// may, a setting that is off, and beads that show what that booth's own card says.
//
// # How a practice job comes about
//
// booth.go draws what the booth hides, by level and seed, from the intervals of the cards' own inputs, and a start
// that is off. bead.go judges a bead by the edges of the true job's card and describes it in the words of tables.
// par.go lets correct loose on the same start, to show what its corrections would have made of it, and why.go shows
// the truth and what it did to a setting.
package practice
