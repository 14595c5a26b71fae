// Package linear does the screens' work as questions and answers, one line after the other: for screen readers, and for
// terminals that cannot place text. The same four choices lead to the same card; every figure is read out in words. It
// moves no cursor, draws nothing, and says no sign that a screen reader skips. It touches neither disk nor environment:
// Options hold what it needs.
//
// A talk handles the words that mean the same everywhere, and passes every other line to the place where it stands: a
// question on the way to the card, or the card. What is found comes from report as lines, and finding.go reads them
// out. spell.go and units.go put signs and units into words; what the user is to type is shown as it is typed.
//
// After an intended change: go test ./internal/linear -update, and read the recorded talks in testdata.
package linear
