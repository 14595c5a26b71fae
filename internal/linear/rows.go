package linear

import (
	"fmt"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// rows are the answers of a choice that a question lists, none for a number of any size.
func (t *talk) rows(c *choice.Choice) []choice.Row {
	solve := func(job calc.Job) (calc.Card, error) { return calc.Answer(t.ctx, job, nil) }
	return c.Standard(&choice.Present{Card: &t.card, Job: t.job, Units: t.units, Solve: solve})
}

// wireName is a wire as its spool says it, with its diameter.
func wireName(mm float64) string {
	w, ok := tables.WireNear(mm)
	switch {
	case !ok:
		return quantity.Show(mm, "mm", quantity.Metric)
	case w.Inch > 0:
		return fmt.Sprintf("%s in, %.3f mm", w.ID, mm)
	}
	return quantity.Show(mm, "mm", quantity.Metric)
}
