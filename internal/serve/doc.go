// Package serve is the same program over SSH: the screens for who brings a terminal, the commands for who does not. One
// session never sees another: each has its own screens, command tree and name in the book; all they share is the
// book itself and the maps and beats that calc has computed.
//
// The library's session handling is wrapped where a client could use it against others: see channel.go.
package serve
