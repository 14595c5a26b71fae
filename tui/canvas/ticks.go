package canvas

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// enough is the number of ticks with which an axis needs none of the least round numbers.
const enough = 5

// tick is a round number on an axis, and its position in cells from the axis' low end.
type tick struct {
	text string
	at   int
}

// round are the mantissas of numbers on a logarithmic axis, the roundest first.
var round = [...][]float64{{1}, {2, 5}, {3, 4, 6, 8, 1.5}, {1.2, 2.5, 7, 9, 3.5, 4.5},
	{1.1, 1.3, 1.4, 1.6, 1.8, 2.2, 2.8, 5.5, 6.5}}

// logTicks are round numbers on a logarithmic axis of some cells, the roundest that have room. The axis begins above
// zero. room is how many cells a text keeps free around its middle.
func logTicks(low, high float64, cells int, comma bool, room func(text string) int) (list []tick) {
	from := func(t tick) int { return t.at - room(t.text)/2 }
	for rank, mantissas := range round {
		if rank == len(round)-1 && len(list) >= enough {
			break
		}
		for e := int(math.Floor(math.Log10(low))) - 1; e <= int(math.Ceil(math.Log10(high))); e++ {
			for _, m := range mantissas {
				v := m * math.Pow10(e)
				t := tick{decimal(strconv.FormatFloat(v, 'g', 6, 64), comma), share(v, low, high, cells)}
				meets := func(o tick) bool { return from(t) < from(o)+room(o.text) && from(o) < from(t)+room(t.text) }
				if v >= low && v <= high && !slices.ContainsFunc(list, meets) {
					list = append(list, t)
				}
			}
		}
	}
	slices.SortFunc(list, func(a, b tick) int { return a.at - b.at })
	return list
}

// share is the cell of a value on a logarithmic axis, limited to its ends.
func share(v, low, high float64, cells int) int {
	if !(v > low) {
		return 0
	}
	return int(min(float64(cells-1), math.Log(v/low)/math.Log(high/low)*float64(cells)))
}

// evenTicks are round numbers at even steps on an axis of some cells, with one tick about every so many cells.
func evenTicks(a axis, cells, every int, comma bool) []tick {
	low, high := a.low, a.high
	step := roundStep((high - low) * float64(every) / float64(cells))
	_, places, _ := strings.Cut(strconv.FormatFloat(step, 'f', 9, 64), ".")
	digits := len(strings.TrimRight(places, "0"))
	var list []tick
	for i := math.Ceil(low/step - 1e-9); i*step <= high+step*1e-9 && len(list) <= cells; i++ {
		text := strconv.FormatFloat(i*step+0, 'f', digits, 64)
		list = append(list, tick{decimal(text, comma), min(cells-1, int((i*step-low)/(high-low)*float64(cells-1)+0.5))})
	}
	return list
}

// roundStep is the next larger of 1, 2, 2.5 and 5 times a power of ten.
func roundStep(v float64) float64 {
	e := math.Pow10(int(math.Floor(math.Log10(v))))
	for _, m := range [...]float64{1, 2, 2.5, 5} {
		if m*e >= v*(1-1e-9) {
			return m * e
		}
	}
	return 10 * e
}

func decimal(text string, comma bool) string {
	if comma {
		return strings.Replace(text, ".", ",", 1)
	}
	return text
}

// yAxis draws the axis at the left of a field: its line, and its numbers before it.
func yAxis(c *Cells, left, lines int, numbers []tick) {
	for y := range lines {
		c.Set(left-1, y, Rule.Ink(), "│")
	}
	for _, t := range numbers {
		y := lines - 1 - t.at
		c.Set(left-1, y, Rule.Ink(), "┤")
		c.Put(left-1-width(t.text), y, Quiet.Ink(), t.text)
	}
}

// xNumbers writes the numbers of the axis below a field, not before a first column, leaving out those that would touch.
func xNumbers(c *Cells, left, y, first int, numbers []tick) {
	for _, t := range numbers {
		c.putFree(max(first, centred(c, left+t.at, t.text)), y, Quiet.Ink(), t.text)
	}
}

// centred is the first column of a text whose middle is in column x.
func centred(c *Cells, x int, text string) int {
	return max(0, min(x-(width(text)-1)/2, c.W-width(text)))
}
