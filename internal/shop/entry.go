package shop

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/choice"
	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

// entry is the parsed input for a record that is entered by hand.
type entry struct {
	name        string
	note        *string  // nil if not given
	job         calc.Job // a plate's figures, a spool's filler and wire
	least, most float64  // A, on a plate; 0 if not given
	full, used  float64  // g
	said        []string // how ambiguous numbers were read
}

// SaveEntry saves a record that is entered by hand, of kind source, spool or person. If the book has one of this name,
// it changes only the given values. The keys of given are the names of the command's flags.
func (s *Shop) SaveEntry(ctx context.Context, kind book.Kind, given map[string]string) (Done, error) {
	e, err := read(given)
	if err != nil {
		return Done{}, s.Told(err)
	}
	var done Done
	switch kind {
	case book.SourceKind:
		e.name = plain.Line(given["name"], 60)
		done, err = entered(ctx, s, kind, e.name, e.source, sourceText)
	case book.SpoolKind:
		e.name = plain.Line(given["lot"], 60)
		done, err = entered(ctx, s, kind, e.name, e.spool, spoolText)
	default:
		e.name = plain.Line(given["name"], 24)
		done, err = entered(ctx, s, book.PersonKind, e.name, e.person, personText)
	}
	done.Remarks = append(e.said, done.Remarks...)
	return done, err
}

var nameless = map[book.Kind]error{
	book.SourceKind: wrong("a power source without a name", `type --name "booth 1"`),
	book.SpoolKind:  wrong("a spool without a lot", "type what is on it: --lot A17"),
	book.PersonKind: wrong("a person without a name", "type a short one: brazebooth book person ana"),
}

func read(given map[string]string) (*entry, error) {
	e := new(entry)
	if note, ok := given["note"]; ok {
		e.note = &note
	}
	for _, name := range [...]string{"rated-amps", "rated-duty", "nozzle-bore", "filler", "wire"} {
		text, ok := given[name]
		if !ok {
			continue
		}
		c := choice.ByName(name)
		if err := c.Set(&e.job, text); err != nil {
			return nil, mistake.Within("--"+name, err)
		}
		if said := quantity.Reading(c.Kind, text, quantity.Metric); said != "" {
			e.said = append(e.said, "--"+name+": "+said)
		}
	}
	for _, n := range [...]struct {
		name string
		to   *float64
		read func(string) (float64, error)
	}{
		{"least-amps", &e.least, amps}, {"most-amps", &e.most, amps},
		{"full", &e.full, grams}, {"used", &e.used, grams},
	} {
		if text := given[n.name]; text != "" {
			v, err := n.read(text)
			if err != nil {
				return nil, mistake.Within("--"+n.name, err)
			}
			*n.to = v
		}
	}
	return e, nil
}

func amps(text string) (float64, error) {
	return quantity.Read(quantity.FieldCurrent, text)
}

const gramsHint = "type grams, or the unit: --full 4540, 15kg or 10lb, --used 120; --used -120 undoes a " +
	"mistake"

func grams(text string) (float64, error) {
	v, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	if err != nil {
		v, err = quantity.Read(quantity.FieldMass, text)
		v *= 1000
	}
	if err != nil || !(math.Abs(v) < 1e6) {
		return 0, wrong(quote(text)+" is not a weight of wire, or is more than a tonne", gramsHint)
	}
	return v, nil
}

// entered saves a new record of a name, or a change of the one in the book.
func entered[T comparable](ctx context.Context, s *Shop, kind book.Kind, name string,
	next func(was T, known bool) (T, error), text func(*T) string) (Done, error) {
	if strings.TrimSpace(name) == "" {
		return Done{}, nameless[kind]
	}
	err := s.with(ctx, false, func(b book.Book) error { _, err := book.Named(ctx, b, kind, name); return err })
	if err == nil {
		return s.change(ctx, "changed", kind, name, book.Named, edited(s, func(record *T, done *Done) error {
			now, err := next(*record, true)
			if done.What = text(&now); err == nil && now == *record {
				done.What += "; nothing to change"
				err = errSame
			}
			*record = now
			return err
		}))
	}
	return s.act(func(done *Done) error {
		if !errors.Is(err, book.ErrNone) { // no server: a second record of the name would hide the first
			return err
		}
		var none T
		now, err := next(none, false)
		if err != nil {
			return err
		}
		done.What = text(&now)
		return s.save(ctx, done, kind, now)
	})
}

func (e *entry) person(was book.Person, known bool) (book.Person, error) {
	if !known {
		was.Name = e.name
	}
	return was, nil
}

func (e *entry) source(was book.Source, known bool) (book.Source, error) {
	if !known {
		was.Name = e.name
	}
	for _, f := range [...]struct {
		from calc.Opt
		to   *float64
	}{
		{e.job.RatedAmps, &was.RatedAmps}, {e.job.RatedDuty, &was.RatedDuty}, {e.job.NozzleBore, &was.Nozzle},
		{some(e.least), &was.LeastAmps}, {some(e.most), &was.MostAmps},
	} {
		if f.from.Set {
			*f.to = f.from.V
		}
	}
	if e.note != nil {
		was.Note = *e.note
	}
	book.Clean(&was)
	if was.LeastAmps > 0 && was.MostAmps > 0 && was.LeastAmps > was.MostAmps {
		what := fmt.Sprintf("a plate from %.0f to %.0f A", was.LeastAmps, was.MostAmps)
		return was, wrong(what, "--least-amps is the smaller of the two")
	}
	return was, nil
}

// spool is a spool with the newly given full weight, less the wire that was used.
func (e *entry) spool(was book.Spool, known bool) (book.Spool, error) {
	if e.full < 0 {
		return was, wrong("a full spool of less than nothing", gramsHint)
	}
	if !known {
		complete, err := calc.Complete(e.job)
		switch {
		case err != nil:
			return was, err
		case e.full == 0:
			return was, wrong("a new spool without its weight", "type --full 15kg, 10lb or 4540 (grams)")
		}
		was = book.Spool{Lot: e.name, Filler: complete.Filler, Wire: complete.Wire.V}
	}
	if e.full > 0 {
		was.Left, was.Full = was.Left+e.full-was.Full, e.full
	}
	was.Left -= e.used
	if e.job.Filler != "" {
		was.Filler = e.job.Filler
	}
	if e.job.Wire.Set {
		was.Wire = e.job.Wire.V
	}
	if e.note != nil {
		was.Note = *e.note
	}
	book.Clean(&was)
	if was.Left < 0 || was.Left > was.Full {
		what := fmt.Sprintf("%.0f g cannot be left of a spool of %.0f g", was.Left, was.Full)
		return was, wrong(what, "check the grams; --full corrects the spool's weight")
	}
	return was, nil
}

// some is a typed figure; it is unset if zero.
func some(v float64) calc.Opt { return calc.Opt{Set: v != 0, V: v} }
