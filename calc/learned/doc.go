// Package learned finds what a booth taught, from plain numbers. Every answer is small enough to travel in a Job, so
// that a card is the same wherever it is computed.
//
// Meter: readings of amps and volts narrow the wire's calibration voltage and the volts' factor, each by a closed-form
// normal posterior. Dial: positions of a dial and what they gave make a straight line with its band. Efficiency:
// verdicts on test beads narrow the arc's efficiency on a grid, beside the cross-section's own uncertainty. Rhythm:
// seams of spots narrow stirring, spread and power of a timed arc together, on a grid over the three. Pulled: pieces
// that were pulled apart give a lower tolerance bound of what a joint carries.
//
// HeatOf and HeatSign read the heat off what was seen. What a reading or a bead should have shown is computed by
// package calc, which lays its jobs out for these functions.
package learned
