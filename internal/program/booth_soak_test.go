package program

import (
	"database/sql"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"brazebooth/internal/book"
	"brazebooth/internal/deep"
)

// Numbers of workers on the soak's book.
const (
	soakWriters   = 5 // over SSH at the first server
	soakElsewhere = 1 // over SSH at the second server
	soakLoops     = 3 // by commands, each a process
	soakImports   = 2 // over SSH, slowly, one at each server
	soakReaders   = 2
)

// TestSoakOfOneBook runs two servers and commands on one SQLite file, all of them processes that are killed now and
// then: what was acknowledged is there with its content, and the file is not damaged.
func TestSoakOfOneBook(t *testing.T) {
	deep.Turn(t)
	t.Parallel()
	dir := t.TempDir()
	file := filepath.Join(dir, "book.db")
	s := newSoak(t, dir, file)
	s.run()
	b, err := book.Read(t.Context(), file)
	if err != nil {
		t.Fatal("the book cannot be read at the end: ", err)
	}
	defer b.Close()
	s.result("SQLite", b, soundFile(t, file)...)
}

// TestSoakOfOneSharedBook is the same with PostgreSQL; the booths are killed, not the database.
func TestSoakOfOneSharedBook(t *testing.T) {
	address := sharedBook(t)
	s := newSoak(t, t.TempDir(), address)
	s.run()
	b, err := book.Read(t.Context(), address)
	if err != nil {
		t.Fatal("the book cannot be read at the end: ", err)
	}
	defer b.Close()
	s.result("PostgreSQL", b)
}

// soundFile are the faults that SQLite itself finds in a file that no process has open.
func soundFile(t testing.TB, file string) (faults []string) {
	t.Helper()
	db, err := sql.Open("sqlite", file)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	for _, question := range []string{"PRAGMA integrity_check", "SELECT \"table\" || ' row ' || rowid || ' refers " +
		"to nothing' FROM pragma_foreign_key_check"} {
		rows, err := db.Query(question)
		if err != nil {
			return append(faults, err.Error())
		}
		for rows.Next() {
			var line string
			if err := rows.Scan(&line); err != nil {
				t.Error(err)
			}
			if line != "ok" {
				faults = append(faults, line)
			}
		}
		if err := rows.Err(); err != nil {
			faults = append(faults, err.Error())
		}
		_ = rows.Close()
	}
	return faults
}

// soak is one run: the book, its workers, and the ledger.
type soak struct {
	*testing.T
	*ledger
	keys    *testBooth // its folder has the keys
	book    string
	servers [2]*booth
	acts    int // of all writers
	took    time.Duration
}

func newSoak(t *testing.T, dir, place string) *soak {
	s := &soak{T: t, ledger: newLedger(), keys: &testBooth{dir: dir}, book: place, acts: deep.Many(40, 360)}
	s.keys.people(t)
	for i := range s.servers {
		s.servers[i] = &booth{soak: s, home: filepath.Join(dir, fmt.Sprintf("server-%d", i))}
		s.servers[i].start()
	}
	t.Cleanup(func() {
		for _, b := range s.servers {
			b.stop(os.Kill)
		}
	})
	return s
}

// soakPhase is the number of acts in a phase, in which the same hands work.
const soakPhase = 24

// busy reports whether a hand works in a phase: in every third phase all work, in the others two over SSH and one by
// commands. Faults between processes occur when none has the book open for long, so not when all are busy.
func (s *soak) busy(n, phase int) bool {
	r := s.plan("phase", phase)
	one, other, loop := r.IntN(soakWriters), r.IntN(soakWriters+soakElsewhere),
		soakWriters+soakElsewhere+r.IntN(soakLoops)
	return phase%3 == 0 || n == one || n == other || n == loop
}

// turn waits until it is a hand's phase; false when the run is over.
func (s *soak) turn(n int) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	for s.done < s.acts && !s.busy(n, s.done/soakPhase) {
		s.turns.Wait()
	}
	return s.done < s.acts
}

// plan is the random source of one worker, by the seed.
func (s *soak) plan(who string, n int) *rand.Rand {
	h := deep.Seed()
	for _, c := range fmt.Sprintf("%s %d", who, n) {
		h = h*1099511628211 + uint64(c)
	}
	return rand.New(rand.NewPCG(deep.Seed(), h))
}

// run runs all workers until the writers have finished, and then ends the servers in order.
func (s *soak) run() {
	var writing, beside sync.WaitGroup
	begun := time.Now()
	for n := range soakWriters + soakElsewhere + soakLoops {
		h := &hand{soak: s, n: n, r: s.plan("hand", n)}
		switch {
		case n < soakWriters:
			h.ask = (&caller{soak: s, to: s.servers[0], r: s.plan("line", n)}).ask
		case n < soakWriters+soakElsewhere:
			h.ask = (&caller{soak: s, to: s.servers[1], r: s.plan("line", n)}).ask
		default:
			h.ask = (&loop{soak: s, home: filepath.Join(s.keys.dir, fmt.Sprintf("loop-%d", n)), r: s.plan("loop", n),
				kills: 8}).ask
		}
		writing.Go(h.work)
	}
	for n := range soakReaders {
		beside.Go(s.reader(n).work)
	}
	for n := range soakImports {
		beside.Go(s.importer(n).work)
	}
	beside.Go(s.killServers)
	writing.Wait()
	s.took = time.Since(begun)
	s.over()
	beside.Wait()
	s.sayCheck()
	for _, b := range s.servers {
		b.stop(ended)
	}
}

// sayCheck expects that the program's own check finds nothing wrong.
func (s *soak) sayCheck() {
	l := &loop{soak: s, home: filepath.Join(s.keys.dir, "checks")}
	if out, told, _ := l.ask([]string{"book", "check"}); !strings.Contains(out, ", nothing wrong") {
		s.fault("book check at the end: %s%s", out, told)
	}
}

// result checks the book and logs the result, as a row of a table.
func (s *soak) result(engine string, b book.Book, damaged ...string) {
	s.Helper()
	lost, wrong := s.faults(s.Context(), b)
	damaged = slices.Concat(damaged, wrong, s.damaged)
	servers := s.servers[0].killed + s.servers[1].killed
	s.Logf("%s, seed %d: %d acts, %d servers and %d commands killed; %d acts refused: %q", engine, deep.Seed(),
		s.done, servers, s.cut, len(s.refused), few(s.refused))
	s.Logf("| minutes | writers | acknowledged | killed | looks | lost | damaged | wrong looks |")
	s.Logf("| %.1f | %d | %d | %d | %d | %d | %d | %d |", s.took.Minutes(),
		soakWriters+soakElsewhere+soakLoops+soakImports, s.acknowledged(), servers+s.cut, s.looks, len(lost),
		len(damaged), len(s.strayed))
	for _, f := range slices.Concat(few(lost), few(damaged), few(s.strayed)) {
		s.Error(f)
	}
	if s.acknowledged() < s.done*3/4 || servers == 0 || s.looks == 0 || s.cut == 0 && deep.Run() {
		s.Error("too little was done: nothing was tested")
	}
}

// few are the first lines of a list that may be long.
func few(list []string) []string { return list[:min(len(list), 12)] }
