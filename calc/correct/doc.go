// Package correct says what a test bead's look means and which one setting to change for the next. It keeps a probability
// for each of a few shifts of the heat, learns from what every bead showed, and looks along the settings that a hand has
// for the smallest change that is more likely than not to make a good bead. What a setting does under a shift it asks calc's
// Probe.
package correct
