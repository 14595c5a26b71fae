//go:build unix

package program

// keysAreBytes: a terminal is read byte by byte here.
const keysAreBytes = true
