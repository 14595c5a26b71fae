// Package program puts the rooms together: the command tree with the screens, the questions line by line and the
// server, each with the shop's book and with what this machine says of its user, folders and terminal.
//
// The screens and the questions see the book through a small interface of their own, which internal/shop satisfies;
// the server gets the program as functions that run screens or a command for a guest. Here it is also decided whether
// the walk for newcomers is due. Tests beside it start a whole server in this process (booth_test.go) and attack it.
package program
