package config

import (
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"brazebooth/internal/address"
	"brazebooth/internal/mistake"
	"brazebooth/internal/near"
	"brazebooth/internal/plain"
)

// Key is one setting.
type Key struct {
	Name, Usage string
	Default     string   // "" if the program finds it out itself
	Values      []string // possible values; nil for any text
	Example     string
	Flag        bool // also sets a command's flag of this name if it was not given
}

var keys = [...]Key{
	{"units", "units of figures", "metric", []string{"metric", "inch", "both"}, "metric", true},
	{"decimal", "decimal mark of what is shown; JSON and CSV keep the point", "point", []string{"point", "comma"},
		"point", true},
	{"theme", "colours of the screens", "auto", []string{"auto", "dark", "light", "contrast", "none"}, "auto", true},
	{"book", "the book: a file by its whole path, or postgres://user@host/database", "", nil, "/shop/book.db", false},
	{"power-source", "power source in the book whose plate and readings a card takes", "", nil, "booth 1", true},
	{"name", "who saves", "", nil, "ada", false},
}

// Keys lists the settings in their order; read only.
func Keys() []Key { return keys[:] }

// Variable is the key's name in the environment.
func (k *Key) Variable() string {
	return "BRAZEBOOTH_" + strings.ToUpper(strings.ReplaceAll(k.Name, "-", "_"))
}

// Check returns a value in its canonical form; the error says what to type instead.
func (k *Key) Check(text string) (string, error) {
	text = strings.TrimSpace(text)
	if k.Values == nil {
		return k.free(text)
	}
	if low := strings.ToLower(text); slices.Contains(k.Values, low) {
		return low, nil
	}
	return "", mistake.New(k.Name+" cannot be "+quoted(text), "type "+near.Or(k.Values))
}

// free checks a value that may be any text of one line.
func (k *Key) free(text string) (string, error) {
	switch {
	case text == "":
		return "", mistake.New(k.Name+" is empty", "type "+k.Example+", or unset it")
	case k.Name == "book" && address.Check(text) != nil:
		return "", mistake.New(address.ErrBad.Error(), address.Hint)
	case plain.Line(text, 400) != text:
		return "", mistake.New(k.Name+" has characters that cannot be seen, or is too long", "type "+k.Example)
	}
	return text, nil
}

// kept is a value as the file has it: a book's file with its absolute path, so that it does not depend on the working
// directory.
func (k *Key) kept(text string) (string, error) {
	text, err := k.Check(text)
	if err != nil || k.Name != "book" || address.Looks(text) {
		return text, err
	}
	return filepath.Abs(text)
}

func quoted(s string) string { return strconv.Quote(plain.Line(address.Shown(s), 40)) }
