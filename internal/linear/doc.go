// Package linear does the screens' work as questions and answers, one line after the other: for screen readers, and for
// terminals that cannot place text. The same four choices lead to the same card, and every figure is read out in words.
// It moves no cursor, draws nothing, and prints no character that a screen reader skips. It touches neither disk nor
// environment: everything it needs is in Options.
//
// A talk handles the words that mean the same everywhere, and passes every other line to its present place: a question
// on the way to the card, or the card. Answers come from package report as lines, and finding.go reads them out.
// voice.go and units.go turn symbols and units into words. Text that the user is to type is shown as it is typed.
//
// After an intended change: go test ./internal/linear -update, and read the recorded talks in testdata.
package linear
