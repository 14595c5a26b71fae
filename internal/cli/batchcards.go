package cli

import (
	"context"
	"sync"
	"sync/atomic"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/mistake"
	"brazebooth/internal/shop"
)

// rowCards computes the cards of a batch, or readies the job of one. The book is opened with the first that names a
// power source.
type rowCards struct {
	d      *Deps
	cmd    *cobra.Command
	source string // of rows that name none

	without atomic.Bool // the power source that is set cannot be had

	once sync.Once
	shop *shop.Shop
	book book.Book
	err  error
}

func (r *rowCards) solve(ctx context.Context, job calc.Job, source string) (calc.Card, error) {
	job, err := r.taught(ctx, job, source)
	if err != nil {
		return calc.Card{}, err
	}
	return calc.Answer(ctx, job, nil)
}

// taught is a row's job with what its power source taught. One that is set once and for all and cannot be had is left
// out, and said once: it is none of what was asked now.
func (r *rowCards) taught(ctx context.Context, job calc.Job, source string) (calc.Job, error) {
	if source != "" {
		return r.calibrated(ctx, job, source)
	}
	if r.source == "" || r.without.Load() {
		return job, nil
	}
	taught, err := r.calibrated(ctx, job, r.source)
	m := mistake.Of(err)
	wrongJob := m != nil && m.Field != ""
	if err == nil || r.cmd.Flags().Changed("power-source") || ctx.Err() != nil || wrongJob {
		return taught, err
	}
	if !r.without.Swap(true) {
		what, _, _ := r.d.explained(err)
		remark(r.cmd, "without the power source that is set, "+quote(r.source)+": "+what+"; see brazebooth config show")
	}
	return job, nil
}

func (r *rowCards) calibrated(ctx context.Context, job calc.Job, source string) (calc.Job, error) {
	if r.once.Do(r.open); r.err != nil {
		return job, r.err
	}
	taught, err := shop.Calibrate(ctx, r.book, job, source)
	return taught, r.shop.Told(err)
}

func (r *rowCards) open() {
	if r.shop, r.err = r.d.shop(r.cmd); r.err == nil {
		r.book, r.err = r.shop.Open(r.cmd.Context(), false)
	}
}

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
