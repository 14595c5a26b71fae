package book

import (
	"context"
	"sync"
	"testing"
	"time"
)

// Fifty writers at once: every acknowledged card is there.
func TestManyWriters(t *testing.T) {
	onBoth(t, func(t *testing.T, b Book) {
		ctx, now := context.Background(), time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
		who := by(&now)
		card := someCard(t, "x", gutter)
		var wg sync.WaitGroup
		for range 50 {
			wg.Go(func() {
				for range 4 {
					r, err := who.New(CardKind, card)
					if err == nil {
						err = b.Save(ctx, r)
					}
					if err == nil {
						_, err = b.Get(ctx, r.ID)
					}
					if err != nil {
						t.Error(err)
					}
				}
			})
		}
		wg.Wait()
		if _, n, err := b.Check(ctx); err != nil || n != 200 {
			t.Errorf("%d revisions, %v", n, err)
		}
	})
}

// A save that fails does not make the others in its group fail.
func TestOneBadSaveFailsAlone(t *testing.T) {
	b := newFile(t).(*store)
	ctx, now := context.Background(), time.Now()
	who := by(&now)
	if _, err := b.write.Exec("CREATE TRIGGER no_pears BEFORE INSERT ON heads WHEN new.name = 'pear' BEGIN SELECT " +
		"RAISE(ABORT, 'no pears'); END"); err != nil {
		t.Fatal(err)
	}
	w := &writer{e: &b.engine, db: b.write, in: make(chan saving, 3), most: 3}
	var group []saving
	for _, name := range []string{"apple", "pear", "plum"} {
		r, err := who.New(PersonKind, Person{Name: name})
		noErr(t, err)
		group = append(group, saving{ctx: ctx, list: []prepared{prepare(&r)}, answer: make(chan error, 1)})
	}
	w.in <- group[1]
	w.in <- group[2]
	w.commit(group[0])
	for i, want := range []bool{true, false, true} {
		if err := <-group[i].answer; (err == nil) != want {
			t.Errorf("%d: %v", i, err)
		}
	}
	if list, err := b.List(ctx, Query{}); err != nil || len(list) != 2 {
		t.Errorf("%v, %v", list, err)
	}
}
