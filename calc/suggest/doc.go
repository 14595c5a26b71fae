// Package suggest finds one setting of feed and travel for a joint whose edges are known only by asking: pure functions
// over a callback.
//
// A setting is weighed by the logarithm of its chance to meet every edge, taken over three heats, less a price for heat
// (zinc, warping) and one for a travel far from the hand's middle:
//
//	J = ln Σ w exp Σ ln Φ(margin/doubt) − 0.06·ln H − 0.06·u²
//
// The place is no maximum, which jumps from one hill to another as a job changes, but a weighted mean, which cannot:
// at each travel the mean feed, then along this ridge the mean travel, then the feed once more. The weights fall so
// fast that the mean of one hill lies at its top. Between two hills of like height it lies in the valley; that is the
// price of not jumping, and the chance that goes with the place says what it costs.
package suggest
