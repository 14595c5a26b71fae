// Package cli is the commands: the same answers as the screens, for a quick look-up, for scripts and for a guest over
// SSH.
//
// A command knows its flags only. Before it runs, the settings (environment over file) are put into each flag of that
// name that was not given. What a command answers goes to Deps.Out, where a failed write is remembered and becomes
// exit code 1.
//
// Wrong use is an error with what is wrong and what to type instead; its exit code is 2. What went wrong with the
// book or the machine reaches a guest in other words, through GuestError.
//
// The decimal comma is put in last, where a line of text or a cell of the screen is written (quantity.Comma). What
// somebody typed, and what a document says, keep their points.
package cli
