// Package config is what a user set once and for all: units, decimal mark, theme, book, power source, name. A flag
// overrides the environment, the environment the file, the file the default. The file is TOML and may hold more:
// comments and the tables of other parts of the program stay as they are.
package config

import (
	"errors"
	"io/fs"
	"os"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"

	"brazebooth/internal/address"
	"brazebooth/internal/mistake"
	"brazebooth/internal/near"
	"brazebooth/internal/plain"
)

// Source is where a value came from.
type Source string

// The sources, the strongest first.
const (
	Flag        Source = "flag"
	Environment Source = "environment"
	File        Source = "file"
	Default     Source = "default"
)

// Value is one setting in force.
type Value struct {
	Text  string
	From  Source
	Where string // the variable, or the file
}

// Settings are the values of all keys.
type Settings struct {
	values  [len(keys)]Value
	Unknown []string // keys in the file that nothing reads, safe to show
}

// Get is the value of a key; the zero Value for an unknown name.
func (s *Settings) Get(name string) Value {
	for i := range keys {
		if keys[i].Name == name {
			return s.values[i]
		}
	}
	return Value{}
}

// Load reads the environment and the file, which need not exist. file may be "" for none, env nil.
func Load(file string, env func(string) string) (Settings, error) {
	var s Settings
	for i := range keys {
		s.values[i] = Value{keys[i].Default, Default, ""}
	}
	if err := s.read(file); err != nil {
		return s, err
	}
	if env == nil {
		return s, nil
	}
	for i := range keys {
		name := keys[i].Variable()
		text := env(name)
		if text == "" {
			continue
		}
		text, err := keys[i].Check(text)
		if err != nil {
			return s, mistake.Within(name, err)
		}
		s.values[i] = Value{text, Environment, name}
	}
	return s, nil
}

// read takes what the file sets.
func (s *Settings) read(file string) error {
	if file == "" {
		return nil
	}
	text, err := textOf(file)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	given, err := parse(text)
	if err != nil {
		return mistake.Within(plain.Line(file, 200), err)
	}
	for name, v := range given {
		i := slices.IndexFunc(keys[:], func(k Key) bool { return k.Name == name })
		if i < 0 {
			if _, table := v.(map[string]any); !table {
				s.Unknown = append(s.Unknown, plain.Line(address.Shown(name), 40))
			}
			continue
		}
		held, ok := v.(string)
		if !ok {
			return mistake.Within(plain.Line(file, 200)+", "+name, mistake.New("no text in quotes", name+` = "`+
				keys[i].Example+`"`))
		}
		if held, err = keys[i].Check(held); err != nil {
			return mistake.Within(plain.Line(file, 200)+", "+name, err)
		}
		s.values[i] = Value{held, File, file}
	}
	slices.Sort(s.Unknown)
	return nil
}

// textOf is what the file holds; fs.ErrNotExist where there is none. A name that is not a regular file, such as a
// pipe that nobody writes into, is refused without waiting.
func textOf(file string) ([]byte, error) {
	info, err := os.Stat(file)
	if err == nil && !info.Mode().IsRegular() {
		what := "a pipe or a device"
		if info.IsDir() {
			what = "a folder"
		}
		return nil, mistake.New(plain.Line(file, 200)+" is no file but "+what,
			"put a text file in its place, or take it away")
	}
	if err == nil {
		var text []byte
		if text, err = os.ReadFile(file); err == nil {
			return text, nil
		}
	}
	if errors.Is(err, fs.ErrNotExist) {
		return nil, err
	}
	return nil, mistake.New(plain.Line(err.Error(), 200), "make the file readable, or take it away")
}

// parse reads TOML.
func parse(text []byte) (map[string]any, error) {
	var given map[string]any
	err := toml.Unmarshal(text, &given)
	var bad toml.ParseError
	if errors.As(err, &bad) {
		return nil, mistake.New("line "+number(bad.Position.Line)+": "+plain.Line(bad.Message, 120),
			`write it as TOML: units = "metric"`)
	}
	if err != nil {
		return nil, mistake.New(plain.Line(err.Error(), 120), `write it as TOML: units = "metric"`)
	}
	return given, nil
}

// Find is the key of a name.
func Find(name string) (*Key, error) {
	for i := range keys {
		if keys[i].Name == strings.ToLower(name) {
			return &keys[i], nil
		}
	}
	hint := "the keys are " + strings.Join(names(), ", ")
	if like := Nearest(name); like != "" {
		hint = "type " + like
	}
	return nil, mistake.New("no setting is called "+quoted(name), hint)
}

// Nearest names the keys that a name may have meant, joined as in a sentence; "" for none.
func Nearest(name string) string {
	return near.Or(near.Names(strings.ReplaceAll(name, "_", "-"), names()))
}

func names() []string {
	var list []string
	for i := range keys {
		list = append(list, keys[i].Name)
	}
	return list
}
