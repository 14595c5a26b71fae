// Package correct says what a test bead's look means and which one setting to change for the next.
//
// It keeps a probability for each of a few shifts of the heat, and calc's Probe tells what each setting does under
// each shift. What a bead showed updates these probabilities and ranks the causes. Then the settings are looked along
// for the smallest change that is more likely than not to make a good bead. A cause other than heat is answered in
// words, or with a setting that leaves the heat as likely right; zinc that is gone behind as computed has an answer
// of its own. The texts, drawings and shares are rows of tables.
package correct
