package cli

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

func (d *Deps) bookTrial() *cobra.Command {
	var t book.Trial
	cmd := &cobra.Command{
		Use: "trial [NAME]", Short: "Keep a test bead: how it was laid, what it showed, what came of it",
		Long:    "Keep a test bead of a kept card: the card's job with the flags that were set otherwise, what was seen, and the verdict.",
		Example: `  brazebooth book trial "tank lid" --travel 7.5 --seen rolled-edge --verdict bad --peel "lets go at the toe"`,
		RunE: func(cmd *cobra.Command, args []string) error {
			if !slices.Contains([]string{"good", "acceptable", "bad"}, t.Verdict) {
				return wrong("a trial wants a verdict", "type --verdict good, acceptable or bad")
			}
			if t.Seen != "" {
				ids, err := calc.SeenIDs(t.Seen)
				if err != nil {
					return err
				}
				t.Seen = ids
			}
			if t.Verdict == "good" && t.Seen != "" && t.Seen != "good" || t.Verdict == "bad" && t.Seen == "good" {
				return wrong("the verdict "+t.Verdict+" together with "+t.Seen, "say acceptable where a fault was let pass, or what was seen otherwise")
			}
			return d.withBook(cmd, true, func(ctx context.Context, b book.Book) error {
				if len(args) > 0 {
					r, c, err := cardOf(ctx, b, strings.Join(args, " "))
					if err != nil {
						return err
					}
					t.Card, t.Job = r.ID, c.Card.Used
				}
				if err := jobInto(cmd, &t.Job); err != nil {
					return err
				}
				if _, err := calc.Complete(t.Job); err != nil {
					return err
				}
				t.Source = cmd.Flags().Lookup("power-source").Value.String()
				t.Clean()
				if t.Source != "" {
					if err := d.source(ctx, b, t.Source); err != nil {
						return err
					}
				}
				if card, err := calc.Solve(t.Job); err == nil {
					if err := d.sayStops(card.Warnings); err != nil {
						return err
					}
				}
				if err := d.keep(ctx, b, book.TrialKind, t, "trial of "+t.Verdict); err != nil || t.Source == "" {
					return err
				}
				return d.tellEta(ctx, b, t.Source)
			})
		},
	}
	bindCard(cmd)
	cmd.Flags().StringVar(&t.Seen, "seen", "", "what the bead shows, as in correct")
	cmd.Flags().StringVar(&t.Verdict, "verdict", "", "good, acceptable or bad")
	cmd.Flags().StringVar(&t.Peel, "peel", "", "how the peel or bend went")
	cmd.Flags().StringVar(&t.Photo, "photo", "", "name of a photo's file")
	cmd.Flags().StringVar(&t.Lot, "lot", "", "lot of the wire")
	cmd.Flags().StringVar(&t.Note, "note", "", "anything worth knowing")
	return cmd
}

// keep saves a new record.
func (d *Deps) keep(ctx context.Context, b book.Book, kind book.Kind, body any, what string) error {
	r, err := d.author().New(kind, body)
	if err != nil {
		return err
	}
	if err := b.Save(ctx, r); err != nil {
		return err
	}
	return d.say("saved %s %s\n", r.ID, what)
}

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
			switch {
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
			r, err := readingOf(cmd, job, pull)
			if err != nil {
				return err
			}
			r.Lot, r.Note = lot, note
			r.Clean()
			return d.withBook(cmd, true, func(ctx context.Context, b book.Book) error {
				if err := d.source(ctx, b, r.Source); err != nil {
					return err
				}
				if err := d.keep(ctx, b, book.ReadingKind, r, "reading of "+r.Source); err != nil {
					return err
				}
				return d.tellLearned(ctx, b, r.Source, r.Filler, r.Wire, r.Mode)
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

// source makes sure that a power source is known: the first one of a book is entered by its first reading, any other only
// on purpose, since a slip of the pen would make a machine that is not there.
func (d *Deps) source(ctx context.Context, b book.Book, name string) error {
	_, err := book.Resolve(ctx, b, book.SourceKind, name)
	if err == nil {
		return nil
	}
	known, err := b.List(ctx, book.Query{Kind: book.SourceKind})
	if err != nil {
		return err
	}
	if len(known) == 0 {
		return d.keep(ctx, b, book.SourceKind, book.Source{Name: name}, "power source "+name)
	}
	var names []string
	for _, h := range known[:min(len(known), 6)] {
		names = append(names, plain.Line(h.Name, 40))
	}
	return wrong("no power source is called "+quote(name), "type "+orList(names)+"; or enter a new one: brazebooth book source --name "+quote(name))
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
			if err := d.say("%s %s %-16s %s %.3f mm %s: %.2f m/min, %.0f mm, %.0f A, %.1f V%s\n", list[i].Revision.ID, list[i].Revision.At[:16], plain.Line(r.Source, 16), r.Filler, r.Wire, r.Mode, r.Feed, r.StickOut, r.Amps, r.Volts, flag); err != nil {
				return err
			}
		}
		if source == "" || len(list) == 0 {
			return d.say("%d readings\n", len(list))
		}
		return d.tellLearned(ctx, b, source, used.Filler, used.Wire.V, used.Mode)
	})
}

