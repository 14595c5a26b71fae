package cli

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/calc/formula"
	"brazebooth/internal/book"
	"brazebooth/internal/plain"
	"brazebooth/tables"
)

func (d *Deps) bookSpool() *cobra.Command {
	var s book.Spool
	var used float64
	cmd := &cobra.Command{
		Use: "spool", Short: "A spool of wire and what is left on it; without a lot it lists them", Args: noArgs,
		Example: `  brazebooth book spool --lot A17 --filler cusi3 --wire .035 --full 4540
  brazebooth book spool --lot A17 --used 120`,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if s.Clean(); strings.TrimSpace(s.Lot) == "" {
				if cmd.Flags().Changed("lot") {
					return wrong("a spool without a lot", "type what is on it: --lot A17")
				}
				return d.list(cmd, book.Query{Kind: book.SpoolKind}, false)
			}
			job, err := jobOf(cmd)
			if err != nil {
				return err
			}
			if !(s.Full >= 0 && s.Full < 1e6) || !(math.Abs(used) < 1e6) {
				return wrong("a spool of less than nothing, or of more than a tonne", "type grams: --full 4540, --used 120; --used -120 puts back what was a slip")
			}
			s.Clean()
			return d.spool(cmd, s, used, job)
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
func (d *Deps) spool(cmd *cobra.Command, s book.Spool, used float64, job calc.Job) error {
	old, known, err := d.known(cmd, book.SpoolKind, s.Lot)
	if err != nil {
		return err
	}
	if !known {
		complete, err := calc.Complete(job)
		if err != nil {
			return err
		}
		if s.Full == 0 {
			return wrong("a new spool without its weight", "type --full 4540 (grams)")
		}
		s.Filler, s.Wire, s.Left = complete.Filler, complete.Wire.V, s.Full-used
		if s.Left < 0 || s.Left > s.Full {
			return spoolWrong(&s)
		}
		_, err = d.keep(cmd, book.SpoolKind, s, fmt.Sprintf("spool %s, %.0f g left", s.Lot, s.Left))
		return err
	}
	return d.change(cmd, &old, func(r *book.Revision) (any, string, error) {
		was, err := book.Body[book.Spool](r)
		if err != nil {
			return nil, "", err
		}
		next, err := spoolNow(cmd, was, s, used, job)
		if err != nil {
			return nil, "", err
		}
		if next == was {
			return nil, spoolText(&next), nil
		}
		return next, spoolText(&next), nil
	})
}

// spoolNow is a spool with what was given.
func spoolNow(cmd *cobra.Command, was, s book.Spool, used float64, job calc.Job) (book.Spool, error) {
	next := was
	if s.Full > 0 {
		next.Left += s.Full - was.Full
		next.Full = s.Full
	}
	next.Left -= used
	if cmd.Flags().Changed("note") {
		next.Note = s.Note
	}
	if job.Filler != "" {
		next.Filler = job.Filler
	}
	if job.Wire.Set {
		next.Wire = job.Wire.V
	}
	if next.Left < 0 || next.Left > next.Full {
		return next, spoolWrong(&next)
	}
	return next, nil
}

// spoolText says what is left.
func spoolText(s *book.Spool) string {
	f, _ := tables.FillerByID(s.Filler)
	length := ""
	if m, err := metres(s.Left, s.Wire, f.Density.V); err == nil {
		length = fmt.Sprintf(", %.0f m of wire", m)
	}
	return fmt.Sprintf("spool %s: %s %s mm, %.0f g left%s", plain.Line(s.Lot, 60), s.Filler, strconv.FormatFloat(s.Wire, 'g', 4, 64), s.Left, length)
}

func spoolWrong(s *book.Spool) error {
	return wrong(fmt.Sprintf("%.0f g cannot be left of a spool of %.0f g", s.Left, s.Full), "check the grams; --full mends the spool's weight")
}

// metres is a mass of wire as its length.
func metres(grams, wire, density float64) (float64, error) {
	if !(wire > 0) || !(density > 0) {
		return 0, formula.ErrRange
	}
	return grams / formula.MassPerLength(wire, density), nil
}
