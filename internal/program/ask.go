package program

import (
	"context"
	"os"
	"strings"
	"time"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/term"

	"brazebooth/internal/cli"
	"brazebooth/tui"
)

// answersWithin is what a terminal has for all its answers. Behind a slow line they take some tenths of a second; one
// that cannot answer never does.
var answersWithin = 2 * time.Second

// signAsker writes every sign at the beginning of the line below, asks after each where the cursor is, wipes that line
// and comes back. It draws nothing. It does not ask in the line where it is, because that may be the uppermost: an
// answer from there is, byte by byte, also the key F3 with shift, alt or ctrl, and is taken for the key if it arrives
// alone.
type signAsker struct {
	signs []rune
	got   cli.Answers
}

type late struct{}

func (a *signAsker) Init() tea.Cmd {
	var s strings.Builder
	s.WriteString("\r\n" + ansi.RequestBackgroundColor)
	for _, sign := range a.signs {
		s.WriteString("\r" + string(sign) + ansi.RequestCursorPositionReport)
	}
	s.WriteString("\r" + ansi.EraseLineRight + ansi.CUU1)
	return tea.Batch(tea.Raw(s.String()), tea.Tick(answersWithin, func(time.Time) tea.Msg { return late{} }))
}

func (a *signAsker) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.BackgroundColorMsg:
		a.got.Background = "light"
		if msg.IsDark() {
			a.got.Background = "dark"
		}
	case tea.CursorPositionMsg:
		if a.got.Columns = append(a.got.Columns, msg.X); len(a.got.Columns) == len(a.signs) {
			return a, tea.Quit
		}
	case tea.KeyPressMsg:
		if msg.String() == "ctrl+c" {
			return a, tea.Quit
		}
	case late:
		return a, tea.Quit
	}
	return a, nil
}

func (a *signAsker) View() tea.View { return tea.View{} }

// askTerminal asks the terminal what only it knows.
func askTerminal(ctx context.Context) cli.Answers {
	a := &signAsker{signs: []rune(tui.Signs())}
	before, err := term.MakeRaw(os.Stdin.Fd())
	if err != nil {
		return a.got
	}
	defer func() { _ = term.Restore(os.Stdin.Fd(), before) }()
	_, err = tea.NewProgram(a, tea.WithContext(ctx), tea.WithInput(os.Stdin), tea.WithOutput(os.Stdout),
		tea.WithoutRenderer()).Run()
	if err != nil || len(a.got.Columns) != len(a.signs) { // what came before somebody left says nothing of the rest
		a.got.Columns = nil
	}
	return a.got
}

// samples are what the screens draw, as this terminal gets it.
func samples(theme, background string) []cli.Sample {
	var list []cli.Sample
	o := tui.Options{Theme: tui.Theme(theme), Profile: tui.ProfileOf(os.Environ())}
	for _, s := range tui.Samples(o, background != "light", os.Getenv("TERM") == "linux") {
		list = append(list, cli.Sample(s))
	}
	return list
}
