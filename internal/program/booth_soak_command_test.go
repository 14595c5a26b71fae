package program

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"time"

	"brazebooth/internal/book"
	"brazebooth/internal/deep"
)

// loop runs commands as processes, one after another, and kills one in so many at a random moment of its work.
type loop struct {
	*soak
	home  string
	r     *rand.Rand
	kills int           // one in so many is killed; 0 for none
	usual time.Duration // usual duration of a command
}

// ask runs one command and returns its exit code, or notWhole if it was killed.
func (l *loop) ask(args []string) (out, told string, code int) {
	ctx, stop := context.WithTimeout(context.Background(), deep.Patience(l))
	defer stop()
	kill := l.kills > 0 && l.r.IntN(l.kills) == 0 && l.usual > 0
	if kill {
		ctx, stop = context.WithTimeout(ctx, time.Duration(l.r.Float64()*1.2*float64(l.usual)))
		defer stop()
	}
	var o, e bytes.Buffer
	cmd := l.program(ctx, l.home, args...)
	cmd.Stdout, cmd.Stderr = &o, &e
	begin := time.Now()
	err := cmd.Run()
	ran := cmd.ProcessState
	switch {
	case ctx.Err() != nil && (ran == nil || !ran.Exited()):
		l.killed(kill, args)
		return o.String(), e.String(), notWhole
	case ran == nil:
		l.fault("no command can be run: %v", err)
		return "", "", notWhole
	}
	if l.usual = time.Since(begin); strings.Contains(e.String(), "panic") {
		l.fault("%v: %s", args, e.String())
	}
	return o.String(), e.String(), ran.ExitCode()
}

// killed counts a command that was killed, intentionally or because it never ended.
func (l *loop) killed(meant bool, args []string) {
	if !meant {
		l.fault("no answer to %v", args)
		return
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	l.cut++
}

// watcher only reads, over SSH and by commands from outside, while others write.
type watcher struct {
	*soak
	n    int
	r    *rand.Rand
	line *caller
	loop *loop
}

func (s *soak) reader(n int) *watcher {
	return &watcher{soak: s, n: n, r: s.plan("reader", n), line: &caller{soak: s, to: s.servers[n%2],
		r: s.plan("reader's line", n)},
		loop: &loop{soak: s, home: filepath.Join(s.keys.dir, fmt.Sprintf("reader-%d", n)), r: s.plan("reader's loop",
			n), kills: 5}}
}

// work reads the book in every way in turn, once after some acts of the others.
func (w *watcher) work() {
	looks := []func(){w.show, w.list, w.find, w.check, w.export, w.backup, w.doctor}
	for acts := 5; w.await(acts); acts += 4 + w.r.IntN(12) {
		looks[w.looksDone()%len(looks)]()
	}
}

// looksDone counts a look and returns the number before it.
func (w *watcher) looksDone() int {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.looks++
	return w.looks - 1
}

// ask runs a command over SSH or from outside.
func (w *watcher) ask(args ...string) (out string, code int) {
	ask := w.loop.ask
	if w.r.IntN(2) == 0 {
		ask = w.line.ask
	}
	return w.damaged(args, ask)
}

// damaged records what an answer says about damage.
func (w *watcher) damaged(args []string, ask asking) (out string, code int) {
	out, told, code := ask(args)
	if damage.MatchString(told) {
		w.fault("%s: %s", strings.Join(args, " "), told)
	}
	return out, code
}

// one is an acknowledged record; nil if there is none yet.
func (w *watcher) one() *soakRecord {
	list := w.known(book.ReadingKind) // these never change
	if list = append(list, w.known(book.CardKind)...); len(list) == 0 {
		return nil
	}
	return list[w.r.IntN(len(list))]
}

// show reads a record by its id and expects that record, unless it is deleted.
func (w *watcher) show() {
	r := w.one()
	if r == nil {
		return
	}
	out, code := w.ask("book", "show", r.id, "--kind", string(r.kind), "--json")
	if code != 0 {
		return
	}
	var a struct{ Revision book.Revision }
	if err := json.Unmarshal([]byte(out), &a); err != nil {
		w.fault("book show %s: %v in %.200s", r.id, err, out)
	}
	if a.Revision.ID != r.id || markOf(&a.Revision) != r.mark {
		w.fault("book show %s, which is %s, shows %s, which is %s", r.id, r.mark, a.Revision.ID, markOf(&a.Revision))
	}
}

func (w *watcher) list() { w.ask("book", "list", "--limit", "200", "--deleted") }

// find searches a record by its unique word.
func (w *watcher) find() {
	r := w.one()
	if r == nil {
		return
	}
	if out, code := w.ask("book", "list", "--deleted", "--text", r.mark); code == 0 && !strings.Contains(out, r.id) {
		w.stray("%s is not found by %s: %s", r.id, r.mark, out)
	}
}

func (w *watcher) check() {
	switch out, code := w.ask("book", "check"); {
	case strings.Contains(out, "the file itself"):
		w.fault("book check: %s", out)
	case code != notWhole && out != "" && !strings.Contains(out, "nothing wrong"):
		w.stray("book check while others write: %s", out)
	}
}

// export compares what a reader gets with what was acknowledged before.
func (w *watcher) export() {
	before := w.known(book.CardKind)
	out, code := w.ask("book", "export", "-")
	if code != 0 {
		return
	}
	there := map[string]bool{}
	for line := range strings.Lines(out) {
		if _, id, ok := strings.Cut(line, `"id":"`); ok && len(id) > 16 {
			there[id[:16]] = true
		}
	}
	for _, r := range before {
		if !there[r.id] {
			w.stray("an export lacks %s %s", r.id, r.mark)
		}
	}
}

// backup copies the book and checks that the copy has what was acknowledged before.
func (w *watcher) backup() {
	before := w.known(book.CardKind)
	file := filepath.Join(w.keys.dir, fmt.Sprintf("copy-%d.db", w.n))
	defer os.Remove(file)
	if out, code := w.damaged([]string{"book", "backup", file}, w.loop.ask); code != 0 {
		if code != notWhole && len(before) > 0 {
			w.stray("no backup: exit %d %s", code, out)
		}
		return
	}
	b, err := book.Read(context.Background(), file)
	if err != nil {
		w.stray("a backup cannot be read: %v", err)
		return
	}
	defer b.Close()
	for _, r := range before {
		if rev, err := b.Get(context.Background(), r.id); err != nil || rev.ID != r.id || markOf(&rev) != r.mark {
			w.stray("a backup has %s %s as %s %s (%v)", r.id, r.mark, rev.ID, markOf(&rev), err)
		}
	}
}

func (w *watcher) doctor() {
	if out, code := w.damaged([]string{"doctor"}, w.loop.ask); code > 0 {
		w.stray("doctor: exit %d %s", code, out)
	}
}
