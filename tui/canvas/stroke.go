package canvas

import (
	"math"
	"strings"
)

// point is a place in a letter's box, counted in widths of the pen from its upper left corner.
type point struct{ x, y float64 }

// pen writes letters: how many dots it is wide and high, and the box to write in, in its own widths.
type pen struct {
	wide, high int
	box        point
}

// stroke is a straight piece of a path. An open end and a sharp corner are square, which takes half a pen more; a
// piece of a rounded corner is round.
type stroke struct {
	from, to             point
	squareFrom, squareTo bool
	round                bool
}

// letter is a glyph on its way to dots.
type letter struct {
	pen
	strokes []stroke
	areas   [][]point
	rubs    []stroke
}

// raster writes a glyph into dots, row by row.
func (p pen) raster(paths string, w, h int) dots {
	l := letter{pen: p}
	for path := range strings.SplitSeq(paths, ";") {
		l.path(strings.Fields(path))
	}
	d := dots{w, h, make([]uint8, w*h)}
	for y := range h {
		for x := range w {
			if l.inked(point{(float64(x) + 0.5) / float64(p.wide), (float64(y) + 0.5) / float64(p.high)}) {
				d.set(x, y, 1)
			}
		}
	}
	return d
}

func (l *letter) inked(p point) bool {
	for i := range l.rubs {
		if l.rubs[i].covers(p) {
			return false
		}
	}
	for _, a := range l.areas {
		if inside(a, p) {
			return true
		}
	}
	for i := range l.strokes {
		if l.strokes[i].covers(p) {
			return true
		}
	}
	return false
}

func (l *letter) path(words []string) {
	if len(words) == 0 {
		return
	}
	kind := words[0][0]
	if kind == 'f' || kind == 'e' {
		words[0] = words[0][1:]
	}
	closed := strings.HasSuffix(words[len(words)-1], "z")
	points, round := make([]point, len(words)), make([]bool, len(words))
	for i, word := range words {
		points[i], round[i] = l.place(word, kind == 'f'), strings.Contains(word, "o")
	}
	switch kind {
	case 'f':
		l.areas = append(l.areas, points)
	case 'e':
		l.rubs = append(l.rubs, stroke{from: points[0], to: points[1], squareFrom: true, squareTo: true})
	default:
		l.line(points, round, closed)
	}
}

// place is where a point lies: on the middle line of a stroke that lies in the box, or on the edge of the box. Middle
// lines across fall on whole dots, so that a letter is as sharp in its middle as at its edges.
func (l *letter) place(word string, edge bool) point {
	x, y := float64(word[0]-'0')/4, float64(word[1]-'0')/4
	if edge {
		return point{x * l.box.x, y * l.box.y}
	}
	return point{onDots(x*(l.box.x-1), l.wide) + 0.5, onDots(y*(l.box.y-1), l.high) + 0.5}
}

// onDots rounds down to whole dots, upward in the letter: an upper half that is smaller looks right.
func onDots(v float64, dot int) float64 { return math.Floor(v*float64(dot)+1e-9) / float64(dot) }

func (l *letter) line(points []point, round []bool, closed bool) {
	n := len(points)
	if n == 1 {
		l.strokes = append(l.strokes, stroke{from: points[0], to: points[0]})
		return
	}
	bent := func(i int) bool { return round[i] && (closed || i > 0 && i < n-1) }
	last := n - 1
	if closed {
		last = n
	}
	for i := range last {
		j := (i + 1) % n
		s := stroke{from: points[i], to: points[j], squareFrom: !bent(i), squareTo: !bent(j)}
		s.round = n == 2 && round[i] && round[j]
		r := corner(points[i], points[j])
		if bent(i) {
			s.from = toward(points[i], points[j], r)
		}
		if bent(j) {
			next := points[(j+1)%n]
			s.to = toward(points[j], points[i], r)
			l.bend(s.to, points[j], toward(points[j], next, corner(points[j], next)))
		}
		l.strokes = append(l.strokes, s)
	}
}

// corner is how far from its corner a rounding begins on a piece.
func corner(a, b point) float64 { return min(1, math.Hypot(b.x-a.x, b.y-a.y)/2) }

func toward(a, b point, by float64) point {
	d := math.Hypot(b.x-a.x, b.y-a.y)
	if d == 0 {
		return a
	}
	return point{a.x + (b.x-a.x)*by/d, a.y + (b.y-a.y)*by/d}
}

// bend is a rounded corner: a parabola from one point to another by the corner.
func (l *letter) bend(from, by, to point) {
	const pieces = 6
	at := from
	for i := 1; i <= pieces; i++ {
		t := float64(i) / pieces
		u := 1 - t
		next := point{u*u*from.x + 2*u*t*by.x + t*t*to.x, u*u*from.y + 2*u*t*by.y + t*t*to.y}
		l.strokes = append(l.strokes, stroke{from: at, to: next, round: true})
		at = next
	}
}

// covers reports whether the pen inks a point on this stroke.
func (s *stroke) covers(p point) bool {
	const half = 0.5 + 1e-6
	dx, dy := s.to.x-s.from.x, s.to.y-s.from.y
	length := math.Hypot(dx, dy)
	if length == 0 {
		return math.Abs(p.x-s.from.x) <= half && math.Abs(p.y-s.from.y) <= half
	}
	along := ((p.x-s.from.x)*dx + (p.y-s.from.y)*dy) / length
	aside := math.Abs((p.x-s.from.x)*dy-(p.y-s.from.y)*dx) / length
	if s.round {
		return math.Hypot(aside, math.Max(0, math.Max(-along, along-length))) <= half
	}
	low, high := 0.0, length
	if s.squareFrom {
		low = -half
	}
	if s.squareTo {
		high += half
	}
	return aside <= half && along >= low-1e-6 && along <= high+1e-6
}

func inside(area []point, p point) bool {
	in := false
	for i, a := range area {
		b := area[(i+1)%len(area)]
		if (a.y > p.y) != (b.y > p.y) && p.x < a.x+(p.y-a.y)/(b.y-a.y)*(b.x-a.x) {
			in = !in
		}
	}
	return in
}
