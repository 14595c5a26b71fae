package canvas

import (
	"math"
	"math/cmplx"
	"strings"
)

// pen draws letters. It has its width and height in dots, how many dots beside each other are drawn as one (fold), and
// the box to draw in. Places in the box are complex numbers, counted in widths of the pen from the upper left corner.
type pen struct {
	wide, high, fold int
	box              complex128
	pieces           []piece // of the letter so far
}

// piece is a polygon or a straight stroke of the pen. An open end and a sharp corner are square and reach half a pen
// further; a piece of a rounded corner has round ends. An erasing piece (rub) removes what was drawn below it.
type piece struct {
	area                        []complex128
	from, to                    complex128
	squareFrom, squareTo, round bool
	rub                         bool
}

// letter says which of its dots are inked, row by row.
type letter struct {
	w    int
	list []bool
}

// write draws a glyph as dots.
func (p pen) write(paths string, w, h int) letter {
	for path := range strings.SplitSeq(paths, ";") {
		p.path(strings.Fields(path))
	}
	l := letter{w, make([]bool, w*h)}
	for i := range l.list {
		x, y := float64(i%w/p.fold)+0.5, float64(i/w)+0.5
		at := complex(x/float64(p.wide), y/float64(p.high))
		for k := range p.pieces {
			if p.pieces[k].covers(at) {
				l.list[i] = !p.pieces[k].rub
			}
		}
	}
	return l
}

func (p *pen) path(words []string) {
	if len(words) == 0 {
		return
	}
	area, rub := strings.HasPrefix(words[0], "f"), strings.HasPrefix(words[0], "e")
	words[0] = strings.TrimLeft(words[0], "fe")
	closed := strings.HasSuffix(words[len(words)-1], "z")
	points, round := make([]complex128, len(words)), make([]bool, len(words))
	for i, word := range words {
		points[i], round[i] = p.place(word, area), strings.Contains(word, "o")
	}
	first := len(p.pieces)
	if area {
		p.pieces = append(p.pieces, piece{area: points})
	} else {
		p.line(points, round, closed)
	}
	for i := range p.pieces[first:] {
		p.pieces[first+i].rub = rub
	}
}

// place is the position of a point: on the middle line of a stroke inside the box, or on the edge of the box.
// Horizontal middle lines lie on whole dots, so that a letter is as sharp in its middle as at its edges.
func (p *pen) place(word string, edge bool) complex128 {
	x, y := float64(word[0]-'0')/4, float64(word[1]-'0')/4
	if edge {
		return complex(x*real(p.box), y*imag(p.box))
	}
	return complex(onDots(x*(real(p.box)-1), p.wide)+0.5, onDots(y*(imag(p.box)-1), p.high)+0.5)
}

// onDots rounds down to whole dots, which is upward in the letter: a smaller upper half looks right.
func onDots(v float64, dot int) float64 { return math.Floor(v*float64(dot)+1e-9) / float64(dot) }

func (p *pen) line(points []complex128, round []bool, closed bool) {
	n := len(points)
	bent := func(i int) bool { return round[i] && (closed || i > 0 && i < n-1) }
	last := max(1, n-1) // one point alone is a dot
	if closed {
		last = n
	}
	for i := range last {
		j := (i + 1) % n
		s := piece{from: points[i], to: points[j], squareFrom: !bent(i), squareTo: !bent(j)}
		s.round = n == 2 && round[i] && round[j]
		if bent(i) {
			s.from = rounding(points[i], points[j])
		}
		if bent(j) {
			s.to = rounding(points[j], points[i])
			p.bend(s.to, points[j], rounding(points[j], points[(j+1)%n]))
		}
		p.pieces = append(p.pieces, s)
	}
}

// rounding is the place at which the rounding of a corner ends, on the piece from the corner to another point.
func rounding(corner, to complex128) complex128 {
	if corner == to {
		return corner
	}
	length := cmplx.Abs(to - corner)
	return corner + (to-corner)*complex(min(1, length/2)/length, 0)
}

// bend is a rounded corner: a parabola between two points around the corner.
func (p *pen) bend(from, by, to complex128) {
	const pieces = 6
	at := from
	for i := 1; i <= pieces; i++ {
		t := complex(float64(i)/pieces, 0)
		next := (1-t)*(1-t)*from + 2*(1-t)*t*by + t*t*to
		p.pieces = append(p.pieces, piece{from: at, to: next, round: true})
		at = next
	}
}

// covers reports whether the pen inks a point on this piece.
func (s *piece) covers(p complex128) bool {
	if s.area != nil {
		return inside(s.area, p)
	}
	const exact = 1e-6
	const half = 0.5 + exact
	way, length := s.to-s.from, cmplx.Abs(s.to-s.from)
	if length == 0 {
		return math.Abs(real(p-s.from)) <= half && math.Abs(imag(p-s.from)) <= half
	}
	turned := (p - s.from) * cmplx.Conj(way) / complex(length, 0) // turned so that the piece points to the right
	along, aside := real(turned), math.Abs(imag(turned))
	if s.round {
		return math.Hypot(aside, max(0, -along, along-length)) <= half
	}
	low, high := -exact, length+exact
	if s.squareFrom {
		low -= half
	}
	if s.squareTo {
		high += half
	}
	return aside <= half && along >= low && along <= high
}

func inside(area []complex128, p complex128) bool {
	in := false
	for i, a := range area {
		b := area[(i+1)%len(area)]
		across := real(a) + (imag(p)-imag(a))/(imag(b)-imag(a))*real(b-a)
		if (imag(a) > imag(p)) != (imag(b) > imag(p)) && real(p) < across {
			in = !in
		}
	}
	return in
}
