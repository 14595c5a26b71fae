package canvas

import "strings"

// axes draws the two axes with their numbers. The setting's own numbers replace round ones that they would touch.
func (d *mapDrawing) axes() {
	k, own := Rule.Ink(), Accent.Ink()|Bold
	yAxis(d.c, d.left, d.h, d.ticksY(d.h))
	d.c.Set(d.left-1, d.h, k, "└")
	for x := range d.w {
		d.c.Set(d.left+x, d.h, k, "─")
	}
	numbers := logTicks(d.low[0], d.high[0], d.w, d.Comma, func(s string) int { return width(s) + 2 })
	for _, t := range numbers {
		d.c.Set(d.left+t.at, d.h, k, "┬")
	}
	if !d.Stale {
		d.c.Fill(0, d.atY, d.left, 1, Plain)
		d.c.Put(d.left-1-width(d.TextY), d.atY, own, d.TextY)
		d.c.Set(d.left-1, d.atY, own, "▸")
		d.c.Set(d.left+d.atX, d.h, own, "▲")
		d.c.Put(centred(d.c, d.left+d.atX, d.TextX), d.h+1, own, d.TextX)
	}
	xNumbers(d.c, d.left, d.h+1, 0, numbers)
}

// names writes the names of the axes, in full or not at all.
func (d *mapDrawing) names(y int) {
	x := d.left
	if text := d.NameX + " →"; x+width(text) <= d.c.W {
		x = d.c.Put(x, y, Quiet.Ink(), text) + 3
	}
	if text := "↑ " + d.NameY; x+width(text) <= d.c.W {
		d.c.Put(x, y, Quiet.Ink(), text)
	}
}

// cross draws the suggestion, and the setting with lines to both axes.
func (d *mapDrawing) cross() {
	if d.Stale {
		return
	}
	put := func(x, y int, bold Ink, sign string) {
		d.c.Set(d.left+x, y, d.ink(x, y, landOn+Role(d.shown[y*d.w+x]))|bold, sign)
	}
	put(d.bestX, d.bestY, Bold, "○")
	for x := range d.atX {
		put(x, d.atY, 0, "─")
	}
	for y := d.atY + 1; y < d.h; y++ {
		put(d.atX, y, 0, "│")
	}
	d.c.Set(d.left+d.atX, d.atY, OnAccent.On(Accent), "◆")
}

func (d *mapDrawing) labels() {
	for _, l := range [...]Land{LandCold, LandHot, LandBurns, LandOutside, LandGood3} {
		for _, word := range [...]string{landSigns[l].word, landSigns[l].short} {
			if d.label(l, word) {
				break
			}
		}
	}
}

// label writes a land's name into the line of the land that has the most room and is not on the cross-hair. Of lines
// with equal room it takes the one nearest the middle of the land.
func (d *mapDrawing) label(l Land, word string) bool {
	top, low, best, bestX, bestY := d.h, 0, -1, 0, 0
	for y := range d.h {
		if _, n := d.run(l, y); n > 0 {
			top, low = min(top, y), y
		}
	}
	for y := max(1, top); y <= min(low, d.h-2); y++ {
		x, n := d.run(l, y)
		if n < width(word)+2 {
			continue
		}
		away := 2*y - top - low
		if score := 4*min(n, 3*width(word)) - max(away, -away); score > best {
			best, bestX, bestY = score, x+(n-width(word))/2, y
		}
	}
	if best < 0 {
		return false
	}
	ink := l.on(landOn+Role(l)) | Bold
	if !d.th.ground || d.Stale {
		ink = Text.Ink() | Bold
	}
	for _, x := range [...]int{bestX - 1, bestX + width(word)} {
		d.c.Set(d.left+x, bestY, d.ink(x, bestY, Own), "")
	}
	d.c.Put(d.left+bestX, bestY, ink, word)
	return true
}

// run is the longest part of a line that lies in a land and has nothing drawn on it.
func (d *mapDrawing) run(l Land, y int) (from, n int) {
	for x := 0; x < d.w; x++ {
		end := x
		for end < d.w && d.free(l, end, y) {
			end++
		}
		if end-x > n {
			from, n = x, end-x
		}
		x = max(x, end)
	}
	return from, n
}

// free reports whether a cell belongs to a land and is not covered by the cross-hair or the suggestion. The three steps
// of good count as one land.
func (d *mapDrawing) free(l Land, x, y int) bool {
	at := d.shown[y*d.w+x]
	if at != l && !(l == LandGood3 && at >= LandGood1) {
		return false
	}
	if !d.Stale && (y == d.atY && x <= d.atX || x == d.atX && y >= d.atY) {
		return false
	}
	return y != d.bestY || x != d.bestX
}

// Legend explains the signs of a map. It is empty if colours and words on the map explain them.
func Legend(th *Theme, w int) Block {
	if th.ground || w < 12 {
		return nil
	}
	good := "▒▓█ good"
	if w >= 72 {
		good += ", by margin"
	}
	words := append(make([]string, 0, lands), good) // first: a narrow legend has no place for all
	for _, l := range [...]Land{LandCold, LandHot, LandBurns, LandOutside} {
		words = append(words, landSigns[l].sign+" "+strings.ToLower(landSigns[l].word))
	}
	words = append(words, "◆ set", "○ suggested")
	c := NewCells(w, 1)
	x := 0
	for _, word := range words {
		if x+width(word) <= w {
			x = c.Put(x, 0, Quiet.Ink(), word) + 2
		}
	}
	return c.Lines(th)
}
