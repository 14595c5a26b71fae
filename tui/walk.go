package tui

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"charm.land/bubbles/v2/key"
	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"
)

// walk leads a newcomer over the screens, one key a step. What it shows are screens of its own with the example on them, so
// that nobody's job is touched; the keys of a step are pressed on them as a hand would.
type walk struct {
	at      int
	screens *root
	stop    context.CancelFunc // ends what they compute
}

// walked is a message of the walk's own screens.
type walked struct {
	of  *root
	msg tea.Msg
}

// startWalk begins the walk.
func (m *root) startWalk() tea.Cmd {
	m.walk = &walk{}
	return m.walkTo(0)
}

// walkTo opens a step on fresh screens.
func (m *root) walkTo(at int) tea.Cmd {
	p := m.walk
	p.close()
	p.at = at
	ctx, stop := context.WithCancel(m.ctx)
	p.stop = stop
	p.screens = newRoot(Options{Solve: m.solve, Window: m.maps, Gap: m.gaps, Units: m.units, Book: m.keeper, Now: m.now, Context: ctx, computing: m.computing})
	p.screens.h = m.h
	var cmd tea.Cmd
	for _, name := range strings.Fields(walkSteps[at].keys) {
		cmd = p.screens.press(namedKey(name)) // what an earlier key asked for is left behind
	}
	return own(p.screens, cmd)
}

// namedKey is a key of a step's script.
func namedKey(name string) tea.KeyPressMsg {
	switch name {
	case "tab":
		return tea.KeyPressMsg{Code: tea.KeyTab}
	case "enter":
		return tea.KeyPressMsg{Code: tea.KeyEnter}
	case "down":
		return tea.KeyPressMsg{Code: tea.KeyDown}
	case "left":
		return tea.KeyPressMsg{Code: tea.KeyLeft}
	case "right":
		return tea.KeyPressMsg{Code: tea.KeyRight}
	}
	return tea.KeyPressMsg{Code: []rune(name)[0], Text: name}
}

// own marks what a command of the walk's screens answers as theirs.
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

// walkTook gives the walk's screens what was computed for them; nil where they are gone.
func (m *root) walkTook(msg walked) tea.Cmd {
	if m.walk == nil || m.walk.screens != msg.of {
		return nil
	}
	_, cmd := msg.of.Update(msg.msg)
	return own(msg.of, cmd)
}

// close ends what the screens compute.
func (p *walk) close() {
	if p.stop != nil {
		p.stop()
	}
}

// update goes a step on or back, or leaves; on the last step a key leads to practice.
func (p *walk) update(msg tea.Msg, k *keyMap) action {
	press, ok := msg.(tea.KeyPressMsg)
	if !ok {
		return nil
	}
	last := p.at == len(walkSteps)-1
	switch {
	case key.Matches(press, k.Back), key.Matches(press, k.Leave), last && key.Matches(press, k.On, k.Play):
		return goBack{}
	case last && key.Matches(press, k.Pages):
		return walkDrill{}
	case key.Matches(press, k.On, k.Play, k.More, k.Down, k.PageDown) && !last:
		return walkBy{1}
	case key.Matches(press, k.Less, k.Up, k.PageUp) && p.at > 0:
		return walkBy{-1}
	}
	return nil
}

// endWalk leaves the walk; under it everything is as it was.
func (m *root) endWalk() {
	m.walk.close()
	m.walk = nil
}

// practiceAfterWalk opens the page of practice.
func (m *root) practiceAfterWalk() tea.Cmd {
	m.endWalk()
	m.onPart = true
	m.part = partPage{at: slices.Index(pageNames, pagePractice)}
	return m.enterPage()
}

// drawWalk is a step: the walk's screens with a mark at the line that is talked about, under them the text.
func (m *root) drawWalk() block {
	p, s := m.walk, m.walk.screens
	foot := m.walkFoot()
	s.th, s.w, s.h = m.th, m.w, m.h-len(foot)+2
	b := s.whole(m.h - len(foot))
	pointAt(&m.th, b, walkSteps[p.at].at, m.w)
	return append(b, foot...)
}

// whole is the open screen without its keys, in so many lines.
func (m *root) whole(h int) block {
	if m.onBooth {
		return m.boothBody(m.w, h).fit(h)
	}
	b := m.top()
	body, _ := m.body(m.w, h-len(b))
	b.addAll(body.fit(h - len(b)))
	return b
}

// pointAt marks the first line that has a text, where it leaves room for a mark.
func pointAt(th *theme, b block, text string, w int) {
	for i, l := range b {
		if text != "" && strings.Contains(ansi.Strip(l.text), text) {
			if l.w <= w-2 {
				b[i] = join(l, line{}, l.w+2, th.strong, " ◂")
			}
			return
		}
	}
}

// walkFoot is the text of the step and its keys, as high on every step, so that the screen above stands still.
func (m *root) walkFoot() block {
	w := min(m.w, 88)
	tall := 0
	for _, s := range walkSteps {
		tall = max(tall, len(wrap(s.says, w)))
	}
	var b block
	if m.h >= lowHeight {
		title := "── first walk "
		b.add(newRow(m.w).put(m.th.accent, title+strings.Repeat("─", max(0, m.w-width(title)))).line())
	}
	var text block
	text.say(m.th.bold, 0, walkSteps[m.walk.at].says, w)
	b.addAll(text.fit(tall))
	b.add(m.walkKeys())
	return b
}

func (m *root) walkKeys() line {
	k, last := &m.keys, m.walk.at == len(walkSteps)-1
	list := []key.Binding{named(k.On, "enter", "next"), named(k.Less, "←", "back")}
	if last {
		list = []key.Binding{named(k.On, "enter", "done"), named(k.Pages, "p", "practice"), named(k.Less, "←", "back")}
	}
	l := footLine(&m.th, list, named(k.Back, "esc", "leave"), m.w)
	count := fmt.Sprintf("%d of %d", m.walk.at+1, len(walkSteps))
	if l.w+2+width(count) > m.w {
		return l
	}
	return join(l, line{}, m.w, m.th.quiet, count)
}

// drawWalkPage is the page that the walk is begun from.
func (m *root) drawWalkPage(w int) block {
	var b block
	b.say(m.th.plain, 0, "A walk over these screens with the example, one key a step. Your own job stays as it is, and esc leaves at any moment.", w)
	b.skip()
	b.say(m.th.accent, 0, "enter begins", w)
	return b
}
