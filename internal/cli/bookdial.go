package cli

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/quantity"
	"brazebooth/internal/shop"
)

const (
	feedDial  = "feed-dial"
	voltsDial = "volts-dial"
)

func bindDials(cmd *cobra.Command) {
	cmd.Flags().String(feedDial, "", "position of the wire feed's dial, by its own marks: 4.2")
	cmd.Flags().String(voltsDial, "", "position of the volts' dial, by its own marks")
}

func dialsOf(cmd *cobra.Command) (feed, volts calc.Opt, err error) {
	if feed, err = quantityOf(cmd, feedDial, quantity.FieldMark); err == nil {
		volts, err = quantityOf(cmd, voltsDial, quantity.FieldMark)
	}
	return feed, volts, err
}

func (d *Deps) bookDials() *cobra.Command {
	cmd := &cobra.Command{
		Use: "dials", Short: "What a power source's dials give, by its readings",
		Long: `What the dials of a power source give, by the readings in the book that give their positions: a
straight line through them with the band of the next reading. Without a position, feed or volts it prints a table; a
position gives the feed or the volts, and a feed or volts gives the position. At least three positions must have been
read, and nothing is said beyond them. Volts fall as the current rises: read them at the feeds that you use. Readings
of a pulsed arc are kept apart from all others: --mode pulsed.`,
		Example: `  brazebooth book dials --power-source "booth 1"
  brazebooth book dials --power-source "booth 1" --feed-dial 4.2
  brazebooth book dials --power-source "booth 1" --feed 5.1 --volts 15`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			source := strings.TrimSpace(flagText(cmd, sourceName))
			if source == "" {
				return wrong("dials of which power source?", `type --power-source "booth 1"`)
			}
			job, err := jobOf(cmd)
			if err != nil {
				return err
			}
			ask := shop.AskDials{Feed: job.Feed, Volts: job.Volts}
			if ask.FeedDial, ask.VoltsDial, err = dialsOf(cmd); err != nil {
				return err
			}
			return d.withBook(cmd, false, func(ctx context.Context, b book.Book) error {
				lines, err := shop.Dials(ctx, b, source, calc.Job{Mode: job.Mode}, ask, d.units)
				d.tellLines(lines)
				return err
			})
		},
	}
	bind(cmd, "mode", "feed", "volts")
	bindDials(cmd)
	cmd.Flags().String(sourceName, "", "name of the power source")
	cmd.Flags().String("units", "", unitsUsage)
	return cmd
}
