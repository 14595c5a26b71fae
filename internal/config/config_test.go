package config

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"brazebooth/internal/mistake"
)

func fileWith(t *testing.T, text string) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "brazebooth", "config.toml")
	if err := os.MkdirAll(filepath.Dir(name), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, []byte(text), 0o640); err != nil {
		t.Fatal(err)
	}
	return name
}

func content(t *testing.T, name string) string {
	t.Helper()
	b, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func TestEnvironmentOverridesFile(t *testing.T) {
	file := fileWith(t, "units = \"inch\"\nname = \"Ada\"\n[serve]\nlisten = \":2222\"\n")
	env := func(name string) string { return map[string]string{"BRAZEBOOTH_UNITS": "Both"}[name] }
	s, err := Load(file, env)
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]Value{
		"units": {"both", Environment, "BRAZEBOOTH_UNITS"}, "name": {"Ada", File, file}, "decimal": {"point", Default,
			""}, "no such": {},
	} {
		if got := s.Get(name); got != want {
			t.Errorf("%s: %+v, want %+v", name, got, want)
		}
	}
	if len(s.Unknown) != 0 {
		t.Errorf("unknown: %q", s.Unknown)
	}
}

// A malformed address of a book is refused without repeating it, from the environment and the file; a good one is saved
// as it is.
func TestTheBooksAddress(t *testing.T) {
	file := fileWith(t, "")
	for _, bad := range []string{"postgres://ada:hunter2x@[bad", "postgres:/ada:hunter2x@db/shop",
		"postgers://ada:hunter2x@db/shop", "host=db password=hunter2x"} {
		_, _, set := Set(file, "book", bad)
		_, read := Load(fileWith(t, "book = \""+bad+"\"\n"), nil)
		_, env := Load("", func(name string) string { return map[string]string{"BRAZEBOOTH_BOOK": bad}[name] })
		for _, err := range []error{set, read, env} {
			var e *mistake.Error
			if !errors.As(err, &e) || !strings.Contains(e.What, "neither the address") || !strings.Contains(e.Hint,
				"postgres://user@host/database") || strings.Contains(e.What+e.Hint, "hunter2x") {
				t.Errorf("%q: %v", bad, err)
			}
		}
	}
	if content(t, file) != "" {
		t.Errorf("the file holds %q", content(t, file))
	}
	for _, good := range []string{"postgres://ada:hunter2x@db/shop", "/shop/a:b@c.db"} {
		if _, kept, err := Set(file, "book", good); err != nil || kept != good {
			t.Errorf("%q is kept as %q, %v", good, kept, err)
		}
	}
}

func TestDefaults(t *testing.T) {
	for _, file := range []string{"", filepath.Join(t.TempDir(), "none", "config.toml")} {
		if s, err := Load(file, nil); err != nil || s.Get("units") != (Value{"metric", Default, ""}) {
			t.Errorf("%q: %+v, %v", file, s, err)
		}
	}
}

func TestImpossibleValues(t *testing.T) {
	for text, want := range map[string]string{
		"units = \"furlong\"\n":           "type metric, inch or both",
		"units = 3\n":                     `units = "metric"`,
		"units = \n":                      "TOML",
		"units = \"inch\"\nunits = \"x\"": "TOML",
		"decimal = \"\"\n":                "type point or comma",
		"name = \"a\\u001b[31m\"\n":       "type ada",
	} {
		var e *mistake.Error
		if _, err := Load(fileWith(t, text), nil); !errors.As(err, &e) || !strings.Contains(e.Hint, want) {
			t.Errorf("%q: %v", text, err)
		}
	}
	var e *mistake.Error
	if _, err := Load("",
		func(n string) string { return map[string]string{"BRAZEBOOTH_THEME": "pink"}[n] }); !errors.As(err, &e) ||
		!strings.HasPrefix(e.What, "BRAZEBOOTH_THEME: ") {
		t.Errorf("%v", err)
	}
}

func TestUnknownKeys(t *testing.T) {
	s, err := Load(fileWith(t, "unit = \"inch\"\nwindow = 3\n[serve]\nunit = 1\n"), nil)
	if err != nil || strings.Join(s.Unknown, " ") != "unit window" || Nearest("unit") != "units" ||
		Nearest("window") != "" || Nearest("power_source") != "power-source" {
		t.Errorf("%q, %v", s.Unknown, err)
	}
}

