// Package practice sets up simulated booths: each has a heat that differs from the computed one as much as a
// real one may, a bad starting setting, and beads that show what the card of the true job says.
//
// # How a practice job comes about
//
// booth.go draws the hidden values, by level and seed, from the intervals of the cards' own inputs, and a bad
// starting setting. bead.go judges a bead by the edges of the true job's card and describes it in the words of
// tables. par.go applies the corrections of package correct to the same start, for comparison, and why.go shows
// the truth and its effect on a setting.
package practice
