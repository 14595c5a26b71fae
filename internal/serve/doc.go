// Package serve is the same program over SSH: the screens for a client with a terminal, the commands for one without.
// One session never sees another: each has its own screens, command tree and name in the book. They share only the
// book itself and the maps and timed arcs that calc has computed. A server keeps nothing outside the book.
//
// # How a session comes about
//
// A connection is let in within its limits (conn.go, places.go), behind a balancer by the client that the balancer
// names (proxy.go). Keys say who may come and whether they may change the book (crypto.go, keys.go). The library's
// session handling is wrapped where a client could use it against others: channel.go filters what the client asks for
// and ends the session with its channel. Then session.go runs screens, or command.go a command.
//
// Between them and the line input is bounded and paced, keys typed ahead are kept, and a client that takes nothing is
// given up (input.go, ahead.go, pace.go, stalling.go). For questions line by line, lineinput.go turns a terminal's
// keys into lines.
package serve
