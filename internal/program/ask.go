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

// answersWithin is how long a terminal may take for all its answers. On a slow line they take some tenths of a second;
// a terminal that cannot answer never does.
var answersWithin = 2 * time.Second

// signAsker writes each sign at the beginning of the line below and asks for the cursor's position after it; then it
// clears that line and moves back. It draws nothing. It does not ask in the current line, which may be the top one: an
// answer from there has the same bytes as the key F3 with shift, alt or ctrl, and is taken for the key if it arrives
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

// askTerminal asks the terminal for its background and the width of each sign.
func askTerminal(ctx context.Context) cli.Answers {
	a := &signAsker{signs: []rune(tui.Signs())}
	before, err := term.MakeRaw(os.Stdin.Fd())
	if err != nil {
		return a.got
	}
	defer func() { _ = term.Restore(os.Stdin.Fd(), before) }()
	_, err = tea.NewProgram(a, tea.WithContext(ctx), tea.WithInput(os.Stdin), tea.WithOutput(os.Stdout),
		tea.WithoutRenderer()).Run()
	if err != nil || len(a.got.Columns) != len(a.signs) { // incomplete answers are useless
		a.got.Columns = nil
	}
	return a.got
}

// samples are samples of what the screens draw, encoded for this terminal.
func samples(theme, background string) []cli.Sample {
	var list []cli.Sample
	o := tui.Options{Theme: tui.Theme(theme), Profile: tui.ProfileOf(os.Environ())}
	for _, s := range tui.Samples(o, background != "light", os.Getenv("TERM") == "linux") {
		list = append(list, cli.Sample(s))
	}
	return list
}
