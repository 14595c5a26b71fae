package shop

import (
	"context"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

// SaveReading saves what was measured while the arc ran, with the job's filler, wire and mode. The answer says what the
// readings of its power source teach now.
func (s *Shop) SaveReading(ctx context.Context, r book.Reading, job calc.Job) (Done, error) {
	return s.act(func(done *Done) error {
		book.Clean(&r)
		if err := teaches(&r); err != nil {
			return err
		}
		job.Amps = calc.Opt{} // measured, not chosen together with the feed
		used, err := calc.Complete(job)
		if err != nil {
			return err
		}
		r.Filler, r.Wire, r.Mode = used.Filler, used.Wire.V, used.Mode
		err = s.saveAt(ctx, done, book.ReadingKind, &r, &r.Source, func(b book.Book) error {
			list, err := Readings(ctx, b, r.Source)
			if err != nil {
				return err
			}
			lines, flagged, err := Lessons(list, r.Source, &used)
			if flagged {
				done.short = append(done.short, oddReading)
			}
			done.Lines = append(done.Lines, lines...)
			return err
		})
		done.What = "reading of " + r.Source
		return err
	})
}

// teaches refuses a reading from which nothing could be learned.
func teaches(r *book.Reading) error {
	dials := r.FeedDial.Set || r.VoltsDial.Set
	switch {
	case strings.TrimSpace(r.Source) == "":
		return wrong("a reading without a power source", `type --power-source "booth 1"`)
	case r.FeedDial.Set && r.Feed == 0:
		return wrong("a position of the feed's dial without the feed that it gives",
			"type --pull 635mm (6 seconds of wire) or --feed")
	case r.VoltsDial.Set && r.Volts == 0:
		return wrong("a position of the volts' dial without the volts that it gives",
			"type --volts as the meter shows them while the arc burns")
	case r.Amps == 0 && dials:
		return nil
	case r.Amps == 0:
		return wrong("volts without amps teach nothing",
			"type --amps as the meter shows them after the first second, or --volts-dial with its dial's position")
	case r.Feed == 0 || r.StickOut == 0:
		return wrong("a reading teaches only with feed and stick-out measured",
			"type --pull 635mm (6 seconds of wire) or --feed, and --stickout 12mm")
	}
	return nil
}

const (
	oddReading = "a reading lies far from the others and is not used: brazebooth book reading shows it"
	lookAgain  = " Look again, then: brazebooth book reading --confirm %[1]s, or --withdraw %[1]s"
)

// Lessons are lines about which of a power source's readings are flagged, and what the readings with a completed job's
// filler, wire and mode teach.
func Lessons(list []Kept[book.Reading], source string, used *calc.Job) (lines []string, flagged bool, err error) {
	l, odd, err := Learn(list, used)
	if err != nil {
		return nil, false, err
	}
	for _, i := range odd {
		id, r := list[i].Revision.ID, &list[i].Body
		lines = append(lines, fmt.Sprintf("FLAGGED: the reading %[1]s, %.0[2]f A and %.1[3]f V, is far from what the "+
			"others predict and is not used."+lookAgain, id, r.Amps, r.Volts))
	}
	phi := fmt.Sprintf("calibration voltage %.2f V (± %.2f, %s)",
		l.Phi.Mean, 2*l.Phi.Sigma, quantity.Count(l.Phi.Used, "reading"))
	volts := fmt.Sprintf("volts factor %.3f (± %.3f, %s)",
		l.Volts.Mean, 2*l.Volts.Sigma, quantity.Count(l.Volts.Used, "reading"))
	if slices.ContainsFunc(list, func(r Kept[book.Reading]) bool { return r.Body.Amps > 0 }) {
		lines = append(lines, fmt.Sprintf("%s with %s, %.3f mm, %s: %s, %s, %d flagged",
			plain.Line(source, 60), used.Filler, used.Wire.V, used.Mode, phi, volts, len(odd)))
	}
	said, off := dialLessons(list, used)
	return append(lines, said...), len(odd) > 0 || off, nil
}

// idLike matches an id or its beginning.
var idLike = regexp.MustCompile(`^[0-9a-fA-F]{4,16}$`)

// Withdraw deletes a reading that was a mistake. It is named by its id, since its name is that of its power source.
func (s *Shop) Withdraw(ctx context.Context, id string) (Done, error) {
	return s.mark(ctx, "withdrawn", id, s.deleted)
}

// Confirm marks a flagged reading as checked and right.
func (s *Shop) Confirm(ctx context.Context, id string) (Done, error) {
	return s.mark(ctx, "confirmed", id, edited(s, func(r *book.Reading, _ *Done) error {
		r.Confirmed = true
		return nil
	}))
}

func (s *Shop) mark(ctx context.Context, verb, id string, next step) (Done, error) {
	if !idLike.MatchString(id) {
		return Done{}, wrong("a reading is named by its id, not by "+quote(id),
			"brazebooth book reading lists them: type at least its first four characters")
	}
	return s.change(ctx, verb, book.ReadingKind, id, book.Resolve, next)
}
