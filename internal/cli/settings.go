package cli

import (
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
			if contains(tolerant[:], c.Name()) {
				return nil
			}
		}
		return err
	}
	for _, name := range [...]string{"units", "theme", "power-source", "decimal"} {
		v := s.Get(name)
		f := cmd.Flags().Lookup(name)
		if f == nil || f.Changed || v.From == config.Default {
			continue
		}
		if err := f.Value.Set(v.Text); err != nil {
			return err
		}
	}
	if f := cmd.Flags().Lookup("decimal"); f != nil {
		mark, err := decimalKey().Check(f.Value.String())
		if err != nil {
			return inFlag("decimal", err)
		}
		d.comma = mark == "comma"
	}
	if v := s.Get("book"); v.From != config.Default {
		d.Book = v.Text
	}
	if f := cmd.Flags().Lookup("book"); f != nil && f.Changed && !d.Remote {
		d.Book = f.Value.String()
	}
	if v := s.Get("name"); v.From != config.Default {
		d.Who = v.Text
	}
	return nil
}

func decimalKey() *config.Key {
	k, _ := config.Find("decimal") // it is one
	return k
}
