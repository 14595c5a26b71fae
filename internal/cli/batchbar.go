package cli

import (
	"io"
	"os"
	"strings"
	"sync/atomic"
	"time"
)

// bar tells on a terminal's standard error how far a batch is: by the share of the input that was read, or by rows
// alone where the input's size is not known. It is the input's reader, since that is what it counts.
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

// show draws the bar anew, a few times a second.
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

// clear takes the bar away before something else is said.
func (b *bar) clear() {
	if b.drawn {
		b.d.note("\r%60s\r", "")
		b.drawn = false
	}
}
