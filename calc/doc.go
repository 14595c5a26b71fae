// Package calc computes a settings card for gas metal arc brazing: Solve turns a Job (what was chosen) into a Card
// (what was found). WindowOf and SolveTimed are the slow answers: what every feed and travel would do, and the times of
// a timed arc. Answer is the card by Solve, or by SolveTimed where the arc is timed.
//
// Files that begin alike belong together: resolve_ the job's assumptions, board the numbers, chain_ the formulas, heat_
// and section_ the cross-section, verdict_ the edges, suggest, window_, timed_, preheat_, part, joint_ the metal that a
// joint takes, remedy_ what would help, learn_ what a booth taught, warn_ the cautions, figure_ and card_ the card.
//
// # The way of one Job
//
// resolve checks the Job's numbers, completes it with marked assumptions and looks its rows up in tables. newBoard
// turns it into numbers: the chain of formulas that applies, its input quantities and their intervals. suggest finds
// the feed and travel that were left open; propagate runs the chain for every output's value, interval and
// sensitivities; verdict runs the cross-section at the setting. figures, notes and warn write what was found on the
// Card, each figure as {name, value, low, high, unit, basis}: the basis answers "why this number?" without computing
// again.
//
// # How an interval comes about
//
// chain.go lists the input quantities that figures rest on: settings, sizes, properties of materials, and what the
// models leave out. One chain of formulas leads from them to the outputs. propagate runs the chain once at each end of
// every input's 95 % interval and adds the changes by root-sum-square, each side for itself. The same runs give the
// sensitivities. So a new formula gets its interval and its sensitivities by itself.
//
// The cross-section costs too much for that. section_variants.go solves it again with the heat at both ends, with a
// softer toe and with each member thinner; everything else that moves a figure follows from the heat. For the margins,
// verdict.go computes each limit a little to both sides of feed and travel.
//
// # How a verdict comes about
//
// heat.go runs the cross-section (calc/section) at a feed and a travel, or takes its result from the cache that all
// sessions share (section_cache.go); margins.go turns the result into limits (calc/limit): logarithms of a ratio, zero
// on the edge and positive inside. chance.go turns the limits at three heats into the chance that all are met, a figure
// by which Card.Verdict tells good from marginal. suggest gives package suggest the same limits and takes the place
// that it finds; WindowOf takes it too. window_draw.go draws the full window about it (calc/limit/grid), or one of
// fewer points where the job takes long. Package effort counts what an answer takes, so that it is the same on every
// machine, and ends it when the caller leaves.
//
// # How the times of a timed arc come about
//
// timed_input.go lays the joint out as arms of the sheet's plane. thinsheet.Run follows each end of on and off until
// its cycle repeats. Where no feed was given timed_feed.go looks for the one nearest to the middle of the arc's range
// that has a rhythm; SolveTimed puts its times on the card. Where no rhythm exists, timed_remedy.go tries what would
// help.
package calc
