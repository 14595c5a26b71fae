package tui

import (
	"bytes"
	"strconv"
)

// pen is how a terminal writes.
type pen struct {
	fg, bg colour
	marks  uint16 // bit n is on by parameter n: bold, reverse …
	odd    bool   // something is set that is not known here
}

// colour is a colour of a pen, 0 the terminal's own: what is said in one parameter, an index or three values.
type colour uint32

const (
	basic   colour = 1 << 24
	indexed colour = 2 << 24
	direct  colour = 3 << 24
)

// shownAs is a character in a pen. A blank shows nothing but its ground unless it is underlined or reversed.
func shownAs(r rune, p pen) shown {
	const seen = 1<<4 | 1<<7 | 1<<9
	if r == ' ' && p.marks&seen == 0 {
		p.fg, p.marks = 0, 0
	}
	return shown{r, p}
}

// take changes the pen by the parameters of a sequence.
func (p *pen) take(parameters []byte) {
	if len(parameters) == 0 {
		*p = pen{}
		return
	}
	var list [16]int
	n := 0
	for text := range bytes.SplitSeq(parameters, []byte(";")) {
		v, err := strconv.Atoi("0" + string(text))
		if err != nil || n == len(list) {
			p.odd = true
			return
		}
		list[n] = v
		n++
	}
	for rest := list[:n]; len(rest) > 0; {
		rest = rest[p.one(rest):]
	}
}

// one takes the first of some parameters and returns how many belong to it.
func (p *pen) one(list []int) int {
	switch v := list[0]; {
	case v == 0:
		*p = pen{}
	case v <= 9:
		p.marks |= 1 << v
	case v == 22: // neither bold nor faint
		p.marks &^= 1<<1 | 1<<2
	case v >= 23 && v <= 29:
		p.marks &^= 1 << (v - 20)
	case v >= 30 && v <= 37, v >= 90 && v <= 97:
		p.fg = basic | colour(v)
	case v >= 40 && v <= 47, v >= 100 && v <= 107:
		p.bg = basic | colour(v-10)
	case v == 39:
		p.fg = 0
	case v == 49:
		p.bg = 0
	case v == 38 || v == 48:
		c, n := extended(list)
		if v == 38 {
			p.fg = c
		} else {
			p.bg = c
		}
		p.odd = p.odd || n == 1
		return n
	default:
		p.odd = true
	}
	return 1
}

// extended is a colour of more than one parameter, and how many it has; 1 where it is none.
func extended(list []int) (colour, int) {
	switch {
	case len(list) >= 3 && list[1] == 5:
		return indexed | colour(list[2]&0xff), 3
	case len(list) >= 5 && list[1] == 2:
		return direct | colour(list[2]&0xff)<<16 | colour(list[3]&0xff)<<8 | colour(list[4]&0xff), 5
	}
	return 0, 1
}
