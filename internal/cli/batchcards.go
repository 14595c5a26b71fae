package cli

import (
	"context"
	"sync"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
)

// rowCards computes the cards of a batch. The book is opened with the first row that names a power source.
type rowCards struct {
	d      *Deps
	cmd    *cobra.Command
	source string // of rows that name none

	once sync.Once
	book book.Book
	err  error
}

func (r *rowCards) solve(ctx context.Context, job calc.Job, source string) (calc.Card, error) {
	if source == "" {
		source = r.source
	}
	if source != "" {
		if r.once.Do(r.open); r.err != nil {
			return calc.Card{}, r.err
		}
		var err error
		if job, err = book.Calibrate(ctx, r.book, job, source); err != nil {
			return calc.Card{}, bookError(err)
		}
	}
	if job.Mode != "timed" {
		return calc.Solve(job)
	}
	s, err := calc.Gap(ctx, job, nil)
	return s.Card, err
}

func (r *rowCards) open() { r.book, r.err = r.d.openBook(r.cmd, false) }

func (r *rowCards) close() {
	if r.book != nil {
		_ = r.book.Close() // it was only read
	}
}

// sourceFlag is the power source that a command was given, "" for none.
func sourceFlag(cmd *cobra.Command) string {
	if f := cmd.Flags().Lookup("power-source"); f != nil {
		return f.Value.String()
	}
	return ""
}
