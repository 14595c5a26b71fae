package cli

import (
	"bytes"
	"context"
	"database/sql"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// Words in the place of the server's book that no guest may see.
const (
	itsFolder   = "leak folder"
	itsUser     = "leakuser"
	itsDatabase = "leakbase"
)

// stateOfBook makes a book, or something wrong in its place, in a folder of the server and returns its place.
type stateOfBook struct {
	name string
	make func(t *testing.T, file string) (where string)
}

func statesOfBooks() []stateOfBook {
	in := func(where string) func(*testing.T, string) string {
		return func(*testing.T, string) string { return where }
	}
	write := func(text string) func(*testing.T, string) string {
		return func(t *testing.T, file string) string {
			must(t, os.WriteFile(file, []byte(text), 0o600))
			return file
		}
	}
	return []stateOfBook{
		{"good", func(t *testing.T, file string) string { aBook(t, file); return file }},
		{"not there", func(_ *testing.T, file string) string { return file }},
		{"in no folder", func(_ *testing.T, file string) string {
			return filepath.Join(filepath.Dir(file), "gone",
				"book.db")
		}},
		{"below a file", func(t *testing.T, file string) string {
			write("x")(t, file)
			return filepath.Join(file,
				"book.db")
		}},
		{"a folder", func(t *testing.T, file string) string { must(t, os.Mkdir(file, 0o700)); return file }},
		{"a letter", write("dear shop, this is no book but a letter, and a long one at that")}, {"empty", write("")},
		{"cut off", func(t *testing.T, file string) string {
			aBook(t, file)
			must(t, os.Truncate(file, 3*4096+100))
			return file
		}},
		{"with holes", func(t *testing.T, file string) string {
			aBook(t, file)
			b, err := os.ReadFile(file)
			must(t, err)
			for at := 2 * 4096; at < len(b); at += 2 * 4096 { // every other page after the schema
				copy(b[at:min(at+4096, len(b))], bytes.Repeat([]byte{0}, 4096))
			}
			must(t, os.WriteFile(file, b, 0o600))
			return file
		}},
		{"of a newer program", changed("UPDATE meta SET value = '99' WHERE name = 'version'")},
		{"of no version", changed("UPDATE meta SET value = 'x' WHERE name = 'version'")},
		{"without its revisions", changed("DROP TABLE revisions")}, {"without its heads", changed("DROP TABLE heads")},
		{"of another program", changed("DROP TABLE meta")},
		{"of bodies that are none", changed("UPDATE revisions SET body = x'00'")},
		{"away", in("postgres://" + itsUser + ":hunter2x@127.0.0.1:1/" + itsDatabase + "?connect_timeout=1")},
		{"no address", in("postgres://" + itsUser + ":hunter2x@127.0.0.1:port/" + itsDatabase)},
		{"nowhere", in("")},
	}
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// soundBook is the file of a sound book, from which the other states are made.
var soundBook deep.Known[string, []byte]

// aBook writes a sound book with a card and a deleted card, without a journal beside it.
func aBook(t *testing.T, file string) {
	t.Helper()
	whole, err := soundBook.Of("", func() ([]byte, error) {
		first := filepath.Join(t.TempDir(), "book.db")
		writeBook(t, first)
		return os.ReadFile(first)
	})
	must(t, err)
	must(t, os.WriteFile(file, whole, 0o600))
}

func writeBook(t *testing.T, file string) {
	t.Helper()
	for _, line := range []string{"book save --name lid --gauge 18ga --feed 5 --travel 8",
		"book save --name gone --gauge 18ga --feed 5 --travel 8", "book delete gone",
		"book source --name A --rated-amps 200",
		"book reading --power-source A --feed 5 --stickout 12mm --amps 90 --volts 15"} {
		var errOut bytes.Buffer
		if code := Run(context.Background(), strings.Fields(line), Deps{Out: &bytes.Buffer{}, Err: &errOut,
			Book: file, Who: "ada"}); code != 0 {
			t.Fatal(line, errOut.String())
		}
	}
	must(t, alter(file, "PRAGMA wal_checkpoint(TRUNCATE)", "PRAGMA journal_mode = DELETE"))
}

func alter(file string, statements ...string) error {
	db, err := sql.Open("sqlite", "file:"+strings.ReplaceAll(file, " ", "%20"))
	if err != nil {
		return err
	}
	defer db.Close()
	for _, s := range statements {
		if _, err := db.Exec(s); err != nil {
			return err
		}
	}
	return nil
}

// changed is a book that was changed by an SQL statement.
func changed(statement string) func(*testing.T, string) string {
	return func(t *testing.T, file string) string {
		aBook(t, file)
		must(t, alter(file, statement))
		return file
	}
}

// Whatever a guest asks, and whatever state the server's book is in, no answer names a path, a user, a host or a
// database of the server's machine, or how the program was built.
func TestGuestsAreToldNothingOfTheMachine(t *testing.T) {
	host, err := os.Hostname()
	must(t, err)
	all := asGuest()
	for _, state := range statesOfBooks() {
		dir := filepath.Join(t.TempDir(), itsFolder)
		must(t, os.MkdirAll(dir, 0o700))
		where := state.make(t, filepath.Join(dir, "book.db"))
		beside := filepath.Join(dir, "beside", "offline.db")
		refused := 0
		lines := all
		if state.name != "good" { // commands that do not use the book answer the same in any state
			lines = slices.DeleteFunc(slices.Clone(lines),
				func(args []string) bool { return !asksTheBook.MatchString(strings.Join(args, " ")) })
		}
		for _, args := range deep.Of(t, lines, 5) {
			var out, errOut bytes.Buffer
			jobs := strings.NewReader("id,gauge,feed,travel,power-source\n1,18ga,5,8,A\n")
			code := Run(context.Background(), args, Deps{In: jobs, Out: &out, Err: &errOut, Remote: true,
				Title: "example", Example: calc.Job{Metal: "galvanized", Gauge: 16}, Book: where, Beside: beside,
				Who: "bert", Where: "192.0.2.7"})
			for _, word := range []string{itsFolder, itsUser, itsDatabase, "hunter2x", "127.0.0.1", filepath.Dir(dir),
				"offline.db", "book.db", host + " ", "-ldflags", "CGO_", "/tmp", os.TempDir()} {
				if strings.Contains(out.String(), word) || strings.Contains(errOut.String(), word) {
					t.Errorf("%s, %q: %q in\n%.300s%s", state.name, args, word, &out, &errOut)
				}
			}
			if code != 0 {
				refused++
				if lines := strings.Split(strings.TrimSpace(errOut.String()), "\n"); lines[0] == "" {
					t.Errorf("%s, %q: exit %d without a word", state.name, args, code)
				}
			}
		}
		t.Logf("%s: %d refused", state.name, refused)
	}
}

var asksTheBook = regexp.MustCompile(`^book |^batch|--power-source|--keep|^--plain`)

// asGuest are command lines for every command: plain, with JSON, with a wrong argument, and some more.
func asGuest() [][]string {
	var list [][]string
	root := New(Deps{Remote: true})
	for _, w := range waysOf(root, "x") {
		if w.flag != "" {
			continue
		}
		args := w.args[:len(w.args)-1]
		list = append(list, args, append(args[:len(args):len(args)], "x"))
		if cmd, _, err := root.Find(strings.Fields(w.cmd)); err == nil && cmd.Flags().Lookup("json") != nil {
			list = append(list, append(args[:len(args):len(args)], "--json"))
		}
	}
	for _, line := range []string{"book export -", "book export - --csv", "book import -", "book merge other.db",
		"book backup copy.db", "book list --book other.db", "book show lid --why", "book print lid --pdf -",
		"book check", "version --json",
		"book reading --power-source A --feed 5 --stickout 12mm --amps 90 --volts 15",
		"book source --name A --rated-amps 210", "book source --name B",
		"book spool --lot L --filler cusi3 --wire .035 --full 4540", "book person Ada",
		"card --gauge 18ga --feed 5 --travel 8 --power-source A", "card --gauge 18ga --feed 5 --travel 8 " +
			"--power-source A --json", "batch - --format csv", "batch - --format csv --keep-going",
		"practice --level 1 --keep", "--plain", "--theme nosuch"} {
		list = append(list, strings.Fields(line))
	}
	return list
}
