package config

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"

	"brazebooth/internal/mistake"
	"brazebooth/internal/newfile"
	"brazebooth/internal/plain"
)

// Set sets a value in the file, which it creates if there is none. Everything else in it stays as it is. kept is the
// value of the key as saved.
func Set(file, name, value string) (k *Key, kept string, err error) {
	if k, err = Find(name); err == nil {
		kept, err = k.kept(value)
	}
	if err != nil {
		return nil, "", err
	}
	text, given, err := load(file)
	if err != nil {
		return nil, "", err
	}
	return k, kept, change(file, text, given, k.Name, &kept)
}

// Unset removes a key from the file; had is false if the file did not have it.
func Unset(file, name string) (had bool, err error) {
	k, err := Find(name)
	if err != nil {
		return false, err
	}
	text, given, err := load(file)
	if _, had = given[k.Name]; err != nil || !had {
		return false, err
	}
	return true, change(file, text, given, k.Name, nil)
}

// change sets a key to its value, or removes its line if value is nil. The new text is parsed before it is saved:
// nothing but this key may differ.
func change(file string, text []byte, given map[string]any, name string, value *string) error {
	edited := []byte(edit(string(text), name, value))
	after, err := parse(edited)
	want := map[string]any{}
	maps.Copy(want, given)
	if delete(want, name); value != nil {
		want[name] = *value
	}
	if err != nil || len(after)+len(want) > 0 && !reflect.DeepEqual(after, want) {
		return mistake.New(plain.Line(file, 200)+" is written in a way that this command cannot change",
			"change it by hand: "+name+` = "..."`)
	}
	if err := os.MkdirAll(filepath.Dir(file), 0o700); err != nil {
		return err
	}
	return newfile.Replace(file, 0o600, edited)
}

// Patterns of lines in a settings file.
const (
	aTable  = `(?m)^[ \t]*\[`
	aKey    = `(?m)^[ \t]*[^#\s][^=\n]*=.*\n?`
	aHead   = `^((?:[ \t]*#.*(?:\n|$))+)(?:[ \t\r]*\n|$)` // a comment with an empty line after it
	theKey  = `(?m)^([ \t]*["']?%s["']?)[ \t]*=[ \t]*`
	itsText = `("(?:\\.|[^"\\\n])*"|'[^'\n]*'|[^#\s](?:[^#\r\n]*[^#\s])?|)`
)

// edit changes one line among the keys above the first table. A comment after a value stays. A new key goes after the
// last key, or else after the comment at the top of the file, or else to the top.
func edit(text, name string, value *string) string {
	keys, tables := text, ""
	if at := regexp.MustCompile(aTable).FindStringIndex(text); at != nil {
		keys, tables = text[:at[0]], text[at[0]:]
	}
	if value == nil {
		return regexp.MustCompile(fmt.Sprintf(theKey, name)+`.*\n?`).ReplaceAllLiteralString(keys, "") + tables
	}
	written := `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(*value) + `"`
	if at := regexp.MustCompile(fmt.Sprintf(theKey, name) + itsText).FindStringSubmatchIndex(keys); at != nil {
		return keys[:at[3]] + " = " + written + keys[at[1]:] + tables
	}
	at := 0
	if all := regexp.MustCompile(aKey).FindAllStringIndex(keys, -1); all != nil {
		at = all[len(all)-1][1]
	} else if head := regexp.MustCompile(aHead).FindStringSubmatch(text); head != nil {
		at = len(head[1])
	}
	if at > 0 && text[at-1] != '\n' {
		written = "\n" + name + " = " + written + "\n"
	} else {
		written = name + " = " + written + "\n"
	}
	return text[:at] + written + text[at:]
}
