package cli

import (
	"context"
	"io"
	"os"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/mistake"
	"brazebooth/internal/shop"
)

// rowCards computes the cards of a batch, or prepares a single job. The book is opened only when a power source is
// named.
type rowCards struct {
	d   *Deps
	cmd *cobra.Command // its --power-source is for rows that name none

	without atomic.Bool // the power source from the settings cannot be read

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

// taught is a row's job with what the readings of its power source taught. A power source from the settings that cannot
// be read is left out with one remark, since this command did not ask for it.
func (r *rowCards) taught(ctx context.Context, job calc.Job, source string) (calc.Job, error) {
	if source != "" {
		return r.calibrated(ctx, job, source)
	}
	set := flagText(r.cmd, sourceName)
	if set == "" || r.without.Load() {
		return job, nil
	}
	taught, err := r.calibrated(ctx, job, set)
	m := mistake.Of(err)
	wrongJob := m != nil && m.Field != ""
	if err == nil || r.cmd.Flags().Changed(sourceName) || ctx.Err() != nil || wrongJob {
		return taught, err
	}
	if !r.without.Swap(true) {
		what, _, _ := r.d.explained(err)
		remark(r.cmd, "without the power source from the settings, "+quote(set)+": "+what+
			"; see brazebooth config show")
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

// bar shows on a terminal's standard error how far a batch is: the share of the input that was read, or the number of
// rows where the size of the input is not known. It wraps the input's reader to count what is read.
type bar struct {
	d     *Deps
	in    io.Reader
	size  int64 // 0 for an input that is not a file
	read  atomic.Int64
	last  time.Time
	drawn bool
}

const barWidth = 30

func newBar(d *Deps, in io.Reader) *bar {
	b := &bar{d: d, in: in}
	if f, ok := in.(*os.File); ok {
		if info, err := f.Stat(); err == nil && info.Mode().IsRegular() {
			b.size = info.Size()
		}
	}
	return b
}

func (b *bar) Read(p []byte) (int, error) {
	n, err := b.in.Read(p)
	b.read.Add(int64(n))
	return n, err
}

// show redraws the bar, a few times a second.
func (b *bar) show(rows int) {
	if !b.d.Patient || time.Since(b.last) < 100*time.Millisecond {
		return
	}
	b.last, b.drawn = time.Now(), true
	if b.size == 0 {
		b.d.note("\r%d rows", rows)
		return
	}
	share := min(1, float64(b.read.Load())/float64(b.size))
	n := int(share * barWidth)
	b.d.note("\r[%s%s] %3.0f %% %d rows", strings.Repeat("#", n), strings.Repeat("-", barWidth-n), 100*share, rows)
}

// clear removes the bar before something else is printed.
func (b *bar) clear() {
	if b.drawn {
		b.d.note("\r%60s\r", "")
		b.drawn = false
	}
}
