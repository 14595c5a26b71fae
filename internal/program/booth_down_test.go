package program

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	gossh "golang.org/x/crypto/ssh"

	"brazebooth/internal/book"
	"brazebooth/internal/deep"
)

// namesIn counts the cards in a book's file by name.
func namesIn(t testing.TB, file string) map[string]int {
	t.Helper()
	names := map[string]int{}
	b, err := book.ReadFile(context.Background(), file)
	if errors.Is(err, book.ErrNone) {
		return names
	}
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	err = b.Each(context.Background(), func(r book.Revision) error {
		c, err := book.Body[book.Card](&r)
		names[c.Name]++
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return names
}

// answered is the answer to a save.
type answered struct {
	name, out, told string
	code            int // -1 where the connection ended without one
}

// sessionOrNone opens a session; nil if the connection ends meanwhile, since the library's client would then wait for
// ever.
func sessionOrNone(c *gossh.Client) *gossh.Session {
	opened, gone := make(chan *gossh.Session, 1), make(chan struct{})
	go func() {
		s, err := c.NewSession()
		if err != nil {
			s = nil
		}
		opened <- s
	}()
	go func() { _ = c.Wait(); close(gone) }()
	select {
	case s := <-opened:
		return s
	case <-gone:
		return nil
	}
}

// saver saves card after card over one connection until the server is gone.
func (b *testBooth) saver(t testing.TB, c *gossh.Client, prefix string) (list []answered) {
	for n := 0; ; n++ {
		a := answered{name: fmt.Sprintf("%s-%d", prefix, n)}
		s := sessionOrNone(c)
		if s == nil {
			return list
		}
		out, told := new(words), new(words)
		s.Stdout, s.Stderr = out, told
		err := s.Run("book save --gauge 20ga --feed 4.1 --travel 8 --name " + a.name)
		var exit *gossh.ExitError
		switch {
		case errors.As(err, &exit):
			a.code = exit.ExitStatus()
		case err != nil:
			a.code = -1
		}
		a.out, a.told = out.String(), told.String()
		list = append(list, a)
	}
}

// Many guests save at the moment when the server is asked to end. Every answer is compared with the book: with exit
// code 0 the card is in the book, with any other it is not, and everybody gets an exit code.
func TestTheEndTellsEverySaveTheTruth(t *testing.T) {
	t.Parallel()
	rounds, total, kept, refused, cut := deep.Many(1, 6), 0, 0, 0, 0
	r := deep.Rand(t)
	const most = 12 // an end may find no save under way: then another round
	ends := 0
	for ; ends < rounds || refused+cut == 0 && ends < most; ends++ {
		b := startBooth(t, "--per-key", "100", "--per-address", "100", "--log", filepath.Join(t.TempDir(), "log"))
		b.ask(t, "writer", "book save --gauge 20ga --name first", "")
		var mu sync.Mutex
		var list []answered
		var all sync.WaitGroup
		for w := range 8 {
			c := b.client(t, "writer")
			all.Go(func() {
				mine := b.saver(t, c, fmt.Sprintf("r%d-w%d", ends, w))
				mu.Lock()
				defer mu.Unlock()
				list = append(list, mine...)
			})
		}
		saved := 1 + r.IntN(40)
		eventually(t, "nothing is saved", func() bool { return len(namesOrNone(b.book)) >= saved })
		b.stop()
		all.Wait()
		names := namesIn(t, b.book)
		for _, a := range list {
			total++
			in := names[a.name]
			switch {
			case in > 1:
				t.Errorf("%s is in the book %d times", a.name, in)
			case a.code == 0 && (in != 1 || !strings.Contains(a.out, "saved ")):
				t.Errorf("%s: exit 0, %q, %d in the book", a.name, a.out, in)
			case a.code > 0 && in != 0:
				t.Errorf("%s: exit %d, %q, and it is in the book", a.name, a.code, a.told)
			case a.code < 0 && in != 0:
				t.Errorf("%s is in the book, and its client got no answer: %q %q", a.name, a.out, a.told)
			}
			switch {
			case a.code == 0:
				kept++
			case a.code > 0:
				refused++
			default:
				cut++
			}
		}
	}
	t.Logf("%d ends: %d saves, %d kept and told so, %d refused and told so, %d had not begun when their connection "+
		"ended", ends, total, kept, refused, cut)
	if kept == 0 || refused+cut == 0 {
		t.Error("nothing was tested")
	}
}

// An import that is cut by the server's end says how many of its revisions are in the book, and that is true.
func TestTheEndTellsAnImportWhatIsKept(t *testing.T) {
	deep.Turn(t)
	t.Parallel()
	const more = 1400 // saved some hundreds at a time
	export := exportOf(t, more, 200)
	b := startBooth(t)
	c := b.client(t, "writer")
	s, err := c.NewSession()
	if err != nil {
		t.Fatal(err)
	}
	in, err := s.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	told := new(words)
	s.Stderr = told
	if err := s.Start("book import -"); err != nil {
		t.Fatal(err)
	}
	if _, err := io.WriteString(in, export); err != nil { // without the end of the input
		t.Fatal(err)
	}
	eventually(t, "nothing is taken in", func() bool { return len(namesOrNone(b.book)) >= 900 })
	b.stop()
	if code := exitOf(t, s.Wait); code != 1 {
		t.Errorf("exit %d", code)
	}
	n := len(namesIn(t, b.book))
	if want := fmt.Sprintf("cancelled: %d revisions before that in the book", n); !strings.Contains(told.String(),
		want) || n < 900 {
		t.Errorf("%d are in the book, told %q", n, told)
	}
}

func namesOrNone(file string) map[string]bool {
	names := map[string]bool{}
	b, err := book.ReadFile(context.Background(), file)
	if err != nil {
		return names
	}
	defer b.Close()
	_ = b.Each(context.Background(), func(r book.Revision) error { names[r.ID] = true; return nil })
	return names
}

// exportOf is an export of n cards, each with a note of this many words.
func exportOf(t testing.TB, n, words int) string {
	t.Helper()
	author := book.Author{Who: "ana", Where: "booth 1", Program: "0.1.0"}
	list := make([]book.Revision, n)
	for i := range list {
		r, err := author.New(book.CardKind, book.Card{Name: fmt.Sprintf("card-%d", i), Note: strings.Repeat("word ",
			words)})
		if err != nil {
			t.Fatal(err)
		}
		list[i] = r
	}
	b, err := book.OpenFile(context.Background(), filepath.Join(t.TempDir(), "other.db"))
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	if err := b.Save(context.Background(), list...); err != nil {
		t.Fatal(err)
	}
	var text strings.Builder
	if _, err := book.Export(context.Background(), b, &text); err != nil {
		t.Fatal(err)
	}
	return text.String()
}

// The server ends in time, whatever its clients do.
func TestTheEndComesInTime(t *testing.T) {
	deep.Turn(t)
	t.Parallel()
	b := startBooth(t, "--per-key", "100", "--per-address", "100", "--channels", "10", "--handshake", "1h",
		"--stalled", "1h")
	text := exportOf(t, 500, 2000) // more than a client's buffers take without reading
	if _, told, code := b.ask(t, "writer", "book import -", text); code != 0 {
		t.Fatal(told)
	}
	for range 5 { // half a handshake
		conn, err := net.Dial("tcp", b.addr)
		if err != nil {
			t.Fatal(err)
		}
		defer conn.Close()
		_, _ = io.WriteString(conn, "SSH-2.0-x\r\n")
	}
	hold := func(who, command string) *wire {
		w, c := b.over(t, who)
		s, err := c.NewSession()
		if err != nil {
			t.Fatal(err)
		}
		if _, err := s.StdoutPipe(); err != nil { // never read
			t.Fatal(err)
		}
		if _, err := s.StdinPipe(); err != nil { // never closed
			t.Fatal(err)
		}
		if err := s.Start(command); err != nil {
			t.Fatal(err)
		}
		return w
	}
	var stuck []*wire
	for range 3 {
		stuck = append(stuck, hold("reader", "book export -"))
		hold("writer", "book import -")
		hold("reader", "--plain")
		_, x := screensIn(t, b.client(t, "reader"), 80, 24)
		x.await("wire feed")
	}
	eventually(t, "the exports are not stuck", func() bool {
		// all that a client's buffers take unread
		return !slices.ContainsFunc(stuck, func(w *wire) bool { return w.n.Load() < 2<<20 })
	})
	for _, gauge := range []string{"3mm", "2mm", "1mm"} {
		hold("reader", "window --metal stainless-304 --joint tee --gauge "+gauge)
	}
	idle, err := b.client(t, "reader").NewSession() // requests nothing
	if err != nil {
		t.Fatal(err)
	}
	defer idle.Close()
	b.stop() // any of them would stay for an hour
}
