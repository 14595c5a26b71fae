package shop

import (
	"context"
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/learned"
	"brazebooth/internal/book"
	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

// dialLesson is what a power source's readings teach about one of its dials.
type dialLesson struct {
	name, unit string
	line       learned.Dial
	flagged    []string // ids of readings
	n          int      // readings with a position of the dial
	lacks      error    // why there is no line; nil if there is one
}

// dialsOf learns both dials from a power source's readings. The feed at a position does not depend on the wire. Volts
// are learned apart for a pulsed arc and for any other; used is the completed job, whose mode decides.
func dialsOf(list []Kept[book.Reading], used *calc.Job) [2]dialLesson {
	pulsed := used.Mode == "pulsed"
	dials := [...]dialLesson{{name: "the feed's dial", unit: "m/min"}, {name: "the volts' dial", unit: "V"}}
	dials[0].learn(list, func(r *book.Reading) (calc.Opt, float64, bool) { return r.FeedDial, r.Feed, true })
	dials[1].learn(list, func(r *book.Reading) (calc.Opt, float64, bool) {
		return r.VoltsDial, r.Volts, (r.Mode == "pulsed") == pulsed
	})
	dials[1].line.Pulsed = pulsed && dials[1].lacks == nil
	return dials
}

func (d *dialLesson) learn(list []Kept[book.Reading],
	of func(*book.Reading) (at calc.Opt, gives float64, counts bool)) {
	var taken []learned.DialReading
	var ids []string
	for i := range list {
		r := &list[i].Body
		if at, gives, counts := of(r); at.Set && gives > 0 && counts {
			taken = append(taken, learned.DialReading{At: at.V, Gives: gives, Confirmed: r.Confirmed})
			ids = append(ids, list[i].Revision.ID)
		}
	}
	d.n = len(taken)
	line, flagged, err := learned.FitDial(taken)
	if d.lacks = err; err == nil {
		d.line = line
	}
	for _, i := range flagged {
		d.flagged = append(d.flagged, ids[i])
	}
}

// dialLessons are lines about the dials that have readings; flagged reports whether a reading is flagged.
func dialLessons(list []Kept[book.Reading], used *calc.Job) (lines []string, flagged bool) {
	for _, d := range dialsOf(list, used) {
		if d.n == 0 {
			continue
		}
		for _, id := range d.flagged {
			flagged = true
			lines = append(lines, fmt.Sprintf("FLAGGED: the reading %[1]s lies far from what the others say of %[2]s "+
				"and is not used for it."+lookAgain, id, d.name))
		}
		lines = append(lines, d.head())
	}
	return lines, flagged
}

// head is what is known about a dial, in one line.
func (d *dialLesson) head() string {
	if m := mistake.Of(d.lacks); m != nil {
		return d.name + ": " + m.What + "; " + m.Hint
	}
	if d.lacks != nil {
		return d.name + ": not judged, " + plain.Line(d.lacks.Error(), 120)
	}
	l := &d.line
	return fmt.Sprintf("%s, from %g to %g: %s, one mark adds %s", d.name, l.Least, l.Most,
		quantity.Count(int(l.N), "reading"), quantity.Show(l.Slope, d.unit, quantity.Metric))
}

// AskDials are the positions or settings of a power source's dials that a user asks about.
type AskDials struct{ FeedDial, VoltsDial, Feed, Volts calc.Opt }

// Dials says what a power source's dials give, or which positions give the settings in ask. The job says whether the
// arc is pulsed.
func Dials(ctx context.Context, b book.Book, source string, job calc.Job, ask AskDials, sys quantity.System) (
	[]string, error) {
	used, err := calc.Complete(job)
	if err != nil {
		return nil, err
	}
	_, known, err := bodyOf[book.Source](ctx, b, book.SourceKind, source)
	if err != nil {
		return nil, err
	}
	list, err := Readings(ctx, b, known.Name)
	if err != nil {
		return nil, err
	}
	lines := []string{"power source " + plain.Line(known.Name, 60)}
	for i, d := range dialsOf(list, &used) {
		at, setting := [...]calc.Opt{ask.FeedDial, ask.VoltsDial}[i], [...]calc.Opt{ask.Feed, ask.Volts}[i]
		if ask != (AskDials{}) && !at.Set && !setting.Set {
			continue
		}
		lines = append(lines, d.head())
		if d.lacks == nil {
			lines = append(lines, d.answers(at, setting, sys)...)
		}
	}
	return lines, nil
}

// steps is how many equal steps a dial's table has from its least to its highest position.
const steps = 6

// answers are a dial's table, or the answer for the asked position or setting.
func (d *dialLesson) answers(at, setting calc.Opt, sys quantity.System) (lines []string) {
	if setting.Set {
		lines = append(lines, d.position(setting.V, sys))
	}
	if at.Set {
		lines = append(lines, d.gives(at.V, sys))
	}
	if !at.Set && !setting.Set {
		for i := range steps + 1 {
			lines = append(lines, d.gives(d.line.Least+(d.line.Most-d.line.Least)*float64(i)/steps, sys))
		}
	}
	return lines
}

func (d *dialLesson) gives(at float64, sys quantity.System) string {
	y, low, high, err := d.line.At(at)
	if err != nil {
		return fmt.Sprintf("  %.3g: not judged, because it was read from %g to %g; read it there", at, d.line.Least,
			d.line.Most)
	}
	v, from, to := quantity.Ends(y, low, high, d.unit, sys.Lead())
	return fmt.Sprintf("  dial %.3g → %s %s (%s to %s)", at, v, quantity.Label(d.unit, sys.Lead()), from, to)
}

func (d *dialLesson) position(setting float64, sys quantity.System) string {
	x, low, high, err := d.line.Where(setting)
	if err != nil {
		return fmt.Sprintf("  %s: not judged, because it lies outside what was read from %g to %g, or the readings "+
			"scatter too much; read the dial there", quantity.Show(setting, d.unit, sys), d.line.Least, d.line.Most)
	}
	at, from, to := quantity.Ends(x, low, high, "marks", sys.Lead())
	return fmt.Sprintf("  %s → dial %s (%s to %s)", quantity.Show(setting, d.unit, sys), at, from, to)
}

// ReadingText are the measured values of a reading in a few words.
func ReadingText(r *book.Reading) string {
	var parts []string
	for _, f := range [...]struct {
		v    calc.Opt
		form string
	}{
		{r.FeedDial, "feed's dial %g"}, {some(r.Feed), "%.2f m/min"}, {some(r.StickOut), "%.0f mm"},
		{some(r.Amps), "%.0f A"}, {r.VoltsDial, "volts' dial %g"}, {some(r.Volts), "%.1f V"},
	} {
		if f.v.Set {
			parts = append(parts, fmt.Sprintf(f.form, f.v.V))
		}
	}
	return strings.Join(parts, ", ")
}
