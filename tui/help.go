package tui

import (
	"strings"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"
)

// openHelp opens the help where it tells of the open screen.
func openHelp(m *root) tea.Cmd {
	if _, text := m.front().(*textPage); text {
		m.pop()
	}
	title := m.front().about(m).help
	m.read("help", helpBody)
	page := m.front().(*textPage)
	for i, l := range helpBody(&m.th, min(m.w-2*m.margin(), textWidth)) {
		if strings.TrimRight(ansi.Strip(l.Text), " ") == title {
			page.scroll.top = i
			break
		}
	}
	return nil
}

// helpColumn is where what a key does begins.
const helpColumn = 11

// keysColumn lists keys with what they do. The library does not wrap: what a key does on further lines are entries
// without a key.
func keysColumn(th *theme, keys [][2]string, w int) (b block) {
	var list []key.Binding
	for _, k := range keys {
		name := k[0]
		for _, l := range wrap(k[1], w-helpColumn-1) {
			list = append(list, entry(name, l, true))
			name = ""
		}
	}
	for text := range strings.SplitSeq(th.keys.FullHelpView([][]key.Binding{list}), "\n") {
		text = strings.TrimRight(text, " ")
		b.add(line{Text: text, Width: ansi.StringWidth(text)})
	}
	return b
}

// The parts of the help below the keys: what the signs mean that the screens use, and texts.
var helpSigns = [...][2]string{
	{"~", "assumed: nobody chose it yet"},
	{"yours", "you changed it; r puts the suggestion back"},
	{"5.5–7.3", "beside a wire feed or travel that is suggested: how far it may go alone and still be good; " +
		"beside gas and stick-out: what is usual; beside volts and results: the band that 95 of 100 fall in"},
	{"■ ▲ •", "stop, caution, note"},
}

var helpTexts = [...][2]string{
	{"seen from afar", "b fills the screen with five figures; c shows its cautions, any other key returns. " +
		"Of a timed arc the bar moves all the time, so the terminal keeps getting something new. " +
		"Of any other nothing changes: whether the screen goes dark is for the terminal and the machine to " +
		"say, not for this program."},
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
