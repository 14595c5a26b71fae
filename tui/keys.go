package tui

import "charm.land/bubbles/v2/key"

// keyMap holds every key of the screens with the words that help shows for it. Keys that print a
// character work only where nothing is typed.
type keyMap struct {
	Up, Down, PageUp, PageDown, Top, Bottom key.Binding

	On, Back, Next, Prev key.Binding

	Less, More, Reset, ResetAll key.Binding

	Why, Cautions, Drawing, Map, Beat, Play, Pages, Keep, Shelf, KeepBead, Delete, Restore, Undo, Acceptable,
	EndPractice, Picture, Booth, Units, Words, Help, Leave, Kill key.Binding

	// Not keys but lines of help: what typing does on a screen.
	TypeName, TypeSize key.Binding
}

func newKeys() keyMap {
	bind := func(shown, does string, keys ...string) key.Binding {
		return key.NewBinding(key.WithKeys(keys...), key.WithHelp(shown, does))
	}
	return keyMap{
		Up:       bind("↑ 8", "up", "up", "8"),
		Down:     bind("↓ 2", "down", "down", "2"),
		PageUp:   bind("pgup", "a page up", "pgup"),
		PageDown: bind("pgdn", "a page down", "pgdown"),
		Top:      bind("home", "first row", "home"),
		Bottom:   bind("end", "last row", "end"),

		On:   bind("enter", "go on", "enter"),
		Back: bind("esc /", "back", "esc", "/"),
		Next: bind("tab", "next step, nothing chosen", "tab"),
		Prev: bind("shift+tab", "step before", "shift+tab"),

		Less:     bind("← − 4", "less", "left", "-", "4"),
		More:     bind("→ + 6", "more", "right", "+", "=", "6"),
		Reset:    bind("r 0", "suggestion back", "r", "0"),
		ResetAll: bind("R", "all suggestions back", "R"),

		Why:      bind("*", "why", "*", "w"),
		Cautions: bind("c .", "all cautions", "c", "."),
		Drawing:  bind("x 3", "cross-section and edges", "x", "3"),
		Map:      bind("m 7", "map of all settings", "m", "7"),
		Picture:  bind("v", "the same as a picture (--pictures)", "v"),
		Beat:     bind("t 9", "timed arc: on and off", "t", "9"),
		Pages:    bind("p 1 f4", "the pages: fit … correct, measure, practice, book, records, sheet", "p", "1", "f4"),

		Keep:       bind("k s", "keep the card in the book, or find one", "k", "s"),
		Shelf:      bind("f5", "kept cards: find one, from the first screen too", "f5"),
		KeepBead:   bind("k 7", "keep the test bead in the book", "k", "7"),
		Delete:     bind("del ctrl+d", "delete the record under the cursor: asked twice", "delete", "ctrl+d"),
		Restore:    bind("ctrl+z", "bring back what was deleted last", "ctrl+z"),
		Undo:       bind("ctrl+z", "take back the last change of a setting", "ctrl+z"),
		Acceptable: bind("a 9", "keep it as acceptable", "a", "9"),

		EndPractice: bind("s", "end the practice job, show the program's beads", "s"),

		Play:  bind("space", "play the timed arc", "space"),
		Booth: bind("b 5", "booth view: five huge figures to read and to change, the beat of a timed arc", "b", "5"),
		Units: bind("u", "units: metric, inch, both", "u", "f2"),
		Words: bind("g f3", "words: what the one under the cursor means", "g", "f3"),
		Help:  bind("f1 ?", "help", "f1", "?"),
		Leave: bind("q", "quit", "q"),
		Kill:  bind("ctrl+c", "quit at once", "ctrl+c"),

		TypeName: bind("a–z 1–9", "type a name or a row's number"),
		TypeSize: bind("0–9", "type a size"),
	}
}

// command is a line of help about what a shell does and no key.
func command(shown, does string) key.Binding {
	return key.NewBinding(key.WithHelp(shown, does))
}

// helpGroup is one heading of the help page with its keys.
type helpGroup struct {
	title string
	keys  []key.Binding
}