// tellEta says what a power source's trials teach of the heat, each with how much it was expected.
func (d *Deps) tellEta(ctx context.Context, b book.Book, source string) error {
	list, err := book.Verdicts(ctx, b, source)
	if err != nil {
		return err
	}
	e := calc.LearnEta(list)
	var said []string
	for _, x := range e.Evidence {
		said = append(said, fmt.Sprintf("%s (expected in %.0f of 100)", x.Heat, x.Expected))
	}
	return d.say("%s: arc efficiency %.3f (± %.3f) by %d verdicts: %s\n", plain.Line(source, 60), e.Mean, 2*e.Sigma, e.Used, strings.Join(said, ", "))
}

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
			if err := d.say("FLAGGED: the reading %s, %.0f A and %.1f V, is far from what the others predict and is not used. Look again, then: brazebooth book reading --confirm %s, or --withdraw %s\n",
				r.Revision.ID, r.Reading.Amps, r.Reading.Volts, r.Revision.ID, r.Revision.ID); err != nil {
				return err
			}
		}
	}
	return d.say("%s with %s, %.3f mm, %s: calibration voltage %.2f V (± %.2f, %d readings), volts factor %.3f (± %.3f, %d readings), %d flagged\n",
		plain.Line(source, 60), filler, wire, mode, l.Phi.Mean, 2*l.Phi.Sigma, l.Phi.Used, l.Volts.Mean, 2*l.Volts.Sigma, l.Volts.Used, flagged)
}

func (d *Deps) bookSource() *cobra.Command {
	var s book.Source
	var least, most string
	cmd := &cobra.Command{
		Use: "source", Short: "A power source with its plate; without a name it lists them", Args: noArgs,
		Example: `  brazebooth book source --name "booth 1" --rated-amps 200A --rated-duty 60% --nozzle-bore 1/2in`,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if strings.TrimSpace(s.Name) == "" {
				return d.list(cmd, book.Query{Kind: book.SourceKind}, false)
			}
			job, err := jobOf(cmd)
			if err != nil {
				return err
			}
			s.RatedAmps, s.RatedDuty, s.Nozzle = job.RatedAmps.V, job.RatedDuty.V, job.NozzleBore.V
			for _, f := range [...]struct {
				text string
				to   *float64
				flag string
			}{{least, &s.LeastAmps, "least-amps"}, {most, &s.MostAmps, "most-amps"}} {
				if f.text == "" {
					continue
				}
				a, err := quantity.ParseCurrent(f.text)
				if err != nil {
					return inFlag(f.flag, err)
				}
				*f.to = float64(a)
			}
			s.Clean()
			return d.withBook(cmd, true, func(ctx context.Context, b book.Book) error {
				old, err := book.Resolve(ctx, b, book.SourceKind, s.Name)
				if err != nil {
					return d.keep(ctx, b, book.SourceKind, s, "power source "+s.Name)
				}
				next, err := d.author().Change(&old, s)
				if err != nil {
					return err
				}
				if err := b.Save(ctx, next); err != nil {
					return err
				}
				return d.say("changed %s power source %s\n", next.ID, s.Name)
			})
		},
	}
	bindPages(cmd, "rated-amps", "rated-duty", "nozzle-bore")
	cmd.Flags().StringVar(&s.Name, "name", "", "what it is called")
	cmd.Flags().StringVar(&least, "least-amps", "", "least current on its plate")
	cmd.Flags().StringVar(&most, "most-amps", "", "most current on its plate")
	cmd.Flags().StringVar(&s.Note, "note", "", "anything worth knowing")
	return cmd
}

