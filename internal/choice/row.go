package choice

import (
	"strconv"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// Row is one value that a choice may have.
type Row struct {
	ID    string // what Set takes for it
	Name  string // as people say it
	Fact  string // its one figure, short
	Line  string // what it means, one plain sentence
	Brief string // a few words of it for a narrow list, "" for none
	More  string // what else there is to say of it
	Also  string // lower-case words that it answers to besides name and line
	Tip   string // a few words after the id on a command line, "" for none
	said  string // the sentence where it is heard and not seen, "" for Line
}

// Said is the row's sentence where it is heard and not seen.
func (r *Row) Said() string {
	if r.said == "" {
		return r.Line
	}
	return r.said
}

// Same is the id of following the first member.
const Same = "same"

// Present is what the values of a choice depend on: the present card. The zero Present is a command line's, which has
// no card.
type Present struct {
	Card  *calc.Card
	Job   calc.Job // that another choice would be put on
	Units quantity.System
	Solve func(calc.Job) (calc.Card, error)
}

// values are what a choice may be.
type values struct {
	Find  func(string) (string, error)        // the id of a name; nil for sizes
	Typed func(*Present, string) (Row, error) // the row of a size that was typed; nil where no size has a name
	About func(*Present) string               // what holds for all rows; nil for nothing

	rows    func(*Present) []Row                 // nil for numbers of any size
	reasons func(id string, p *Present) []Reason // nil where a row rests on nothing
	sample  bool                                 // the rows are but a few of the sizes
}

// Rows are the values that the choice is usually given, following the first member before them; none for a number of
// any size.
func (c *Choice) Rows(p *Present) []Row {
	rows := c.Standard(p)
	if c.sample {
		rows = c.rows(p)
	}
	if c.Same != "" {
		rows = append([]Row{{ID: Same, Name: Same, Line: c.Same}}, rows...)
	}
	return rows
}

// Standard are the values that have names or are standard sizes; none where any size is as good.
func (c *Choice) Standard(p *Present) []Row {
	if c.rows == nil || c.sample {
		return nil
	}
	return c.rows(p)
}

// Sized reports whether typing is a size rather than a name.
func (c *Choice) Sized() bool { return c.Typed != nil }

// Reasons are what a row rests on.
func (c *Choice) Reasons(p *Present, id string) []Reason {
	if c.reasons == nil {
		return nil
	}
	return c.reasons(id, p)
}

// Now is the id of the row that a card has.
func (c *Choice) Now(card *calc.Card) string {
	switch {
	case c.Same != "" && !c.Given(&card.Job):
		return Same
	case c.Kind == 0:
		return *c.id(&card.Used)
	case c.Kind == quantity.FieldSize:
		gauge, mm := c.sheet(&card.Used)
		return sheetID(*gauge, *mm)
	case c.Kind == quantity.FieldWire:
		return wireID(c.At(&card.Used).V)
	}
	return sizeID(c.At(&card.Used).V)
}

// sizeID tells one length from another.
func sizeID(mm float64) string { return strconv.FormatFloat(mm, 'g', -1, 64) + "mm" }

func rowsOf[T any](all []T, row func(*T) Row) []Row {
	list := make([]Row, len(all))
	for i := range all {
		list[i] = row(&all[i])
		if list[i].Name == "" {
			list[i].Name = list[i].ID
		}
	}
	return list
}

// Reason is one line of what a row rests on.
type Reason struct{ Label, Value, Source, Known string }

// figure is the reason that a table's figure gives.
func figure(label string, d tables.Datum, sys quantity.System) Reason {
	if sys == quantity.Both {
		sys = quantity.Metric
	}
	number, band := quantity.Band(d.V, d.Low, d.High, d.Unit, sys)
	value := strings.TrimSpace(number + " " + quantity.Label(d.Unit, sys))
	if d.Low != d.High {
		value += " (" + band + ")"
	}
	return Reason{label, value, d.Source, string(d.Known)}
}
