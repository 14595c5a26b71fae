package cli

import (
	"errors"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"brazebooth/internal/address"
	"brazebooth/internal/near"
	"brazebooth/internal/plain"
)

// helpCommand is help about a command; the library's own answers an unknown name as if all were well.
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

// flagError says which flags come near to an unknown one, and what a flag without its value wants.
func flagError(cmd *cobra.Command, err error) error {
	what := plain.Line(err.Error(), 120)
	if address.Looks(err.Error()) { // it repeats the flag with its value
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

// flagNames lists the command's flags in the order in which they were bound.
func flagNames(cmd *cobra.Command) []string {
	var names []string
	flags := *cmd.Flags()
	flags.SortFlags = false
	flags.VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	return names
}
