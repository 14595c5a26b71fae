package field

import (
	"brazebooth/calc"
	"brazebooth/internal/mistake"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// named finds the row that text means and puts its id.
func named(id *string, text string, find func(string) (string, error)) error {
	found, err := find(text)
	if err == nil {
		*id = found
	}
	return err
}

// hazardIDs reads what stops a job, in a hand's words too.
func hazardIDs(s string) (string, error) { return calc.HazardIDs(tables.HazardsSaid(s)) }

func metalID(s string) (string, error)   { m, err := tables.FindMetal(s); return m.ID, err }
func coatingID(s string) (string, error) { c, err := tables.FindCoating(s); return c.ID, err }
func fillerID(s string) (string, error)  { f, err := tables.FindFiller(s); return f.ID, err }
func gasID(s string) (string, error)     { g, err := tables.FindGas(s); return g.ID, err }

func optionID(find func(string) (tables.Option, error)) func(string) (string, error) {
	return func(s string) (string, error) { o, err := find(s); return o.ID, err }
}

// size reads a quantity into a number of the job; scale turns the parser's unit into the job's.
func size[Q ~float64](o *calc.Opt, text string, parse func(string) (Q, error), scale float64) error {
	v, err := parse(text)
	if err == nil {
		*o = calc.Some(float64(v) * scale)
	}
	return err
}

// sized is a choice that is a number; scale turns the parser's unit into the job's.
func sized[Q ~float64](name, usage, unit string, at func(*calc.Job) *calc.Opt, parse func(string) (Q, error), kind quantity.Field, scale float64) Field {
	return Field{Name: name, Usage: usage, Unit: unit, At: at, Kind: kind,
		Set: func(j *calc.Job, s string) error { return size(at(j), s, parse, scale) }}
}

// suggested is a choice that the card looks for where it is not given.
func (f Field) suggested() Field {
	f.Without = "one is suggested"
	return f
}

// priced is the price of a kilogram; it takes its currency along.
func priced(name, usage string, at func(*calc.Job) *calc.Opt) Field {
	return Field{Name: name, Usage: usage, Unit: "per kg", At: at, Kind: quantity.FieldPrice,
		Set: func(j *calc.Job, s string) error { return price(j, at(j), s) }}
}

// thickness reads a gauge or a thickness.
func thickness(gauge *int, mm *calc.Opt, text string) error {
	s, err := quantity.ParseSize(text)
	switch {
	case err != nil:
	case s.Gauge != 0:
		*gauge = s.Gauge
	default:
		*mm = calc.Some(float64(s.Length))
	}
	return err
}

// price reads a price and takes its currency; two currencies in one job cannot be added.
func price(j *calc.Job, o *calc.Opt, text string) error {
	v, c, err := quantity.ParsePrice(text)
	if err != nil {
		return err
	}
	others := 0
	for _, p := range [...]*calc.Opt{&j.WirePrice, &j.GasPrice, &j.LabourRate, &j.SteelPrice} {
		if p != o && p.Set {
			others++
		}
	}
	if c != "" && j.Currency != "" && c != j.Currency && others > 0 {
		return mistake.New("two currencies, "+j.Currency+" and "+c, "give all prices in one")
	}
	if c != "" {
		j.Currency = c
	}
	*o = calc.Some(float64(v))
	return nil
}

func metalIDs() []string { return ids(tables.Metals(), func(m *tables.Metal) string { return m.ID }) }
func coatingIDs() []string {
	return ids(tables.Coatings(), func(c *tables.Coating) string { return c.ID })
}
func fillerIDs() []string {
	return ids(tables.Fillers(), func(f *tables.Filler) string { return f.ID })
}
func gasIDs() []string { return ids(tables.Gases(), func(g *tables.Gas) string { return g.ID }) }

func optionIDs(rows func() []tables.Option) func() []string {
	return func() []string { return ids(rows(), func(o *tables.Option) string { return o.ID }) }
}

func ids[T any](rows []T, id func(*T) string) []string {
	list := make([]string, 0, len(rows))
	for i := range rows {
		list = append(list, id(&rows[i]))
	}
	return list
}
