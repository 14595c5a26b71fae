package cli

import (
	"slices"

	"github.com/spf13/cobra"

	"brazebooth/internal/config"
)

// tolerant are the commands that must answer whatever the settings hold: they tell, or mend them.
var tolerant = [...]string{"config", "doctor", "version", "help", "completion"}

// settle reads the settings before a command runs: a flag that was not given takes what is set.
func (d *Deps) settle(cmd *cobra.Command) error {
	s, err := config.Load(d.Config, d.Env)
	if err != nil {
		for c := cmd; c != nil; c = c.Parent() {
			if slices.Contains(tolerant[:], c.Name()) {
				return nil
			}
		}
		return err
	}
	for _, k := range config.Keys() {
		v := s.Get(k.Name)
		f := cmd.Flags().Lookup(k.Name)
		if f == nil || !k.Flag || f.Changed || v.From == config.Default {
			continue
		}
		if err := f.Value.Set(v.Text); err != nil {
			return err
		}
	}
	if text := flagText(cmd, "decimal"); text != "" || cmd.Flags().Changed("decimal") {
		k, _ := config.Find("decimal") // it is one
		mark, err := k.Check(text)
		if err != nil {
			return inFlag("decimal", err)
		}
		d.comma = mark == "comma"
	}
	if v := s.Get("book"); v.From != config.Default {
		d.Book = v.Text
	}
	if cmd.Flags().Changed("book") && !d.Remote {
		d.Book = flagText(cmd, "book")
	}
	if v := s.Get("name"); v.From != config.Default {
		d.Who = v.Text
	}
	return nil
}
