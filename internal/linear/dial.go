package linear

import (
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/mistake"
	"brazebooth/internal/quantity"
)

// keepDial saves what the power source delivers at a position of one of its dials, and puts what its readings teach on
// the card.
func (t *talk) keepDial(rest string) {
	if t.taught == "" {
		t.refuse("a dial of which power source?", "type power-source and its name; brazebooth book source enters one")
		return
	}
	r, err := dialRead(rest)
	if t.failed("", err) {
		return
	}
	job, said, err := t.o.Book.Measure(t.ctx, t.taught, r, 0, t.job)
	if t.isKept(said, err) {
		t.swap(job, "The card has what the dials of "+t.taught+" taught; results reads where they stand.")
	}
}

// dialRead reads "feed 4.2 5.1 m/min" or "volts 3 15.1": which dial, its position, what the power source delivers.
func dialRead(text string) (r calc.Reading, err error) {
	name, rest := cutWord(text)
	at, gives := cutWord(rest)
	c := choice.Called(strings.ToLower(name))
	if c == nil || c.Name != "feed" && c.Name != "volts" || gives == "" {
		return r, mistake.New("this needs a dial, its position and what it gives",
			"type dial feed 4.2 5.1m/min, or dial volts 3 15.1")
	}
	mark, err := quantity.Read(quantity.FieldMark, at)
	if err != nil {
		return r, err
	}
	var j calc.Job
	if err := c.Set(&j, gives); err != nil {
		return r, err
	}
	if c.Name == "feed" {
		return calc.Reading{Feed: j.Feed.V, FeedDial: calc.Some(mark)}, nil
	}
	return calc.Reading{Volts: j.Volts.V, VoltsDial: calc.Some(mark)}, nil
}
