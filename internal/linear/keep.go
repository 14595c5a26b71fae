package linear

import (
	"fmt"
	"strconv"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
)

// noBook says that nothing is kept here, where that is so.
func (t *talk) noBook() bool {
	if t.o.Book != nil {
		return false
	}
	t.refuse("there is no book here", "the program was started without one: brazebooth --plain --book FILE")
	return true
}

// notDone says what the book did not do, and what to type instead where the error knows.
func (t *talk) notDone(what string, err error) {
	hint := ""
	if m := mistake.Of(err); m != nil {
		hint = m.Hint
	}
	t.refuse(what+plain.Line(err.Error(), 300), hint)
}

// keep keeps the card under a name.
func (t *talk) keep(name string) {
	if t.noBook() {
		return
	}
	said, err := t.o.Book.Keep(t.ctx, name, &t.card)
	if err != nil {
		t.notDone("not kept: ", err)
		return
	}
	t.kept = t.job
	t.voice.show(sentence(first(plain.Line(said, 300))))
}

// keepBead keeps the last test bead that was told of, once.
func (t *talk) keepBead(how string) {
	n := len(t.tries)
	switch how = strings.ToLower(how); {
	case t.noBook():
		return
	case n == 0:
		t.refuse("no test bead was told of yet", "type correct, and say what the bead shows")
		return
	case t.bead == n:
		t.refuse("this bead is kept already", "lay the next one, then type correct")
		return
	case how != "" && how != practice.BeadAcceptable:
		t.refuse("a bead is not kept as "+quoted(how), "type keep-bead, or keep-bead acceptable")
		return
	}
	try := t.tries[n-1]
	said, err := t.o.Book.Trial(t.ctx, try.Job, try.Seen, how, t.taught)
	if err != nil {
		t.notDone("not kept: ", err)
		return
	}
	t.bead = n
	t.voice.show(sentence(first(plain.Line(said, 300))))
}

// most is how many kept cards are read out at once.
const most = 9

// find lists kept cards by the beginnings of words.
func (t *talk) find(text string) {
	if t.noBook() || !t.look(text) {
		return
	}
	if len(t.found) == 0 {
		t.voice.say("No kept card answers to that.")
		return
	}
	for i, e := range t.found[:min(len(t.found), most)] {
		t.voice.line(fmt.Sprintf("%d: ", i+1) + literal(e.Name) + ", kept " + literal(e.At) + ": " + t.voice.marked(spell(sentence(e.Line))))
	}
	if n := len(t.found); n > most {
		t.voice.show(fmt.Sprintf("%d more: find and more of the name narrows the list.", n-most))
	}
	t.voice.show("open and a number takes one.")
}

func (t *talk) look(text string) bool {
	list, err := t.o.Book.Find(t.ctx, text)
	if err != nil {
		t.notDone("the book does not answer: ", err)
		return false
	}
	t.found = list
	return true
}

// open takes a kept card, by its number in the list or by its name.
func (t *talk) open(which string) {
	if t.noBook() {
		return
	}
	n, err := strconv.Atoi(which)
	switch {
	case which == "":
		t.refuse("open which card?", "type open 1 after find, or open and a name")
		return
	case err == nil && n >= 1 && n <= len(t.found):
		t.take(t.found[n-1])
		return
	case err == nil && len(t.found) > 0:
		t.refuse(fmt.Sprintf("the list has no number %d", n), fmt.Sprintf("type a number from 1 to %d, or find for another list", len(t.found)))
		return
	case !t.look(which):
		return
	}
	for _, e := range t.found {
		if strings.EqualFold(e.Name, which) || len(t.found) == 1 {
			t.take(e)
			return
		}
	}
	t.find(which)
}

// take puts a kept card in the place of the present one, and asks where that would be lost.
func (t *talk) take(e Entry) {
	if t.job != (calc.Job{}) && t.job != t.kept && t.job != t.o.Example {
		t.goTo(sure{question: "The present card is not kept. Open " + e.Name + " in its place?", yes: func() { t.load(e) }})
		return
	}
	t.load(e)
}

func (t *talk) load(e Entry) {
	job, err := t.o.Book.Load(t.ctx, e.ID)
	if err != nil {
		t.notDone("not opened: ", err)
		return
	}
	card, err := calc.Answer(t.ctx, job, nil)
	if err != nil {
		t.fault(err)
		return
	}
	t.job, t.card, t.kept, t.told, t.page, t.tries, t.taught = job, card, job, nil, nil, nil, ""
	t.voice.show("Opened: ", e.Name, ".")
	t.goTo(cardPlace{fresh: true})
}

// recall narrows the card by what a power source taught.
func (t *talk) recall(source string) {
	switch {
	case t.noBook():
		return
	case source == "":
		t.refuse("which power source?", "type power-source and its name")
		return
	}
	job, err := t.o.Book.Recall(t.ctx, source, t.job)
	if err != nil {
		t.notDone("nothing is known of "+quoted(source)+": ", err)
		return
	}
	t.taught = source
	t.swap(job, "With what the power source "+source+" taught.")
}
