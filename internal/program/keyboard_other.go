//go:build !unix

package program

// keysAreBytes is false here: a console sends keys as events, and its own file must be read.
const keysAreBytes = false
