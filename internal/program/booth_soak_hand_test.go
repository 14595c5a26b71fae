package program

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"strings"

	"brazebooth/internal/book"
)

// hand is a writer that saves and changes records. Only it changes them, so that it knows what each must contain.
type hand struct {
	*soak
	n    int
	r    *rand.Rand
	ask  asking
	acts int
	mine []*soakRecord // cards whose state is certain

	source   string // power source of its readings
	readings int
}

func (h *hand) work() {
	for ; h.turn(h.n); h.acts++ {
		at := len(h.mine) - 1
		if at >= 0 {
			at = h.r.IntN(len(h.mine))
		}
		for range h.r.IntN(5) {
			h.come()
		}
		switch chance := h.r.IntN(20); {
		case at < 0 || chance < 14:
			h.save()
		case chance < 15:
			h.read()
		case chance < 18:
			h.change(at, false, "changed")
		case h.mine[at].states[len(h.mine[at].states)-1].deleted:
			h.change(at, false, "restored")
		default:
			h.change(at, true, "deleted")
		}
	}
}

// come opens the book to write and closes it without a change, since faults between processes occur when they open and
// close the book, and this is the fastest way.
func (h *hand) come() {
	args := []string{"book", "import", "-"}
	if out, told, code := h.ask(args); code > 0 {
		h.refuse(args, out+told)
	}
}

// mark is a unique word for a record, from which its figures are derived.
func (h *hand) mark() string { return fmt.Sprintf("m%dx%06dx", h.n, h.acts) }

// number is the number from which a record's figures are derived.
func number(mark string) (n int) {
	for _, c := range mark {
		n = (n*31 + int(c)) % 9973
	}
	return n
}

// feedOf is a wire feed in m/min, 4.00 to 6.99.
func feedOf(mark string) float64 { return float64(400+number(mark)%300) / 100 }

// ampsOf is a current in A, 80 to 119.
func ampsOf(mark string) float64 { return 80 + float64(number(mark)%40) }

// note is a unique text, short or long, so that records have different sizes in the file.
func (h *hand) note(mark string) string {
	text := fmt.Sprintf("%s e%d", mark, h.acts)
	for range h.r.IntN(60) {
		text += fmt.Sprintf(" w%06d", h.r.IntN(1_000_000))
	}
	return text
}

func (h *hand) save() {
	mark := h.mark()
	r := h.tried(book.CardKind, mark, h.note(mark))
	id := h.try("saved", "book", "save", "--name", mark, "--note", r.states[0].note, "--gauge", "20ga", "--feed",
		fmt.Sprint(feedOf(mark)), "--travel", "8")
	if h.came(r, id); id != "" {
		h.mine = append(h.mine, r)
	}
}

// read saves a reading. Only a few belong to one power source, which is saved first, because saving a reading reads all
// others of its source.
func (h *hand) read() {
	mark := h.mark()
	if h.readings++; h.source == "" || h.readings%10 == 0 {
		r := h.tried(book.SourceKind, mark, h.note(mark))
		id := h.try("saved", "book", "source", "--name", mark, "--note", r.states[0].note)
		if h.came(r, id); id != "" {
			h.source = mark
		}
		return
	}
	r := h.tried(book.ReadingKind, mark, h.note(mark))
	h.came(r, h.try("saved", "book", "reading", "--power-source", h.source, "--note", r.states[0].note, "--feed",
		"6.3", "--stickout", "12mm", "--amps", fmt.Sprint(ampsOf(mark)), "--volts", "15.2"))
}

// change changes a card; if the answer does not confirm it, the hand does not use the card any more.
func (h *hand) change(at int, deleted bool, done string) {
	r := h.mine[at]
	now := r.states[len(r.states)-1]
	next := soakState{note: now.note, deleted: deleted}
	args := []string{"book", "delete", r.id}
	switch {
	case done == "restored":
		args[1] = "restore"
	case done == "changed" && now.deleted: // a deleted card is not edited
		return
	case done == "changed":
		next.note = h.note(r.mark)
		args = []string{"book", "edit", r.id, "--note", next.note}
	}
	h.then(r, next)
	id := h.try(done, args...)
	if h.came(r, id); id == "" {
		h.mine = append(h.mine[:at], h.mine[at+1:]...)
	}
}

var savedAs = regexp.MustCompile(`(?m)^(saved|changed|deleted|restored) ([0-9a-f]{16})\b.*\n`)

// try runs an act and returns the acknowledged id. A complete answer counts even if its process was killed later; a
// card that was saved beside the book does not count.
func (h *hand) try(done string, args ...string) (id string) {
	out, told, code := h.ask(args)
	if m := savedAs.FindStringSubmatch(out); m != nil && m[1] == done && !strings.Contains(told, "kept beside") &&
		!strings.Contains(told, "kept in") {
		return m[2]
	}
	if code != notWhole {
		h.refuse(args, out+told)
	}
	return ""
}

// damage matches messages about a damaged file or a missing record.
var damage = regexp.MustCompile(`malformed|disk I/O|not a database|no such table|corrupt|` +
	`is not what was saved|no such record in the book(: [0-9a-f]{16}, |"|\n|$)|no head`)

// refuse records an act that failed although its process was not killed.
func (l *ledger) refuse(args []string, told string) {
	l.mu.Lock()
	defer l.mu.Unlock()
	text := fmt.Sprintf("%s: %s", strings.Join(args[:min(len(args), 3)], " "), strings.TrimSpace(told))
	if l.refused = append(l.refused, text); damage.MatchString(told) {
		l.damaged = once(l.damaged, text)
	}
}
