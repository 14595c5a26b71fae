package linear

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/choice"
)

func (t *talk) path() []*choice.Choice { return choice.Path(&t.job) }

// question asks for one choice of the job.
type question struct {
	step   int // on the path, from 1; 0 for a question that was asked at the card
	choice *choice.Choice
	rows   []choice.Row // the rows that were listed last
	next   int          // the row at which "more" continues
}

func (q *question) name(*talk) string { return q.choice.Words() }

func (q *question) enter(t *talk) {
	lead := q.choice.Ask
	if lead == "" {
		lead = sentence(capital(usage(q.choice)))
	}
	if q.step > 0 {
		lead = fmt.Sprintf("Step %d of %d. %s", q.step, len(t.path()), lead)
	}
	t.voice.say(lead, " Enter alone: ", t.now(q.choice), ".")
	if n := t.listed(q.choice); n > 0 && q.step > 0 {
		t.voice.show(fmt.Sprintf("? lists %d answers.", n))
	}
}

func (q *question) back(t *talk) {
	switch {
	case q.step == 0:
		t.goTo(cardPlace{})
	case q.step == 1:
		t.refuse("this is the first question", "quit ends")
	default:
		t.goTo(&question{step: q.step - 1, choice: t.path()[q.step-2]})
	}
}

func (q *question) hear(t *talk, line string) {
	word, rest := cutWord(line)
	switch low := strings.ToLower(line); {
	case line == "":
		t.voice.say(capital(q.name(t)), ": ", t.now(q.choice), ".")
		q.on(t)
	case word == "?":
		q.list(t, rest)
	case low == "more":
		q.more(t)
	case low == "card":
		t.goTo(cardPlace{fresh: true})
	case low == "example":
		t.example()
	default:
		q.take(t, line)
	}
}

// on goes to the next question, or to the card.
func (q *question) on(t *talk) {
	if path := t.path(); q.step > 0 && q.step < len(path) {
		t.goTo(&question{step: q.step + 1, choice: path[q.step]})
		return
	}
	t.goTo(cardPlace{fresh: q.step > 0})
}

// take reads an answer: a row's number, or text that the choice itself understands.
func (q *question) take(t *talk, line string) {
	text, ok := q.numbered(t, line)
	if !ok {
		return
	}
	if q.step == 0 {
		if t.change(q.choice, text) {
			t.at = cardPlace{}
		}
		return
	}
	job, card, err := t.with(q.choice, text)
	if err != nil {
		t.failed("", err)
		if t.listed(q.choice) > 0 {
			t.voice.show("Or ? for the list.")
		}
		return
	}
	t.job, t.card, t.told = job, card, nil
	t.voice.say(capital(q.name(t)), ": ", t.now(q.choice), ".")
	q.on(t)
}

// numbered replaces a row's number by the row's id.
func (q *question) numbered(t *talk, line string) (string, bool) {
	digits, isRow := strings.CutPrefix(strings.ToLower(line), "row ")
	n, err := strconv.Atoi(strings.TrimSpace(digits))
	if err != nil || !isRow && q.choice.Sized() {
		return line, true // before the rows, which may take long to compute
	}
	rows := q.rows
	if rows == nil {
		rows = t.rows(q.choice)
	}
	switch {
	case len(rows) == 0:
		return line, true
	case n >= 1 && n <= len(rows):
		return rows[n-1].ID, true
	case !isRow && n > len(rows): // 304 is a metal, not a row's number
		return line, true
	}
	t.refuse(fmt.Sprintf("there is no row %d", n), fmt.Sprintf("type a number from 1 to %d, or ? for the list",
		len(rows)))
	return "", false
}

// with is the job with a choice added, and its card.
func (t *talk) with(c *choice.Choice, text string) (calc.Job, calc.Card, error) {
	job := t.job
	if err := c.Set(&job, text); err != nil {
		return job, calc.Card{}, err
	}
	card, err := answer(t.ctx, job, nil)
	return job, card, err
}

func (q *question) help(t *talk) {
	t.voice.show(sentence(capital(usage(q.choice))))
	t.voice.show("? lists the answers, ? and a word those that contain it, more the next ones; answer by name, by " +
		"number or by size.")
	if q.choice.Sized() && t.listed(q.choice) > 0 {
		t.voice.show("A number alone is a size here; row 3 is the third row.")
	}
	t.voice.show("Enter alone keeps what was read out. card goes to the card at once, example fills in a real job.")
	t.voice.show("back, again, units, words and a word, quit.")
}

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

// sure asks for a confirmation, and then goes back to the card.
type sure struct {
	question string
	yes      func()
}

func (sure) name(*talk) string { return "yes or no" }
func (sure) back(t *talk)      { t.goTo(cardPlace{}) }
func (s sure) enter(t *talk)   { t.voice.show(s.question, " Enter alone: yes.") }
func (s sure) help(t *talk)    { t.voice.say(s.question, " Type yes or no.") }

func (s sure) hear(t *talk, line string) {
	switch strings.ToLower(line) {
	case "", "yes", "y":
		t.at = cardPlace{}
		s.yes()
	case "no", "n":
		t.voice.say("Left as it was.")
		t.goTo(cardPlace{})
	default:
		t.refuse("that is neither yes nor no", "type yes or no")
	}
}
