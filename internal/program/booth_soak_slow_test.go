package program

import (
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/book"
)

// slow imports exports over SSH, one line at a time between acts of the others: one session of a server has the book
// open while others of the same process open and close it. It does so only now and then, because faults between
// processes occur mostly when none of them has the book open for long.
type slow struct {
	*soak
	n    int
	r    *rand.Rand
	line *caller
	acts int // number of all acts until which it waits
	made int
}

func (s *soak) importer(n int) *slow {
	return &slow{soak: s, n: n, r: s.plan("importer", n), line: &caller{soak: s, to: s.servers[n],
		r: s.plan("importer's line", n)}}
}

func (w *slow) work() {
	for w.acts = 20; w.await(w.acts); w.acts += 60 + w.r.IntN(120) {
		w.take()
	}
}

// take makes a few records and imports them.
func (w *slow) take() {
	var records []*soakRecord
	var ids []string
	in := &slowly{wait: func() { w.acts += w.r.IntN(4); w.await(w.acts) }}
	for range 4 {
		w.made++
		mark := fmt.Sprintf("i%dx%06dx", w.n, w.made)
		card := smallCard(mark, mark+" taken in")
		r, err := book.Author{Who: "ben", Program: "test"}.New(book.CardKind, card)
		if err != nil {
			w.fault("no revision: %v", err)
			return
		}
		text, err := json.Marshal(r)
		if err != nil {
			w.fault("no line: %v", err)
			return
		}
		in.lines = append(in.lines, string(text)+"\n")
		records, ids = append(records, w.tried(book.CardKind, mark, card.Note)), append(ids, r.ID)
	}
	args := []string{"book", "import", "-"}
	out, told, code := w.line.run(args, in)
	said := strings.HasPrefix(out, fmt.Sprintf("%d revisions read\n", len(ids)))
	if !said && code != notWhole {
		w.refuse(args, out+told)
	}
	for i, r := range records {
		if !said {
			ids[i] = ""
		}
		w.came(r, ids[i])
	}
}

// smallCard is a card with only what the soak checks.
func smallCard(mark, note string) book.Card {
	return book.Card{Name: mark, Note: note, Job: calc.Job{Feed: calc.Some(feedOf(mark))},
		Card: book.Kept{Figures: make([]book.Figure, 1)}}
}

// slowly is a reader of lines that waits before each of them and before the end.
type slowly struct {
	lines []string
	wait  func()
}

func (s *slowly) Read(p []byte) (int, error) {
	s.wait()
	if len(s.lines) == 0 {
		return 0, io.EOF
	}
	n := copy(p, s.lines[0])
	if s.lines[0] = s.lines[0][n:]; s.lines[0] == "" {
		s.lines = s.lines[1:]
	}
	return n, nil
}
