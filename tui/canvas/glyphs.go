package canvas

// glyph is how a big letter is written: paths apart by ";", each a row of points. A point is two digits, across and
// down, from 0 to 4 between the middles of the outermost strokes; "o" behind it rounds the corner, or both ends of a
// line; "z" at the end closes the path. A path that begins with "f" is an area between the edges of the letter's box,
// one that begins with "e" is rubbed out.
type glyph struct {
	paths string
	wide  float64 // in widths of a digit; 0 is a stroke's width
}

// glyphs are what can be written big: the figures with both decimal signs, capitals, and the signs of the states.
var glyphs = map[rune]glyph{
	'0': {"00o 40o 44o 04oz", 1},
	'1': {"11o 20o; 20 24; 04 44", 1},
	'2': {"00 40o 42o 02o 04 44", 1},
	'3': {"00 40o 42o 12; 12 42o 44o 04", 1},
	'4': {"00 02 42; 40 44", 1},
	'5': {"40 00 02 42o 44o 04", 1},
	'6': {"40 00o 04o 44o 42o 02", 1},
	'7': {"00 40 41 14", 1},
	'8': {"00o 40o 42o 02oz; 02o 42o 44o 04oz", 1},
	'9': {"42 02o 00o 40o 44o 04", 1},
	'.': {"04", 0},
	',': {"03 04", 0},
	'-': {"02 42", 0.75},
	'/': {"40 04", 1},
	'>': {"00 42 04", 0.75},
	'%': {"40 04; 00; 44", 1},
	'A': {"04 00o 40o 44; 02 42", 1},
	'B': {"00 40o 42o 02; 02 42o 44o 04; 00 04", 1},
	'C': {"40 00o 04o 44", 1},
	'D': {"00 40o 44o 04z", 1},
	'E': {"40 00 04 44; 02 32", 1},
	'F': {"40 00 04; 02 32", 1},
	'G': {"40 00o 04o 44 42 32", 1},
	'H': {"00 04; 40 44; 02 42", 1},
	'I': {"00 04", 0},
	'J': {"40 44o 04o 03", 1},
	'K': {"00 04; 40 02 44", 1},
	'L': {"00 04 44", 1},
	'M': {"04 00 22 40 44", 1.25},
	'N': {"04 00 44 40", 1},
	'O': {"00o 40o 44o 04oz", 1},
	'P': {"04 00 40o 42o 02", 1},
	'Q': {"00o 40o 44o 04oz; 23 44", 1},
	'R': {"04 00 40o 42o 02; 22 44", 1},
	'S': {"40 00o 02o 42o 44o 04", 1},
	'T': {"00 40; 20 24", 1},
	'U': {"00 04o 44o 40", 1},
	'V': {"00 02 24 42 40", 1},
	'W': {"00 04 22 44 40", 1.25},
	'X': {"00 44; 40 04", 1},
	'Y': {"00 22 40; 22 24", 1},
	'Z': {"00 40 04 44", 1},
	' ': {"", 0.5},
	'✓': {"02 14 40", 1.5},
	'▼': {"f10 30 32 42 24 02 12", 1.5},
	'▲': {"f14 34 32 42 20 02 12", 1.5},
	'✕': {"00 44; 40 04", 1.25},
	'◇': {"20 42 24 02z", 1.5},
	'~': {"03 11o 33o 41", 1.5},
	'?': {"00 40o 42o 22 23; 24", 1},
	'■': {"f10 30 41 43 34 14 03 01; e12 32", 1.5},
}
