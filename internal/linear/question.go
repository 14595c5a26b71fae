package linear

import (
	"fmt"
	"strconv"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/field"
)

// path are the choices that lead to a card. A timed arc's times hang on the joint and its root opening.
func (t *talk) path() []string {
	list := []string{"metal", "gauge", "wire", "mode"}
	if t.job.Mode != "timed" {
		return list
	}
	list = append(list, "joint")
	if t.job.Joint == "butt" || t.job.Joint == "corner" {
		list = append(list, "gap")
	}
	return list
}

// asks are how the questions are put; the other choices are asked by their names.
var asks = map[string]string{
	"metal": "Which metal?", "gauge": "Which gauge, or how thick?", "wire": "Which wire size?", "mode": "Which mode?",
	"metal2": "Which metal is the second member?", "gauge2": "How thick is the second member?", "coating": "Which coating?",
	"coating2": "Which coating has the second member?", "joint": "Which joint?", "filler": "Which filler?", "gas": "Which gas?",
	"position": "Which position?", "use": "What is it for?", "hazard": "Does one of these apply? Several with commas, or none.",
}

// question asks for one choice of the job.
type question struct {
	step  int // on the path, from 1; 0 for one that was asked from the card
	field *field.Field
	rows  []row // what was listed last
	next  int   // row from which "more" goes on
}

func mustField(name string) *field.Field { f, _ := field.ByName(name); return f }

func (q *question) name(*talk) string { return strings.ReplaceAll(q.field.Name, "-", " ") }

// sized reports whether a bare number is a size and no row's number.
func (q *question) sized() bool {
	return strings.HasPrefix(q.field.Name, "gauge") || q.field.Name == "wire"
}

func (q *question) enter(t *talk) {
	lead := asks[q.field.Name]
	if lead == "" {
		lead = sentence(first(fieldUsage(q.field)))
	}
	if q.step > 0 {
		lead = fmt.Sprintf("Step %d of %d. %s", q.step, len(t.path()), lead)
	}
	t.voice.say(lead, " Enter alone: ", t.now(q.field.Name), ".")
	if n := len(t.rowsOf(q.field.Name)); n > 0 && q.step > 0 {
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
		t.goTo(&question{step: q.step - 1, field: mustField(t.path()[q.step-2])})
	}
}

func (q *question) hear(t *talk, line string) {
	word, rest := cutWord(line)
	switch low := strings.ToLower(line); {
	case line == "":
		t.voice.say(first(q.name(t)), ": ", t.now(q.field.Name), ".")
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
		t.goTo(&question{step: q.step + 1, field: mustField(path[q.step])})
		return
	}
	t.goTo(cardPlace{fresh: q.step > 0})
}

// take reads an answer: a row's number, or what the choice itself understands.
func (q *question) take(t *talk, line string) {
	text, ok := q.numbered(t, line)
	if !ok {
		return
	}
	if q.step == 0 {
		if t.change(q.field, text) {
			t.at = cardPlace{}
		}
		return
	}
	job, card, err := t.with(q.field, text)
	if err != nil {
		t.fault(err)
		if len(t.rowsOf(q.field.Name)) > 0 {
			t.voice.show("Or ? for the list.")
		}
		return
	}
	t.job, t.card, t.told = job, card, nil
	t.voice.say(first(q.name(t)), ": ", t.now(q.field.Name), ".")
	q.on(t)
}

// numbered turns a row's number into what the row stands for.
func (q *question) numbered(t *talk, line string) (string, bool) {
	digits, isRow := strings.CutPrefix(strings.ToLower(line), "row ")
	n, err := strconv.Atoi(strings.TrimSpace(digits))
	rows := q.rows
	if rows == nil {
		rows = t.rowsOf(q.field.Name)
	}
	switch {
	case err != nil || !isRow && q.sized() || len(rows) == 0:
		return line, true
	case n >= 1 && n <= len(rows):
		return rows[n-1].id, true
	case !isRow && n > len(rows): // 304 is a metal
		return line, true
	}
	t.refuse(fmt.Sprintf("there is no row %d", n), fmt.Sprintf("type a number from 1 to %d, or ? for the list", len(rows)))
	return "", false
}

// with is the job with a choice on it, and its card.
func (t *talk) with(f *field.Field, text string) (calc.Job, calc.Card, error) {
	job := t.job
	if err := put(f, &job, text); err != nil {
		return job, calc.Card{}, err
	}
	card, err := calc.Answer(t.ctx, job, nil)
	return job, card, err
}

// put sets a choice. A thickness takes the place of a gauge and the other way round; another metal brings its own coat.
func put(f *field.Field, job *calc.Job, text string) error {
	old := *job
	clearSize(f.Name, job)
	if err := f.Set(job, typed(text)); err != nil {
		*job = old
		return err
	}
	if job.Metal != old.Metal {
		job.Coating = ""
	}
	if job.Metal2 != old.Metal2 {
		job.Coating2 = ""
	}
	return nil
}

func clearSize(name string, job *calc.Job) {
	switch name {
	case "gauge":
		job.Gauge, job.Thickness = 0, calc.Opt{}
	case "gauge2":
		job.Gauge2, job.Thickness2 = 0, calc.Opt{}
	}
}

func (q *question) help(t *talk) {
	t.voice.show(sentence(first(fieldUsage(q.field))))
	t.voice.show("? lists the answers, ? and a word those that hold it, more the next ones; answer by name, by number or by size.")
	if q.sized() {
		t.voice.show("A bare number is a size here; row 3 is the third row.")
	}
	t.voice.show("Enter alone leaves it as it is said. card goes to the card at once, example fills in a real job.")
	t.voice.show("back, again, units, words and a word, quit.")
}
