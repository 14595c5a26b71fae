package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/internal/address"
	"brazebooth/internal/config"
	"brazebooth/internal/plain"
)

func (d *Deps) configCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "config",
		Short: "What is set once and for all: units, decimal mark, theme, book, power source, name",
		Long: `Settings that hold for every command and the screens. A flag rules over the environment, that over the file, that
over what the program does without. Alone it shows them all, as config show does. The file is TOML; comments and tables in it stay as they are.

` + keysText(),
		Example: `  brazebooth config show
  brazebooth config set units inch
  brazebooth config set decimal comma
  brazebooth config unset units
  BRAZEBOOTH_UNITS=both brazebooth card --gauge 18ga`,
		Args: noCommand,
		RunE: func(cmd *cobra.Command, _ []string) error { return d.showSettings(cmd, false) },
	}
	cmd.AddCommand(d.configShow(), d.configSet(), d.configUnset(), d.configPath())
	return cmd
}

// keysText lists the keys for help.
func keysText() string {
	var b strings.Builder
	for _, k := range config.Keys() {
		usage := k.Usage
		if k.Values != nil {
			usage = strings.Join(k.Values, ", ") + ": " + usage
		}
		fmt.Fprintf(&b, "  %-13s %-23s %s\n", k.Name, k.Variable(), usage)
	}
	return strings.TrimRight(b.String(), "\n")
}

// shownSetting is one key as config show has it.
type shownSetting struct {
	Key   string        `json:"key"`
	Value string        `json:"value"`
	From  config.Source `json:"from"`
	Where string        `json:"where,omitempty"`
}

// settingsOf are the values that hold for a command, its flags included.
func (d *Deps) settingsOf(cmd *cobra.Command, s *config.Settings) []shownSetting {
	var list []shownSetting
	for _, k := range config.Keys() {
		v := s.Get(k.Name)
		if f := cmd.Flags().Lookup(k.Name); f != nil && f.Changed {
			v = config.Value{Text: f.Value.String(), From: config.Flag, Where: "--" + k.Name}
		}
		if v.From == config.Default {
			switch k.Name {
			case "book":
				v.Text = d.Book
			case "name":
				v.Text = d.Who
			}
		}
		list = append(list, shownSetting{k.Name, plain.Line(shownValue(k.Name, v.Text), 300), v.From, plain.Line(v.Where, 300)})
	}
	return list
}

// shownValue is a setting as it may be shown: of the book's address not the password.
func shownValue(key, text string) string {
	if key == "book" {
		return address.Shown(text)
	}
	return text
}

func (d *Deps) configShow() *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use: "show", Short: "Every setting and where it comes from", Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error { return d.showSettings(cmd, asJSON) },
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "JSON")
	return cmd
}

// showSettings prints every setting with where it comes from.
func (d *Deps) showSettings(cmd *cobra.Command, asJSON bool) error {
	s, err := config.Load(d.Config, d.Env)
	if err != nil {
		return err
	}
	list := d.settingsOf(cmd, &s)
	if asJSON {
		return d.encode(map[string]any{"schema": 1, "version": Version, "settings": list, "unknown": notNull(s.Unknown)})
	}
	for _, v := range list {
		value := v.Value
		if value == "" {
			value = "none"
		}
		if err := d.say("%-13s %-24s %s\n", v.Key, value, strings.TrimSpace(string(v.From)+" "+v.Where)); err != nil {
			return err
		}
	}
	d.sayUnknown(&s)
	return nil
}

func notNull(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}

// sayUnknown tells of keys in the file that nothing reads.
func (d *Deps) sayUnknown(s *config.Settings) {
	for _, name := range s.Unknown {
		text := "the file has a key that nothing reads: " + name
		if like := config.Nearest(name); like != "" {
			text += "; did you mean " + like + "?"
		}
		fmt.Fprintln(d.Err, text)
	}
}

func (d *Deps) configSet() *cobra.Command {
	return &cobra.Command{
		Use: "set KEY VALUE", Short: "Set a value in the file", Example: "  brazebooth config set units inch",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) < 2 {
				return wrong("a key and its value are wanted", "type brazebooth config set units inch")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			file, err := d.configFile()
			if err != nil {
				return err
			}
			kept, err := config.Set(file, args[0], strings.Join(args[1:], " "))
			if err != nil {
				return err
			}
			k, err := config.Find(args[0])
			if err != nil {
				return err
			}
			if d.Env != nil && d.Env(k.Variable()) != "" {
				fmt.Fprintf(d.Err, "%s is set and rules over the file\n", k.Variable())
			}
			return d.say("%s is %s, in %s\n", k.Name, plain.Line(shownValue(k.Name, kept), 300), plain.Line(file, 300))
		},
	}
}

func (d *Deps) configUnset() *cobra.Command {
	return &cobra.Command{
		Use: "unset KEY", Short: "Take a value out of the file", Args: oneArg("a key", "brazebooth config unset units"),
		RunE: func(_ *cobra.Command, args []string) error {
			file, err := d.configFile()
			if err != nil {
				return err
			}
			had, err := config.Unset(file, args[0])
			switch {
			case err != nil:
				return err
			case !had:
				return d.say("%s was not in the file\n", strings.ToLower(plain.Line(args[0], 40)))
			}
			return d.say("%s is out of %s\n", strings.ToLower(plain.Line(args[0], 40)), plain.Line(file, 300))
		},
	}
}

func (d *Deps) configPath() *cobra.Command {
	return &cobra.Command{
		Use: "path", Short: "Where the file is, or would be", Args: noArgs,
		RunE: func(*cobra.Command, []string) error {
			file, err := d.configFile()
			if err != nil {
				return err
			}
			return d.say("%s\n", plain.Line(file, 400))
		},
	}
}

func (d *Deps) configFile() (string, error) {
	if d.Config == "" {
		return "", wrong("no folder for settings was found", "set XDG_CONFIG_HOME, or HOME, to a folder that is there; or use the environment: BRAZEBOOTH_UNITS=inch")
	}
	return d.Config, nil
}
