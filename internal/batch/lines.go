package batch

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"strings"
	"unicode/utf8"

	"brazebooth/calc"
	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
	"brazebooth/internal/report"
)

// opening is the beginning of every line of JSON output; the input row follows.
const opening = `{"input":`

// lines is a table of JSON objects, one on each line.
type lines struct {
	choices
	in      *bufio.Reader
	at      int
	version string
}

func (l *lines) head() []byte { return nil }

func (l *lines) next() (row, error) {
	for {
		text, _, long, err := lineOf(l.in, limit)
		if err != nil {
			return row{}, err
		}
		l.at++
		if l.at == 1 {
			text = bytes.TrimPrefix(text, []byte("\ufeff"))
		}
		if text = bytes.TrimSpace(text); len(text) == 0 {
			continue
		}
		r := row{line: l.at, echo: echoOf(text, long)}
		switch {
		case long:
			r.fail("", tooLong, "write one object on each line")
		case !utf8.Valid(text):
			r.fail("", foreign, foreignHint)
		default:
			l.read(&r, text)
		}
		return r, nil
	}
}

// lineOf is the next line with its break; io.EOF after the last. whole is false for a last line without a break. For a
// line of more than most bytes long is true, and text only its beginning.
func lineOf(in *bufio.Reader, most int) (text []byte, whole, long bool, err error) {
	for {
		part, err := in.ReadSlice('\n')
		if len(text)+len(part) > most {
			long, text = true, text[:min(len(text), cellWidth)]
		} else {
			text = append(text, part...)
		}
		switch {
		case err == nil, errors.Is(err, io.EOF) && len(text) > 0:
			return text, err == nil, long, nil
		case !errors.Is(err, bufio.ErrBufferFull):
			return nil, false, false, err
		}
	}
}

// echoOf is a row as the answer repeats it: compact JSON, or a JSON string if the row is not JSON.
func echoOf(text []byte, long bool) []byte {
	var out bytes.Buffer
	text = bytes.ToValidUTF8(text, []byte("\ufffd"))
	if long || json.Compact(&out, text) != nil {
		out.Reset()
		enc := json.NewEncoder(&out)
		enc.SetEscapeHTML(false)
		_ = enc.Encode(plain.Line(string(text), cellWidth)) // encoding a string never fails
	}
	return plain.JSON(bytes.TrimSpace(out.Bytes()))
}

// read reads an object's members in the fixed order of the choices.
func (l *lines) read(r *row, text []byte) {
	all, fault := members(r.line, text, l.most())
	if len(all) > l.most() {
		fault = l.tooMany(r.line)
	}
	if fault != nil {
		r.fault = fault
		return
	}
	var list []given
	for _, m := range all {
		place, ok := l.place(m.name)
		switch {
		case !ok:
			r.fault = l.unknown(r.line, m.name)
			return
		case place < 0 || m.value[0] == 'n': // null
			continue
		case bytes.IndexByte([]byte("{[tf"), m.value[0]) >= 0:
			r.fail(m.name, "neither a text nor a number", `write {"metal":"galvanized","gauge":"18ga","feed":6.3}`)
			return
		}
		list = append(list, given{place, m.name, m.text()})
	}
	r.read(list)
}

func (l *lines) answer(r *row, card *calc.Card) ([]byte, error) {
	return report.JSONLine(card, l.version, r.echo)
}

func (l *lines) refusal(r *row) []byte {
	doc := struct {
		Input json.RawMessage `json:"input"`
		Error string          `json:"error"`
		Hint  string          `json:"hint"`
		Line  int             `json:"line"`
	}{r.echo, r.fault.What, r.fault.Hint, r.line}
	b, _ := json.Marshal(doc) // encoding strings and valid JSON never fails
	return append(plain.JSON(b), '\n')
}

func (l *lines) mine(r *row, line []byte) bool {
	rest, ok := strings.CutPrefix(string(line), opening+string(r.echo))
	return ok && strings.HasPrefix(rest, ",")
}

func (l *lines) begins() string { return opening }

// member is one name of an object with its value as written.
type member struct {
	name  string
	value json.RawMessage
}

func (m *member) text() string {
	if m.value[0] != '"' {
		return string(m.value) // a number as written
	}
	var s string
	_ = json.Unmarshal(m.value, &s) // it was valid when it was read
	return s
}

// members are the members of an object in their order. A name that occurs twice is an error, since either could be
// meant. It stops after most+1 names, which shows that there are too many.
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
