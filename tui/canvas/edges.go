package canvas

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// Edge is an edge of the operating window and how far away it is.
type Edge struct {
	Name   string
	Margin float64 // %; negative if the edge is not met, +Inf if it is not judged at this setting
}

// Edges are the edges of a setting. The nearest are shown first, the unjudged ones last.
type Edges []Edge

// fullBar is the margin, %, at which a bar is full. A larger margin is no concern.
const fullBar = 50

// Draw draws the edges: sign, name, bar, per cent.
func (l Edges) Draw(th *Theme, w, h int) Block {
	const numbers = 6
	if w < 20 || h < 1 || len(l) == 0 {
		return nil
	}
	list := slices.Clone(l)
	slices.SortStableFunc(list, func(a, b Edge) int { return cmp.Compare(a.Margin, b.Margin) })
	names := 0
	for _, e := range list {
		names = max(names, width(e.Name))
	}
	if w < 2+names+1+8+numbers {
		names = min(names, w-2-numbers-1)
	}
	c := NewCells(w, min(h, len(list)))
	for y := range c.H {
		e := &list[y]
		if math.IsInf(e.Margin, 1) {
			const not = "not judged"
			c.PutCut(2, y, Quiet.Ink(), e.Name, min(names, w-len(not)-3))
			c.Put(w-len(not), y, Quiet.Ink(), not)
			continue
		}
		k, sign := Good.Ink(), Good.Sign()
		if e.Margin < 0 {
			k, sign = Burns.Ink(), Burns.Sign()
		}
		c.Put(0, y, k, sign)
		c.PutCut(2, y, Text.Ink(), e.Name, names)
		c.bar(th, 2+names+1, y, w-numbers-(2+names+1)-1, max(e.Margin, -e.Margin)/fullBar, k)
		text := fmt.Sprintf("%.0f %%", e.Margin)
		switch {
		case math.Abs(e.Margin) >= 999:
			text = "far"
		case e.Margin < 0:
			text = fmt.Sprintf("−%.0f %%", -e.Margin)
		}
		c.Put(w-width(text), y, Text.Ink(), text)
	}
	return c.Lines(th)
}

// Share is a single bar, half a line high, that shows a share of a whole.
func Share(th *Theme, k Ink, w int, share float64) Line {
	c := NewCells(w, 1)
	c.bar(th, 0, 0, w, share, k)
	return c.Lines(th)[0]
}
