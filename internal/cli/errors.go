package cli

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"brazebooth/internal/address"
	"brazebooth/internal/choice"
	"brazebooth/internal/mistake"
	"brazebooth/internal/near"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/internal/shop"
)

// wrong is the error for wrong use: what is wrong, and what to type instead.
func wrong(what, hint string) error { return mistake.New(what, hint) }

// failed is the error for a failure although the command was right, with what to do about it.
func failed(what, hint string, cause error) error {
	return &shop.Failure{What: what, Hint: hint, Cause: cause}
}

// quote quotes what was typed, made safe for the terminal and short.
func quote(s string) string { return strconv.Quote(plain.Line(address.Shown(s), 40)) }

// inFlag adds the flag's name to an error about its value.
func inFlag(name string, err error) error { return mistake.Within("--"+name, err) }

// wantsJSON reports whether JSON was asked for, even when an error ended the reading of the flags.
func wantsJSON(args []string) bool {
	for _, a := range args {
		switch a {
		case "--":
			return false
		case "--json", "--json=true":
			return true
		}
	}
	return false
}

// report prints an error for a reader, or for a program where JSON was asked for, and returns the exit code.
func (d *Deps) report(ctx context.Context, err error, units quantity.System, asJSON bool) int {
	what, hint, code := d.explained(err)
	// after a cancel, other errors only follow from it
	if ctx.Err() != nil && (code != 1 || !strings.HasPrefix(what, "cancelled")) {
		what, hint, code = plain.Line("cancelled: "+what, 200), "", 1
	}
	what, hint = plain.Line(address.Scrub(what), 400), plain.Line(address.Scrub(hint), 800)
	if asJSON {
		line, _ := json.Marshal(map[string]string{"error": what, "hint": hint})
		d.note("%s\n", plain.JSON(line))
		return code
	}
	d.note("brazebooth: %s\n", quantity.Sentence(what, units))
	if hint != "" {
		d.note("%s\n", quantity.Sentence(hint, units))
	}
	return code
}

// remark prints a note to standard error, as a line of text or, where JSON was asked for, as a JSON object.
func remark(cmd *cobra.Command, text string) {
	text = quantity.Marked(plain.Line(address.Scrub(text), 300), flagText(cmd, "decimal") == "comma")
	if asJSON(cmd) {
		line, _ := json.Marshal(map[string]string{"note": text})
		fmt.Fprintf(cmd.ErrOrStderr(), "%s\n", plain.JSON(line))
		return
	}
	fmt.Fprintf(cmd.ErrOrStderr(), "brazebooth: %s\n", text)
}

// explained is an error in words for the user: what is wrong, what to do about it, and the exit code.
func (d *Deps) explained(err error) (what, hint string, code int) {
	if d.Remote {
		err = shop.ToldGuest(err, d.Book, d.Fault)
	}
	what, hint, use := shop.Explain(err)
	if use {
		return what, hint, 2
	}
	return what, hint, 1
}

// helpCommand replaces the library's help command, which exits with 0 for an unknown name.
func helpCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "help [command]",
		Short: "Help about any command",

		ValidArgsFunction: completeHelp,
		RunE: func(cmd *cobra.Command, args []string) error {
			about, rest, err := cmd.Root().Find(args)
			if err != nil || len(rest) > 0 && about == cmd.Root() {
				return noCommand(cmd.Root(), args)
			}
			about.InitDefaultHelpFlag()
			return about.Help()
		},
	}
}

// flagError suggests flags for a misspelt one, and says what value a flag needs.
func flagError(cmd *cobra.Command, err error) error {
	what := plain.Line(err.Error(), 120)
	if address.Looks(err.Error()) { // the message repeats the flag with its value
		what = "a flag that reads like a server's address"
	}
	see := "see " + cmd.CommandPath() + " --help"
	var named interface{ GetSpecifiedName() string }
	if !errors.As(err, &named) {
		return wrong(what, see)
	}
	name := named.GetSpecifiedName()
	var short interface{ GetSpecifiedShortnames() string }
	if errors.As(err, &short) && cmd.Flags().Lookup(short.GetSpecifiedShortnames()) != nil { // -metal
		return wrong(what, "type --"+short.GetSpecifiedShortnames())
	}
	if f := cmd.Flags().Lookup(name); f != nil {
		return wrong(what, "type --"+name+" and "+f.Usage)
	}
	var flags []string
	for _, n := range choice.Like(name, flagNames(cmd)) {
		flags = append(flags, "--"+n)
	}
	if len(flags) == 0 && slices.Contains([]string{"out", "output", "file", "save"}, name) {
		flags = column(fileFlags(cmd), func(name *string) string { return "--" + *name })
	}
	if len(flags) == 0 {
		return wrong(what, see)
	}
	return wrong(what, "type "+near.Or(flags))
}

// fileFlags are the flags of a command that name a file to write.
func fileFlags(cmd *cobra.Command) (flags []string) {
	for _, name := range [...]string{"pdf", "png", "svg", "csv"} {
		if f := cmd.Flags().Lookup(name); f != nil && f.Value.Type() == "string" {
			flags = append(flags, name)
		}
	}
	return flags
}

// flagNames lists the command's flags in the order in which they were added.
func flagNames(cmd *cobra.Command) []string {
	var names []string
	flags := *cmd.Flags()
	flags.SortFlags = false
	flags.VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	return names
}
