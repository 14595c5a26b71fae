// Package learned computes what can be learned about a booth from readings and test pieces, given as plain numbers.
// Every result is small enough to be part of a Job, so that a card is the same wherever it is computed.
//
// Meter: readings of amps and volts narrow the wire's calibration voltage and the volts' factor, each by a closed-form
// normal posterior. Dial: the values measured at positions of a dial give a straight line with its band. Efficiency:
// verdicts on test beads narrow the arc's efficiency, on a grid over it and the cross-section's own uncertainty.
// Rhythm: seams of spots narrow stirring, spread and power of a timed arc together, on a grid over the three. Pulled:
// test pieces that were pulled until they broke give a lower tolerance bound of a joint's load.
//
// HeatOf and HeatSign tell from a bead's look whether it was cold or hot. Package calc computes what a reading or a
// bead should have shown and calls these functions.
package learned
