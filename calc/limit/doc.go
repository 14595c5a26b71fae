// Package limit holds the borders of the operating window as numbers. A limit is the logarithm of a ratio between what
// a setting gives and what is allowed: zero on the border, positive inside, negative where the limit is not met. All is
// the list of every limit at one setting; package calc computes it from a cross-section.
//
// A logarithm makes limits of different units comparable, and it is nearly straight along the logarithm of wire feed or
// travel. So a few values tell how far a setting may change: Along fits a parabola to a limit at the setting and a
// Probe below and above it and finds its root; Reaches does it by the slopes between the points of a grid; LastMet
// searches a whole range for its end. Opposed finds which two edges rule each other out.
//
// Several limits make one edge, the name that a card shows: "arc steady" is the current's floor and the spray
// transition. Package limit/grid draws limits over many feeds and travels.
package limit
