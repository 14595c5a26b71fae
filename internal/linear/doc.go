// Package linear is the screens' work as questions and answers, one line after the other: for screen readers, and for
// terminals that cannot place text. The same four choices lead to the same card; every figure is read out in words.
// It moves no cursor, draws nothing, and says no sign that a reader skips. It touches neither disk nor environment:
// what it needs comes in Options.
//
// # How a talk comes about
//
// A talk hears what means the same everywhere; a place hears the rest: the questions on the way to the card, and the
// card itself. What is said goes through words for every sign and unit (spell.go); a test holds every text of tables
// to it. What the user is to type is shown as it is typed. A voice writes, an ear reads one line when it is asked
// for.
//
// After a change that is meant: go test ./internal/linear -update, and read the recorded talks in testdata.
package linear
