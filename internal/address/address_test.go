package address

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"brazebooth/internal/deep"
)

func TestMain(m *testing.M) { deep.Main(m, 100) }

func TestShown(t *testing.T) {
	for text, want := range map[string]string{
		"/shop/book.db": "/shop/book.db", "book.db": "book.db", "./a:b@c": "./a:b@c",
		`C:\shop\a@b.db`: `C:\shop\a@b.db`, "~/a:b@c": "~/a:b@c", "a@b.db": "a@b.db", "": "", "..": "..",
		"//share/shop/book.db": "//share/shop/book.db", "/shop/pass:1@x": "/shop/pass:1@x",
		"postgres://ada@db/shop": "postgres://ada@db/shop", "POSTGRES://ada@db/shop": "postgres://ada@db/shop",
		"postgresql://db": "postgresql://db", "postgres:///shop?host=/run/pg": "postgres:///shop?host=/run/pg",
		"postgres://ada:word@db:5432/shop?sslmode=disable": "postgres://ada:xxxxx@db:5432/shop?sslmode=disable",
		"postgres://ada:w@rd@db/shop":                      "postgres://ada:xxxxx@db/shop",
		"postgres://db/shop?user=ada&password=word":        "postgres://db/shop?xxxxx",
		"postgres://db/shop?sslpassword=word":              "postgres://db/shop?xxxxx",
		"postgres://ada%40db:word@db/shop":                 "postgres://ada%40db:xxxxx@db/shop",
		"postgres://ada:word@[::1]:5432/shop":              "postgres://ada:xxxxx@[::1]:5432/shop",
		"postgres://ada@db/a%40b":                          "postgres://ada@db/a%40b",
		"postgres://ada:word@[bad":                         Unsaid,
		"postgres:/ada:word@db/shop":                       Unsaid, "postgers://ada:word@db/shop": Unsaid,
		"postgres://ada:w%zz@db/shop": Unsaid, "postgres://ada:12/word@db/shop": Unsaid,
		"postgres://ada:12?word@db/shop": Unsaid, "postgres://ada:12#word@db/shop": Unsaid,
		"postgres://ada:word": Unsaid, "postgres://ada;word@db/shop": Unsaid, "postgres://ada%3Aword@db/shop": Unsaid,
		"postgres://ada@word@db/shop": Unsaid, "ada:word@db/shop": Unsaid, "//ada:word@db/shop": Unsaid,
		"host=db password=word": Unsaid, "password=word": Unsaid, "postgres:ada:word@db": Unsaid,
		" postgres://ada:word@db/shop":    Unsaid,
		"postgres://db/shop?password=%zz": Unsaid, "https://db/shop": Unsaid, "postgres://ada:wo rd@db/shop": Unsaid,
		"postgres//ada:word@db/shop": Unsaid, "password: word": Unsaid, "PGPASSWORD=word": Unsaid,
	} {
		if got := Shown(text); got != want {
			t.Errorf("Shown(%q) = %q, want %q", text, got, want)
		}
		if bad := Check(text) != nil; bad != (want == Unsaid) {
			t.Errorf("Check(%q) refuses: %v", text, bad)
		}
	}
}

func TestScrub(t *testing.T) {
	for text, want := range map[string]string{
		"type postgres://user@host/database, or a file":   "type postgres://user@host/database, or a file",
		`no book at "postgres://ada:word@db/shop".`:       `no book at "postgres://ada:xxxxx@db/shop".`,
		`unknown command "postgres://ada:wor…"`:           `unknown command "` + Unsaid + `"`,
		"read ada:word@db/shop: no such file":             "read " + Unsaid + ": no such file",
		"listen tcp: host=db password=word: no port":      "listen tcp: host=db " + Unsaid + ": no port",
		"failed to connect to `user=ada database=shop`":   "failed to connect to `user=ada database=shop`",
		"12:30, ada@db: --gauge: a gauge is from 7 to 30": "12:30, ada@db: --gauge: a gauge is from 7 to 30",
	} {
		if got := Scrub(text); got != want {
			t.Errorf("Scrub(%q) = %q, want %q", text, got, want)
		}
	}
}

// No part of a password is shown, wherever it is in an address or a message, and whatever characters it has.
func TestNoPasswordIsShown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sign := rapid.SampledFrom([]string{"/", "?", "#", "@", ":", "%", "%2", "%40", "[", "]", "&", "=", ";", "\\",
			"'", "1", "12", ""})
		word := sign.Draw(t, "before") + "hunter" + sign.Draw(t, "behind") + "secret" + sign.Draw(t, "end")
		form := rapid.SampledFrom([]string{"postgres://ada:WORD@db/shop",
			"postgresql://ada:WORD@db:5432/shop?sslmode=disable", "POSTGRES://ada:WORD@[::1]/shop",
			"postgres:/ada:WORD@db", "postgers://ada:WORD@db/shop",
			"postgres:ada:WORD@db", "ada:WORD@db/shop", "host=db user=ada password=WORD",
			"postgres://db/shop?password=WORD", "mysql://ada:WORD@db", "postgres://:WORD@db", "postgres://ada:WORD@",
			"postgres//ada:WORD@db",
			"//ada:WORD@db"}).Draw(t, "form")
		text := strings.Replace(form, "WORD", word, 1)
		shown := Shown(text)
		for _, piece := range []string{"hunter", "secret"} {
			if strings.Contains(shown, piece) {
				t.Fatalf("%q is shown as %q", text, shown)
			}
		}
		if strings.Contains(form, "://") && !strings.Contains(form, "?password") {
			if got := Scrub("no book at " + text + " is there"); strings.Contains(got, "hunter") ||
				strings.Contains(got, "secret") {
				t.Fatalf("%q is scrubbed to %q", text, got)
			}
		}
	})
}
