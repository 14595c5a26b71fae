// Package tui is the screens: metal, gauge, wire and mode lead to a settings card, which is shown and updated from the
// first key on. The package touches neither disk nor network nor environment: everything it needs comes in Options.
//
// There is one tea.Model, root, which holds a stack of screens (screen.go). Each screen is a plain struct in a file of
// its own with its keys, its update and its view; opening pushes it, esc pops it. What a screen wants done is an
// action, a function of the root. The result of a command is a message that itself knows which screen it is for. A
// screen that waits for a longer computation shows its progress and can be left (slow.go). The book is behind a small
// interface, Keeper (bookwork.go).
//
// The verdict is at the top of every screen (strip.go). Drawings come from tui/canvas, with its inks (theme.go). Lists,
// typed text, scrolling and the help of keys use Bubbles (listbox.go, field.go, page.go, help.go), and several typed
// rows are a form (form.go). Texts come from the blocks of internal/report and the rows of internal/choice.
//
// The walk for newcomers presses the keys of its script on screens of its own that show the example, so that it always
// shows what a key really does (walk.go). The caller decides whether to begin with it.
package tui
