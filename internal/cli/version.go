package cli

import (
	"fmt"
	"runtime"

	"github.com/spf13/cobra"
)

func (d *Deps) versionCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "version",
		Short: "The program's version",
		Args:  noArgs,
		RunE: func(*cobra.Command, []string) error {
			_, err := fmt.Fprintf(d.Out, "brazebooth %s %s %s/%s\n", Version, runtime.Version(), runtime.GOOS, runtime.GOARCH)
			return err
		},
	}
}
