package cli

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/internal/address"
	"brazebooth/internal/config"
	"brazebooth/internal/plain"
	"brazebooth/internal/report"
)

func (d *Deps) configCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "config",
		Short: "Settings for all commands: units, decimal mark, theme, book, power source, name",
		Long: `Settings that hold for every command and the screens. A flag overrides the environment, the environment
the file, and the file the default. Without a word it shows them all, as config show does. The file is TOML; comments
and tables in it stay as they are.

` + keysText(),
		Example: `  brazebooth config show
  brazebooth config set units inch
  brazebooth config set decimal comma
  brazebooth config unset units
  BRAZEBOOTH_UNITS=both brazebooth card --gauge 18ga`,
		Args: noCommand,
		RunE: func(cmd *cobra.Command, _ []string) error { return d.showSettings(cmd) },
	}
	cmd.AddCommand(d.configShow(), d.configSet(), d.configUnset(), d.configPath())
	return cmd
}

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

// shownSetting is one key as config show prints it.
type shownSetting struct {
	Key   string        `json:"key"`
	Value string        `json:"value"`
	From  config.Source `json:"from"`
	Where string        `json:"where,omitempty"`
}

// settingsOf are the values in force for a command, its flags included.
func (d *Deps) settingsOf(cmd *cobra.Command, s *config.Settings) []shownSetting {
	var list []shownSetting
	own := map[string]string{"book": d.Book, "name": d.Who} // defaults of this machine
	for _, k := range config.Keys() {
		v := s.Get(k.Name)
		if f := cmd.Flags().Lookup(k.Name); f != nil && f.Changed {
			v = config.Value{Text: f.Value.String(), From: config.Flag, Where: "--" + k.Name}
		}
		if text, found := own[k.Name]; found && v.From == config.Default {
			v.Text = text
		}
		list = append(list, shownSetting{k.Name, shownValue(k.Name, v.Text), v.From, plain.Line(v.Where, 300)})
	}
	return list
}

// shownValue is a setting as it may be shown: an address without its password.
func shownValue(key, text string) string {
	if key == "book" {
		text = address.Shown(text)
	}
	return plain.Line(text, 300)
}

func (d *Deps) configShow() *cobra.Command {
	return withJSON(&cobra.Command{
		Use: "show", Short: "Every setting and where it comes from", Args: noArgs,
		RunE: func(cmd *cobra.Command, _ []string) error { return d.showSettings(cmd) },
	})
}

// showSettings prints every setting with where it comes from, and the keys in the file that nothing reads.
func (d *Deps) showSettings(cmd *cobra.Command) error {
	s, err := config.Load(d.Config, d.Env)
	if err != nil {
		return err
	}
	list := d.settingsOf(cmd, &s)
	if asJSON(cmd) {
		return d.document(1, map[string]any{"settings": list, "unknown": report.OrEmpty(s.Unknown)})
	}
	for _, v := range list {
		from := strings.TrimSpace(string(v.From) + " " + v.Where)
		d.say("%-13s %-24s %s\n", v.Key, cmp.Or(v.Value, "none"), from)
	}
	for _, name := range s.Unknown {
		text := "the file has a key that nothing reads: " + name
		if like := config.Nearest(name); like != "" {
			text += "; did you mean " + like + "?"
		}
		d.note("%s\n", text)
	}
	return nil
}

func (d *Deps) configSet() *cobra.Command {
	return &cobra.Command{
		Use: "set KEY VALUE", Short: "Set a value in the file", Example: "  brazebooth config set units inch",
		Args: words(2, math.MaxInt, "this needs a key and its value", "brazebooth config set units inch"),
		RunE: d.withSettings(func(file string, args []string) error {
			k, kept, err := config.Set(file, args[0], strings.Join(args[1:], " "))
			if err != nil {
				return err
			}
			if d.Env != nil && d.Env(k.Variable()) != "" {
				d.note("%s is set and overrides the file\n", k.Variable())
			}
			d.say("%s is %s, in %s\n", k.Name, shownValue(k.Name, kept), plain.Line(file, 300))
			return nil
		}),
	}
}

func (d *Deps) configUnset() *cobra.Command {
	return &cobra.Command{
		Use: "unset KEY", Short: "Remove a value from the file", Example: "  brazebooth config unset units",
		Args: oneArg("a key", "brazebooth config unset units"),
		RunE: d.withSettings(func(file string, args []string) error {
			had, err := config.Unset(file, args[0])
			if err != nil {
				return err
			}
			was := "was not in the file"
			if had {
				was = "is out of " + plain.Line(file, 300)
			}
			d.say("%s %s\n", strings.ToLower(plain.Line(args[0], 40)), was)
			return nil
		}),
	}
}

func (d *Deps) configPath() *cobra.Command {
	return &cobra.Command{
		Use: "path", Short: "Path of the settings file, whether it is there or not", Args: noArgs,
		RunE: d.withSettings(func(file string, _ []string) error {
			d.say("%s\n", plain.Line(file, 400))
			return nil
		}),
	}
}

// The error where there is no folder for settings, and its hint.
const (
	noFolder   = "no folder for settings was found"
	folderHint = "set XDG_CONFIG_HOME, or HOME, to a folder that is there; the environment works too: " +
		"BRAZEBOOTH_UNITS=inch"
)

func (d *Deps) withSettings(do func(file string, args []string) error) func(*cobra.Command, []string) error {
	return func(_ *cobra.Command, args []string) error {
		if d.Config == "" {
			return wrong(noFolder, folderHint)
		}
		return do(d.Config, args)
	}
}

// tolerant are the commands that must work even with a broken settings file, because they show or mend it.
var tolerant = [...]string{"config", "doctor", "version", "help", "completion"}

// settle reads the settings before a command runs: a flag that was not given gets the value of its setting.
func (d *Deps) settle(cmd *cobra.Command) error {
	s, err := config.Load(d.Config, d.Env)
	if err != nil {
		_, path, _ := strings.Cut(cmd.CommandPath(), " ")
		if name, _, _ := strings.Cut(path, " "); slices.Contains(tolerant[:], name) {
			return nil
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
		k, _ := config.Find("decimal") // always a known setting
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
	d.units, err = unitsOf(cmd)
	return err
}
