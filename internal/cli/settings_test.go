package cli

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"brazebooth/internal/quantity"
)

// The settings reach the screens; a flag overrides a setting.
func TestSettingsReachTheScreens(t *testing.T) {
	env := map[string]string{"BRAZEBOOTH_UNITS": "inch", "BRAZEBOOTH_DECIMAL": "comma",
		"BRAZEBOOTH_THEME": "contrast", "BRAZEBOOTH_BOOK": "/shop/book.db", "BRAZEBOOTH_NAME": "Ada"}
	want := ScreenOptions{Units: quantity.Inch, Book: "/shop/book.db", Theme: "contrast", Who: "Ada", Comma: true}
	for line, change := range map[string]func(*ScreenOptions){
		"":                func(*ScreenOptions) {},
		"--units metric":  func(o *ScreenOptions) { o.Units = quantity.Metric },
		"--decimal point": func(o *ScreenOptions) { o.Comma = false },
		"--theme light":   func(o *ScreenOptions) { o.Theme = "light" },
		"--book other.db": func(o *ScreenOptions) { o.Book = "other.db" },
	} {
		var out, errOut bytes.Buffer
		var got ScreenOptions
		d := Deps{Out: &out, Err: &errOut, Book: "/home/book.db", Who: "login",
			Env:        func(k string) string { return env[k] },
			RunScreens: func(_ context.Context, o ScreenOptions) error { got = o; return nil }}
		wanted := want
		change(&wanted)
		if code := Run(context.Background(), strings.Fields(line), d); code != 0 || got != wanted {
			t.Errorf("%q: code %d, %s\n got %+v\nwant %+v", line, code, errOut.String(), got, wanted)
		}
	}
}

// Two runs in one process share no settings: the decimal comma of one does not show in the other.
func TestSettingsAreOfOneRun(t *testing.T) {
	text := func(mark string) string {
		var out, errOut bytes.Buffer
		Run(context.Background(), []string{"gauge", "16"}, Deps{Out: &out, Err: &errOut, Env: func(k string) string {
			return map[string]string{"BRAZEBOOTH_DECIMAL": mark}[k]
		}})
		return out.String()
	}
	with, without := text("comma"), text("")
	if !strings.Contains(with, "0,0598") || !strings.Contains(without, "0.0598") || strings.Contains(without,
		"0,0598") {
		t.Errorf("%s%s", with, without)
	}
}
