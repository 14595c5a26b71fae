package cli

import (
	"context"
	"regexp"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

func (d *Deps) bookReading() *cobra.Command {
	var pull, withdraw, confirm, lot, note string
	cmd := &cobra.Command{
		Use: "reading", Short: "What was measured while the arc ran; without amps and volts it lists the readings",
		Long: `Keep what was measured at a booth while the arc ran, for one power source: wire feed from a timed pull (--feed, or --pull
with the length of 6 seconds), stick-out, and the meter's amps and volts after the first second. From the readings the
program learns this power source's own current and volts. One that lies far from what the others predict is kept, flagged,
and used only when it is confirmed; a reading that was a mistake is withdrawn. Without amps and volts the readings are
listed with what they teach.`,
		Example: `  brazebooth book reading --power-source "booth 1" --pull 635mm --stickout 12mm --amps 96 --volts 15.2
  brazebooth book reading --power-source "booth 1"
  brazebooth book reading --withdraw 3f0a`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			switch marked := withdraw + confirm; {
			case withdraw != "" && confirm != "" || marked != "" && (cmd.Flags().Changed("amps") || cmd.Flags().Changed("volts")):
				return wrong("more than one thing at once", "withdraw, confirm and keep readings one by one")
			case marked != "" && !idLike.MatchString(marked):
				return wrong("a reading is meant by its id, not by "+quote(marked), "brazebooth book reading lists them: type at least the first four letters")
			case withdraw != "":
				return d.mark(cmd, []string{withdraw}, "reading", "withdrawn", func(a book.Author, r *book.Revision) (book.Revision, error) { return a.Delete(r) })
			case confirm != "":
				return d.mark(cmd, []string{confirm}, "reading", "confirmed", confirmed)
			}
			job, err := jobOf(cmd)
			if err != nil {
				return err
			}
			if !job.Amps.Set && !job.Volts.Set {
				return d.listReadings(cmd, job)
			}
			if !job.Amps.Set {
				return wrong("volts without amps teach nothing", "type --amps as the meter shows them after the first second")
			}
			r, err := readingOf(cmd, job, pull)
			if err != nil {
				return err
			}
			r.Lot, r.Note = lot, note
			r.Clean()
			first, err := d.source(cmd, &r.Source)
			if err != nil {
				return err
			}
			inBook, err := d.keep(cmd, book.ReadingKind, r, "reading of "+r.Source, first...)
			if err != nil || !inBook {
				return err
			}
			return d.afterwards(cmd, func() error {
				return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
					return d.tellLearned(ctx, b, r.Source, r.Filler, r.Wire, r.Mode)
				})
			})
		},
	}
	bind(cmd, "filler", "wire", "mode", "feed", "amps", "volts", "travel", "stickout", "flow")
	cmd.Flags().StringVar(&pull, "pull", "", "length of wire that 6 seconds feed: 635mm or 25in")
	cmd.Flags().StringVar(&withdraw, "withdraw", "", "id of a reading that was a mistake")
	cmd.Flags().StringVar(&confirm, "confirm", "", "id of a flagged reading that was looked at again and stands")
	cmd.Flags().StringVar(&lot, "lot", "", "lot of the wire")
	cmd.Flags().StringVar(&note, "note", "", "anything worth knowing")
	cmd.Flags().String("power-source", "", "name of the power source")
	return cmd
}

func confirmed(a book.Author, r *book.Revision) (book.Revision, error) {
	if r.Deleted {
		return *r, wrong("this reading was withdrawn", "brazebooth book restore --kind reading ID takes that back")
	}
	d, err := book.Body[book.Reading](r)
	if err != nil {
		return *r, err
	}
	d.Confirmed = true
	return a.Change(r, d)
}

// pullSeconds is how long a wire pull takes.
const pullSeconds = 6

