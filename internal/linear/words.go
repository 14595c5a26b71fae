package linear

import (
	"strings"

	"brazebooth/calc/advice"
	"brazebooth/internal/choice"
	"brazebooth/tables"
)

// words reads out an entry of the glossary, or the list of entries.
func (t *talk) words(word string) {
	if word == "" {
		var list []string
		for _, w := range tables.Terms {
			list = append(list, w.Word)
		}
		t.voice.say("The words are: ", strings.Join(list, "; "), ".")
		return
	}
	w, ok := tables.FindTerm(word)
	if !ok {
		t.refuse("there is no word "+quoted(word), "words alone lists them all")
		return
	}
	t.voice.say(capital(w.Word), ". ", sentence(t.inUnits(w.Says)))
	if w.Unit != "" {
		t.voice.say("In ", unitList(w.Unit), ".")
	}
	t.source(w.Source, string(w.Known))
}

// unitList is a term's units in words: "m/min or in/min".
func unitList(text string) string {
	if text == "1" {
		return "a number without a unit"
	}
	parts := strings.Split(text, " or ")
	for i, p := range parts {
		list := strings.Split(p, ", ")
		for k := range list {
			list[k] = unitWord(list[k], false)
		}
		parts[i] = strings.Join(list, ", ")
	}
	return strings.Join(parts, " or ")
}

// helpOn says what can be typed at this place, or explains one word.
func (t *talk) helpOn(word string) {
	if word == "" {
		t.at.help(t)
		return
	}
	low := strings.ToLower(word)
	for _, c := range commands() {
		if c.name == low {
			t.voice.show(c.name + ": " + c.usage + ".")
			return
		}
	}
	page, isPage := advice.EntryByName(low)
	if isPage {
		t.voice.show(sentence(page.Name + ": a page beside the card, under " + string(page.Chapter)))
		if list := choice.Open(&t.job, page.Asks(t.card.Used.Joint)); len(list) > 0 {
			t.voice.show("It asks for: " + strings.Join(list, ", ") + ".")
		}
	}
	if c, rest := t.choiceNamed(word); c != nil && rest == "" {
		t.voice.show(sentence(c.Name + ": " + usage(c)))
	} else if !isPage {
		t.refuse("no help on "+quoted(word),
			"help alone says what may be typed; words and a word looks in the glossary")
	}
}

// usage is a choice's help without the parts that only concern the commands.
func usage(c *choice.Choice) string {
	text, _, _ := strings.Cut(c.Help(), " (see tables")
	return text
}
