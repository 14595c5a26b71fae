// Package tui is the screens: metal, gauge, wire and mode lead to a settings card that is live from the first key on.
// It touches neither disk nor network nor environment: what it needs comes in Options.
//
// There is one tea.Model, which holds a stack of screens; each screen is a plain struct in a file of its own with its
// keys, its update and its view. A screen that waits for something longer than a key shows how far it is and can be
// left (slow.go). The book stands behind a small interface (keeper.go).
//
// The walk for newcomers presses its script's keys (walksteps.go) on screens of its own, with the example on them, so
// that it always shows what a key really does (walk.go). Whether it is due is decided outside.
//
// Text has a contrast of at least 4.5 to 1 on the usual backgrounds, with the theme contrast 7 to 1; the map's zones
// can be told apart in red, green and blue blindness and each has a sign of its own. In 16 colours only those are
// used that the usual palettes make readable (palette.go; theme_test.go computes it).
package tui
