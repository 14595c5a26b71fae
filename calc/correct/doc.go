// Package correct says what a test bead's look means and which one setting to change for the next.
//
// # How a correction comes about
//
// posterior.go keeps a weight on each of a few shifts of the true heat from the computed one, and what each setting
// does under each shift, by calc.Probe. The prior is the card's own interval of the heat; what a bead showed updates
// the weights, and rank.go ranks the causes. move.go looks along the levers of lever.go for the smallest change that
// is more likely than not to make the next bead good. cure.go answers a cause that is not heat, in words or with a
// setting that leaves the heat as likely right; zinc.go answers zinc that is gone on the back as computed. The texts,
// drawings and shares are rows of tables.
package correct
