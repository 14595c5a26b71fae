//go:build linux

package docs

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"brazebooth/calc"
	"brazebooth/internal/book"
)

func init() { measureScaling = scalingOfAll }

// processorTime is the process's time so far, in user and system mode.
func processorTime(t *testing.T) time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		t.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// series measures one line of a picture: the median of five times at each size, relative to the first.
func series(t *testing.T, name string, sizes []float64, do func(size float64)) string {
	var out strings.Builder
	smallest := time.Duration(0)
	for n, size := range sizes {
		var list []time.Duration
		for range 5 {
			before := processorTime(t)
			do(size)
			list = append(list, processorTime(t)-before)
		}
		slices.Sort(list)
		if n == 0 {
			smallest = list[2]
		}
		fmt.Fprintf(&out, "%s,%g,%.2f\n", name, size, float64(list[2])/float64(smallest))
	}
	return out.String()
}

func scalingOfAll(t *testing.T) string {
	ctx := context.Background()
	var out strings.Builder
	maps := 0
	for _, m := range []struct {
		name string
		job  calc.Job
	}{{"a lap", calc.Job{Metal: "galvanized", Gauge: 18}},
		{"a lap on thicker sheet", calc.Job{Metal: "galvanized", Gauge: 18, Gauge2: 14}}} {
		out.WriteString(series(t, m.name, []float64{72, 288, 1152, 4608}, func(points float64) {
			size := calc.WindowSize{Feeds: 12, Travels: 6}
			for float64(size.Feeds*size.Travels) < points {
				size = calc.WindowSize{Feeds: 2 * size.Feeds, Travels: 2 * size.Travels}
			}
			maps++ // another job each time, or the cached map or sections are returned
			m.job.StickOut = calc.Some(12 + 1e-6*float64(maps))
			if _, err := calc.WindowOf(ctx, m.job, size, nil); err != nil {
				t.Fatal(err)
			}
		}))
	}
	return out.String() + scalingOfBook(ctx, t)
}

// scalingOfBook fills a book and measures queries as it grows.
func scalingOfBook(ctx context.Context, t *testing.T) string {
	b, err := book.OpenFile(ctx, filepath.Join(t.TempDir(), "book.db"))
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	now := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)
	who := book.Author{Who: "ana", Where: "booth 1", Program: "test", Now: func() time.Time { return now }}
	c, err := calc.Solve(calc.Job{Metal: "galvanized", Gauge: 20, Feed: calc.Some(4.1), Travel: calc.Some(8)})
	if err != nil {
		t.Fatal(err)
	}
	card := book.Card{Job: c.Job, Card: book.Keep(&c)}
	card.Card.Figures = card.Card.Figures[:5] // lists do not read the rest
	things := []string{"tank", "lid", "gutter", "planter", "stove", "shaft", "trough", "bracket"}
	held := 0
	fill := func(cards float64) {
		var batch []book.Revision
		for ; held < int(cards); held++ {
			now = now.Add(time.Second)
			card.Name = fmt.Sprintf("%s %s %d", things[held%8], things[held/8%8], held)
			r, err := who.New(book.CardKind, card)
			if err != nil {
				t.Fatal(err)
			}
			if batch = append(batch, r); len(batch) == 1000 || held == int(cards)-1 {
				if err := b.Save(ctx, batch...); err != nil {
					t.Fatal(err)
				}
				batch = batch[:0]
			}
		}
	}
	sizes := []float64{1000, 2000, 5000, 10000, 20000, 40000}
	lines := []struct{ name, text string }{{"first page", ""}, {"find a common word", "tan"},
		{"find a rare word", "998"}}
	parts := make([]strings.Builder, len(lines))
	first := make([]float64, len(lines))
	for _, size := range sizes {
		fill(size)
		for n, l := range lines {
			var list []time.Duration
			for range 7 {
				before := processorTime(t)
				for range 30 {
					if _, err := b.List(ctx, book.Query{Kind: book.CardKind, Text: l.text}); err != nil {
						t.Fatal(err)
					}
				}
				list = append(list, processorTime(t)-before)
			}
			slices.Sort(list)
			if first[n] == 0 {
				first[n] = float64(list[3])
			}
			fmt.Fprintf(&parts[n], "%s,%g,%.2f\n", l.name, size, float64(list[3])/first[n])
		}
	}
	return parts[0].String() + parts[1].String() + parts[2].String()
}
