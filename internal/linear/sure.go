package linear

import "strings"

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
