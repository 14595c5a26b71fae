package cli

import "github.com/spf13/cobra"

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
