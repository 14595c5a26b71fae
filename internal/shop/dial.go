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

// dialLesson is what a power source's readings say of one of its dials.
type dialLesson struct {
	name, unit string
	line       learned.Dial
	flagged    []int // places in the list of readings
	n          int   // readings that tell of the dial
	lacks      error // why there is no line
	put        func(j *calc.Job)
}

// dialsOf learns both dials from a power source's readings. The feed at a position is the drive's, whatever wire runs
// in it; volts count for a pulsed arc or for any other, as the completed job has it.
func dialsOf(list []Kept[book.Reading], used *calc.Job) [2]dialLesson {
	pulsed := used.Mode == "pulsed"
	feed := learnDial(list, func(r *book.Reading) (calc.Opt, float64, bool) { return r.FeedDial, r.Feed, true })
	volts := learnDial(list, func(r *book.Reading) (calc.Opt, float64, bool) {
		return r.VoltsDial, r.Volts, (r.Mode == "pulsed") == pulsed
	})
	volts.line.Pulsed = pulsed && volts.lacks == nil
	feed.name, feed.unit = "the feed's dial", "m/min"
	volts.name, volts.unit = "the volts' dial", "V"
	feed.put = func(j *calc.Job) { j.FeedDial = feed.line }
	volts.put = func(j *calc.Job) { j.VoltsDial = volts.line }
	return [...]dialLesson{feed, volts}
}

func learnDial(list []Kept[book.Reading], of func(*book.Reading) (at calc.Opt, gives float64, counts bool)) dialLesson {
	var taken []learned.DialReading
	var places []int
	for i := range list {
		r := &list[i].Body
		if at, gives, counts := of(r); at.Set && gives > 0 && counts {
			taken = append(taken, learned.DialReading{At: at.V, Gives: gives, Confirmed: r.Confirmed})
			places = append(places, i)
		}
	}
	d := dialLesson{n: len(taken)}
	line, flagged, err := learned.FitDial(taken)
	if d.lacks = err; err == nil {
		d.line = line
	}
	for _, i := range flagged {
		d.flagged = append(d.flagged, places[i])
	}
	return d
}

// dialLessons are lines about the dials of which something was read, and whether a reading is flagged.
func dialLessons(list []Kept[book.Reading], used *calc.Job) (lines []string, flagged bool) {
	for _, d := range dialsOf(list, used) {
		if d.n == 0 {
			continue
		}
		for _, i := range d.flagged {
			id := list[i].Revision.ID
			flagged = true
			lines = append(lines, fmt.Sprintf("FLAGGED: the reading %s lies far from where the others put %s and "+
				"is not used for it. Look again, then: brazebooth book reading --confirm %s, or --withdraw %s",
				id, d.name, id, id))
		}
		lines = append(lines, d.head())
	}
	return lines, flagged
}

// head says what is known of a dial in a line.
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

// AskDials are positions of a power source's dials, or settings, of which somebody asks.
type AskDials struct{ FeedDial, VoltsDial, Feed, Volts calc.Opt }

// Dials says what a power source's dials give, or where they stand for what is asked. The job says whether the arc is
// pulsed.
func Dials(ctx context.Context, b book.Book, source string, job calc.Job, ask AskDials, sys quantity.System) (
	[]string, error) {
	used, err := calc.Complete(job)
	if err != nil {
		return nil, err
	}
	r, err := book.Resolve(ctx, b, book.SourceKind, source)
	if err != nil {
		return nil, err
	}
	known, err := book.Body[book.Source](&r)
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

// answers are a dial's table, or what was asked of it.
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

// ReadingText is what was measured, in a few words.
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
