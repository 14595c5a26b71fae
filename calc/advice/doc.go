// Package advice computes the pages beside a card: whether the work suits the process, which filler, how to prepare,
// what the joint carries, what the air holds, an overlay's beads, what the machine must give, what it costs. A page
// is a function of the card and a row of Contents.
//
// CheckFirst weighs the assumptions of a card by what another value would move.
package advice
