package linear

import (
	"bufio"
	"cmp"
	"context"
	"io"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/calc/correct"
	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

// talk is one user's questions and answers.
type talk struct {
	ctx   context.Context
	voice *voice
	o     Options
	units quantity.System

	job    calc.Job // the choices made so far; everything else is assumed
	card   calc.Card
	before []past        // the jobs before each change, for undo
	kept   calc.Job      // as it was last saved in the book
	told   []string      // codes of the cautions that were read out for this job
	page   *advice.Page  // the page that was read out last
	found  []Entry       // the saved cards that were found last
	tries  []correct.Try // test beads, oldest first
	bead   int           // how many beads there were when the last one was saved, 0 for none
	taught string        // power source whose readings are on the card
	at     place         // where the talk is
	over   bool
}

// past is an earlier job, and the power source whose readings it had.
type past struct {
	job    calc.Job
	taught string
}

// place is a state of the talk: the name in its prompt, what it says when it is entered, and how it handles a line.
type place interface {
	name(t *talk) string
	enter(t *talk)
	hear(t *talk, line string)
	back(t *talk)
	help(t *talk)
}

func newTalk(ctx context.Context, o Options, out io.Writer) *talk {
	return &talk{ctx: ctx, o: o, units: cmp.Or(o.Units, quantity.Metric),
		voice: &voice{out: bufio.NewWriter(out), below: out, comma: o.Comma}}
}

func (t *talk) greet() {
	t.voice.say("brazebooth: settings for gas metal arc brazing, as questions and answers.")
	t.voice.say("Type an answer and press enter. Enter alone takes what is suggested or assumed.")
	t.voice.show("A question mark lists the answers. help, back and quit work everywhere.")
}

// start asks the questions that lead to a card.
func (t *talk) start() {
	switch {
	case t.begin(calc.Job{}):
		t.goTo(&question{step: 1, choice: t.path()[0]})
	case t.at == nil: // the context ended before the first question
		t.leave()
	}
}

// begin replaces the present job and forgets everything that was read out or tried for the old one. It returns false if
// the job has no card.
func (t *talk) begin(job calc.Job) bool {
	card, err := answer(t.ctx, job, nil)
	if t.failed("", err) {
		return false
	}
	t.job, t.card, t.before, t.told, t.page, t.tries, t.taught = job, card, nil, nil, nil, nil, ""
	return true
}

// goTo moves to another place.
func (t *talk) goTo(p place) {
	t.at = p
	p.enter(t)
}

// hear handles a line: first the words that mean the same everywhere.
func (t *talk) hear(line string) {
	word, rest := cutWord(line)
	switch strings.ToLower(word) {
	case "quit", "exit", "bye", "q":
		t.leave()
	case "back":
		t.at.back(t)
	case "help":
		t.helpOn(rest)
	case "again":
		for _, l := range t.voice.last {
			t.voice.line(l)
		}
	case "words":
		t.words(rest)
	case "units":
		t.setUnits(rest)
	default:
		t.at.hear(t, line)
	}
}

func (t *talk) leave() {
	t.voice.say("Goodbye.")
	t.over = true
}

// refuse says what is wrong and what to type instead. The talk stays at its place.
func (t *talk) refuse(what, hint string) {
	t.voice.say(sentence(capital(t.inUnits(what))))
	if hint != "" {
		t.voice.show(sentence(capital(t.inUnits(hint))))
	}
}

// failed reports whether there is an error, and reads it out with what to type instead if the error knows it. what says
// what was not done.
func (t *talk) failed(what string, err error) bool {
	if err == nil || t.ctx.Err() != nil { // a talk that is ending reads out no error
		return err != nil
	}
	hint := ""
	if m := mistake.Of(err); m != nil {
		hint = m.Hint
	}
	t.refuse(what+plain.Line(err.Error(), 300), hint)
	return true
}

func (t *talk) inUnits(text string) string { return quantity.Sentence(text, t.units) }

// setUnits changes the units; without a name, to the next ones.
func (t *talk) setUnits(name string) {
	sys, ok := quantity.FindSystem(name)
	switch {
	case name == "":
		sys = t.units.Next()
	case !ok:
		t.refuse("there are no units "+quoted(name), "type units metric, units inch or units both")
		return
	}
	t.units = sys
	t.voice.say("Units: ", string(t.units), ".")
}

func cutWord(line string) (word, rest string) {
	word, rest, _ = strings.Cut(line, " ")
	return word, strings.TrimSpace(rest)
}

func quoted(s string) string { return `"` + plain.Line(s, 40) + `"` }
