package book

import (
	"context"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"brazebooth/internal/deep"
)

// A caller who gives up at any moment of a save gets a true answer: an error means that nothing was saved, no error
// that everything was; also while another program writes, and while many save together.
func TestGivingUpTellsTheTruth(t *testing.T) {
	onBoth(t, func(t *testing.T, b Book) {
		var told sync.Map
		var kept, not atomic.Int64
		var all sync.WaitGroup
		for w := range 8 {
			all.Go(func() {
				r := rand.New(rand.NewPCG(deep.Seed(), uint64(w)))
				for n := range deep.Many(20, 60) {
					rev, err := Author{Program: "test"}.New(PersonKind, Person{Name: fmt.Sprintf("p-%d-%d", w, n)})
					if err != nil {
						t.Error(err)
						return
					}
					ctx, giveUp := context.WithCancel(context.Background())
					yields := 1 << r.IntN(18) // a server answers later than a file
					go func() {
						for range yields { // a random moment that does not depend on a clock
							runtime.Gosched()
						}
						giveUp()
					}()
					err = b.Save(ctx, rev)
					giveUp()
					told.Store(rev.ID, err)
					if err == nil {
						kept.Add(1)
					} else {
						not.Add(1)
					}
				}
			})
		}
		all.Wait()
		told.Range(func(id, err any) bool {
			_, lost := b.Get(context.Background(), id.(string))
			if (err == nil) != (lost == nil) {
				t.Errorf("%s: told %v, and in the book it is %v", id, err, lost)
			}
			return true
		})
		if kept.Load() == 0 || not.Load() == 0 {
			t.Errorf("%d were kept and %d given up: nothing was tested", kept.Load(), not.Load())
		}
	})
}

// A caller who waits for another program's write can give up at once, and then nothing is saved.
func TestGivingUpWhileAnotherWrites(t *testing.T) {
	b := newFile(t)
	s := b.(*store)
	other, err := OpenRaw(s.place)
	noErr(t, err)
	defer other.Close()
	tx, err := other.Begin() // takes the write lock
	noErr(t, err)
	ctx, giveUp := context.WithCancel(context.Background())
	r, err := Author{Program: "test"}.New(PersonKind, Person{Name: "fay"})
	noErr(t, err)
	answer := make(chan error)
	go func() { answer <- b.Save(ctx, r) }()
	for range 50 {
		runtime.Gosched()
	}
	giveUp()
	if err := <-answer; err == nil {
		t.Error("it is said to be kept while another program holds the book")
	}
	noErr(t, tx.Rollback())
	noErr(t, b.Save(context.Background())) // saving nothing is no error
	if got, err := b.Get(context.Background(), r.ID); err == nil {
		t.Errorf("it is kept all the same: %v", got)
	}
	noErr(t, b.Save(context.Background(), r))
}

// Callers whose saves wait together for another program's write can give up at once too, each for itself; the save of
// one who stays is kept.
func TestGivingUpTogetherWhileAnotherWrites(t *testing.T) {
	const savers = 12
	for stay := range 2 {
		b := newFile(t)
		s := b.(*store)
		_, err := s.write.Exec("PRAGMA busy_timeout = 3600000") // the wait for the other program does not end by itself
		noErr(t, err)
		other, err := OpenRaw(s.place)
		noErr(t, err)
		tx, err := other.Begin() // takes the write lock
		noErr(t, err)
		save := func(ctx context.Context, answer chan<- error) {
			r, err := Author{Program: "test"}.New(PersonKind, Person{Name: "fay"})
			noErr(t, err)
			go func() { answer <- b.Save(ctx, r) }()
			for range 50 {
				runtime.Gosched()
			}
		}
		ctx, giveUp := context.WithCancel(context.Background())
		one, gone := context.WithCancel(context.Background())
		alone, group, stays := make(chan error, 1), make(chan error, savers), make(chan error, 1)
		save(one, alone) // the others come while the writer waits with this one
		for range savers {
			save(ctx, group)
		}
		if stay > 0 {
			save(context.Background(), stays)
		}
		gone()
		<-alone
		for range 20_000 { // until the writer waits with all of them
			runtime.Gosched()
		}
		giveUp()
		for range savers {
			select {
			case err := <-group:
				if err == nil {
					t.Error("it is said to be kept while another program holds the book")
				}
			case <-time.After(deep.Patience(t)):
				noErr(t, tx.Rollback()) // otherwise the book cannot be closed
				t.Fatal("a caller who gave up still waits for another program's write")
			}
		}
		noErr(t, tx.Rollback())
		if stay > 0 {
			noErr(t, <-stays)
		}
		if list, err := b.List(context.Background(), Query{}); err != nil || len(list) != stay {
			t.Errorf("%d stayed, kept are %v, %v", stay, list, err)
		}
		noErr(t, other.Close())
	}
}

// An export whose reader stops reading does not block others: their saves go into the book and not only into its log,
// which stays small.
func TestWhoReadsSlowlyHoldsNothing(t *testing.T) {
	deep.Turn(t)
	ctx, now := context.Background(), time.Now()
	file := filepath.Join(t.TempDir(), "book.db")
	b, err := OpenFile(ctx, file)
	noErr(t, err)
	defer b.Close()
	fill(t, b, by(&now), &now, 20)
	out, in := io.Pipe()
	done := make(chan error)
	go func() {
		_, err := Export(ctx, b, in)
		done <- err
	}()
	if _, err := out.Read(make([]byte, 1)); err != nil { // the export has begun, and waits
		t.Fatal(err)
	}
	card := someCard(t, "much", gutter)
	note := make([]byte, 6000) // a long note that does not shrink: fewer cards fill the log
	for i, r := 0, deep.Rand(t); i < len(note); i++ {
		note[i] = byte('0' + r.IntN(75))
	}
	card.Note = string(note)
	pages := func(of string) (n int64) {
		info, err := os.Stat(of)
		noErr(t, err)
		return info.Size() / pageSize
	}
	const most = 6_000 // half as much again as the log's size at which SQLite empties it
	for grown := pages(file) + most; pages(file)+pages(file+"-wal") < grown && pages(file+"-wal") < most; {
		var list []Revision
		for range 50 {
			now = now.Add(time.Millisecond)
			r, err := by(&now).New(CardKind, card)
			noErr(t, err)
			list = append(list, r)
		}
		noErr(t, b.Save(ctx, list...))
	}
	if log := pages(file + "-wal"); log >= most {
		t.Errorf("the log has grown to %d pages while somebody reads", log)
	}
	go func() { _, _ = io.Copy(io.Discard, out) }()
	noErr(t, <-done)
}

// A check while others save finds nothing wrong, since it compares one moment.
func TestCheckWhileOthersSave(t *testing.T) {
	onBoth(t, func(t *testing.T, b Book) {
		ctx := context.Background()
		over, stop := context.WithCancel(ctx)
		var all sync.WaitGroup
		for w := range 3 {
			all.Go(func() {
				who := Author{Program: "test"}
				r, err := who.New(PersonKind, Person{Name: fmt.Sprint("p", w)})
				for n := 0; err == nil && over.Err() == nil; n++ {
					if err = b.Save(ctx, r); err == nil {
						r, err = who.Change(&r, Person{Name: fmt.Sprint("p", w, "-", n)})
					}
				}
				if err != nil {
					t.Error(err)
				}
			})
		}
		for range 10 {
			if faults, _, err := b.Check(ctx); err != nil || len(faults) > 0 {
				t.Errorf("%v, %v", faults, err)
				break
			}
		}
		stop()
		all.Wait()
	})
}
