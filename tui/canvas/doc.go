// Package canvas draws the parts of the screens over cells: the verdict's strip, dials with big digits, chips, the
// joint to scale, the map, charts, the beat, the look of a test bead. A part is a plain value: it knows nothing of
// jobs and cards, and its Draw takes a theme, a width and a height and returns lines. No line is ever wider than that
// width, and a part that has no room returns nothing rather than something that reads wrong.
//
// Colours are roles (Role), put together to inks (Ink) that a Theme turns into bytes. What a colour says is always
// said by a word, a sign, a height, a place or a texture too, so that every part can be read without any colour.
package canvas
