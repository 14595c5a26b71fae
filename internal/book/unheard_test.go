package book

import (
	"bytes"
	"context"
	"errors"
	"io"
	"net"
	"net/url"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

// deafLine is a proxy between a booth and its server that drops the answers to the next commits: the server has saved,
// but the booth does not learn it.
type deafLine struct {
	to    string
	drops atomic.Int32
}

func (d *deafLine) serve(l net.Listener) {
	for {
		booth, err := l.Accept()
		if err != nil {
			return
		}
		server, err := net.Dial("tcp", d.to)
		if err != nil {
			_ = booth.Close()
			return
		}
		var ending atomic.Bool
		go func() { // from the booth
			room := make([]byte, 64<<10)
			for {
				n, err := booth.Read(room)
				if bytes.Contains(bytes.ToLower(room[:n]), []byte("commit\x00")) && d.drops.Add(-1) >= 0 {
					ending.Store(true)
				}
				if _, failed := server.Write(room[:n]); err != nil || failed != nil {
					_ = server.Close()
					return
				}
			}
		}()
		go func() { // from the server
			room := make([]byte, 64<<10)
			for {
				n, err := server.Read(room)
				if err != nil || ending.Load() {
					_ = booth.Close()
					_, _ = io.Copy(io.Discard, server)
					return
				}
				if _, err := booth.Write(room[:n]); err != nil {
					return
				}
			}
		}()
	}
}

// overDeafLine is a book on a server behind a deafLine.
func overDeafLine(t *testing.T) (*deafLine, Book) {
	t.Helper()
	u, err := url.Parse(serverAddress(t))
	noErr(t, err)
	l, err := net.Listen("tcp", "127.0.0.1:0")
	noErr(t, err)
	t.Cleanup(func() { _ = l.Close() })
	d := &deafLine{to: u.Host}
	go d.serve(l)
	u.Host = l.Addr().String()
	q := u.Query()
	q.Set("sslmode", "disable")
	u.RawQuery = q.Encode()
	b, err := openServer(context.Background(), u.String())
	noErr(t, err)
	t.Cleanup(func() { _ = b.Close() })
	return d, b
}

// The connection is lost just after the server has saved: a change counts once and is acknowledged, alone and among
// others, even if its caller has left. If the connection is lost again, the error does not say that nothing was saved.
func TestLostAnswerToACommit(t *testing.T) {
	d, b := overDeafLine(t)
	ctx, now := context.Background(), time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
	who := by(&now)
	spool, err := who.New(SpoolKind, Spool{Lot: "A17", Full: 4540, Left: 4540})
	noErr(t, err)
	noErr(t, b.Save(ctx, spool))
	for n := range 5 {
		now = now.Add(time.Second)
		next, err := who.Change(&spool, Spool{Lot: "A17", Full: 4540, Left: 4540 - 100*float64(n+1)})
		noErr(t, err)
		d.drops.Store(1)
		if err := b.SaveOn(ctx, next); err != nil {
			t.Fatalf("change %d, which was kept, is said to have failed: %v", n, err)
		}
		spool = next
	}
	d.drops.Store(1)
	var all sync.WaitGroup
	for range 20 {
		r, err := Author{Program: "test"}.New(PersonKind, Person{Name: "fay"})
		noErr(t, err)
		all.Go(func() {
			if err := b.Save(ctx, r); err != nil {
				t.Error(err)
			}
		})
	}
	all.Wait()
	list, err := b.List(ctx, Query{Kind: PersonKind, Limit: 100})
	if err != nil || len(list) != 20 {
		t.Errorf("%d of 20 are there, %v", len(list), err)
	}
	if history, err := b.History(ctx, spool.ID); err != nil || len(history) != 6 {
		t.Errorf("%d states of a spool that was changed five times, %v", len(history), err)
	}
	now = now.Add(time.Second)
	last, err := who.Change(&spool, Spool{Lot: "A17"})
	noErr(t, err)
	d.drops.Store(1000)
	if err := b.SaveOn(ctx, last); err == nil {
		t.Error("acknowledged without an answer")
	} else if !errors.Is(err, errUnheard) {
		t.Errorf("it is said to have failed: %v", err)
	}
	d.drops.Store(0)
	if faults, _, err := b.Check(ctx); err != nil || len(faults) > 0 {
		t.Errorf("%v, %v", faults, err)
	}
}