func (d *Deps) bookSpool() *cobra.Command {
	var s book.Spool
	var used float64
	cmd := &cobra.Command{
		Use: "spool", Short: "A spool of wire and what is left on it; without a lot it lists them", Args: noArgs,
		Example: `  brazebooth book spool --lot A17 --filler cusi3 --wire .035 --full 4540
  brazebooth book spool --lot A17 --used 120`,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if strings.TrimSpace(s.Lot) == "" {
				return d.list(cmd, book.Query{Kind: book.SpoolKind}, false)
			}
			job, err := jobOf(cmd)
			if err != nil {
				return err
			}
			if s.Full < 0 {
				return wrong("a spool of less than nothing", "type grams: --full 4540, --used 120; --used -120 puts back what was a slip")
			}
			s.Clean()
			return d.withBook(cmd, true, func(ctx context.Context, b book.Book) error { return d.spool(ctx, b, s, used, job) })
		},
	}
	bind(cmd, "filler", "wire")
	cmd.Flags().StringVar(&s.Lot, "lot", "", "lot or number on the spool")
	cmd.Flags().Float64Var(&s.Full, "full", 0, "grams of wire on the full spool")
	cmd.Flags().Float64Var(&used, "used", 0, "grams that were used since")
	cmd.Flags().StringVar(&s.Note, "note", "", "anything worth knowing")
	return cmd
}

// spool keeps a new spool, or takes used wire off one that is there.
func (d *Deps) spool(ctx context.Context, b book.Book, s book.Spool, used float64, job calc.Job) error {
	old, err := book.Resolve(ctx, b, book.SpoolKind, s.Lot)
	if err != nil {
		complete, err := calc.Complete(job)
		if err != nil {
			return err
		}
		if s.Full == 0 {
			return wrong("a new spool without its weight", "type --full 4540 (grams)")
		}
		s.Filler, s.Wire, s.Left = complete.Filler, complete.Wire.V, s.Full-used
		return d.keep(ctx, b, book.SpoolKind, s, fmt.Sprintf("spool %s, %.0f g left", s.Lot, s.Left))
	}
	was, err := book.Body[book.Spool](&old)
	if err != nil {
		return err
	}
	if s.Full > 0 {
		was.Left += s.Full - was.Full
		was.Full = s.Full
	}
	was.Left -= used
	if was.Left < 0 || was.Left > was.Full {
		return wrong(fmt.Sprintf("%.0f g cannot be left of a spool of %.0f g", was.Left, was.Full), "check the grams; --full mends the spool's weight")
	}
	next, err := d.author().Change(&old, was)
	if err != nil {
		return err
	}
	if err := b.Save(ctx, next); err != nil {
		return err
	}
	f, _ := tables.FillerByID(was.Filler)
	minutes := ""
	if m, err := metres(was.Left, was.Wire, f.Density.V); err == nil {
		minutes = fmt.Sprintf(", %.0f m of wire", m)
	}
	return d.say("spool %s: %.0f g left%s\n", plain.Line(was.Lot, 60), was.Left, minutes)
}

// metres is a mass of wire as its length.
func metres(grams, wire, density float64) (float64, error) {
	if !(wire > 0) || !(density > 0) {
		return 0, calc.ErrRange
	}
	return grams / calc.MassPerLength(wire, density), nil
}

func (d *Deps) bookPerson() *cobra.Command {
	return &cobra.Command{
		Use: "person [NAME]", Short: "A short name of somebody who saves; without one it lists them",
		RunE: func(cmd *cobra.Command, args []string) error {
			p := book.Person{Name: strings.Join(args, " ")}
			p.Clean()
			if p.Name == "" {
				return d.list(cmd, book.Query{Kind: book.PersonKind}, false)
			}
			return d.withBook(cmd, true, func(ctx context.Context, b book.Book) error {
				return d.keep(ctx, b, book.PersonKind, p, "person "+p.Name)
			})
		},
	}
}
