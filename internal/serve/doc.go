// Package serve is the same program over SSH: the screens for a client with a terminal, the commands for one without.
// Sessions do not see each other: each has its own screens, command tree and name in the book. They share only the book
// and calc's cache of maps and timed arcs. A server saves nothing outside the book.
//
// # How a session comes about
//
// The number of connections is limited (conn.go, places.go), by client address, which a balancer may name (proxy.go).
// Keys decide who may connect and who may change the book (crypto.go, keys.go). The library's session handling is
// wrapped where a client could misuse it against others: channel.go filters the client's requests and ends the session
// with its channel. Then session.go runs screens, or command.go a command.
//
// Input is limited in size and rate (input.go), keys typed ahead are kept (ahead.go), output is adapted to the line's
// speed (pace.go), and a client that reads nothing is disconnected (stalling.go). For questions line by line,
// lineinput.go turns a terminal's keys into lines.
package serve
