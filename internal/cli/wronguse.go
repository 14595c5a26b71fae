package cli

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/near"
	"brazebooth/internal/plain"
)

// noCommand refuses an unknown command and suggests similar ones.
func noCommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	names := commandNames(cmd)
	like := choice.Like(args[0], names)
	for _, name := range elsewhere[args[0]] {
		if slices.Contains(names, name) {
			like = []string{name}
		}
	}
	if len(like) > 0 {
		return wrong("unknown command "+quote(args[0]), "type "+cmd.CommandPath()+" "+near.Or(like))
	}
	return wrong("unknown command "+quote(args[0]), "the commands are "+strings.Join(names, ", "))
}

// elsewhere are commands by other words that people type for them; the commands may be those of the program, the book
// or the settings.
var elsewhere = map[string][]string{
	"map": {"window"}, "timed": {"gap"}, "settings": {"card"}, "setup": {"card"}, "glossary": {"words"},
	"convert": {"gauge"}, "fume": {"air"}, "fumes": {"air"}, "price": {"cost"}, "print": {"book"}, "find": {"book"},
	"save": {"book"}, "reading": {"book"}, "trial": {"book"}, "search": {"book", "find"}, "keep": {"book", "save"},
	"add": {"save"}, "open": {"book", "show"}, "get": {"show"}, "remove": {"delete"}, "undo": {"restore"},
}

func commandNames(root *cobra.Command) []string {
	var names []string
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() || c.Name() == "help" {
			names = append(names, c.Name())
		}
	}
	return names
}

func noArgs(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	hint := "see " + cmd.CommandPath() + " --help"
	// a value that was typed without its flag
	for _, name := range [...]string{"metal", "joint", "mode", "filler", "gauge"} {
		if cmd.Flags().Lookup(name) != nil && choice.ByName(name).Set(new(calc.Job), args[0]) == nil {
			hint = "type --" + name + " " + plain.Line(args[0], 40)
			break
		}
	}
	return wrong("unexpected "+quote(args[0]), hint)
}

// words accepts least to most arguments; otherwise the error is what, and the hint like.
func words(least, most int, what, like string) cobra.PositionalArgs {
	return func(_ *cobra.Command, args []string) error {
		if len(args) < least || len(args) > most {
			return wrong(what, "type "+like)
		}
		return nil
	}
}

func oneArg(what, like string) cobra.PositionalArgs {
	return words(1, 1, "this needs one word: "+what, like)
}
