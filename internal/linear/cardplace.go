package linear

import (
	"slices"
	"strings"

	"brazebooth/calc/advice"
	"brazebooth/internal/choice"
	"brazebooth/internal/near"
	"brazebooth/internal/quantity"
)

// cardPlace is the place after the card was read out, where every question about it can be asked.
type cardPlace struct{ fresh bool }

func (cardPlace) name(*talk) string { return "card" }

func (p cardPlace) enter(t *talk) {
	if p.fresh {
		t.read()
	}
}

func (cardPlace) back(t *talk) {
	path := t.path()
	t.goTo(&question{step: len(path), choice: path[len(path)-1]})
}

// command is a word that can be typed at the card.
type command struct {
	name, usage string
	do          func(t *talk, rest string)
}

// commands are listed in the order of help. It is a function because some commands read this list themselves.
func commands() []command {
	return []command{
		{"card", "the whole card again", func(t *talk, _ string) { t.read() }},
		{"results", "current, heat, bead, zinc and every other figure, and the edges", (*talk).readResults},
		{"cautions", "every stop, caution and note with its source", (*talk).readCautions},
		{"assumed", "what was not given, and why it is taken so", (*talk).readAssumed},
		{"why",
			"why feed: where a figure comes from and what it rests on; why and a page after it was read: its sources",
			(*talk).why},
		{"map", "what is good from where to where", (*talk).readWindow},
		{"timed", "on, off and step of a timed arc", (*talk).readTimed},
		{"correct", "say what a test bead shows, and hear what to change", (*talk).correct},
		{"keep-bead", "after correct: keep that test bead in the book; keep-bead acceptable: as good enough",
			withBook((*talk).keepBead)},
		{"pull", "after power-source: pull 17.2kN sheet keeps a piece of this card that was pulled until it broke, " +
			"where: sheet, bronze or bond", withBook((*talk).pull)},
		{"keep", "keep and a name: keep the card in the book", withBook((*talk).keep)},
		{"find", "find and words: cards that are kept", withBook((*talk).find)},
		{"open", "open and a number of the list, or a name: take a kept card", withBook((*talk).open)},
		{"power-source", "power-source and a name: take what its readings taught", withBook((*talk).recall)},
		{"dial", "dial feed 4.2 5.1m/min, or dial volts 3 15.1: keep what a dial of the power source gives at a mark",
			withBook((*talk).keepDial)},
		{"reset", "reset feed: the suggestion back; reset alone: all of them", (*talk).reset},
		{"undo", "the last change taken back", (*talk).undo},
		{"example", "a real job of the shop", func(t *talk, _ string) { t.example() }},
		{"new", "begin again with the metal", func(t *talk, _ string) { t.start() }},
	}
}

func (cardPlace) hear(t *talk, line string) {
	word, rest := cutWord(line)
	word = strings.ToLower(strings.TrimLeft(word, "-"))
	for _, c := range commands() {
		if c.name == word {
			c.do(t, rest)
			return
		}
	}
	page, isPage := advice.EntryByName(word)
	c, value := t.choiceNamed(line)
	switch {
	case line == "":
		t.voice.show("This is the card. Type feed and a number, why feed, map, keep and a name, or help.")
	case line == "?":
		t.at.help(t)
	case isPage && rest == "":
		t.readPage(page)
	case c != nil && (value == "" || value == "?"):
		q := &question{choice: c}
		if t.goTo(q); value == "?" {
			q.list(t, "")
		}
	case c != nil:
		t.change(c, value)
	default:
		t.unknown(word)
	}
}

// choiceNamed finds the choice that a line begins with, by a name of one or two words, and the rest of the line.
func (t *talk) choiceNamed(line string) (*choice.Choice, string) {
	one, rest := cutWord(strings.Replace(line, "=", " ", 1))
	two, after := cutWord(rest)
	if c := choice.Called(one + " " + two); c != nil {
		return c, after
	}
	return choice.Called(one), rest
}

// unknown refuses a word and names similar ones.
func (t *talk) unknown(word string) {
	if _, err := quantity.Read(quantity.FieldNumber, word); err == nil {
		t.refuse("a number alone is not enough here", "type what it is for, as feed 6.2 or travel 8")
		return
	}
	names := choice.Names(choice.All())
	for _, c := range commands() {
		names = append(names, c.name)
	}
	for _, p := range advice.Contents() {
		names = append(names, p.Name)
	}
	slices.Sort(names)
	like := choice.Like(word, slices.Compact(names))
	hint := "help lists what may be typed"
	if len(like) > 0 {
		hint = "type " + near.Or(like) + "; " + hint
	}
	t.refuse("nothing here is called "+quoted(word), hint)
}

func (cardPlace) help(t *talk) {
	for _, c := range commands() {
		t.voice.show(c.name + ": " + c.usage + ".")
	}
	t.voice.show("Pages beside the card: " + strings.Join(advice.ComputedPages(), ", ") + ".")
	t.voice.show("To change a choice, type its name and its new value, such as feed 6.2 or joint tee; " +
		"the name alone asks. They are " + strings.Join(choice.Names(choice.OnCard()), ", ") +
		", and what each page asks for.")
	t.voice.show("help and a name explains one of them, words and a word looks in the glossary. back, again, " +
		"units, quit.")
}

// example puts the shop's example job on the card.
func (t *talk) example() {
	if !t.begin(t.o.Example) {
		return
	}
	if t.o.Title != "" {
		t.voice.say(capital(t.o.Title), ".")
	}
	t.goTo(cardPlace{fresh: true})
}
