package book

import (
	"context"
	"errors"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"brazebooth/internal/address"
)

func TestNetworkShareIsRefused(t *testing.T) {
	defer fakeNetwork(t)()
	_, err := OpenFile(context.Background(), filepath.Join(t.TempDir(), "book.db"))
	if err == nil || !strings.Contains(err.Error(), "NFS") || !strings.Contains(err.Error(), "postgres://") {
		t.Errorf("%v", err)
	}
}

// Without its server, a save goes into a local file, which can be merged later; a revision that did reach the server is
// not doubled.
func TestServerAway(t *testing.T) {
	ctx, now := context.Background(), time.Now()
	beside := filepath.Join(t.TempDir(), "offline.db")
	r, err := by(&now).New(PersonKind, Person{Name: "fay"})
	noErr(t, err)
	const nobody = "postgres://booth@localhost:1/none?connect_timeout=1"
	kept, err := SaveOr(ctx, nobody, beside, r)
	if err != nil || kept != beside {
		t.Fatalf("%q, %v", kept, err)
	}
	if _, err := SaveOr(ctx, nobody, "", r); err == nil {
		t.Error("a save that went nowhere is no error")
	}
	address := serverAddress(t)
	server, err := openServer(ctx, address)
	noErr(t, err)
	defer server.Close()
	noErr(t, server.Save(ctx, r)) // the server did save it, but its answer was lost
	local, err := ReadFile(ctx, beside)
	noErr(t, err)
	defer local.Close()
	_, err = Merge(ctx, server, local)
	noErr(t, err)
	if _, n, err := server.Check(ctx); err != nil || n != 1 {
		t.Errorf("%d revisions, %v", n, err)
	}
}

// A save during which the server drops the connection is an error, never acknowledged.
func TestServerDropsTheConnection(t *testing.T) {
	address := serverAddress(t)
	ctx, now := context.Background(), time.Now()
	b, err := openServer(ctx, address)
	noErr(t, err)
	defer b.Close()
	admin, err := OpenAdmin(os.Getenv(postgresAddress))
	noErr(t, err)
	defer admin.Close()
	stop := make(chan struct{})
	var killer sync.WaitGroup
	killer.Go(func() { // ends the other sessions over and over
		for {
			select {
			case <-stop:
				return
			case <-time.After(15 * time.Millisecond):
				_, _ = admin.Exec("SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE pid <> " +
					"pg_backend_pid() AND query LIKE '%revisions%'")
			}
		}
	})
	var acknowledged []string
	failed := 0
	card := someCard(t, "x", gutter)
	for range 150 {
		r, err := by(&now).New(CardKind, card)
		noErr(t, err)
		if err := b.Save(ctx, r); err != nil {
			failed++
			continue
		}
		acknowledged = append(acknowledged, r.ID)
	}
	close(stop)
	killer.Wait()
	fresh, err := openServer(ctx, address)
	noErr(t, err)
	defer fresh.Close()
	for _, id := range acknowledged {
		if _, err := fresh.Get(ctx, id); err != nil {
			t.Errorf("%s was acknowledged and is lost: %v", id, err)
		}
	}
	if faults, _, err := fresh.Check(ctx); err != nil || len(faults) != 0 {
		t.Errorf("%v, %v", faults, err)
	}
	t.Logf("%d acknowledged, %d refused while the server dropped its sessions", len(acknowledged), failed)
}

// A server that refuses and a bad address do not count as a server that cannot be reached.
func TestNotAway(t *testing.T) {
	ctx, now := context.Background(), time.Now()
	beside := filepath.Join(t.TempDir(), "offline.db")
	r, err := by(&now).New(PersonKind, Person{Name: "fay"})
	noErr(t, err)
	for _, where := range []string{"postgres://u:p%zz@h/db", "postgres://u@127.0.0.1:notaport/db"} {
		if _, err := SaveOr(ctx, where, beside, r); !errors.Is(err, address.ErrBad) {
			t.Errorf("%s: %v", where, err)
		}
	}
	u, err := url.Parse(serverAddress(t))
	noErr(t, err)
	u.Path = "/no_such_database"
	if kept, err := SaveOr(ctx, u.String(), beside, r); err == nil || kept != "" {
		t.Errorf("kept %q, %v", kept, err)
	}
	if _, err := os.Stat(beside); err == nil {
		t.Error("a local file was made")
	}
}
