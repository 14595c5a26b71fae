// Package practice sets up simulated booths: one whose heat differs from the computed one as much as a real one may, a
// setting that is off, and beads that show what that booth's own card says.
package practice
