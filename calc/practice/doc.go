// Package practice sets up simulated booths: a booth whose heat differs from the computed one as much as a real one
// may, a setting that is off, and beads that show what that booth's own card says.
//
// What the booth hides is drawn from the intervals of the cards themselves, by level and seed. A bead is judged by
// the edges of the true job's card and described in the words of tables. In the end correct is let loose on the same
// start, to show what its corrections would have made of it.
package practice
