package cli

import (
	"context"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/choice"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/internal/shop"
)

func (d *Deps) bookPerson() *cobra.Command {
	return &cobra.Command{
		Use: "person [NAME]", Short: "A short name of somebody who saves; without one it lists them",
		Example: "  brazebooth book person anna",
		RunE: func(cmd *cobra.Command, args []string) error {
			name := strings.TrimSpace(strings.Join(args, " "))
			return d.enter(cmd, book.PersonKind, name != "", map[string]string{"name": name})
		},
	}
}

func (d *Deps) bookSource() *cobra.Command {
	cmd := &cobra.Command{
		Use: "source", Short: "A power source with its plate; without a name it lists them", Args: noArgs,
		Example: `  brazebooth book source --name "booth 1" --rated-amps 200A --rated-duty 60% --nozzle-bore 1/2in`,
		RunE: func(cmd *cobra.Command, _ []string) error {
			return d.enter(cmd, book.SourceKind, cmd.Flags().Changed("name"), given(cmd))
		},
	}
	bind(cmd, "rated-amps", "rated-duty", "nozzle-bore")
	cmd.Flags().String("name", "", "its name")
	cmd.Flags().String("least-amps", "", "least current on its plate")
	cmd.Flags().String("most-amps", "", "most current on its plate")
	bindNote(cmd)
	return cmd
}

func (d *Deps) bookSpool() *cobra.Command {
	cmd := &cobra.Command{
		Use: "spool", Short: "A spool of wire and what is left on it; without a lot it lists them", Args: noArgs,
		Example: `  brazebooth book spool --lot A17 --filler cusi3 --wire .035 --full 15kg
  brazebooth book spool --lot A17 --used 120`,
		RunE: func(cmd *cobra.Command, _ []string) error {
			return d.enter(cmd, book.SpoolKind, cmd.Flags().Changed("lot"), given(cmd))
		},
	}
	bind(cmd, "filler", "wire")
	cmd.Flags().String("lot", "", "lot or number on the spool")
	cmd.Flags().String("full", "", "wire on the full spool: 15kg, 10lb or 4540 (grams)")
	cmd.Flags().String("used", "", "wire used since then, like --full")
	bindNote(cmd)
	return cmd
}

// enter saves a record from the flags that were given; without its name it lists the records of this kind.
func (d *Deps) enter(cmd *cobra.Command, kind book.Kind, named bool, given map[string]string) error {
	if !named {
		return d.list(cmd, book.Query{Kind: kind})
	}
	return d.act(cmd, func(ctx context.Context, s *shop.Shop) (shop.Done, error) {
		return s.SaveEntry(ctx, kind, given)
	})
}

func (d *Deps) bookTrial() *cobra.Command {
	var t book.Trial
	cmd := &cobra.Command{
		Use: "trial [NAME]", Short: "Keep a test bead: how it was laid, what it showed, whether it was good",
		Long: `Keep a test bead of a kept card: the card's job with the flags that were changed, what was seen, and the
verdict. A timed arc's trial, with --arc-on, --arc-off and --spot-step as they were used and with what it looked like
(washed through, edge melted, fell, cold, frozen between), narrows the times for its power source and wire. --arc-on is
how long the arc burns: what the timer is set to, less --run-in.`,
		Example: `  brazebooth book trial "tank lid" --travel 7.5 --seen rolled-edge --verdict bad` +
			` --peel "lets go at the toe"
  brazebooth book trial --mode timed --metal mild-steel --gauge 16ga --joint butt --gap 2mm --feed 6 --arc-on 0.3s` +
			` --arc-off 0.5s --spot-step 3mm --seen "washed through" --power-source "booth 1"` + "\n" +
			`  brazebooth book trial "tank lid" --verdict good --measured-width 6.1mm --measured-throat 0.8mm`,
		RunE: func(cmd *cobra.Command, args []string) error {
			any := slices.ContainsFunc(choice.Names(choice.All()), cmd.Flags().Changed)
			if len(args) == 0 && !any {
				return wrong("a trial without a job",
					"name the kept card that was laid, or give the job: --metal --gauge --feed --travel")
			}
			if len(args) > 0 {
				err := d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
					r, c, err := shop.CardOf(ctx, b, strings.Join(args, " "))
					t.Card, t.Job = r.ID, c.Card.Used
					return err
				})
				if err != nil {
					return err
				}
			}
			if err := jobInto(cmd, &t.Job); err != nil {
				return err
			}
			if err := measuredInto(cmd, &t.Measured); err != nil {
				return err
			}
			t.Source, t.Lot, t.Note = flagText(cmd, sourceName), flagText(cmd, "lot"), flagText(cmd, "note")
			return d.act(cmd, func(ctx context.Context, s *shop.Shop) (shop.Done, error) { return s.SaveTrial(ctx, t) })
		},
	}
	bindAll(cmd)
	cmd.Flags().StringVar(&t.Seen, "seen", "", "what the bead shows, as in correct")
	cmd.Flags().StringVar(&t.Verdict, "verdict", "", "good, acceptable or bad")
	cmd.Flags().StringVar(&t.Peel, "peel", "", "how the peel or bend went")
	cmd.Flags().StringVar(&t.Photo, "photo", "", "name of a photo's file")
	for _, m := range shop.Cut {
		cmd.Flags().String(m.Flag, "", m.Usage)
	}
	bindLot(cmd)
	bindNote(cmd)
	return cmd
}

