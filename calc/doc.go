// Package calc computes a settings card for gas metal arc brazing: Solve turns a Job (what was chosen) into a Card
// (what was found). Window and SolveTimed are the slow answers: what every feed and travel would do, and the times of
// a timed arc. Answer is Solve, or SolveTimed where the arc is timed.
//
// # How an interval comes about
//
// A card's figures rest on input quantities: settings, sizes, properties of materials, and how far a model may be
// off. One chain of formulas leads from them to the outputs. The chain runs once at each end of every input's 95 %
// interval; the changes are added by root-sum-square, each side for itself. The same runs give the sensitivities. So
// a new formula gets its interval and its sensitivities by itself.
//
// The cross-section costs too much for that. It is solved again with the heat at both ends, with a softer toe and
// with each member thinner; the rest follows the heat. For the margins each limit is followed to both sides of feed
// and travel.
//
// # How a verdict comes about
//
// The cross-section is run at a feed and a travel. What it finds becomes limits: logarithms of a ratio, zero on the
// edge and positive inside. The suggested setting is looked for on a small map of the limits, and a climb goes from
// its best places to the point furthest from every edge. Window takes the same point and draws the full map about it,
// or a map of fewer points where the job takes long: what an answer takes is counted, not timed, and a caller who
// leaves ends it.
//
// # How the times of a timed arc come about
//
// The joint is laid out as arms of the sheet's plane (calc/thinsheet). Each end of on and off is one run, followed
// until its cycle repeats. SolveTimed tries a few feeds where none was given, puts the times on the card, and where no
// rhythm exists tries what would help.
//
// # How a booth teaches
//
// Readings of the meter narrow two of the input quantities by a closed-form normal posterior; verdicts on test beads
// narrow the arc's efficiency over a grid. What was learned is part of the Job, so a card is the same wherever it is
// computed.
package calc
