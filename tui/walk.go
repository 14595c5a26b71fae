package tui

import (
	"context"
	"fmt"
	"strings"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"
)

// walk leads a newcomer over the screens, one key per step. It has screens of its own that show the example, so that
// the user's job is not touched. The keys of a step are pressed on these as a user would.
type walk struct {
	at      int
	screens *root
	stop    context.CancelFunc // ends their computations
}

// walked is a message for the walk's own screens.
type walked struct {
	of  *root
	msg tea.Msg
}

func startWalk(m *root) tea.Cmd {
	p := &walk{}
	m.push(p)
	return p.to(m, 0)
}

func (*walk) about(*root) about { return about{help: "in the walk", fills: true} }

// left ends the computations of the walk's screens. The screens below are as before.
func (p *walk) left(*root) {
	if p.stop != nil {
		p.stop()
	}
}

// to opens a step on new screens.
func (p *walk) to(m *root, at int) tea.Cmd {
	p.left(m)
	p.at = at
	ctx, stop := context.WithCancel(m.Context)
	p.stop = stop
	p.screens = newRoot(Options{Solve: m.Solve, Window: m.Window, Gap: m.Gap, Units: m.Units, Book: m.Book, Now: m.Now,
		Context: ctx, computing: m.computing})
	p.screens.h = m.h
	var cmd tea.Cmd
	for _, name := range strings.Fields(walkSteps[at].keys) {
		cmd = p.screens.press(namedKey(name)) // the commands of earlier keys are dropped
	}
	return own(p.screens, cmd)
}

// namedKey is a key of a step's script.
func namedKey(name string) tea.KeyPressMsg {
	codes := map[string]rune{"tab": tea.KeyTab, "enter": tea.KeyEnter, "left": tea.KeyLeft, "right": tea.KeyRight}
	if code, ok := codes[name]; ok {
		return tea.KeyPressMsg{Code: code}
	}
	return tea.KeyPressMsg{Code: []rune(name)[0], Text: name}
}

// own marks the answer of a command as belonging to the walk's screens.
func own(of *root, cmd tea.Cmd) tea.Cmd {
	if cmd == nil {
		return nil
	}
	return func() tea.Msg {
		switch msg := cmd().(type) {
		case nil:
			return nil
		case tea.BatchMsg:
			for i := range msg {
				msg[i] = own(of, msg[i])
			}
			return msg
		default:
			return walked{of, msg}
		}
	}
}

// tell passes a result to the walk's screens, if they are still open.
func (msg walked) tell(m *root) (tea.Cmd, bool) {
	p, ok := topmost[*walk](m)
	if !ok || p.screens != msg.of {
		return nil, false
	}
	_, cmd := msg.of.Update(msg.msg)
	return own(msg.of, cmd), true
}

// press goes a step on or back, or leaves. On the last step a key leads to practice.
func (p *walk) press(m *root, press tea.KeyPressMsg) action {
	last := p.at == len(walkSteps)-1
	switch {
	case key.Matches(press, bound.Back, bound.Leave), last && key.Matches(press, bound.On, bound.Play):
		return goBack
	case last && key.Matches(press, bound.Pages):
		return func(m *root) tea.Cmd {
			m.pop()
			m.close(&m.part)
			return openPage(pagePractice)(m)
		}
	case key.Matches(press, bound.On, bound.Play, bound.More, bound.Down, bound.PageDown) && !last:
		return p.by(1)
	case key.Matches(press, bound.Less, bound.Up, bound.PageUp) && p.at > 0:
		return p.by(-1)
	}
	return nil
}

func (p *walk) by(n int) action { return func(m *root) tea.Cmd { return p.to(m, p.at+n) } }

// view is a step: the walk's screens with a mark at the line that the text is about, and below them the text.
func (p *walk) view(m *root, w, h int) (block, *tea.Cursor) {
	s, foot := p.screens, p.foot(m)
	s.th, s.w, s.h = m.th, w, h-len(foot)+2
	b, _ := s.body(h - len(foot))
	pointAt(&m.th, b, walkSteps[p.at].at, w)
	return append(b, foot...), nil
}

// pointAt marks the first line that contains a text and has room for a mark.
func pointAt(th *theme, b block, text string, w int) {
	for i, l := range b {
		if text != "" && strings.Contains(ansi.Strip(l.Text), text) {
			if l.Width <= w-2 {
				b[i] = join(l, line{}, l.Width+2, th.bold, " ◂")
			}
			return
		}
	}
}

