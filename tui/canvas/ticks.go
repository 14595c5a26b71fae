package canvas

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// enough numbers on an axis need none of the least round ones besides.
const enough = 5

// tick is a round number on an axis, and where it stands: cells from the axis' low end.
type tick struct {
	text string
	at   int
}

// round are the mantissas of numbers on a logarithmic axis, the roundest first.
var round = [...][]float64{{1}, {2, 5}, {3, 4, 6, 8, 1.5}, {1.2, 2.5, 7, 9, 3.5, 4.5},
	{1.1, 1.3, 1.4, 1.6, 1.8, 2.2, 2.8, 5.5, 6.5}}

// logTicks are round numbers on a logarithmic axis from low to high of some cells, the roundest that have room. room is
// how many cells a text keeps free around its middle.
func logTicks(low, high float64, cells int, comma bool, room func(text string) int) []tick {
	if !(low > 0) || !(high > low) || math.IsInf(high, 0) || cells < 2 {
		return nil
	}
	var list []tick
	taken := make([]bool, cells)
	for rank, mantissas := range round {
		if rank == len(round)-1 && len(list) >= enough {
			break
		}
		for e := int(math.Floor(math.Log10(low))) - 1; e <= int(math.Ceil(math.Log10(high))); e++ {
			for _, m := range mantissas {
				v := m * math.Pow10(e)
				if v < low || v > high {
					continue
				}
				at := int(math.Log(v/low) / math.Log(high/low) * float64(cells))
				list = place(list, taken, tick{number(v, comma), min(at, cells-1)}, room)
			}
		}
	}
	slices.SortFunc(list, func(a, b tick) int { return a.at - b.at })
	return list
}

func place(list []tick, taken []bool, t tick, room func(string) int) []tick {
	half := room(t.text)
	from, to := t.at-half/2, t.at-half/2+half
	for i := max(0, from); i < min(len(taken), to); i++ {
		if taken[i] {
			return list
		}
	}
	for i := max(0, from); i < min(len(taken), to); i++ {
		taken[i] = true
	}
	return append(list, t)
}

// evenTicks are round numbers at even steps on an axis of some cells, about every so many cells one.
func evenTicks(a Axis, cells, every int, comma bool) []tick {
	low, high := a.Low, a.High
	if !(high > low) || math.IsInf(high-low, 0) || cells < 2 {
		return nil
	}
	step := roundStep((high - low) * float64(every) / float64(cells))
	digits := max(0, int(math.Ceil(-math.Log10(step)-1e-9)))
	if m := step / math.Pow10(int(math.Floor(math.Log10(step)+1e-9))); step < 10 && math.Abs(m-2.5) < 1e-6 {
		digits++
	}
	var list []tick
	for i := math.Ceil(low/step - 1e-9); i*step <= high+step*1e-9 && len(list) <= cells; i++ {
		text := strconv.FormatFloat(i*step+0, 'f', digits, 64)
		list = append(list, tick{decimal(text, comma), min(cells-1, int((i*step-low)/(high-low)*float64(cells-1)+0.5))})
	}
	return list
}

// roundStep is the next of 1, 2, 2.5 and 5 times a power of ten.
func roundStep(v float64) float64 {
	e := math.Pow10(int(math.Floor(math.Log10(v))))
	for _, m := range [...]float64{1, 2, 2.5, 5, 10} {
		if m*e >= v*(1-1e-9) {
			return m * e
		}
	}
	return 10 * e
}

// number is a figure without zeros that say nothing.
func number(v float64, comma bool) string { return decimal(strconv.FormatFloat(v, 'g', 6, 64), comma) }

func decimal(text string, comma bool) string {
	if comma {
		return strings.Replace(text, ".", ",", 1)
	}
	return text
}

// upright draws the axis at the left of a field of some lines: its line, and its numbers before it.
func upright(c *Cells, left, lines int, numbers []tick) {
	for y := range lines {
		c.Set(left-1, y, Rule.Ink(), "│")
	}
	for _, t := range numbers {
		y := lines - 1 - t.at
		c.Set(left-1, y, Rule.Ink(), "┤")
		c.Put(left-1-width(t.text), y, Quiet.Ink(), t.text)
	}
}
