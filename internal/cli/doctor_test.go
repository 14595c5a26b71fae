package cli

import (
	"bytes"
	"context"
	"encoding/json"
	"path/filepath"
	"testing"
)

// found are doctor's findings for a terminal, by area and name.
func found(t *testing.T, term Terminal) (map[string]finding, int) {
	t.Helper()
	var out, errOut bytes.Buffer
	dir := t.TempDir()
	code := Run(context.Background(), []string{"doctor", "--json"}, Deps{Out: &out, Err: &errOut,
		Book: filepath.Join(dir, "book.db"), Beside: filepath.Join(dir, "offline.db"),
		Config: filepath.Join(dir, "config.toml"), Terminal: func() Terminal { return term }})
	var doc struct {
		Usable   bool
		Findings []finding
	}
	if err := json.Unmarshal(out.Bytes(), &doc); err != nil {
		t.Fatalf("%v: %s", err, out.String())
	}
	if doc.Usable != (code == 0) {
		t.Errorf("usable %v, code %d", doc.Usable, code)
	}
	by := map[string]finding{}
	for _, x := range doc.Findings {
		by[x.Area+" "+x.Name] = x
		if x.State == mend && x.Do == "" {
			t.Errorf("%+v does not say what to do", x)
		}
	}
	return by, code
}

func TestDoctorLooksAtTheTerminal(t *testing.T) {
	good := Terminal{In: true, Out: true, Places: true, Width: 80, Height: 24, Name: "xterm-256color", Colours: "256",
		Locale: "C.UTF-8", UTF8: true, Background: "dark", LeastWidth: 40, LeastHeight: 14}
	for _, c := range []struct {
		name   string
		change func(*Terminal)
		at     string
		want   state
		code   int
	}{
		{"good", func(*Terminal) {}, "size", fine, 0},
		{"small", func(t *Terminal) { t.Width = 30 }, "size", mend, 1},
		{"flat", func(t *Terminal) { t.Height = 10 }, "size", mend, 1},
		{"phone", func(t *Terminal) { t.Width, t.Height = 40, 20 }, "size", fine, 0},
		{"unknown size", func(t *Terminal) { t.Width = 0 }, "size", note, 0},
		{"dumb", func(t *Terminal) { t.Name = "dumb" }, "TERM", mend, 1},
		{"old console", func(t *Terminal) { t.Places = false }, "TERM", mend, 1},
		{"dumb pipe", func(t *Terminal) { t.Name, t.Out = "dumb", false }, "TERM", fine, 0},
		{"nameless pipe", func(t *Terminal) { t.Name, t.Out = "", false }, "TERM", note, 0},
		{"pipe", func(t *Terminal) { t.Out = false }, "terminal", note, 0},
		{"letters", func(t *Terminal) { t.Locale, t.UTF8 = "C", false }, "letters", mend, 1},
		{"console", func(t *Terminal) { t.Name = "linux" }, "letters", note, 0},
		{"background", func(t *Terminal) { t.Background = "" }, "background", note, 0},
		{"no colour", func(t *Terminal) { t.NoColour = true }, "colours", fine, 0},
		{"hostile", func(t *Terminal) { t.Name = "\x1b[31m" }, "TERM", fine, 0},
	} {
		term := good
		c.change(&term)
		by, code := found(t, term)
		if got := by["terminal "+c.at]; got.State != c.want || code != c.code {
			t.Errorf("%s: %+v, code %d; want %s, %d", c.name, got, code, c.want, c.code)
		}
	}
}
