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
	Default     string   // "" for what the program finds by itself
	Values      []string // allowed values; nil for any text
}

var keys = [...]Key{
	{"units", "units of figures", "metric", []string{"metric", "inch", "both"}},
	{"decimal", "decimal mark of what is shown; JSON and CSV keep the point", "point", []string{"point", "comma"}},
	{"theme", "colours of the screens", "auto", []string{"auto", "dark", "light", "contrast", "none"}},
	{"book", "the book: a file by its whole path, or postgres://user@host/database", "", nil},
	{"power-source", "power source in the book whose plate and readings a card takes", "", nil},
	{"name", "who saves", "", nil},
}

// Keys lists the settings in their order; read only.
func Keys() []Key { return keys[:] }

// Variable is the key's name in the environment.
func (k *Key) Variable() string {
	return "BRAZEBOOTH_" + strings.ToUpper(strings.ReplaceAll(k.Name, "-", "_"))
}

// Check returns a value as it is kept, or says what to type instead.
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

// free is any text of one line.
func (k *Key) free(text string) (string, error) {
	switch {
	case text == "":
		return "", mistake.New(k.Name+" is empty", "type "+k.example()+", or unset it")
	case k.Name == "book" && address.Check(text) != nil:
		return "", mistake.New(address.ErrBad.Error(), address.Hint)
	case plain.Line(text, 400) != text:
		return "", mistake.New(k.Name+" has signs that show nothing, or is too long", "type "+k.example())
	}
	return text, nil
}

func (k *Key) example() string {
	switch k.Name {
	case "book":
		return "/shop/book.db"
	case "power-source":
		return "booth 1"
	case "name":
		return "ada"
	}
	return k.Values[0]
}

// Kept is a value as the file keeps it: a book's file by its whole path, so that it means the same in every folder.
func (k *Key) Kept(text string) (string, error) {
	text, err := k.Check(text)
	if err != nil || k.Name != "book" || address.Looks(text) {
		return text, err
	}
	return filepath.Abs(text)
}

func quoted(s string) string { return strconv.Quote(plain.Line(address.Shown(s), 40)) }

func number(n int) string { return strconv.Itoa(n) }
