package cli

import (
	"context"

	"github.com/spf13/cobra"
)

// serveCommand runs the same program for others, over SSH.
func (d *Deps) serveCommand() *cobra.Command {
	var run func(ctx context.Context, book string) error
	cmd := &cobra.Command{
		Use:   "serve",
		Short: "The same program over SSH, for a whole shop",
		Long: `Serve the screens and the commands over SSH: ssh -p 2222 booth opens the screens, ssh -p 2222 booth card
... answers and closes. Nobody gets in without a key: --keys names a file of public keys, one a line as in
authorized_keys, that may look; --writers one of keys that may also keep. --open lets everybody look. There are no
passwords, no shell, no files of this machine and no forwarding. The host key is made once in the data folder.

Every setting below is also read from the [serve] table of the configuration file, under the flag's name, and from the
environment, as BRAZEBOOTH_SERVE_ and the name in capitals. SIGTERM and ctrl+c end it: what is being saved is saved
first. A second one ends it at once.`,
		Example: `  brazebooth serve --keys keys.txt
  brazebooth serve --listen :2222 --keys keys.txt --writers writers.txt --book postgres://shop@db/book
  ssh -p 2222 booth card --metal galvanized --gauge 20ga`,
		Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			where, err := d.placeOrNone(cmd) // without a book the screens say so
			if err != nil {
				return err
			}
			if where == "" {
				what, hint, _ := d.explained(d.bookless())
				remark(cmd, what+", and the server has none; "+hint)
			}
			return run(cmd.Context(), where)
		},
	}
	run = d.Serve(cmd.Flags())
	return cmd
}
