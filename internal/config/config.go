// Package config has a user's settings for all commands: units, decimal mark, theme, book, power source, name. A flag
// overrides the environment, the environment the file, and the file the default. The file is TOML and may contain more:
// comments and the tables of other parts of the program stay as they are.
package config

import (
	"errors"
	"fmt"
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

// The sources, in the order of their priority.
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
	Where string // name of the variable, or of the file
}

// Settings are the values of all keys.
type Settings struct {
	values  map[string]Value
	Unknown []string // unknown keys of the file, safe to show
}

// Get is the value of a key; the zero Value for an unknown name.
func (s *Settings) Get(name string) Value { return s.values[name] }

// Load reads the environment and the file, which need not exist. file may be "" for none, env nil.
func Load(file string, env func(string) string) (Settings, error) {
	s := Settings{values: map[string]Value{}}
	for _, k := range keys {
		s.values[k.Name] = Value{k.Default, Default, ""}
	}
	if err := s.read(file); err != nil || env == nil {
		return s, err
	}
	for _, k := range keys {
		name := k.Variable()
		if env(name) == "" {
			continue
		}
		text, err := k.Check(env(name))
		if err != nil {
			return s, mistake.Within(name, err)
		}
		s.values[k.Name] = Value{text, Environment, name}
	}
	return s, nil
}

func (s *Settings) read(file string) error {
	_, given, err := load(file)
	if err != nil {
		return err
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
			return mistake.Within(plain.Line(file, 200)+", "+name,
				mistake.New("not a text in quotes", name+` = "`+keys[i].Example+`"`))
		}
		if held, err = keys[i].Check(held); err != nil {
			return mistake.Within(plain.Line(file, 200)+", "+name, err)
		}
		s.values[name] = Value{held, File, file}
	}
	slices.Sort(s.Unknown)
	return nil
}

// load is the file's text and its keys; nothing if there is no file. Anything but a regular file is refused: opening a
// pipe could block.
func load(file string) (text []byte, given map[string]any, err error) {
	info, err := os.Stat(file)
	if err == nil && !info.Mode().IsRegular() {
		what := "it is a pipe or a device"
		if info.IsDir() {
			what = "it is a folder"
		}
		return nil, nil, mistake.New(plain.Line(file, 200)+" is not a file: "+what,
			"put a text file in its place, or take it away")
	}
	if err == nil {
		text, err = os.ReadFile(file)
	}
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, nil, mistake.New(plain.Line(err.Error(), 200), "make the file readable, or take it away")
	}
	given, err = parse(text)
	return text, given, mistake.Within(plain.Line(file, 200), err)
}

func parse(text []byte) (given map[string]any, err error) {
	err = toml.Unmarshal(text, &given)
	if err == nil {
		return given, nil
	}
	what := plain.Line(err.Error(), 120)
	if bad, ok := errors.AsType[toml.ParseError](err); ok {
		what = fmt.Sprintf("line %d: %s", bad.Position.Line, plain.Line(bad.Message, 120))
	}
	return nil, mistake.New(what, `write it as TOML: units = "metric"`)
}

// Find is the key with this name.
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
	return nil, mistake.New("there is no setting "+quoted(name), hint)
}

// Nearest suggests keys for a misspelt name, joined as in a sentence; "" for none.
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
