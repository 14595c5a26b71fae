// Package canvas draws the parts of the screens on a grid of cells: the verdict's strip, dials with big digits, chips,
// the joint to scale, the map, charts, the beat, the look of a test bead. A part is a plain value that knows nothing of
// jobs and cards. Its Draw takes a theme, a width in columns and a height in lines and returns lines. No line is ever
// wider than that width. A part without enough room returns nothing, because a piece of it could be misread.
//
// Colours are roles (Role), combined to inks (Ink) that a Theme turns into bytes. Everything that a colour says is also
// said by a word, a sign, a height, a place or a texture, so that every part can be read without colour.
package canvas
