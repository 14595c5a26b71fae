package choice

import (
	"math"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/mistake"
	"brazebooth/internal/quantity"
)

// Set puts typed text on a job; after an error the job is unchanged. A thickness replaces a gauge and the other way
// round, and another metal brings its own coating.
//
// The error is *mistake.Error, with what to type instead.
func (c *Choice) Set(j *calc.Job, text string) error {
	switch {
	case c.Kind == 0:
		id, err := c.Find(text)
		if err == nil {
			c.name(j, id)
		}
		return err
	case c.Kind == quantity.FieldSize:
		s, err := quantity.ParseSize(text)
		if err == nil {
			gauge, mm := c.sheet(j)
			*gauge, *mm = s.Gauge, calc.Opt{Set: s.Gauge == 0, V: s.MM}
		}
		return err
	case c.Kind.IsPrice():
		return price(j, c, text)
	}
	v, err := c.number(text)
	if err == nil {
		*c.At(j) = calc.Some(v)
	}
	return err
}

// number reads a number in Unit, within the range that a job accepts for this choice.
func (c *Choice) number(text string) (float64, error) {
	low, high, _, _ := calc.Span(c.Field())
	if c.Kind == quantity.FieldFeed {
		const perMinute = 0.06 // mm/s to m/min
		v, err := quantity.ReadWithin(c.Kind, text, low/perMinute, high/perMinute)
		return v * perMinute, err
	}
	return quantity.ReadWithin(c.Kind, text, low, high)
}

// Take puts a row's value on a job. Same leaves the choice open.
func (c *Choice) Take(j *calc.Job, id string) error {
	if id == Same && c.Same != "" {
		c.Clear(j)
		return nil
	}
	return c.Set(j, id)
}

// name puts an id on a job. The coating belongs to its sheet, so another metal brings its own.
func (c *Choice) name(j *calc.Job, id string) {
	at := c.id(j)
	if coating, metal := strings.CutPrefix(c.Name, "metal"); metal && (id == "" || *at != id) {
		*field[string](j, "coating"+coating) = ""
	}
	*at = id
}

func prices(j *calc.Job) []*calc.Opt {
	return []*calc.Opt{&j.WirePrice, &j.GasPrice, &j.LabourRate, &j.SteelPrice}
}

// price reads a price and its currency. Two currencies in one job are refused, because they cannot be added.
func price(j *calc.Job, of *Choice, text string) error {
	o := of.At(j)
	v, c, err := quantity.ParsePrice(of.Kind, text)
	if err != nil {
		return err
	}
	for _, p := range prices(j) {
		if c != "" && j.Currency != "" && c != j.Currency && p != o && p.Set {
			return mistake.New("two currencies, "+j.Currency+" and "+c, "give all prices in one")
		}
	}
	if c != "" {
		j.Currency = c
	}
	*o = calc.Some(v)
	return nil
}

// Turned is the job with a setting moved from a value, in Unit, to the next full step up (up > 0) or down. A value that
// nobody typed is shown rounded as on a dial; the step starts at the rounded value, otherwise it might not be visible.
func (c *Choice) Turned(j calc.Job, from float64, up int, sys quantity.System) calc.Job {
	size := c.step[0]
	if sys == quantity.Inch {
		size = c.step[1]
	}
	if !c.Given(&j) {
		from = quantity.OnDial(c.Figure, from, c.Unit, sys)
	}
	n := math.Floor(from/size+0.001) + 1
	if up <= 0 {
		n = math.Ceil(from/size-0.001) - 1
	}
	*c.At(&j) = calc.Some(n * size)
	return j
}
