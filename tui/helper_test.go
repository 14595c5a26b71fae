package tui

import (
	"context"
	"fmt"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/calc/correct"
	"brazebooth/calc/formula"
	"brazebooth/calc/practice"
	"brazebooth/internal/deep"
)

func TestMain(m *testing.M) {
	deep.Roomy()
	deep.Main(m, 25)
}

// teller is the part of a test that a screen needs; a randomized test has its own.
type teller interface {
	Helper()
	Fatalf(format string, args ...any)
}

// terminal is the model as a test uses it.
type terminal struct {
	t teller
	m tea.Model
}

func open80(t testing.TB) *terminal { return openAt(t, 80, 24, Options{}) }

func openAt(t testing.TB, w, h int, o Options) *terminal {
	if o.Window == nil {
		o.Window = coarse
	}
	if o.Solve == nil {
		o.Solve = solved
	}
	if o.Gap == nil {
		o.Gap = followed
	}
	if o.computing == nil {
		o.computing = &computedOnce
	}
	s := &terminal{t, New(o)}
	s.send(tea.WindowSizeMsg{Width: w, Height: h})
	return s
}

// send gives the model one message and reports whether it asked to end.
func (s *terminal) send(msg tea.Msg) bool {
	m, cmd := s.m.Update(msg)
	s.m = m
	if cmd == nil {
		return false
	}
	switch msg := cmd().(type) {
	case tea.QuitMsg:
		return true
	case tea.BatchMsg: // a slow computation: the work is first, its clock second
		return s.send(msg[0]())
	case beatTick, slowTick: // the clock is not followed
	case screenMsg:
		return s.send(msg)
	}
	return false
}

// The answers to the jobs of all tests. They ask for the same few hundred jobs many thousand times, and the program
// itself remembers only the last one.
var (
	knownCards deep.Known[calc.Job, calc.Card]
	knownMaps  deep.Known[calc.Job, calc.Window]
	knownSpots deep.Known[calc.Job, calc.Timed]
	knownPages deep.Known[pageKey, advice.Page]
	knownBeads deep.Known[string, advice.Page]
	knownDrill deep.Known[practiceAsk, practiceAnswer]
	knownSpans deep.Known[calc.Job, spans]
)

// pageKey is a page and everything in which cards differ: a timed card has other figures after its heat was computed.
type pageKey struct {
	name      string
	job, used calc.Job
	figures   string
}

// computedOnce is whenAsked with a memory. An answer that nobody waits for any more is not remembered.
var computedOnce = computing{
	page: func(ctx context.Context, e *advice.Entry, c *calc.Card) (advice.Page, error) {
		if ctx.Err() != nil {
			return e.Answer(ctx, c)
		}
		var figures strings.Builder
		for i := range c.Figures {
			fmt.Fprintf(&figures, "%s %v ", c.Figures[i].Name, c.Figures[i].Value)
		}
		return knownPages.Of(pageKey{e.Name, c.Job, c.Used, figures.String()}, func() (advice.Page,
			error) {
			return e.Answer(context.WithoutCancel(ctx), c)
		})
	},
	next: func(ctx context.Context, tries []correct.Try) (advice.Page, error) {
		if ctx.Err() != nil {
			return correct.Next(ctx, tries)
		}
		return knownBeads.Of(fmt.Sprintf("%+v", tries), func() (advice.Page,
			error) {
			return correct.Next(context.WithoutCancel(ctx), tries)
		})
	},
	spans: func(ctx context.Context, c *calc.Card) spans {
		if ctx.Err() != nil {
			return spansOf(ctx, c)
		}
		s, _ := knownSpans.Of(c.Used, func() (spans, error) { return spansOf(context.WithoutCancel(ctx), c), nil })
		return s
	},
	drills: func(ctx context.Context, job *practice.Booth, a practiceAsk) (practiceAnswer, error) {
		if ctx.Err() != nil {
			return drill(ctx, job, a)
		}
		return knownDrill.Of(a, func() (practiceAnswer, error) { return drill(context.WithoutCancel(ctx), job, a) })
	},
}

// solved is calc.Solve with a memory.
func solved(job calc.Job) (calc.Card, error) {
	return knownCards.Of(job, func() (calc.Card, error) { return calc.Solve(job) })
}

// besideLists is solved for a test that looks at the rows of lists. The card beside them is the first job's, except for
// a sample of the jobs under the cursor.
func besideLists(t testing.TB) func(calc.Job) (calc.Card, error) {
	t.Helper()
	chance := deep.Rand(t)
	var first *calc.Card
	return func(job calc.Job) (calc.Card, error) {
		if first != nil && !deep.Run() && chance.IntN(16) > 0 {
			card := *first
			card.Job = job
			return card, nil
		}
		card, err := solved(job)
		if first == nil && err == nil {
			first = &card
		}
		return card, err
	}
}

