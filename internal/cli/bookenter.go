package cli

import (
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/internal/book"
	"brazebooth/internal/shop"
)

func (d *Deps) bookPerson() *cobra.Command {
	return &cobra.Command{
		Use: "person [NAME]", Short: "A short name of somebody who saves; without one it lists them",
		RunE: func(cmd *cobra.Command, args []string) error {
			name := strings.Join(args, " ")
			if strings.TrimSpace(name) == "" {
				return d.list(cmd, book.Query{Kind: book.PersonKind}, false)
			}
			return d.enter(cmd, book.PersonKind, map[string]string{"name": name})
		},
	}
}

func (d *Deps) bookSource() *cobra.Command {
	cmd := &cobra.Command{
		Use: "source", Short: "A power source with its plate; without a name it lists them", Args: noArgs,
		Example: `  brazebooth book source --name "booth 1" --rated-amps 200A --rated-duty 60% --nozzle-bore 1/2in`,
		RunE:    func(cmd *cobra.Command, _ []string) error { return d.enterOrList(cmd, book.SourceKind, "name") },
	}
	bind(cmd, "rated-amps", "rated-duty", "nozzle-bore")
	cmd.Flags().String("name", "", "what it is called")
	cmd.Flags().String("least-amps", "", "least current on its plate")
	cmd.Flags().String("most-amps", "", "most current on its plate")
	cmd.Flags().String("note", "", "anything worth knowing")
	return cmd
}

func (d *Deps) bookSpool() *cobra.Command {
	cmd := &cobra.Command{
		Use: "spool", Short: "A spool of wire and what is left on it; without a lot it lists them", Args: noArgs,
		Example: `  brazebooth book spool --lot A17 --filler cusi3 --wire .035 --full 4540
  brazebooth book spool --lot A17 --used 120`,
		RunE: func(cmd *cobra.Command, _ []string) error { return d.enterOrList(cmd, book.SpoolKind, "lot") },
	}
	bind(cmd, "filler", "wire")
	cmd.Flags().String("lot", "", "lot or number on the spool")
	cmd.Flags().Float64("full", 0, "grams of wire on the full spool")
	cmd.Flags().Float64("used", 0, "grams that were used since")
	cmd.Flags().String("note", "", "anything worth knowing")
	return cmd
}

// enterOrList enters what the flags say of a record; without its name it lists those that are known.
func (d *Deps) enterOrList(cmd *cobra.Command, kind book.Kind, name string) error {
	if !cmd.Flags().Changed(name) {
		return d.list(cmd, book.Query{Kind: kind}, false)
	}
	return d.enter(cmd, kind, given(cmd))
}

func (d *Deps) enter(cmd *cobra.Command, kind book.Kind, given map[string]string) error {
	return d.act(cmd, func(s *shop.Shop) (shop.Done, error) { return s.SaveEntry(cmd.Context(), kind, given) })
}
