// Package cli has the commands: the same answers as the screens, for a quick look-up, for scripts and for a guest over
// SSH.
//
// A command knows its flags only. Before it runs, each flag that was not given gets the value of the setting of its
// name (environment over file). The answer goes to Deps.Out, where a failed write is remembered and becomes exit code
// 1.
//
// Wrong use is an error that says what is wrong and what to type instead; its exit code is 2. A fault of the book or
// the machine is told to a guest in other words (shop.ToldGuest).
//
// The decimal comma is put in last, where a line of text or a cell of the screen is written (quantity.Comma). Quoted
// input and the names of documents keep their points.
package cli
