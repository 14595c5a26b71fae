package advice

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"brazebooth/calc"
	"brazebooth/tables"
)

// Check is an assumption of a card, and the figure that another value would move most.
type Check struct {
	Field  string  `json:"field"`
	Value  string  `json:"value"`
	Why    string  `json:"why"`
	Other  string  `json:"other,omitempty"`  // what was tried in its place
	Figure string  `json:"figure,omitempty"` // the figure that this moves most
	Moves  float64 `json:"moves,omitempty"`  // by how much, %
}

// CheckFirst lists what a card assumes, strongest first: each assumption is changed in turn, with feed and travel
// kept, and the figure that moves most is named. Assumptions that move no figure come last.
func CheckFirst(card *calc.Card) []Check {
	base := card.Used
	if f, ok := card.Figure("wire_feed"); ok {
		base.Feed, base.Amps = calc.Some(f.Value), calc.Opt{}
	}
	list := make([]Check, 0, len(card.Assumed))
	for _, a := range card.Assumed {
		c := Check{Field: a.Field, Value: a.Value, Why: a.Why}
		for _, o := range otherwise(a.Field, card) {
			j := base
			o.alter(&j)
			if with, err := calc.Solve(j); err == nil {
				c.compare(card, &with, o.change)
			}
		}
		list = append(list, c)
	}
	weight := func(c Check) float64 {
		if c.Field == "metal" {
			return math.Inf(1) // it decides everything
		}
		return c.Moves
	}
	slices.SortStableFunc(list, func(a, b Check) int { return cmp.Compare(weight(b), weight(a)) })
	return list
}

// Text is the check as a sentence.
func (c *Check) Text() string {
	switch {
	case c.Field == "metal":
		return c.Why + ": it decides everything"
	case c.Figure == "":
		return c.Why
	}
	const doubles = 100 // %
	if c.Moves > doubles {
		return fmt.Sprintf("%s; %s would make %s more than twice as large", c.Why, c.Other, calc.FigureLabel(c.Figure))
	}
	return fmt.Sprintf("%s; %s would move %s by %.0f %%", c.Why, c.Other, calc.FigureLabel(c.Figure), c.Moves)
}

// watched are the figures by which an assumption is weighed; temperatures by their rise.
var watched = [...]string{"current", "net_heat", "bead_width", "wetting_angle", "base_peak_temperature",
	"zinc_boiled_halfwidth", "arc_on"}

func (c *Check) compare(card, with *calc.Card, other string) {
	for _, name := range watched {
		a, ok1 := card.Figure(name)
		b, ok2 := with.Figure(name)
		if !ok1 || !ok2 || !(a.Value > 0) {
			continue
		}
		zero := 0.0
		if a.Unit == "C" {
			zero = tables.RoomTemperature.V
		}
		if d := 100 * math.Abs((b.Value-zero)/(a.Value-zero)-1); d > c.Moves+0.05 {
			c.Figure, c.Moves, c.Other = name, d, other
		}
	}
}

// otherJob changes a job in one way; change says in words how.
type otherJob struct {
	change string
	alter  func(*calc.Job)
}

// otherwise is what a field might be instead: a step or a usual alternative away.
func otherwise(field string, card *calc.Card) []otherJob {
	u := &card.Used
	switch field {
	case "gauge", "gauge2":
		return otherGauge(field, u)
	case "stickout":
		return atEnds(tables.DefaultStickOut, " mm", func(j *calc.Job) *calc.Opt { return &j.StickOut })
	case "preheat":
		d := tables.RoomTemperature
		if u.Preheat.V != d.V {
			d = tables.IronPreheat
		}
		return atEnds(d, " °C", func(j *calc.Job) *calc.Opt { return &j.Preheat })
	case "wire":
		return otherWires(u.Wire.V)
	case "filler":
		other := "cual8"
		if u.Filler == other {
			other = "cusi3"
		}
		return []otherJob{{other, func(j *calc.Job) { j.Filler = other }}}
	case "mode":
		if u.Mode == "dip" {
			return []otherJob{{"pulsed", func(j *calc.Job) { j.Mode = "pulsed" }}}
		}
	case "coating":
		return []otherJob{{"G90", func(j *calc.Job) { j.Coating, j.Coating2 = "G90", "" }}}
	case "joint":
		return []otherJob{{"a tee", func(j *calc.Job) { j.Joint = "tee" }},
			{"a butt", func(j *calc.Job) { j.Joint = "butt" }}}
	case "aim":
		if by := tables.HandAim.V; u.Aim.V == 0 { // not judged
			toward := calc.Number(by) + " mm toward the "
			return []otherJob{{toward + "first member", func(j *calc.Job) { j.Aim = calc.Some(-by) }},
				{toward + "second member", func(j *calc.Job) { j.Aim = calc.Some(by) }}}
		}
		return []otherJob{{"the joint's own line", func(j *calc.Job) { j.Aim = calc.Some(0) }}}
	}
	return nil
}

// atEnds are the two ends of what a number might be.
func atEnds(d tables.Datum, unit string, of func(*calc.Job) *calc.Opt) (list []otherJob) {
	for _, v := range [...]float64{d.Low, d.High} {
		list = append(list, otherJob{calc.Number(v) + unit, func(j *calc.Job) { *of(j) = calc.Some(v) }})
	}
	return list
}

func otherGauge(field string, u *calc.Job) []otherJob {
	var list []otherJob
	for _, by := range [...]int{-1, 1} {
		g := u.Gauge + by
		if field == "gauge2" {
			g = u.Gauge2 + by
		}
		if g < 8 || g > 30 || g == by {
			continue
		}
		list = append(list, otherJob{fmt.Sprintf("%d ga", g), func(j *calc.Job) {
			if field == "gauge2" {
				j.Gauge2, j.Thickness2 = g, calc.Opt{}
				return
			}
			if j.Gauge2 == j.Gauge && !j.Thickness2.Set {
				j.Gauge2 = g
			}
			j.Gauge, j.Thickness = g, calc.Opt{}
		}})
	}
	return list
}

// otherWires are the usual sizes beside a wire of so many millimetres, without the one that is assumed.
func otherWires(wire float64) []otherJob {
	var list []otherJob
	for _, w := range calc.OtherWires(wire) {
		if w.ID != ".035" {
			list = append(list, otherJob{w.ID + " in", func(j *calc.Job) { j.Wire = calc.Some(w.Diameter.V) }})
		}
	}
	return list
}
