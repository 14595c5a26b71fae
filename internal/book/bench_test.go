package book

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"sync"
	"testing"
	"time"
)

// fifty runs fifty writers that save prepared cards one after another, and reports the 99th percentile of their waits.
// What a writer does between two saves is not measured.
func fifty(b *testing.B, save func(*Revision) error) {
	b.Helper()
	who := Author{Who: "ana", Where: "booth 1", Program: "test"}
	card := someCard(b, "x", gutter)
	waits := make([]time.Duration, 0, b.N)
	failed := 0
	var mu sync.Mutex
	var wg sync.WaitGroup
	left := make(chan *Revision, b.N)
	for range b.N {
		r, err := who.New(CardKind, card)
		if err != nil {
			b.Fatal(err)
		}
		left <- &r
	}
	close(left)
	used := cpu()
	b.ResetTimer()
	for range 50 {
		wg.Go(func() {
			for r := range left {
				start := time.Now()
				err := save(r)
				mu.Lock()
				waits = append(waits, time.Since(start))
				if err != nil { // the lock was not free within five seconds
					failed++
				}
				mu.Unlock()
			}
		})
	}
	wg.Wait()
	slices.Sort(waits)
	b.ReportMetric(float64(waits[len(waits)*99/100].Microseconds())/1000, "p99-ms")
	b.ReportMetric(float64(b.N-failed)/b.Elapsed().Seconds(), "saved/s")
	b.ReportMetric(float64(failed), "failed")
	b.ReportMetric((cpu()-used).Seconds()*1e6/float64(b.N), "cpu-us/save")
}

// Fifty writers at once on one book: once with waiting saves grouped, once one by one.
func BenchmarkFiftyWriters(b *testing.B) {
	for _, most := range []int{mostTogether, 1} {
		b.Run(fmt.Sprintf("together=%d", most), func(b *testing.B) {
			book := newFile(b)
			book.(*store).writer.most = most
			fifty(b, func(r *Revision) error { return book.Save(context.Background(), *r) })
		})
	}
}

// The same fifty without a shared writer: each has its own connection and waits for the file's lock.
func BenchmarkFiftyApart(b *testing.B) {
	file := filepath.Join(b.TempDir(), "book.db")
	opened, err := OpenFile(context.Background(), file)
	if err != nil {
		b.Fatal(err)
	}
	defer opened.Close()
	free := make(chan *writer, 50)
	for range cap(free) {
		db, err := OpenRaw(file)
		if err != nil {
			b.Fatal(err)
		}
		defer db.Close()
		db.SetMaxOpenConns(1)
		free <- &writer{e: &sqlite, db: db}
	}
	fifty(b, func(r *Revision) error {
		if err := r.admit(); err != nil {
			return err
		}
		ready := []prepared{prepare(r)}
		w := <-free // there are fifty: nobody waits here
		defer func() { free <- w }()
		_, err := w.transaction([]saving{{ctx: context.Background(), list: ready}})
		return err
	})
}

// A hundred thousand cards: the first page, searches while typing, and a plain indexed query to compare.
func BenchmarkHundredThousand(b *testing.B) {
	ctx := context.Background()
	book, err := OpenFile(ctx, filepath.Join(b.TempDir(), "book.db"))
	if err != nil {
		b.Fatal(err)
	}
	defer book.Close()
	now := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)
	who := by(&now)
	card := someCard(b, "x", gutter)
	card.Card = Kept{Used: card.Card.Used, Figures: card.Card.Figures[:5]} // the lists do not read it
	things := []string{"tank", "lid", "gutter", "planter", "stove", "shaft", "trough", "bracket"}
	var batch []Revision
	for i := range 100000 {
		now = now.Add(time.Second)
		card.Name = fmt.Sprintf("%s %s %d", things[i%8], things[i/8%8], i)
		r, err := who.New(CardKind, card)
		if err != nil {
			b.Fatal(err)
		}
		if batch = append(batch, r); len(batch) == 2000 {
			if err := book.Save(ctx, batch...); err != nil {
				b.Fatal(err)
			}
			batch = batch[:0]
		}
	}
	b.Run("plain", func(b *testing.B) {
		for b.Loop() {
			_, err := all(ctx, book.(*store).read, head, "SELECT "+headColumns+" FROM heads WHERE id = "+
				"'0123456789abcdef'")
			noErr(b, err)
		}
	})
	for name, text := range map[string]string{"first page": "", "common word": "tan", "two words": "tan lid",
		"rare word": "99998", "nothing": "zzz", "rare and common": "tank 4321"} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := book.List(ctx, Query{Kind: CardKind, Text: text}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
