package cli

import (
	"context"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/internal/shop"
)

func (d *Deps) bookReading() *cobra.Command {
	cmd := &cobra.Command{
		Use: "reading", Short: "What was measured while the arc ran; without amps and volts it lists the readings",
		Long: `Keep what was measured at a booth while the arc ran, for one power source: wire feed from a timed pull
(--feed, or --pull with the length of 6 seconds), stick-out, and the meter's amps and volts after the first second.
From the readings the program learns this power source's own current and volts. One that lies far from what the others
predict is kept, flagged, and used only when it is confirmed; a reading that was a mistake is withdrawn. Without amps
and volts the readings are listed with what they teach.`,
		Example: `  brazebooth book reading --power-source "booth 1" --pull 635mm --stickout 12mm --amps 96 --volts 15.2
  brazebooth book reading --power-source "booth 1"
  brazebooth book reading --withdraw 3f0a`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error { return d.reading(cmd) },
	}
	bind(cmd, "filler", "wire", "mode", "feed", "amps", "volts", "travel", "stickout", "flow")
	cmd.Flags().String("pull", "", "length of wire that 6 seconds feed: 635mm or 25in")
	cmd.Flags().String("withdraw", "", "id of a reading that was a mistake")
	cmd.Flags().String("confirm", "", "id of a flagged reading that was checked and holds")
	bindLot(cmd)
	bindNote(cmd)
	cmd.Flags().String(sourceName, "", "name of the power source")
	return cmd
}

// reading withdraws or confirms a reading, lists them, or keeps a new one.
func (d *Deps) reading(cmd *cobra.Command) error {
	withdraw, confirm := flagText(cmd, "withdraw"), flagText(cmd, "confirm")
	measured := cmd.Flags().Changed("amps") || cmd.Flags().Changed("volts")
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
	case !job.Amps.Set && !job.Volts.Set:
		return d.listReadings(cmd, job)
	}
	if err := pulled(cmd, &job); err != nil {
		return err
	}
	r := book.Reading{Source: flagText(cmd, sourceName), Feed: job.Feed.V, StickOut: job.StickOut.V, Amps: job.Amps.V,
		Volts: job.Volts.V, Travel: job.Travel.V, Flow: job.Flow.V, Lot: flagText(cmd, "lot"),
		Note: flagText(cmd, "note")}
	return d.act(cmd, func(ctx context.Context, s *shop.Shop) (shop.Done, error) { return s.SaveReading(ctx, r, job) })
}

// pullSeconds is how long a wire pull takes.
const pullSeconds = 6

// pulled puts the feed of a timed pull into a job.
func pulled(cmd *cobra.Command, job *calc.Job) error {
	pull := flagText(cmd, "pull")
	if pull == "" {
		return nil
	}
	mm, err := quantity.Read(quantity.FieldLength, pull)
	if err != nil {
		return inFlag("pull", err)
	}
	if job.Feed.Set {
		return wrong("--pull together with --feed", "give one of them")
	}
	job.Feed = calc.Some(mm * 60 / pullSeconds / 1000)
	return nil
}

// listReadings shows the readings, and what those of one power source teach.
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
			d.tell("%s %s %-16s %s %.3f mm %s: %.2f m/min, %.0f mm, %.0f A, %.1f V%s\n", rev.ID, rev.At[:16],
				plain.Line(r.Source, 16), r.Filler, r.Wire, r.Mode, r.Feed, r.StickOut, r.Amps, r.Volts, flag)
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