func bindLot(cmd *cobra.Command) { cmd.Flags().String("lot", "", "lot of the wire") }

func bindRecord(cmd *cobra.Command) {
	cmd.Flags().String(sourceName, "", "name of the power source")
	bindLot(cmd)
	bindNote(cmd)
}

func (d *Deps) bookReading() *cobra.Command {
	cmd := &cobra.Command{
		Use: "reading", Short: "What was measured while the arc ran; without a measured value, list the readings",
		Long: `Keep what was measured at a booth while the arc ran, for one power source: wire feed from a timed pull
(--feed, or --pull with the length of 6 seconds), stick-out, and the meter's amps and volts after the first second. From
the readings the program learns this power source's own current and volts. --feed-dial and --volts-dial are the
positions of its dials, by their own marks: one of them with the feed or the volts is a reading too, and from three
positions on a card says where to set the dial. A reading that lies far from what the others predict is kept, flagged,
and used only when it is confirmed; one that was a mistake can be withdrawn. Without a measured value the readings are
listed with what they teach.`,
		Example: `  brazebooth book reading --power-source "booth 1" --pull 635mm --stickout 12mm --amps 96 --volts 15.2
  brazebooth book reading --power-source "booth 1" --feed-dial 4.2 --pull 510mm
  brazebooth book reading --power-source "booth 1"
  brazebooth book reading --withdraw 3f0a`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error { return d.reading(cmd) },
	}
	bind(cmd, "filler", "wire", "mode", "feed", "amps", "volts", "travel", "stickout", "flow")
	cmd.Flags().String("pull", "", "length of wire fed in 6 seconds: 635mm or 25in")
	bindDials(cmd)
	cmd.Flags().String("withdraw", "", "id of a reading that was a mistake")
	cmd.Flags().String("confirm", "", "id of a flagged reading that was checked and holds")
	bindRecord(cmd)
	return cmd
}

// reading withdraws or confirms a reading, lists them, or keeps a new one.
func (d *Deps) reading(cmd *cobra.Command) error {
	withdraw, confirm := flagText(cmd, "withdraw"), flagText(cmd, "confirm")
	measured := slices.ContainsFunc([]string{"amps", "volts", feedDial, voltsDial}, cmd.Flags().Changed)
	switch {
	case withdraw != "" && confirm != "" || withdraw+confirm != "" && measured:
		return wrong("more than one thing at once", "withdraw, confirm and keep readings one by one")
	case withdraw+confirm != "":
		return d.act(cmd, func(ctx context.Context, s *shop.Shop) (shop.Done, error) {
			if withdraw != "" {
				return s.Withdraw(ctx, withdraw)
			}
			return s.Confirm(ctx, confirm)
		})
	}
	job, err := jobOf(cmd)
	switch {
	case err != nil:
		return err
	case !measured:
		return d.listReadings(cmd, job)
	}
	if err := pulled(cmd, &job); err != nil {
		return err
	}
	r := book.Reading{Source: flagText(cmd, sourceName), Feed: job.Feed.V, StickOut: job.StickOut.V, Amps: job.Amps.V,
		Volts: job.Volts.V, Travel: job.Travel.V, Flow: job.Flow.V, Lot: flagText(cmd, "lot"),
		Note: flagText(cmd, "note")}
	if r.FeedDial, r.VoltsDial, err = dialsOf(cmd); err != nil {
		return err
	}
	return d.act(cmd, func(ctx context.Context, s *shop.Shop) (shop.Done, error) { return s.SaveReading(ctx, r, job) })
}

// pullSeconds is how long the feed runs for --pull.
const pullSeconds = 6

// pulled sets a job's feed from the length of a timed pull.
func pulled(cmd *cobra.Command, job *calc.Job) error {
	pull, err := quantityOf(cmd, "pull", quantity.FieldLength)
	switch {
	case err != nil || !pull.Set:
		return err
	case job.Feed.Set:
		return wrong("--pull together with --feed", "give one of them")
	}
	job.Feed = calc.Some(pull.V * 60 / pullSeconds / 1000)
	return nil
}

func (d *Deps) listReadings(cmd *cobra.Command, job calc.Job) error {
	used, err := calc.Complete(job)
	if err != nil {
		return err
	}
	source := strings.TrimSpace(flagText(cmd, sourceName))
	return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
		list, err := shop.Readings(ctx, b, source)
		if err != nil {
			return err
		}
		_, flagged, err := shop.Learn(list, &used)
		if err != nil {
			return err
		}
		for i := range list {
			rev, r, flag := &list[i].Revision, &list[i].Body, ""
			if slices.Contains(flagged, i) {
				flag = "  FLAGGED: far from the others; check it, then confirm or withdraw it"
			}
			d.tell("%s %s %-16s %s %.3f mm %s: %s%s\n", rev.ID, rev.At[:10], plain.Line(r.Source, 16), r.Filler, r.Wire,
				r.Mode, shop.ReadingText(r), flag)
		}
		if source == "" || len(list) == 0 {
			d.say("%s\n", quantity.Count(len(list), "reading"))
			return nil
		}
		lines, _, err := shop.Lessons(list, source, &used)
		d.tellLines(lines)
		return err
	})
}
