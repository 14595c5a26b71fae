//go:build !unix

package program

// keysAreBytes: a console hands over keys as events, and wants its own file to be read.
const keysAreBytes = false
