package linear

import (
	"fmt"
	"slices"
	"strings"

	"brazebooth/internal/choice"
)

// atOnce is how many rows are read out at once: nobody remembers more.
const atOnce = 6

// list reads out the first answers, or those that contain a word.
func (q *question) list(t *talk, word string) {
	without := func(r choice.Row) bool {
		return !strings.Contains(strings.ToLower(r.ID+" "+r.Said()), strings.ToLower(word))
	}
	q.rows, q.next = slices.DeleteFunc(slices.Clone(t.rows(q.choice)), without), 0
	switch {
	case len(q.rows) > 0:
		q.more(t)
	case word != "":
		q.rows = nil
		t.refuse("no answer contains "+quoted(word), "? alone lists them all")
	default:
		t.voice.show(sentence(capital(q.choice.Help())))
	}
}

func (q *question) more(t *talk) {
	if q.next >= len(q.rows) {
		t.refuse("there are no more", "? begins again")
		return
	}
	from, to := q.next, min(q.next+atOnce, len(q.rows))
	for i := from; i < to; i++ {
		n := fmt.Sprintf("%d: ", i+1)
		if q.choice.Sized() {
			n = "row " + n
		}
		t.voice.say(n, q.rows[i].ID, ". ", sentence(capital(q.rows[i].Said())))
	}
	q.next = to
	if left := len(q.rows) - to; left > 0 {
		t.voice.show(fmt.Sprintf("%d more: type more.", left))
	}
}
