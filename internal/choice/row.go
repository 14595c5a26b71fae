package choice

import (
	"strconv"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// Row is one value of a choice.
type Row struct {
	ID    string // the text that Set accepts for it
	Name  string // as people say it
	Fact  string // its one figure, short
	Line  string // its meaning in one plain sentence
	Brief string // Line in a few words for a narrow list, "" for none
	More  string // further explanation
	Also  string // lower-case words that also find it, beside name and line
	Tip   string // a few words after the id on a command line, "" for none
	said  string // Line as it is read out, "" to read out Line itself
}

// Said is the row's sentence as it is read out.
func (r *Row) Said() string {
	if r.said == "" {
		return r.Line
	}
	return r.said
}

// Same is the id of the row "as the first member".
const Same = "same"

// Present is what the values of a choice depend on: the present card. On a command line, which has no card, it is the
// zero Present.
type Present struct {
	Card  *calc.Card
	Job   calc.Job // another choice is tried on this job
	Units quantity.System
	Solve func(calc.Job) (calc.Card, error)
}

// values are the possible values of a choice.
type values struct {
	Find  func(string) (string, error)        // the id that a name stands for; nil for sizes
	Typed func(*Present, string) (Row, error) // the row of a typed size; nil if the choice has no named sizes
	About func(*Present) string               // what holds for all rows; nil for nothing

	rows    func(*Present) []Row                 // nil for a number of any size
	reasons func(id string, p *Present) []Reason // nil if the rows need no reasons
	sample  bool                                 // the rows are only examples: other sizes can be typed
}

// Rows are the usual values of the choice, with "as the first member" before them; none for a number of any size.
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

// Standard are the values that have names or are standard sizes; none if any size is as good as another.
func (c *Choice) Standard(p *Present) []Row {
	if c.rows == nil || c.sample {
		return nil
	}
	return c.rows(p)
}

// Sized reports whether a size is typed and not a name.
func (c *Choice) Sized() bool { return c.Typed != nil }

// Reasons are the facts behind a row.
func (c *Choice) Reasons(p *Present, id string) []Reason {
	if c.reasons == nil {
		return nil
	}
	return c.reasons(id, p)
}

// Now is the id of the row that a card uses.
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

// Reason is one fact behind a row.
type Reason struct{ Label, Value, Source, Known string }

// figure is a table's figure as a reason.
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
