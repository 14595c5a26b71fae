package cli

import (
	"errors"
	"slices"

	"github.com/spf13/cobra"

	"brazebooth/internal/address"
	"brazebooth/internal/field"
	"brazebooth/internal/near"
	"brazebooth/internal/plain"
)

// flagError says of a flag that is unknown which ones come near, and of one without its value what it wants.
func flagError(cmd *cobra.Command, err error) error {
	what := plain.Line(err.Error(), 120)
	if address.Looks(err.Error()) { // it repeats the flag with what stands behind it
		what = "a flag that reads like a server's address"
	}
	see := "see " + cmd.CommandPath() + " --help"
	var named interface{ GetSpecifiedName() string }
	if !errors.As(err, &named) {
		return wrong(what, see)
	}
	name := named.GetSpecifiedName()
	if f := cmd.Flags().Lookup(name); f != nil {
		return wrong(what, "type --"+name+" and "+f.Usage)
	}
	var flags []string
	for _, n := range near.Names(name, flagNames(cmd)) {
		flags = append(flags, "--"+n)
	}
	if len(flags) == 0 {
		return wrong(what, see)
	}
	return wrong(what, "type "+near.Or(flags))
}

// flagNames lists the command's flags.
func flagNames(cmd *cobra.Command) []string {
	var names []string
	for _, list := range [...][]field.Field{field.OnCard(), field.OnPages()} {
		for i := range list {
			names = append(names, list[i].Name)
		}
	}
	names = append(names, "units", "decimal", "theme", "json", "why", "png", "svg", "csv", "show", "markdown", "seen", "tried", "book", "power-source", "name", "tags", "note", "kind", "text", "limit", "deleted", "all", "verdict", "peel", "photo", "lot", "pull", "withdraw", "confirm", "least-amps", "most-amps", "full", "used", "pdf", "paper", "number", "range", "level", "seed", "solution", "keep", "format", "out", "carry", "keep-going", "resume", "help")
	return slices.DeleteFunc(names, func(n string) bool { return cmd.Flags().Lookup(n) == nil })
}
