// Package calc computes a settings card for gas metal arc brazing: Solve turns a Job (what was chosen) into a Card
// (what was found). WindowOf and SolveTimed are the slow answers: what every feed and travel would do, and the times of
// a timed arc. Answer is the card by Solve, or by SolveTimed where the arc is timed.
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
// model.go lists the input quantities that figures rest on: settings, sizes, properties of materials, and what the
// models leave out. One chain of formulas leads from them to the outputs. propagate runs the chain once at each end of
// every input's 95 % interval and adds the changes by root-sum-square, each side for itself. The same runs give the
// sensitivities. So a new formula gets its interval and its sensitivities by itself.
//
// The cross-section costs too much for that. sectionvariants.go solves it again with the heat at both ends, with a
// softer toe and with each member thinner; everything else that moves a figure follows from the heat. For the margins,
// margins.go follows each limit to both sides of feed and travel.
//
// # How a verdict comes about
//
// heatstate.go runs the cross-section (calc/section) at a feed and a travel; margins.go turns the result into limits:
// logarithms of a ratio, zero on the edge and positive inside. chance.go turns the limits at three heats into the
// chance that all are met, a figure by which Card.Verdict tells good from marginal. suggest gives package suggest the
// same limits and takes the place that it finds; WindowOf takes it too. windowdraw.go draws the full window about it,
// or one of fewer points where the job takes long. effort.go counts what an answer takes, so that it is the same on
// every machine, and ends it when the caller leaves.
//
// # How the times of a timed arc come about
//
// timedinput.go lays the joint out as arms of the sheet's plane. thinsheet.Run follows each end of on and off until its
// cycle repeats. Where no feed was given timedfeed.go compares a few by their range of on; SolveTimed goes on with one
// of them and puts its times on the card; where no rhythm exists, timedremedy.go tries what would help.
//
// # How a booth teaches
//
// Readings of the meter narrow two input quantities, each by a closed-form normal posterior. Verdicts on test beads
// narrow the arc's efficiency on a grid. What was learned is part of the Job, so a card is the same wherever it is
// computed.
package calc
