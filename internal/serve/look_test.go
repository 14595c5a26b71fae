package serve

import (
	"context"
	"fmt"
	"io"
	"regexp"
	"slices"
	"testing"

	"brazebooth/internal/quantity"
	"brazebooth/tui"
)

// At a terminal, a command line with options of the screens opens them in these colours, units and decimal mark; any
// other command is answered as a command.
func TestScreensLookAsAsked(t *testing.T) {
	deps := Deps{
		Screens: func(args []string) (tui.Options, bool) {
			if len(args) == 0 {
				return tui.Options{}, true
			}
			return tui.Options{Theme: "none", Units: quantity.Inch, Comma: true}, slices.Equal(args,
				[]string{"--theme", "none"})
		},
		Command: func(_ context.Context, _ Guest, _ string, args []string, _ io.Reader, out, _ io.Writer) int {
			fmt.Fprintln(out, "answered:", args)
			return 0
		},
	}
	addr, _, stop := host(t, deps)
	defer stop()
	colour := regexp.MustCompile("\x1b\\[[0-9;]*(3[0-9]|4[0-9])(;|m)")

	g := visit(t, addr).asks("--theme none")
	g.types("\t\t\t\t")
	g.awaits("←→ pick")
	g.awaits("in/min")
	if found := colour.FindString(g.emu.Render()); found != "" {
		t.Errorf("a colour: %q", found)
	}
	g.types("\x03")
	g.code()

	g = visit(t, addr).screens()
	g.types("\t\t\t\t")
	g.awaits("m/min")
	if colour.FindString(g.emu.Render()) == "" {
		t.Error("without an option there is no colour")
	}
	g.types("\x03")
	g.code()

	visit(t, addr).asks("card").awaits("answered: [card]")
}
