package tui

import (
	"slices"
	"strings"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"
)

// openHelp opens the help at the part about the open screen.
func openHelp(m *root) tea.Cmd {
	if _, text := m.front().(*textPage); text {
		m.pop()
	}
	title := m.front().about(m).help
	m.read("help", helpBody)
	page := m.front().(*textPage)
	w := min(m.w-2*m.margin(), textWidth)
	body := helpBody(&m.th, w)
	page.scroll.fill(body, w, 1)
	page.scroll.view.SetYOffset(slices.IndexFunc(body, func(l line) bool {
		return strings.TrimRight(ansi.Strip(l.Text), " ") == title
	}))
	return nil
}

// helpColumn is the column in which the explanations of keys begin.
const helpColumn = 11

// keysColumn lists keys with what they do. The library does not wrap text, so further lines of an explanation are
// entries without a key.
func keysColumn(th *theme, keys [][2]string, w int) block {
	var list []key.Binding
	for _, k := range keys {
		name := k[0]
		for _, l := range wrap(k[1], w-helpColumn-1) {
			list = append(list, entry(name, l, true))
			name = ""
		}
	}
	return linesOf(th.keys.FullHelpView([][]key.Binding{list}))
}

// The parts of the help below the keys: the meaning of the signs on the screens, and texts.
var helpSigns = [...][2]string{
	{"~", "assumed: nobody chose it yet"},
	{"yours", "you changed it; r puts the suggestion back"},
	{"5.5–7.3", "beside a wire feed or travel that is suggested: how far it may go alone and still be good; " +
		"beside gas and stick-out: what is usual; beside volts and results: the band that 95 of 100 fall in"},
	{"■ ▲ •", "stop, caution, note"},
}

var helpTexts = [...][2]string{
	{"seen from afar", "b fills the screen with five figures; the arrows pick and change them, c shows the " +
		"cautions, esc returns. With a timed arc the bar moves all the time, so the terminal keeps getting " +
		"something new. With any other arc nothing changes: whether the screen then goes dark is set in the " +
		"terminal and the machine, not in this program."},
	{"colours", "brazebooth --theme auto, dark, light, contrast or none. contrast is the strongest; none " +
		"has bold and plain text only. In sixteen colours the terminal's own palette decides."},
}

// helpBody lists every key by what it does, and the signs that the screens use.
func helpBody(th *theme, w int) (b block) {
	for _, g := range helpGroups {
		b.add(newRow(w).put(th.bold, g.title).line())
		b.addAll(keysColumn(th, g.keys, w-2).indent(2))
		b.skip()
	}
	b.add(newRow(w).put(th.bold, "signs").line())
	for _, s := range helpSigns {
		r := newRow(w).blank(2).put(th.bold, s[0])
		b.addAll(flow(r, []piece{{14, th.plain, s[1]}}, 14, w))
	}
	for _, s := range helpTexts {
		b.skip()
		b.add(newRow(w).put(th.bold, s[0]).line())
		b.say(th.plain, 2, s[1], w)
	}
	return b
}

// bound are the keys of the screens. Keys that print a character work only while nothing is typed.
var bound = struct {
	Up, Down, PageUp, PageDown, Top, Bottom key.Binding

	On, Back, Next, Prev, Less, More, Reset, ResetAll key.Binding

	Why, Cautions, Drawing, Map, Beat, Play, Pages, Keep, Shelf, KeepBead, Delete, Restore, Undo, Acceptable,
	EndPractice, Picture, Booth, Units, Words, Help, Leave, Kill key.Binding
}{
	Up: bind("up", "8"), Down: bind("down", "2"), PageUp: bind("pgup"), PageDown: bind("pgdown"),
	Top: bind("home"), Bottom: bind("end"),

	On: bind("enter"), Back: bind("esc", "/"), Next: bind("tab"), Prev: bind("shift+tab"),

	Less: bind("left", "-", "4"), More: bind("right", "+", "=", "6"), Reset: bind("r", "0"), ResetAll: bind("R"),

	Why: bind("*", "w"), Cautions: bind("c", "."), Drawing: bind("x", "3"), Map: bind("m", "7"),
	Beat: bind("t", "9"), Pages: bind("p", "1", "f4"),

	Keep: bind("k", "s"), Shelf: bind("f5"), KeepBead: bind("k", "7"), Delete: bind("delete", "ctrl+d"),
	Restore: bind("ctrl+z"), Undo: bind("ctrl+z"), Acceptable: bind("a", "9"), EndPractice: bind("s"),
	Picture: bind("v"),

	Play: bind("space"), Booth: bind("b", "5"), Units: bind("u", "f2"), Words: bind("g", "f3"),
	Help: bind("f1", "?"), Leave: bind("q"), Kill: bind("ctrl+c"),
}

func bind(keys ...string) key.Binding { return key.NewBinding(key.WithKeys(keys...)) }

