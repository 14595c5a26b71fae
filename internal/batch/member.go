package batch

import (
	"bytes"
	"encoding/json"
	"io"
	"strings"

	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
)

// member is one name of an object with its value as written.
type member struct {
	name  string
	value json.RawMessage
	place int // of its choice
}

func (m *member) null() bool { return m.value[0] == 'n' }

// wrong reports whether a value cannot be a choice: it is neither a text nor a number.
func (m *member) wrong() bool { return bytes.IndexByte([]byte("{[tf"), m.value[0]) >= 0 }

func (m *member) text() string {
	if m.value[0] != '"' {
		return string(m.value) // a number, as it was written
	}
	var s string
	_ = json.Unmarshal(m.value, &s) // it was valid when it was read
	return s
}

// members takes an object apart and keeps the order. A name that occurs twice is an error, since nobody can know
// which was meant. It stops after most names and one more, which tells that there are too many.
func members(line int, text []byte, most int) ([]member, *mistake.Error) {
	const hint = `write one object on each line: {"metal":"galvanized","gauge":"18ga"}`
	dec := json.NewDecoder(bytes.NewReader(text))
	if t, err := dec.Token(); err != nil || t != json.Delim('{') {
		return nil, at(line, "", "this is not a JSON object", hint)
	}
	var list []member
	seen := map[string]bool{}
	for dec.More() {
		t, err := dec.Token()
		name, ok := t.(string)
		var value json.RawMessage
		if err == nil && ok {
			err = dec.Decode(&value)
		}
		if err != nil || !ok {
			return nil, at(line, "", "this JSON is broken", hint)
		}
		name = strings.ToLower(strings.TrimSpace(name))
		if seen[name] {
			return nil, at(line, plain.Line(name, 40), "this name occurs twice", "leave one out")
		}
		if list, seen[name] = append(list, member{name: name, value: value}), true; len(list) > most {
			return list, nil
		}
	}
	if _, err := dec.Token(); err != nil {
		return nil, at(line, "", "this JSON is broken", hint)
	}
	if _, err := dec.Token(); err != io.EOF {
		return nil, at(line, "", "something follows the object", hint)
	}
	return list, nil
}
