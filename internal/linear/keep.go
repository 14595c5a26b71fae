package linear

import (
	"fmt"
	"strconv"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/choice"
	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

// withBook is a command that needs the book. Without a book it says so.
func withBook(do func(t *talk, rest string)) func(*talk, string) {
	return func(t *talk, rest string) {
		if t.o.Book == nil {
			t.refuse("there is no book here", "the program was started without one: brazebooth --plain --book FILE")
			return
		}
		do(t, rest)
	}
}

// isKept reads out what was saved, or why nothing was.
func (t *talk) isKept(said string, err error) bool {
	if t.failed("not kept: ", err) {
		return false
	}
	t.voice.show(sentence(capital(plain.Line(said, 300))))
	return true
}

// keep saves the card under a name.
func (t *talk) keep(name string) {
	if t.isKept(t.o.Book.Keep(t.ctx, name, &t.card)) {
		t.kept = t.job
	}
}

// keepBead saves the last test bead that was described, once.
func (t *talk) keepBead(how string) {
	n := len(t.tries)
	switch how = strings.ToLower(how); {
	case n == 0:
		t.refuse("no test bead was told of yet", "type correct, and say what the bead shows")
	case t.bead == n:
		t.refuse("this bead is kept already", "lay the next one, then type correct")
	case how != "" && how != practice.BeadAcceptable:
		t.refuse("a bead cannot be kept as "+quoted(how), "type keep-bead, or keep-bead acceptable")
	case t.isKept(t.o.Book.Trial(t.ctx, t.tries[n-1].Job, t.tries[n-1].Seen, how, t.taught)):
		t.bead = n
	}
}

// most is how many saved cards are read out at once.
const most = 9

// find lists saved cards by the beginnings of words.
func (t *talk) find(text string) {
	if t.look(text) {
		t.listFound()
	}
}

func (t *talk) look(text string) bool {
	list, err := t.o.Book.List(t.ctx, "card", text)
	if t.failed("the book does not answer: ", err) {
		return false
	}
	t.found = list
	return true
}

func (t *talk) listFound() {
	if len(t.found) == 0 {
		t.voice.say("No kept card matches that.")
		return
	}
	for i, e := range t.found[:min(len(t.found), most)] {
		name := fmt.Sprintf("%d: %s, kept %s: ", i+1, literal(e.Name), literal(e.At))
		t.voice.line(name + t.voice.marked(spell(sentence(e.Line))))
	}
	if n := len(t.found); n > most {
		t.voice.show(fmt.Sprintf("%d more: type find and more of the name to narrow the list.", n-most))
	}
	t.voice.show("Type open and a number to open one.")
}

// open opens a saved card, by its number in the list or by its name.
func (t *talk) open(which string) {
	n, err := strconv.Atoi(which)
	last := len(t.found)
	switch {
	case which == "":
		t.refuse("open which card?", "type open 1 after find, or open and a name")
	case err == nil && n >= 1 && n <= last:
		t.take(t.found[n-1])
	case err == nil && last > 0:
		t.refuse(fmt.Sprintf("the list has no number %d", n),
			fmt.Sprintf("type a number from 1 to %d, or find for another list", last))
	case t.look(which):
		for _, e := range t.found {
			if strings.EqualFold(e.Name, which) || len(t.found) == 1 {
				t.take(e)
				return
			}
		}
		t.listFound()
	}
}

// take replaces the present card by a saved one. If changes would be lost, it asks first.
func (t *talk) take(e Entry) {
	if t.job != (calc.Job{}) && t.job != t.kept && t.job != t.o.Example {
		question := "The present card is not kept. Open " + e.Name + " in its place?"
		t.goTo(sure{question, func() { t.load(e) }})
		return
	}
	t.load(e)
}

func (t *talk) load(e Entry) {
	job, err := t.o.Book.Load(t.ctx, e.ID)
	if t.failed("not opened: ", err) {
		return
	}
	if t.begin(job) {
		t.kept = job
		t.voice.show("Opened: ", e.Name, ".")
		t.goTo(cardPlace{fresh: true})
	}
}

// recall puts what was learned about a power source on the card.
func (t *talk) recall(source string) {
	if source == "" {
		t.refuse("which power source?", "type power-source and its name")
		return
	}
	job, err := t.o.Book.Recall(t.ctx, source, t.job)
	if t.failed("nothing is known of "+quoted(source)+": ", err) {
		return
	}
	t.swap(job, "With what the power source "+source+" taught.")
	t.taught = source
}

// pull saves a test piece of the card's job that was pulled until it broke.
func (t *talk) pull(what string) {
	load, broke := cutWord(what)
	kN, err := quantity.Read(quantity.FieldForce, load)
	switch {
	case t.taught == "":
		t.refuse("a pulled piece belongs to a power source", "type power-source and its name first")
	case err != nil:
		t.failed("not kept: ", err)
	default:
		t.isKept(t.o.Book.Pull(t.ctx, t.job, kN, broke, t.taught))
	}
}

// keepDial saves what the power source delivers at a position of one of its dials, and puts what its readings teach on
// the card.
func (t *talk) keepDial(rest string) {
	if t.taught == "" {
		t.refuse("a dial of which power source?", "type power-source and its name; brazebooth book source enters one")
		return
	}
	r, err := dialRead(rest)
	if t.failed("", err) {
		return
	}
	job, said, err := t.o.Book.Measure(t.ctx, t.taught, r, 0, t.job)
	if t.isKept(said, err) {
		t.swap(job, "The card has what the dials of "+t.taught+" taught; results reads where they stand.")
	}
}

// dialRead reads "feed 4.2 5.1 m/min" or "volts 3 15.1": which dial, its position, what the power source delivers.
func dialRead(text string) (r calc.Reading, err error) {
	name, rest := cutWord(text)
	at, gives := cutWord(rest)
	c := choice.Called(strings.ToLower(name))
	if c == nil || c.Name != "feed" && c.Name != "volts" || gives == "" {
		return r, mistake.New("this needs a dial, its position and what it gives",
			"type dial feed 4.2 5.1m/min, or dial volts 3 15.1")
	}
	mark, err := quantity.Read(quantity.FieldMark, at)
	if err != nil {
		return r, err
	}
	var j calc.Job
	if err := c.Set(&j, gives); err != nil {
		return r, err
	}
	if c.Name == "feed" {
		return calc.Reading{Feed: j.Feed.V, FeedDial: calc.Some(mark)}, nil
	}
	return calc.Reading{Volts: j.Volts.V, VoltsDial: calc.Some(mark)}, nil
}