// A change leaves everything else unchanged, byte for byte.
func TestSetKeepsTheRest(t *testing.T) {
	for _, c := range []struct{ before, key, value, after string }{
		{"", "units", "inch", "units = \"inch\"\n"},
		{"units = \"inch\" # as we weld\r\n", "units", "both", "units = \"both\" # as we weld\r\n"},
		{"# head\n\n[serve] # the server's\nlisten = \":2222\"\nunits = \"x\"\n", "units", "both",
			"# head\nunits = \"both\"\n\n[serve] # the server's\nlisten = \":2222\"\nunits = \"x\"\n"},
		{"[serve]\nlisten = 1\n", "name", `A "quoted" \ one`,
			"name = \"A \\\"quoted\\\" \\\\ one\"\n[serve]\nlisten = 1\n"},
		{"theme='dark'\nname=\"a \\\" # b\"   # who\n\n# serve\n[serve]\n", "name", "Bo",
			"theme='dark'\nname = \"Bo\"   # who\n\n# serve\n[serve]\n"},
		{"theme = \"dark\"", "units", "inch", "theme = \"dark\"\nunits = \"inch\"\n"},
		{"\"units\" = 'inch'\n", "units", "metric", "\"units\" = \"metric\"\n"},
		{"units = \"inch\"", "UNITS", "metric", "units = \"metric\""},
	} {
		file := fileWith(t, c.before)
		if _, _, err := Set(file, c.key, c.value); err != nil {
			t.Errorf("%q: %v", c.before, err)
			continue
		}
		if got := content(t, file); got != c.after {
			t.Errorf("%q became %q, want %q", c.before, got, c.after)
		}
		if s, err := Load(file, nil); err != nil || s.Get(strings.ToLower(c.key)).Text != c.value {
			t.Errorf("%q: %+v, %v", c.after, s, err)
		}
		if info, err := os.Stat(file); err != nil || info.Mode().Perm() != 0o640 {
			t.Errorf("mode %v, %v", info.Mode(), err)
		}
	}
}

func TestUnset(t *testing.T) {
	file := fileWith(t, "# head\nunits = \"inch\"\nname = \"Ada\"\n[serve]\nunits = 1\n")
	if had, err := Unset(file, "units"); err != nil || !had ||
		content(t, file) != "# head\nname = \"Ada\"\n[serve]\nunits = 1\n" {
		t.Errorf("%v, %v: %q", had, err, content(t, file))
	}
	if had, err := Unset(file, "units"); err != nil || had {
		t.Errorf("again: %v, %v", had, err)
	}
	if had, err := Unset(filepath.Join(t.TempDir(), "none"), "units"); err != nil || had {
		t.Errorf("no file: %v, %v", had, err)
	}
}

// A file in which the key cannot be changed without touching the rest is not changed.
func TestUneditableFileIsNotChanged(t *testing.T) {
	for _, text := range []string{"units = \"\"\"\ninch\"\"\"\n", "list = [\n[1],\n]\nunits = \"inch\"\n", "broken\n"} {
		file := fileWith(t, text)
		if _, _, err := Set(file, "units", "both"); err == nil {
			if s, err := Load(file, nil); err != nil || s.Get("units").Text != "both" {
				t.Errorf("%q: %v", text, err)
			}
			continue
		}
		if content(t, file) != text {
			t.Errorf("%q became %q", text, content(t, file))
		}
	}
}

func TestSetRefuses(t *testing.T) {
	file := filepath.Join(t.TempDir(), "config.toml")
	for _, c := range [][3]string{{"unit", "inch", "type units"}, {"units", "furlong", "type metric"},
		{"name", " ", "type ada"}, {"colour", "red", "the keys are units"}} {
		var e *mistake.Error
		if _, _, err := Set(file, c[0], c[1]); !errors.As(err, &e) || !strings.HasPrefix(e.Hint, c[2]) {
			t.Errorf("%q: %v", c, err)
		}
	}
	if _, err := os.Stat(file); err == nil {
		t.Error("a refused value made a file")
	}
}

// A book's file is saved with its absolute path, and a settings file that is a link stays one.
func TestPathsAndLinks(t *testing.T) {
	real := fileWith(t, "")
	link := filepath.Join(t.TempDir(), "config.toml")
	if err := os.Symlink(real, link); err != nil {
		t.Skip("no links here")
	}
	_, kept, err := Set(link, "book", "shop.db")
	if err != nil || !filepath.IsAbs(kept) {
		t.Errorf("%q, %v", kept, err)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 || content(t, real) == "" {
		t.Errorf("%v, %q", err, content(t, real))
	}
	if _, kept, err := Set(link, "book", "postgres://booth@shop/book"); err != nil ||
		kept != "postgres://booth@shop/book" {
		t.Errorf("%q, %v", kept, err)
	}
}

func FuzzSet(f *testing.F) {
	f.Add("# a\nunits = 'inch' # b\n[serve]\nx = 1\n", "booth")
	f.Add("name=\"\"\"\n[x]\n\"\"\"\n", "a\"b\\")
	f.Fuzz(func(t *testing.T, text, value string) {
		before, err := parse([]byte(text))
		if err != nil {
			return
		}
		file := fileWith(t, text)
		_, kept, err := Set(file, "name", value)
		after := content(t, file)
		if err != nil {
			if after != text {
				t.Fatalf("%q became %q: %v", text, after, err)
			}
			return
		}
		got, err := parse([]byte(after))
		if err != nil || got["name"] != kept {
			t.Fatalf("%q became %q: %v", text, after, err)
		}
		for k := range before {
			if _, ok := got[k]; !ok {
				t.Fatalf("%q lost %q", text, k)
			}
		}
	})
}

func BenchmarkLoad(b *testing.B) {
	file := filepath.Join(b.TempDir(), "config.toml")
	if err := os.WriteFile(file,
		[]byte("# ours\nunits = \"inch\"\ndecimal = \"comma\"\nname = \"Ada\"\n[serve]\nlisten = "+
			"\":2222\"\n"), 0o600); err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Load(file, os.Getenv); err != nil {
			b.Fatal(err)
		}
	}
}