// helpGroups lists every key for the help page, in the order in which a newcomer meets them, and the commands of a
// shell for tasks that no key does.
var helpGroups = [...]struct {
	title string
	keys  [][2]string // each as it is shown, and what it does
}{
	{"everywhere", [][2]string{{"enter", "go on"}, {"esc /", "back"}, {"tab", "next step, nothing chosen"},
		{"shift+tab", "step before"}, {"f1 ?", "help"}, {"g f3", "words: what the one under the cursor means"},
		{"f5", "kept cards: find one, from the first screen too"}, {"q", "quit"}, {"ctrl+c", "quit at once"}}},
	{"in the walk", [][2]string{{"enter →", "next step"}, {"← 4", "step back"}, {"esc / q", "leave"}}},
	{"in a list", [][2]string{{"↑ ↓", "pick a row"}, {"a–z 1–9", "type a name or a row's number"},
		{"0–9", "type a size"}, {"*", "why"}}},
	{"on the card", [][2]string{
		{"← →", "pick a choice, a dial, a figure"},
		{"↑ ↓ + −", "change it: a choice to the one before or after, a figure by a step"},
		{"0–9", "type a value for the figure that is picked; enter sets it"},
		{"tab", "next row: choices, dials, figures; shift+tab the one before"},
		{".", "next dial; behind it 1 to 9: the choice of that number, 0: a list of the rest, enter: type a value " +
			"for the dial. The lowest line names the numbers"},
		{"enter", "why, or the list of a choice"}, {"r", "suggestion back"}, {"R", "all suggestions back"},
		{"ctrl+z", "take back the last change of a setting"}, {"* w", "why"}, {"c", "all cautions"},
		{"x", "cross-section and edges"}, {"m", "map of all settings"}, {"t", "timed arc: on and off"},
		{"k s", "keep the card in the book, or find one"},
		{"p f4", "the pages: fit … correct, measure, practice, book, records, sheet"}, {"b", "booth view"},
		{"u", "units: metric, inch, both"}}},
	{"on the map", [][2]string{{"↑ ↓ ← →", "walk; the card follows"}, {"r 0", "suggestion back"},
		{"v", "the same as a picture (--pictures)"}, {"esc enter", "back to the card"}}},
	{"on the pages", [][2]string{
		{"→ 6 f4", "next page; the first letter of a page leads to it; where letters are typed: f4, or → while " +
			"nothing stands there"},
		{"← 4", "page before"}, {"enter", "what the page asks for; on correct: what the bead shows"}, {"*", "sources"},
		{"k 7", "keep the test bead in the book"}, {"a 9", "keep it as acceptable"}, {"esc /", "back to the card"}}},
	{"on a practice job", [][2]string{{"← → .", "pick a setting"}, {"↑ ↓ + −", "more, less"},
		{"0–9", "type a value for the setting that is picked; enter sets it"},
		{"enter", "lay the bead; when it is over the next booth"}, {"r", "as in the last bead"},
		{"s", "end the practice job, show the program's beads"}, {"*", "what the booth hid, when it is over"},
		{"k", "keep how it went in the book"}, {"esc /", "back to the levels"}}},
	{"in the book", [][2]string{
		{"a–z 0–9", "find a record; on the page of cards also the name to keep the card by"},
		{"enter", "open a card, keep it, read a record"},
		{"del ctrl+d", "delete the record under the cursor: asked twice"},
		{"ctrl+z", "bring back what was deleted last"}, {"f4", "next page"}, {"esc", "what is typed, then the card"},
		{"print", "brazebooth book print NAME --pdf FILE: a page for the booth"},
		{"restore", "brazebooth book list --deleted; book restore ID brings one back"},
		{"export", "brazebooth book export FILE: all of it; import FILE takes it in"},
		{"others", "brazebooth book --help; over SSH the same behind ssh and the server's name"}}},
	{"in a list of marks", [][2]string{{"space 5", "mark or unmark"}, {"enter", "go on"}}},
	{"on the timed arc's page", [][2]string{{"space", "play the timed arc"},
		{"← → .", "pick a time, the step, the feed"}, {"↑ ↓ + −", "change it"}, {"r 0", "suggestion back"},
		{"v", "the same as a picture (--pictures)"}, {"esc enter", "back to the card"}}},
	{"in the booth view", [][2]string{{"← → .", "pick a figure"}, {"↑ ↓ + −", "change it"},
		{"r 0", "suggestion back"}, {"space", "play the timed arc"}, {"c", "all cautions"},
		{"esc / b", "back to the card"}}},
	{"at a measurement", [][2]string{{"↑ ↓", "another row; home the first, end the last"},
		{"enter", "next row; on the last one keep it all"},
		{"space", "start and stop the watch, on a row that is timed"}, {"esc", "what is typed, then the card"}}},
}