// readingOf reads the flags of one reading.
func readingOf(cmd *cobra.Command, job calc.Job, pull string) (book.Reading, error) {
	source := strings.TrimSpace(cmd.Flags().Lookup("power-source").Value.String())
	if source == "" {
		return book.Reading{}, wrong("a reading of no power source", `type --power-source "booth 1"`)
	}
	if pull != "" {
		l, err := quantity.ParseLength(pull)
		if err != nil {
			return book.Reading{}, inFlag("pull", err)
		}
		if job.Feed.Set {
			return book.Reading{}, wrong("--pull together with --feed", "give one of them")
		}
		job.Feed = calc.Some(float64(l) * 60 / pullSeconds / 1000)
	}
	if !job.Feed.Set || !job.StickOut.Set {
		return book.Reading{}, wrong("a reading teaches only with feed and stick-out measured", "type --pull 635mm (6 seconds of wire) or --feed, and --stickout 12mm")
	}
	amps := job.Amps
	job.Amps = calc.Opt{}
	used, err := calc.Complete(job)
	if err != nil {
		return book.Reading{}, err
	}
	return book.Reading{Source: source, Filler: used.Filler, Wire: used.Wire.V, Mode: used.Mode, Feed: job.Feed.V, StickOut: job.StickOut.V, Amps: amps.V, Volts: job.Volts.V, Travel: job.Travel.V, Flow: job.Flow.V}, nil
}

// listReadings shows what stands, and what it teaches.
func (d *Deps) listReadings(cmd *cobra.Command, job calc.Job) error {
	used, err := calc.Complete(job)
	if err != nil {
		return err
	}
	source := strings.TrimSpace(cmd.Flags().Lookup("power-source").Value.String())
	return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
		list, err := book.Readings(ctx, b, source)
		if err != nil {
			return err
		}
		if _, err := book.Learn(list, used.Filler, used.Wire.V, used.Mode); err != nil {
			return err
		}
		for i := range list {
			r := &list[i].Reading
			flag := ""
			if list[i].Flagged {
				flag = "  FLAGGED: far from the others; look again, then confirm or withdraw it"
			}
			if err := d.tell("%s %s %-16s %s %.3f mm %s: %.2f m/min, %.0f mm, %.0f A, %.1f V%s\n", list[i].Revision.ID, list[i].Revision.At[:16], plain.Line(r.Source, 16), r.Filler, r.Wire, r.Mode, r.Feed, r.StickOut, r.Amps, r.Volts, flag); err != nil {
				return err
			}
		}
		if source == "" || len(list) == 0 {
			return d.say("%s\n", quantity.Count(len(list), "reading"))
		}
		return d.tellLearned(ctx, b, source, used.Filler, used.Wire.V, used.Mode)
	})
}

// idLike is an id or its beginning.
var idLike = regexp.MustCompile(`^[0-9a-fA-F]{4,16}$`)

// tellLearned says what a power source's readings teach by now.
func (d *Deps) tellLearned(ctx context.Context, b book.Book, source, filler string, wire float64, mode string) error {
	list, err := book.Readings(ctx, b, source)
	if err != nil {
		return err
	}
	l, err := book.Learn(list, filler, wire, mode)
	if err != nil {
		return err
	}
	flagged := 0
	for _, r := range list {
		if r.Flagged {
			flagged++
			if err := d.tell("FLAGGED: the reading %s, %.0f A and %.1f V, is far from what the others predict and is not used. Look again, then: brazebooth book reading --confirm %s, or --withdraw %s\n",
				r.Revision.ID, r.Reading.Amps, r.Reading.Volts, r.Revision.ID, r.Revision.ID); err != nil {
				return err
			}
		}
	}
	return d.tell("%s with %s, %.3f mm, %s: calibration voltage %.2f V (± %.2f, %s), volts factor %.3f (± %.3f, %s), %d flagged\n",
		plain.Line(source, 60), filler, wire, mode, l.Phi.Mean, 2*l.Phi.Sigma, quantity.Count(l.Phi.Used, "reading"), l.Volts.Mean, 2*l.Volts.Sigma, quantity.Count(l.Volts.Used, "reading"), flagged)
}
