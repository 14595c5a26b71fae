// Package tui is the screens: metal, gauge, wire and mode lead to a settings card that is live from the first key on.
// It touches neither disk nor network nor environment: what it needs comes in Options.
//
// There is one tea.Model, root, which holds a stack of screens (screen.go): each is a plain struct in a file of its own
// with its keys, its update and its view; opening pushes it, esc pops it. What a screen asks for is an action, a
// function of the root; what its commands find out is a message that tells itself whom it concerns. A screen that waits
// for something longer than a key shows how far it is and can be left (slow.go). The book stands behind a small
// interface, Keeper (bookwork.go).
//
// On top of every screen stands the verdict (strip.go). What is drawn is drawn by tui/canvas, with its inks (theme.go);
// lists, typed text, what is scrolled through and the help of keys are Bubbles' (listbox.go, field.go, page.go,
// help.go), and what is typed in rows is a form (form.go). What is said comes from the blocks of internal/report and
// the rows of internal/choice.
//
// The walk for newcomers presses its script's keys on screens of its own, with the example on them, so that it always
// shows what a key really does (walk.go). Whether it is due is decided outside.
package tui
