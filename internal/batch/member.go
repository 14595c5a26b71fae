package batch

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"brazebooth/internal/plain"
)

// member is one name of an object with its value: a text, a json.Number, nil for null, or what no choice can be.
type member struct {
	name  string
	value any
}

func (m *member) wrong() bool {
	switch m.value.(type) {
	case string, json.Number, nil:
		return false
	}
	return true
}

func (m *member) text() string { return fmt.Sprint(m.value) }

// members takes an object apart and keeps the order; a name that stands twice is a mistake that nobody should guess at.
func members(line int, text []byte) ([]member, *Fault) {
	const hint = `write one object on each line: {"metal":"galvanized","gauge":"18ga"}`
	dec := json.NewDecoder(bytes.NewReader(text))
	dec.UseNumber()
	if t, err := dec.Token(); err != nil || t != json.Delim('{') {
		return nil, &Fault{line, "", "this is no JSON object", hint}
	}
	var list []member
	for dec.More() {
		t, err := dec.Token()
		name, ok := t.(string)
		var value any
		if err == nil && ok {
			err = dec.Decode(&value)
		}
		if err != nil || !ok {
			return nil, &Fault{line, "", "this JSON is broken", hint}
		}
		name = strings.ToLower(strings.TrimSpace(name))
		for i := range list {
			if list[i].name == name {
				return nil, &Fault{line, plain.Line(name, 40), "this name stands twice", "leave one out"}
			}
		}
		list = append(list, member{name, value})
	}
	if _, err := dec.Token(); err != nil {
		return nil, &Fault{line, "", "this JSON is broken", hint}
	}
	if _, err := dec.Token(); err != io.EOF {
		return nil, &Fault{line, "", "something stands behind the object", hint}
	}
	return list, nil
}
