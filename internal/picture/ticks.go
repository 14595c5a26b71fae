package picture

import (
	"math"
	"strconv"

	"gonum.org/v1/plot"
)

// Ratios makes an axis logarithmic between two values, both above zero, with a few round numbers on it.
func Ratios(a *plot.Axis, low, high float64) {
	a.Min, a.Max, a.Scale = low, high, plot.LogScale{}
	var list []plot.Tick
	numbers := []float64{1, 1.5, 2, 3, 4, 5, 6, 8}
	if high > 30*low {
		numbers = []float64{1, 3}
	}
	apart := func(v float64) bool { // an eighth of the axis
		return len(list) == 0 || math.Log(v/list[len(list)-1].Value) > math.Log(high/low)/8
	}
	for ten := math.Pow(10, math.Floor(math.Log10(low))); ten < high; ten *= 10 {
		for _, n := range numbers {
			if v := n * ten; v >= low && v <= high && apart(v) {
				list = append(list, plot.Tick{Value: v, Label: number(v)})
			}
		}
	}
	a.Tick.Marker = plot.ConstantTicks(list)
}

// number writes a round number as people do: without a power of ten up to millions.
func number(v float64) string {
	if v >= 1000 && v < 1e7 {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	return strconv.FormatFloat(v, 'g', 3, 64)
}

// Steps makes an axis linear between two values, with a number at each step.
func Steps(a *plot.Axis, low, high, step float64) {
	a.Min, a.Max = low, high
	var list []plot.Tick
	for n := math.Ceil(low/step-1e-9) + 0; n*step <= high*(1+1e-9); n++ {
		list = append(list, plot.Tick{Value: n * step, Label: strconv.FormatFloat(n*step+0, 'g', 5, 64)})
	}
	a.Tick.Marker = plot.ConstantTicks(list)
}

// Round returns the smallest of 1, 2 and 5 times a power of ten that is not below step.
func Round(step float64) float64 {
	ten := math.Pow(10, math.Floor(math.Log10(step)))
	for _, n := range [...]float64{1, 2, 5} {
		if n*ten >= step {
			return n * ten
		}
	}
	return 10 * ten
}

// said is a ticker whose numbers are written in another way.
type said struct {
	plot.Ticker
	say func(string) string
}

func (t said) Ticks(low, high float64) []plot.Tick {
	list := t.Ticker.Ticks(low, high)
	for i := range list {
		list[i].Label = t.say(list[i].Label)
	}
	return list
}
