package linear

import (
	"fmt"
	"strconv"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/calc/correct"
	"brazebooth/internal/mistake"
	"brazebooth/internal/report"
	"brazebooth/tables"
)

func (t *talk) correct(string) {
	if stops := calc.Stops(t.card.Warnings); len(stops) > 0 {
		t.tell(report.Stops{List: stops})
		t.refuse("no setting mends a job that is stopped", "")
		return
	}
	if n := len(t.tries); n > 0 && !correct.SameBead(t.tries[n-1].Job, t.job) {
		t.tries = nil
		t.voice.say("The job is another one now: the beads before it do not count.")
	}
	t.goTo(seenPlace{})
}

// seenPlace waits for what a bead shows.
type seenPlace struct{}

func (seenPlace) name(*talk) string { return "seen" }
func (seenPlace) back(t *talk)      { t.goTo(cardPlace{}) }

func (seenPlace) enter(t *talk) {
	t.voice.say("Lay a test bead on scrap of the same sheet with the settings of the card, look at both faces, " +
		"peel it. What does it show?")
	for i, s := range tables.Sights {
		t.voice.say(fmt.Sprintf("%d: ", i+1), s.Name, ".")
	}
	t.voice.show("Several with commas, as 1,6. Enter alone goes back to the card.")
}

func (seenPlace) help(t *talk) {
	t.voice.show("Type the number of what the bead shows, several with commas, or good if nothing is wrong. " +
		"Enter alone goes back, again lists them once more.")
}

func (p seenPlace) hear(t *talk, line string) {
	switch line {
	case "":
		p.back(t)
		return
	case "?":
		p.enter(t)
		return
	}
	seen, err := sights(line)
	laid := calc.Laid(&t.card)
	tries := append(t.tries[:len(t.tries):len(t.tries)], correct.Try{Job: correct.AsSet(t.card.Job, &laid), Seen: seen})
	var page advice.Page
	if err == nil {
		page, err = correct.Next(t.ctx, tries)
	}
	if t.failed("", err) {
		return
	}
	if len(tries) == 1 {
		t.bead = 0
	}
	t.tries = tries
	t.advise(&page)
}

// advise reads out the one change to make, and asks whether to put it on the card.
func (t *talk) advise(page *advice.Page) {
	c := page.Correction
	t.page = page
	t.tell(report.Page(page, nil)...)
	if t.o.Book != nil {
		t.voice.show("At the card keep-bead keeps this test bead in the book.")
	}
	if c.Change == nil {
		t.goTo(cardPlace{})
		return
	}
	t.goTo(sure{"Put this change on the card?", func() {
		t.swap(c.Next, "On the card. Lay the next bead, then type correct again.")
	}})
}

// sights turns numbers and names, separated by commas, into the ids of what a bead shows.
func sights(line string) (string, error) {
	var ids []string
	for _, part := range strings.FieldsFunc(strings.ToLower(line), func(r rune) bool { return r == ',' || r == ';' }) {
		words := strings.Fields(part)
		if name := strings.Join(words, " "); sightNamed(name) != "" {
			words = []string{name}
		}
		for _, w := range words {
			id := sightNamed(w)
			if id == "" {
				return "", mistake.In("seen", "nothing in the list is "+quoted(w), fmt.Sprintf(
					"type a number from 1 to %d, several with commas, or ? for the list", len(tables.Sights)))
			}
			ids = append(ids, id)
		}
	}
	return correct.SeenIDs(strings.Join(ids, ","))
}

// sightNamed finds a sight by its number, its id, the beginning of its name or what people call it; "" if there is
// none.
func sightNamed(text string) string {
	list := tables.Sights
	if n, err := strconv.Atoi(text); err == nil {
		if n < 1 || n > len(list) {
			return ""
		}
		return list[n-1].ID
	}
	for _, s := range list {
		if s.ID == strings.ReplaceAll(text, " ", "-") || len(text) > 3 && strings.HasPrefix(s.Name, text) {
			return s.ID
		}
	}
	s, _ := tables.Sights.ByID(tables.SightsSaid(text))
	return s.ID
}
