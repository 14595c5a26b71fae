package config

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"strings"

	"brazebooth/internal/mistake"
	"brazebooth/internal/newfile"
	"brazebooth/internal/plain"
)

// Set puts a value into the file and makes the file where there is none. Everything else in it stays as it is.
func Set(file, name, value string) (kept string, err error) {
	k, err := Find(name)
	if err != nil {
		return "", err
	}
	if kept, err = k.Kept(value); err != nil {
		return "", err
	}
	return kept, change(file, k.Name, &kept)
}

// Unset takes a key out of the file; had is false where the file did not have it.
func Unset(file, name string) (had bool, err error) {
	k, err := Find(name)
	if err != nil {
		return false, err
	}
	text, err := textOf(file)
	if errors.Is(err, fs.ErrNotExist) {
		return false, nil
	}
	if err != nil {
		return false, err
	}
	given, err := parse(text)
	if err != nil {
		return false, mistake.Within(plain.Line(file, 200), err)
	}
	if _, had = given[k.Name]; !had {
		return false, nil
	}
	return true, change(file, k.Name, nil)
}

// change writes a key with its value, or removes its line where there is no value. The new text is read back before it
// is kept: nothing but this key may differ.
func change(file, name string, value *string) error {
	text, err := textOf(file)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	before, err := parse(text)
	if err != nil {
		return mistake.Within(plain.Line(file, 200), err)
	}
	edited := edit(string(text), name, value)
	after, err := parse([]byte(edited))
	if err == nil {
		want := map[string]any{}
		for k, v := range before {
			want[k] = v
		}
		if delete(want, name); value != nil {
			want[name] = *value
		}
		if len(after) == 0 && len(want) == 0 || reflect.DeepEqual(after, want) {
			if err := os.MkdirAll(filepath.Dir(file), 0o700); err != nil {
				return err
			}
			return newfile.Replace(file, 0o600, []byte(edited))
		}
	}
	return mistake.New(plain.Line(file, 200)+" is written in a way that this command cannot change",
		"change it by hand: "+name+` = "..."`)
}

// edit changes one line among the keys above the first table.
func edit(text, name string, value *string) string {
	lines := strings.SplitAfter(text, "\n")
	if lines[len(lines)-1] == "" {
		lines = lines[:len(lines)-1]
	}
	at, last := -1, -1
	for i, line := range lines {
		line = strings.TrimSpace(line)
		if strings.HasPrefix(line, "[") {
			break
		}
		key, _, found := strings.Cut(line, "=")
		if !found || strings.HasPrefix(line, "#") {
			continue
		}
		last = i
		if strings.Trim(strings.TrimSpace(key), `"'`) == name {
			at = i
		}
	}
	switch {
	case value == nil && at >= 0:
		lines = append(lines[:at:at], lines[at+1:]...)
	case value == nil:
	case at >= 0:
		lines[at] = with(lines[at], *value)
	default:
		lines = insert(lines, place(lines, last), name+" = "+written(*value))
	}
	return strings.Join(lines, "")
}

// place is where a new key goes: behind the last key, or behind the comment that heads the file, or at its top.
func place(lines []string, last int) int {
	if last >= 0 {
		return last + 1
	}
	for i, line := range lines {
		switch line = strings.TrimSpace(line); {
		case line == "" && i > 0:
			return i
		case !strings.HasPrefix(line, "#"):
			return 0
		}
	}
	return len(lines)
}

func insert(lines []string, at int, line string) []string {
	if at > 0 && !strings.HasSuffix(lines[at-1], "\n") {
		lines[at-1] += "\n"
	}
	out := append(lines[:at:at], line+"\n")
	return append(out, lines[at:]...)
}

// with is a line with another value; the comment behind it stays.
func with(line, value string) string {
	key, rest, _ := strings.Cut(line, "=")
	return strings.TrimRight(key, " \t") + " = " + written(value) + behind(strings.TrimLeft(rest, " \t"))
}

// behind is what follows a value on its line.
func behind(rest string) string {
	end := strings.IndexAny(rest, "#\r\n")
	if quote := rest[:min(1, len(rest))]; quote == `"` || quote == "'" {
		end = -1
		for i := 1; i < len(rest); i++ {
			if rest[i] == '\\' && quote == `"` {
				i++
			} else if rest[i] == quote[0] {
				end = i + 1
				break
			}
		}
	} else if end > 0 {
		end = len(strings.TrimRight(rest[:end], " \t"))
	}
	if end < 0 {
		return "\n"
	}
	return rest[end:]
}

// written is a text as TOML writes it.
func written(value string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(value) + `"`
}
