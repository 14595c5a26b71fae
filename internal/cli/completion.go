package cli

import (
	"github.com/spf13/cobra"

	"brazebooth/internal/near"
)

var shells = [...]string{"bash", "zsh", "fish", "powershell"}

func (d *Deps) completionCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "completion SHELL",
		Short: "A script that makes a shell complete commands, flags and their values",
		Long: `A script that makes bash, zsh, fish or PowerShell complete commands, flags and their values: metals,
gauges, fillers, wires, modes, joints, positions, and from the book kept cards and power sources. The book is only
read. Bash needs its package bash-completion for it.`,
		Example: `  source <(brazebooth completion bash)    # for this shell; in ~/.bashrc for every one
  brazebooth completion zsh > "${fpath[1]}/_brazebooth"    # then start zsh anew
  brazebooth completion fish > ~/.config/fish/completions/brazebooth.fish
  brazebooth completion powershell | Out-String | Invoke-Expression`,
		Args: oneArg("a shell: "+near.Or(shells[:]), "brazebooth completion bash"),
		RunE: func(cmd *cobra.Command, args []string) error {
			root := cmd.Root()
			switch args[0] {
			case "bash":
				return root.GenBashCompletionV2(d.Out, true)
			case "zsh":
				return root.GenZshCompletion(d.Out)
			case "fish":
				return root.GenFishCompletion(d.Out, true)
			case "powershell", "pwsh":
				return root.GenPowerShellCompletionWithDesc(d.Out)
			}
			return wrong("there is no shell "+quote(args[0]), "type "+near.Or(shells[:]))
		},
	}
}

// noCompletion takes away what shells ask by: nobody's shell asks a server. The library would write a wrong question to
// the standard error of the program, which is the server's own, and keep the whole tree for as long as it runs.
func noCompletion(root *cobra.Command) {
	root.AddCommand(&cobra.Command{Use: cobra.ShellCompRequestCmd, Aliases: []string{cobra.ShellCompNoDescRequestCmd},
		Hidden: true, DisableFlagParsing: true,
		RunE: func(cmd *cobra.Command, _ []string) error { return noCommand(cmd.Root(), []string{cmd.CalledAs()}) }})
}