// groups lists every key for the help page, in the order in which a newcomer meets them.
func (k *keyMap) groups() []helpGroup {
	return []helpGroup{
		{"everywhere", []key.Binding{k.On, k.Back, k.Next, k.Prev, k.Help, k.Words, k.Shelf, k.Leave, k.Kill}},
		{"in the walk", []key.Binding{named(k.On, "enter →", "next step"), named(k.Less, "← 4", "step back"),
			named(k.Back, "esc / q", "leave")}},
		{"in a list", []key.Binding{named(k.Up, "↑ ↓", "pick a row"), k.TypeName, k.TypeSize, k.Why}},
		{"on the card", []key.Binding{named(k.More, "← →", "pick a choice, a dial, a figure"), named(k.Up, "↑ ↓ + −",
			"change it: a choice to the one before or after, a figure by a step"),
			named(k.TypeSize, "0–9", "type a value for the figure that is picked; enter sets it"), named(k.Next,
				"tab", "next row: choices, dials, figures; shift+tab the one before"),
			named(k.Next, ".", "next dial; behind it 1 to 9: the choice of that number, 0: a list of the rest, "+
				"enter: type a value for the dial. The lowest line names the numbers"),
			named(k.On, "enter", "why, or the list of a choice"),
			named(k.Reset, "r", "suggestion back"), k.ResetAll, k.Undo, named(k.Why, "* w", "why"), named(k.Cautions,
				"c", "all cautions"), named(k.Drawing, "x", "cross-section and limits"),
			named(k.Map, "m", "map of all settings"), named(k.Beat, "t", "timed arc: on and off"), k.Keep,
			named(k.Pages, "p f4", "the pages: fit … correct, measure, practice, book, records, sheet"),
			named(k.Booth, "b", "booth view"), k.Units}},
		{"on the map", []key.Binding{named(k.Up, "↑ ↓ ← →", "walk; the card follows"), named(k.Reset, "r 0",
			"suggestion back"), k.Picture, named(k.Back, "esc enter", "back to the card")}},
		{"on the pages", []key.Binding{named(k.Pages, "→ 6 f4", "next page; the first letter of a page leads to "+
			"it; where letters are typed: f4, or → while nothing stands there"), named(k.Less, "← 4", "page before"),
			named(k.On, "enter", "what the page asks for; on correct: what the bead shows"), named(k.Why, "*",
				"sources"), k.KeepBead, k.Acceptable, named(k.Back, "esc /", "back to the card")}},
		{"on a practice job", []key.Binding{named(k.More, "← → .", "pick a setting"), named(k.Up, "↑ ↓ + −",
			"more, less"), named(k.TypeSize, "0–9", "type a value for the setting that is picked; enter sets it"),
			named(k.On, "enter", "lay the bead; when it is over the next booth"), named(k.Reset, "r",
				"as in the last bead"), k.EndPractice, named(k.Why, "*", "what the booth hid, when it is over"),
			named(k.KeepBead, "k", "keep how it went in the book"), named(k.Back, "esc /", "back to the levels")}},
		{"in the book", []key.Binding{named(k.TypeName, "a–z 0–9", "find a record; on the page of cards also the "+
			"name to keep the card by"), named(k.On, "enter", "open a card, keep it, read a record"), k.Delete,
			k.Restore, named(k.Pages, "f4", "next page"), named(k.Back, "esc", "what is typed, then the card"),
			command("print", "brazebooth book print NAME --pdf FILE: a page for the booth"), command("restore",
				"brazebooth book list --deleted; book restore ID brings one back"),
			command("export", "brazebooth book export FILE: all of it; import FILE takes it in"), command("others",
				"brazebooth book --help; over SSH the same behind ssh and the server's name")}},
		{"in a list of marks", []key.Binding{named(k.Play, "space 5", "mark or unmark"), named(k.On, "enter",
			"go on")}},
		{"on the timed arc's page", []key.Binding{k.Play, named(k.More, "← → .", "pick a time, the step, the feed"),
			named(k.Up, "↑ ↓ + −", "change it"), named(k.Reset, "r 0", "suggestion back"), k.Picture, named(k.Back,
				"esc enter", "back to the card")}},
		{"in the booth view", []key.Binding{named(k.More, "← → .", "pick a figure"), named(k.Up, "↑ ↓ + −",
			"change it"), named(k.Reset, "r 0", "suggestion back"), k.Play, named(k.Cautions, "c", "all cautions"),
			named(k.Back, "esc / b", "back to the card")}},
		{"at a measurement", []key.Binding{named(k.Up, "↑ ↓", "another row; home the first, end the last"), named(k.On,
			"enter", "next row; on the last one keep it all"), named(k.Play, "space", "start and stop the watch, on "+
			"a row that is timed"), named(k.Back, "esc", "what is typed, then the card")}},
	}
}
