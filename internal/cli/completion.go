package cli

import (
	"context"
	"strconv"
	"time"

	"github.com/spf13/cobra"

	"brazebooth/internal/book"
	"brazebooth/internal/config"
	"brazebooth/internal/near"
	"brazebooth/internal/plain"
	"brazebooth/tables"
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

// noCompletion disables the hidden commands that shells use to complete, since no shell asks a server. The library
// would write a wrong request to the server's own standard error, and keep the whole command tree in memory.
func noCompletion(root *cobra.Command) {
	root.AddCommand(&cobra.Command{Use: cobra.ShellCompRequestCmd, Aliases: []string{cobra.ShellCompNoDescRequestCmd},
		Hidden: true, DisableFlagParsing: true,
		RunE: func(cmd *cobra.Command, _ []string) error { return noCommand(cmd.Root(), []string{cmd.CalledAs()}) }})
}

// Values that a shell may offer: a tab separates a value from its description.

// column makes a text of each row.
func column[T any](rows []T, text func(*T) string) []string {
	list := make([]string, len(rows))
	for i := range rows {
		list[i] = text(&rows[i])
	}
	return list
}

func settingNames() []string {
	return column(config.Keys(), func(k *config.Key) string { return k.Name + "\t" + k.Usage })
}

func settingValues(key string) []string {
	k, _ := config.Find(key) // key is always a known setting
	return k.Values
}

// kindUsage lists the kinds of records for help and errors.
var kindUsage = near.Or(kinds())

func kinds() []string { return column(book.Kinds[:], func(k *book.Kind) string { return string(*k) }) }

func sights() []string {
	return column(tables.Sights, func(s *tables.Sight) string { return s.ID + "\t" + s.Name })
}

func gaugeNumbers() []string {
	return column(tables.Gauges, func(g *tables.Gauge) string { return strconv.Itoa(g.N) })
}

func termWords() []string {
	return column(tables.Terms, func(t *tables.Term) string { return t.Word })
}

// A shell waits for its completions: a book that does not answer within this time completes nothing.
const completeWithin = 1500 * time.Millisecond

// kept completes the names of the records of a kind, or of all kinds for ""; deleted records by their ids. The book is
// opened only to read, so that none is made.
func (d *Deps) kept(kind book.Kind, deleted bool) cobra.CompletionFunc {
	return func(cmd *cobra.Command, _ []string, begun string) ([]string, cobra.ShellCompDirective) {
		if d.settle(cmd) != nil {
			return nil, noFiles
		}
		if cmd.Flags().Changed("kind") {
			kind = book.Kind(flagText(cmd, "kind"))
		}
		ctx, stop := context.WithTimeout(cmd.Context(), completeWithin)
		defer stop()
		cmd.SetContext(ctx)
		var heads []book.Head
		err := d.withBook(cmd, false, func(ctx context.Context, b book.Book) (err error) {
			heads, err = b.List(ctx, book.Query{Kind: kind, Deleted: deleted, Limit: 500})
			return err
		})
		if err != nil {
			return nil, noFiles
		}
		return fitting(namesOf(heads, deleted), begun), ordered
	}
}

// namesOf are the records' names, each once, or the ids of deleted ones.
func namesOf(heads []book.Head, deleted bool) []string {
	var list []string
	have := map[string]bool{}
	for _, h := range heads {
		word, about := plain.Line(h.Name, 60), plain.Line(h.Line, 60)
		if deleted {
			if !h.Deleted {
				continue
			}
			word, about = h.ID, word
		}
		if word != "" && !have[word] {
			list, have[word] = append(list, word+"\t"+about), true
		}
	}
	return list
}