// foot is the text of the step and its keys. Its height is the same on every step, so that the screen above does not
// move.
func (p *walk) foot(m *root) block {
	w := min(m.w, 88)
	tall := 0
	for _, s := range walkSteps {
		tall = max(tall, len(wrap(s.says, w)))
	}
	var b block
	if m.h >= lowHeight {
		title := "── first walk "
		b.add(newRow(m.w).put(m.th.bold, title+strings.Repeat("─", max(0, m.w-width(title)))).line())
	}
	var text block
	text.say(m.th.bold, 0, walkSteps[p.at].says, w)
	b.addAll(text.fit(tall))
	b.add(p.keys(m))
	return b
}

func (p *walk) keys(m *root) line {
	keys := "enter next  ← back"
	if p.at == len(walkSteps)-1 {
		keys = "enter done  p practice  ← back"
	}
	l := footLine(&m.th, keys, "esc leave", m.w)
	count := fmt.Sprintf("%d of %d", p.at+1, len(walkSteps))
	if l.Width+2+width(count) > m.w {
		return l
	}
	return join(l, line{}, m.w, m.th.quiet, count)
}

// walkStep is one stop of the walk: the keys that lead there from the first screen, the line to mark, and the text
// about it.
type walkStep struct {
	keys string // by name, with blanks between them
	at   string // a text on that line
	says string
}

const toExampleCard = "tab tab tab tab "

// walkSteps follow the way of a job. Each text fits into four lines of the narrowest terminal. It contains no figures,
// because the screen above shows them.
var walkSteps = [...]walkStep{
	{"", "galvanized", "A real job, already computed. At the top is the verdict, below it what was chosen, in " +
		"the middle the question, then the card."},
	{"", "▸", "▸ is the row you are on. ↑↓ or its number picks, enter chooses and goes on, esc goes back. What " +
		"nobody chose is marked ~, assumed."},
	{toExampleCard, "travel", "The card. Dial these three at the booth: wire feed, volts, travel. They are " +
		"computed: first a bead on scrap."},
	{toExampleCard + "right", "volts", "This range is the doubt, as for all results: 95 of 100 fall in it. " +
		"Green, at feed and travel: how far each may go alone and still be good."},
	{toExampleCard + "enter", "wire feed", "enter asks why: how a figure comes about, what it rests on and from " +
		"which source; here also how near each edge is."},
	{toExampleCard + "up", "yours", "↑ gives more, ↓ less, digits type a value. It is yours now and all others " +
		"follow. r takes the suggestion back, ctrl+z any change."},
	{toExampleCard + ". 1", "galvanized", "tab leads to the choices, or a point and a number. ←→ picks one, ↑↓ " +
		"changes it in place, enter shows its list. .0 lists the rest."},
	{toExampleCard + "c", "cautions", "c shows every caution whole. ■ stops the job, ▲ is a hazard or a fault to " +
		"come, • a note. Read them before the arc."},
	{toExampleCard + "m", "m/min →", "m is the map: every wire feed and travel, and what each would do. The cross " +
		"is where you are. The arrow keys walk in it, the card follows."},
	{toExampleCard + "t", "first spot on", "t is the timed arc: so long on, so long off, over and over, to bridge " +
		"an open root. Space plays the beat."},
	{toExampleCard + "b", "", "b is the booth view: the figures of the card readable from where you stand. The " +
		"arrows pick and change them, esc leads back."},
	{toExampleCard + "p", "[fit]", "p opens the pages, in the order of the work: is it a job for bronze, how to " +
		"prepare it, what to check, what to keep."},
	{toExampleCard + "p c", "[correct]", "After the test bead comes this page: enter, mark what the bead shows, and " +
		"it names the one setting to change."},
	{toExampleCard + "g", "word:", "g or F3 explains a word of the trade on any screen: what it is, its unit, " +
		"where the word comes from. Type to find another."},
	{toExampleCard + "p left left left", "[book]", "The book keeps a card under a name, with its test beads. " +
		"Nothing is kept unless you keep it."},
	{toExampleCard + "p left left left left left", "[practice]", "To practise: beads in a simulated booth, no wire " +
		"spent. p opens it now, enter leads to your own sheet. This walk: page walk."},
}
