//go:build unix

package program

// keysAreBytes is true here: a terminal sends keys as bytes.
const keysAreBytes = true