// coarse is a map on a coarse grid, which a test can wait for.
func coarse(_ context.Context, job calc.Job, _ func(float64)) (calc.Window, error) {
	return knownMaps.Of(job, func() (calc.Window, error) {
		return calc.WindowOf(context.Background(), job, calc.CoarseWindow, nil)
	})
}

// followed is calc.SolveTimed with a memory.
func followed(_ context.Context, job calc.Job, _ func(float64)) (calc.Timed, error) {
	return knownSpots.Of(job, func() (calc.Timed, error) { return calc.SolveTimed(context.Background(), job, nil) })
}

// unfollowed fails to compute the heat of a timed arc, for a test in which that does not matter. The card keeps its
// estimate.
func unfollowed(context.Context, calc.Job, func(float64)) (calc.Timed, error) {
	return calc.Timed{}, formula.ErrRange
}

// press gives the model keys by name. A character is its own name.
func (s *terminal) press(names ...string) (quit bool) {
	for _, n := range names {
		quit = s.send(keyPress(n))
	}
	return quit
}

func (s *terminal) typed(text string) {
	for _, r := range text {
		s.press(string(r))
	}
}

// keyPress makes the message that a terminal sends for a key.
func keyPress(name string) tea.KeyPressMsg {
	codes := map[string]rune{"enter": tea.KeyEnter, "esc": tea.KeyEscape, "tab": tea.KeyTab,
		"up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft, "right": tea.KeyRight,
		"pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown, "home": tea.KeyHome, "end": tea.KeyEnd,
		"backspace": tea.KeyBackspace, "delete": tea.KeyDelete, "f1": tea.KeyF1, "f2": tea.KeyF2, "f3": tea.KeyF3,
		"f4": tea.KeyF4, "f5": tea.KeyF5}
	if c, ok := codes[name]; ok {
		return tea.KeyPressMsg{Code: c}
	}
	switch name {
	case "shift+tab":
		return tea.KeyPressMsg{Code: tea.KeyTab, Mod: tea.ModShift}
	case "ctrl+c":
		return tea.KeyPressMsg{Code: 'c', Mod: tea.ModCtrl}
	case "ctrl+u":
		return tea.KeyPressMsg{Code: 'u', Mod: tea.ModCtrl}
	case "ctrl+z":
		return tea.KeyPressMsg{Code: 'z', Mod: tea.ModCtrl}
	case "ctrl+d":
		return tea.KeyPressMsg{Code: 'd', Mod: tea.ModCtrl}
	case "space":
		return tea.KeyPressMsg{Code: tea.KeySpace, Text: " "}
	}
	r := []rune(name)[0]
	return tea.KeyPressMsg{Code: r, Text: name}
}

func (s *terminal) root() *root { return s.m.(*root) }

// pick is the topmost list, an empty one if there is none.
func (s *terminal) pick() *picker { return pickOf(s.root()) }

func pickOf(m *root) *picker {
	if p, ok := topmost[*picker](m); ok {
		return p
	}
	return &picker{}
}

// walk is the walk for newcomers, nil if it is not open.
func (s *terminal) walk() *walk {
	p, _ := topmost[*walk](s.root())
	return p
}

// overCard reports whether a screen is open over the path or the card.
func (m *root) overCard() bool {
	return m.front() != screen(&m.path) && m.front() != screen(&m.card)
}

// text is the frame without its colours.
func (s *terminal) text() string { return ansi.Strip(s.m.View().Content) }

// onCard fails if the card is not on top.
func (s *terminal) onCard() {
	s.t.Helper()
	if !s.root().onCard() {
		s.t.Fatalf("the card is not on top:\n%s", s.text())
	}
}

func (s *terminal) has(parts ...string) {
	s.t.Helper()
	for _, p := range parts {
		if !strings.Contains(s.text(), p) {
			s.t.Fatalf("the screen does not show %q:\n%s", p, s.text())
		}
	}
}

func (s *terminal) hasNot(parts ...string) {
	s.t.Helper()
	for _, p := range parts {
		if strings.Contains(s.text(), p) {
			s.t.Fatalf("the screen shows %q:\n%s", p, s.text())
		}
	}
}

// fits fails if the frame is wider or taller than the terminal.
func (s *terminal) fits(w, h int) {
	s.t.Helper()
	lines := strings.Split(s.m.View().Content, "\n")
	if len(lines) > h {
		s.t.Fatalf("%d lines in a terminal of %d:\n%s", len(lines), h, s.text())
	}
	for _, l := range lines {
		if n := ansi.StringWidth(l); n > w {
			s.t.Fatalf("a line of %d cells in a terminal of %d:\n%s", n, w, s.text())
		}
	}
	if c := s.m.View().Cursor; c != nil && (c.X < 0 || c.X >= w || c.Y < 0 || c.Y >= h) {
		s.t.Fatalf("the cursor stands at %d, %d in a terminal of %d by %d", c.X, c.Y, w, h)
	}
}
