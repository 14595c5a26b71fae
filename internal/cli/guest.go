package cli

import "github.com/spf13/cobra"

// noCompletion takes away what shells ask by: nobody's shell asks a server. The library would write what is asked wrongly to
// the standard error of the program, which is the server's own, and keep the whole tree for as long as it runs.
func noCompletion(root *cobra.Command) {
	root.AddCommand(&cobra.Command{Use: cobra.ShellCompRequestCmd, Aliases: []string{cobra.ShellCompNoDescRequestCmd}, Hidden: true, DisableFlagParsing: true,
		RunE: func(cmd *cobra.Command, _ []string) error { return noCommand(cmd.Root(), []string{cmd.CalledAs()}) }})
}
