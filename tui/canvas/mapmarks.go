package canvas

import (
	"slices"
	"strings"
)

// axes draw the two axes with their numbers; the setting's own numbers stand before the round ones.
func (d *mapDrawing) axes() {
	k := Rule.Ink()
	upright(d.c, d.left, d.h, slices.DeleteFunc(d.ticksY(d.h), func(t tick) bool {
		return d.crossed && d.h-1-t.at == d.atY
	}))
	d.c.Set(d.left-1, d.h, k, "└")
	for x := range d.w {
		d.c.Set(d.left+x, d.h, k, "─")
	}
	for _, t := range logTicks(d.low[0], d.high[0], d.w, d.Comma, func(s string) int { return width(s) + 2 }) {
		from, to := d.under(t.at, t.text)
		d.c.Set(d.left+t.at, d.h, k, "┬")
		if ownFrom, ownTo := d.under(d.atX, d.TextX); d.crossed && from <= ownTo && to >= ownFrom {
			continue
		}
		d.c.Put(from, d.h+1, Quiet.Ink(), t.text)
	}
}

// under is where a number stands whose middle is under a column of the field.
func (d *mapDrawing) under(x int, text string) (from, to int) {
	from = d.left + x - (width(text)-1)/2
	from = max(0, min(from, d.c.W-width(text)))
	return from, from + width(text)
}

// names are the names of the axes, whole or not at all.
func (d *mapDrawing) names(y int) {
	x := d.left
	if text := d.NameX + " →"; x+width(text) <= d.c.W {
		x = d.c.Put(x, y, Quiet.Ink(), text) + 3
	}
	if text := "↑ " + d.NameY; x+width(text) <= d.c.W {
		d.c.Put(x, y, Quiet.Ink(), text)
	}
}

// cross is the setting with lines to both axes and its values there, and the suggestion.
func (d *mapDrawing) cross() {
	if !d.Stale {
		x, y := d.bestX, d.bestY
		d.c.Set(d.left+x, y, d.ink(x, y, d.onLand(x, y))|Bold, "○")
	}
	if !d.crossed || d.Stale {
		return
	}
	for x := range d.atX {
		d.c.Set(d.left+x, d.atY, d.ink(x, d.atY, d.onLand(x, d.atY)), "─")
	}
	for y := d.atY + 1; y < d.h; y++ {
		d.c.Set(d.left+d.atX, y, d.ink(d.atX, y, d.onLand(d.atX, y)), "│")
	}
	d.c.Set(d.left+d.atX, d.atY, OnAccent.On(Accent), "◆")
	k := Accent.Ink() | Bold
	d.c.Put(d.left-1-width(d.TextY), d.atY, k, d.TextY)
	d.c.Set(d.left-1, d.atY, k, "▸")
	d.c.Set(d.left+d.atX, d.h, k, "▲")
	from, _ := d.under(d.atX, d.TextX)
	d.c.Put(from, d.h+1, k, d.TextX)
}

// onLand is the role of what is written on a cell.
func (d *mapDrawing) onLand(x, y int) Role { return landOn + Role(d.shown[y*d.w+x]) }

func (d *mapDrawing) labels() {
	for _, l := range [...]Land{LandCold, LandHot, LandBurns, LandOutside, LandGood3} {
		for _, word := range [...]string{landSigns[l].word, landSigns[l].short} {
			if d.label(l, word) {
				break
			}
		}
	}
}

// label writes a land's word into the roomiest of its lines, one that the cross-hair leaves free. Of equal ones that
// in the middle of the land is taken.
func (d *mapDrawing) label(l Land, word string) bool {
	top, low, best, bestX, bestY := -1, 0, -1, 0, 0
	for y := range d.h {
		if x, n := d.run(l, y); n > 0 && x >= 0 {
			if top < 0 {
				top = y
			}
			low = y
		}
	}
	for y := max(1, top); top >= 0 && y <= min(low, d.h-2); y++ {
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
	ink := l.words()
	if !d.th.ground || d.Stale {
		ink = Text.Ink() | Bold
	}
	d.c.Fill(d.left+bestX-1, bestY, 1, 1, d.ink(bestX-1, bestY, Own))
	d.c.Put(d.left+bestX, bestY, ink, word)
	d.c.Fill(d.left+bestX+width(word), bestY, 1, 1, d.ink(bestX+width(word), bestY, Own))
	return true
}

// run is the longest stretch of a land in a line that nothing is drawn on.
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

// free reports whether a cell belongs to a land and is not under the cross-hair or the suggestion. The steps of good
// are one land.
func (d *mapDrawing) free(l Land, x, y int) bool {
	at := d.shown[y*d.w+x]
	if at != l && !(l == LandGood3 && at >= LandGood1) {
		return false
	}
	if d.crossed && (y == d.atY && x <= d.atX || x == d.atX && y >= d.atY) {
		return false
	}
	return y != d.bestY || x != d.bestX
}

// Legend says what the signs of a map are, in a width; nothing where colours and words on the map say it.
func Legend(th *Theme, w int) Block {
	if th.ground || w < 12 {
		return nil
	}
	words := make([]string, 0, lands)
	for _, l := range [...]Land{LandCold, LandHot, LandBurns, LandOutside} {
		words = append(words, landSigns[l].sign+" "+strings.ToLower(landSigns[l].word))
	}
	words = append(words, "▒▓█ good, by margin", "◆ set", "○ suggested")
	c := NewCells(w, 1)
	x := 0
	for _, word := range words {
		if x+width(word) <= w {
			x = c.Put(x, 0, Quiet.Ink(), word) + 2
		}
	}
	return c.Lines(th)
}
