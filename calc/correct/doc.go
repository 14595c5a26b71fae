// Package correct says what the look of a test bead means and which one setting to change for the next bead.
//
// # How a correction comes about
//
// posterior.go keeps a weight for each of several shifts between the true and the computed heat, and uses
// calc.Probe for the result of a setting under each shift. The prior is the card's own interval of the heat;
// the looks of the beads update the weights, and rank.go ranks the causes. move.go looks along the levers of
// lever.go for the smallest change that makes the next bead good with a probability of more than one half.
// cure.go answers a cause other than heat, in words or with a setting that leaves the heat as likely right;
// zinc.go answers zinc that is gone on the back as computed. The texts, drawings and shares are rows of tables.
package correct
