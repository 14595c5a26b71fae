// Package program puts the rooms together: the command tree with the screens, the questions line by line and the
// server, each with the shop's book and with this machine's user, folders and terminal.
//
// The screens and the questions use the book through a small interface of their own, which internal/shop satisfies; the
// server gets functions that run the screens or a command for a guest. firstwalk.go decides whether the walk for
// newcomers is shown. The tests start a whole server in this process (booth_test.go) and attack it.
package program
