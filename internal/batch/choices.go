package batch

import (
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/field"
	"brazebooth/internal/near"
	"brazebooth/internal/plain"
)

// carried are the columns that say which row it is and nothing about the job.
var carried = [...]string{"id", "name", "note"}

// sourceName is the column of the power source whose readings narrow a row's card.
const sourceName = "power-source"

// choices knows what the columns of a table may be called.
type choices struct{ carry map[string]bool }

func newChoices(o *Options) choices {
	c := choices{map[string]bool{}}
	for _, name := range carried {
		c.carry[name] = true
	}
	for _, name := range o.Carry {
		c.carry[strings.ToLower(strings.TrimSpace(name))] = true
	}
	return c
}

// place is where a choice stands in the fixed order, in which choices are read, so that of two mistakes the same one is
// always named; power-source comes behind them all, and what is carried along has no place.
func (c choices) place(name string) (at int, f *field.Field, ok bool) {
	for _, list := range [...][]field.Field{field.OnCard(), field.OnPages()} {
		for i := range list {
			if list[i].Name == name {
				return at, &list[i], true
			}
			at++
		}
	}
	if name == sourceName {
		return at, nil, true
	}
	return -1, nil, c.carry[name]
}

// unknown is the fault of a name that is no choice.
func (c choices) unknown(line int, name string) *Fault {
	names := []string{sourceName}
	for _, list := range [...][]field.Field{field.OnCard(), field.OnPages()} {
		for i := range list {
			names = append(names, list[i].Name)
		}
	}
	name = plain.Line(name, 40)
	hint := "name it like a flag of brazebooth card, or carry it along: --carry " + name
	if like := near.Names(strings.ReplaceAll(name, "_", "-"), names); len(like) > 0 {
		hint = "type " + near.Or(like) + ", or carry it along: --carry " + name
	}
	return &Fault{Line: line, Column: name, What: "no choice of a card is called so", Hint: hint}
}

// put reads one choice of a row.
func (r *row) put(name string, f *field.Field, text string) {
	if f == nil {
		r.source = strings.TrimSpace(text)
		return
	}
	if err := f.Set(&r.job, text); err != nil && r.fault == nil {
		what, hint, ok := field.Explain(err)
		if !ok {
			what = plain.Line(err.Error(), 200)
		}
		r.fault = &Fault{r.line, name, what, hint}
	}
}

// lacking is the fault of a row that says not what is joined: nobody reads in a table of cards what was assumed for one row.
func (r *row) lacking() {
	j := &r.job
	switch {
	case r.fault != nil:
	case j.Metal == "":
		r.fault = &Fault{r.line, "metal", "none is given", "write the metal of every row, as galvanized or mild-steel"}
	case j.Gauge == 0 && !j.Thickness.Set && !j.ShaftDia.Set:
		r.fault = &Fault{r.line, "gauge", "none is given", "write every row's gauge or thickness, as 18ga, .060 or 1.5mm"}
	}
}

// codes are the cautions of a card by their codes, stops its stops in full: nobody may miss one in a table.
func codes(card *calc.Card) (stops, cautions []string) {
	for i := range card.Warnings {
		switch w := &card.Warnings[i]; w.Severity {
		case calc.Stop:
			stops = append(stops, w.Text)
		case calc.Caution:
			cautions = append(cautions, w.Code)
		}
	}
	return stops, cautions
}
