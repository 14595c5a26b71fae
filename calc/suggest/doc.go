// Package suggest finds one setting of feed and travel for a joint whose edges are only known through a
// callback. It holds pure functions.
//
// A setting is rated by the logarithm of its chance to meet every edge, averaged over three heats, less a price
// for heat (zinc, warping) and one for a travel far from the middle of a hand's range:
//
//	J = ln Σ w exp Σ ln Φ(margin/doubt) − 0.06·ln H − 0.06·u²
//
// The result is not a maximum, which would jump from one hill to another as a job changes, but a weighted mean,
// which cannot jump: at each travel the mean feed, then along this ridge the mean travel, then the feed once
// more. The weights fall so fast that the mean of a single hill is at its top. Between two hills of similar
// height the mean lies in the valley. That is the price of not jumping; the chance at the
// setting shows what it costs.
package suggest
