package program

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode"
	"unicode/utf16"

	gossh "golang.org/x/crypto/ssh"

	"brazebooth/calc"
	"brazebooth/internal/book"
	"brazebooth/internal/deep"
)

// hostile are texts with control characters for a terminal.
var hostile = []string{
	"\x1b]52;c;cHduZWQ=\x07lid", "\x1b]0;pwned\x07lid", "\x1b[31mred\x1b[2J\x1b[6n", "\x1bP+q544e\x1b\\lid",
	"\u009b31mlid", "\u009d52;c;cHduZWQ=\u009clid",
	"lid\u202egnp.exe", "\u2066lid\u2069", "a\rb\bc\x00d\x7f", "lid\u200b\ufeff\U000e0041", "tank\nlid\x0b\x0c",
	"\xff\xfe\x9b31m", "=cmd|' /C calc'!A0", "\x1b\x1b\x1b[201~\x1b[200~rm",
}

// odd is the first character of a text that an answer must not contain.
func odd(s string) (r rune, found bool) {
	for i, r := range s {
		switch {
		case r == '\n':
		case r < 0x20, r >= 0x7f && r < 0xa0, unicode.In(r, unicode.Cf, unicode.Co, unicode.Cs), r == 0x2028,
			r == 0x2029:
			return r, true
		case r == unicode.ReplacementChar && !strings.HasPrefix(s[i:], "\ufffd"):
			return r, true
		}
	}
	return 0, false
}

// quoted is a text as one word of a command line.
func quoted(s string) string { return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'" }

// crafted are forged exports: their texts are hostile, hidden by JSON's escapes, and their hashes are correct.
func crafted(t testing.TB) (lines []string) {
	t.Helper()
	card, err := calc.Solve(calc.Job{Metal: "galvanized", Gauge: 20, Joint: "lap", Feed: calc.Some(4.1),
		Travel: calc.Some(8)})
	if err != nil {
		t.Fatal(err)
	}
	for i, text := range hostile {
		body, err := json.Marshal(book.Card{Name: fmt.Sprint("crafted ", text), Note: text, Tags: []string{text},
			Job: card.Job, Card: book.Keep(&card)})
		if err != nil {
			t.Fatal(err)
		}
		a := book.Author{Who: "ana", Where: "booth", Program: "test", Now: func() time.Time {
			return time.Date(2026,
				3, 1, 8, i, 0, 0, time.UTC)
		}}
		r, err := a.New(book.CardKind, json.RawMessage(escapedJSON(body)))
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		line := json.NewEncoder(&out)
		line.SetEscapeHTML(false)
		if err := line.Encode(r); err != nil {
			t.Fatal(err)
		}
		lines = append(lines, out.String())
	}
	return lines
}

// escapedJSON writes all characters beyond ASCII as escapes.
func escapedJSON(doc []byte) string {
	var b strings.Builder
	for _, r := range string(doc) {
		switch {
		case r < 0x7f:
			b.WriteRune(r)
		case r > 0xffff:
			high, low := utf16.EncodeRune(r)
			fmt.Fprintf(&b, `\u%04x\u%04x`, high, low)
		default:
			fmt.Fprintf(&b, `\u%04x`, r)
		}
	}
	return b.String()
}

// What one guest saves, or imports from a forged file, sends no control character to the terminal of another.
func TestHostileTextReachesNobody(t *testing.T) {
	deep.Turn(t)
	t.Parallel()
	b := startBooth(t)
	writer, reader := b.client(t, "writer"), b.client(t, "reader")
	for i, text := range hostile {
		for k, command := range []string{
			fmt.Sprintf("book save --gauge 20ga --feed 4.1 --travel 8 --name %s --note %s --tag %s",
				quoted(fmt.Sprint("n", i, text)), quoted(text), quoted(text)),
			"book source --name " + quoted(fmt.Sprint("s", i, text)) + " --note " + quoted(text),
			"book spool --lot " + quoted(fmt.Sprint("l", i, text)) + " --filler cusi3 --full 4540 --note " +
				quoted(text),
			"book person -- " + quoted(fmt.Sprint("p", i, text)),
			"book trial " + quoted(fmt.Sprint("n", i, text)) + " --verdict good --note " + quoted(text),
			"book reading --power-source " + quoted(fmt.Sprint("s", i, text)) +
				" --feed 6 --stickout 12mm --amps 96 --volts 15",
		} {
			if k > 0 && (i+k+int(deep.Seed()))%3 != 0 && !deep.Run() {
				continue // each text is saved in a card, and in some other records
			}
			out, told, _ := askOver(t, writer, command, "")
			clean(t, command, out+told)
		}
	}
	for _, line := range crafted(t) {
		out, told, _ := askOver(t, writer, "book import -", line)
		clean(t, "book import -", out+told)
	}
	list, _, code := askOver(t, reader, "book list --json --limit 500", "")
	if code != 0 || strings.Count(list, `"id"`) < 2*len(hostile) {
		t.Fatalf("too little was kept to test anything: %.400s", list)
	}
	commands := []string{"book list", "book list --json", "book find lid", "book find n1", "book export -",
		"book export --csv -", "book source", "book spool", "book person", "book reading", "book check"}
	var all struct{ Records []struct{ ID, Kind string } }
	if err := json.Unmarshal([]byte(list), &all); err != nil {
		t.Fatal(err)
	}
	for _, r := range deep.Of(t, all.Records, 10) {
		one := r.ID + " --kind " + r.Kind
		commands = append(commands, "book show "+one, "book history "+one, "book show "+one+" --json")
		if r.Kind == "card" {
			commands = append(commands, "book recompute "+r.ID)
		}
	}
	shown := 0
	for _, command := range commands {
		out, told, code := askOver(t, reader, command, "")
		clean(t, command, out+told)
		if code == 0 {
			shown++
		}
	}
	t.Logf("%d commands, %d of them answered", len(commands), shown)
	if shown < len(commands)/2 {
		t.Errorf("only %d of %d commands showed anything", shown, len(commands))
	}
	if csv, _, _ := askOver(t, reader, "book export --csv -", ""); strings.Contains(csv, "\n=cmd") ||
		strings.Contains(csv, ",=cmd") {
		t.Error("a formula reaches the spreadsheet")
	}
}

func clean(t testing.TB, command, answer string) {
	t.Helper()
	if r, found := odd(answer); found {
		t.Errorf("%.80q: the answer holds %U: %.400q", command, r, answer)
	}
}

// The same on the screens, whose own drawing has escapes: none comes from a guest's text.
func TestHostileTextOnScreens(t *testing.T) {
	deep.Turn(t)
	t.Parallel()
	b := startBooth(t)
	writer := b.client(t, "writer")
	for i, text := range hostile {
		askOver(t, writer, fmt.Sprintf("book save --gauge 20ga --feed 4.1 --travel 8 --name %s --note %s",
			quoted(fmt.Sprint("n", i, text)), quoted(text)), "")
	}
	for _, line := range crafted(t) {
		if _, told, code := askOver(t, writer, "book import -", line); code != 0 {
			t.Error(told)
		}
	}
	s, in := ptyIn(t, b.client(t, "reader"), "xterm-256color", 100, 40)
	wire := new(words)
	x := newSeen(t, in, 100, 40, nil)
	s.Stdout = io.MultiWriter(x.emu, wire)
	go answers(in, x.emu)
	if err := s.Shell(); err != nil {
		t.Fatal(err)
	}
	x.await("wire feed")
	press := func(key string) { // and wait until the screen changes
		t.Helper()
		before := x.shown()
		x.write(key)
		if !x.comes(func(shown string) bool { return shown != before }) {
			t.Fatalf("%q changes nothing:\n%s", key, before)
		}
	}
	for range 4 { // past the four questions, to the card
		press("\t")
	}
	for _, page := range []string{"book", "records"} {
		press("p")
		for n := 0; !strings.Contains(x.shown(), "["+page+"]"); n++ {
			if n == 40 {
				t.Fatalf("no page %s:\n%s", page, x.shown())
			}
			press("\x1b[C")
		}
		x.await("lid")
		for range len(hostile) {
			if page == "records" {
				press("\r")
				press("\x1b")
			}
			press("\x1b[B")
		}
		press("\x1b")
	}
	drawn := wire.String()
	if !strings.Contains(drawn, "crafted") && !strings.Contains(x.shown(), "crafted") {
		t.Error("nobody's text was on the screens")
	}
	for _, sequence := range []string{"]52;", "]0;pwned", "\x1b[2J\x1b[6n", "\x1bP+q", "\x1b[31mred", "\x1b[201~",
		"\u009b", "\u009d", "\u202e", "\u2066", "\ufeff", "\x00", "\x9b31m"} {
		if strings.Contains(drawn, sequence) {
			t.Errorf("%q reaches the terminal", sequence)
		}
	}
}

// Commands with hostile arguments give only an answer: no file of this machine is made, changed or read.
func TestHostileCommandsTouchNothing(t *testing.T) {
	b := startBooth(t)
	b.ask(t, "writer", "book save --name lid --gauge 20ga", "")
	here := t.TempDir()
	t.Chdir(here)
	secret := filepath.Join(here, "secret")
	if err := os.WriteFile(secret, []byte("the combination is 12-34-56\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	before := tree(t, here) + tree(t, b.dir)
	marks := []string{"; touch made", "&& touch made", "| tee made", "> made", ">> made", "$(touch made)",
		"`touch made`", "\ntouch made\n", "\x00touch made", "& touch made &", "< secret", "../secret", secret,
		"file://" + secret, "@" + secret, "-", "--", "---", "%s%n%x", strings.Repeat("a", 15_000),
		"\x1b]52;c;cHduZWQ=\x07", "\xff\xfe", "postgres://nobody@127.0.0.1:1/x", "sqlite:made", "made.db?mode=rwc",
		"*", "~", "${HOME}", "!!", "'\"'\"'", `\`, "'", `"`}
	forms := []string{"%s", "card %s", "card --gauge 20ga --pdf %s", "card --gauge 20ga --book %s", "card --json %s",
		"window --gauge 20ga --svg %s", "window --gauge 20ga --png=%s", "book save --gauge 20ga --name %s",
		"book export %s", "book import %s", "book merge %s", "book backup %s", "book print lid --pdf %s",
		"book list --book=%s", "book show %s", "help %s", "completion %s", "__complete card --gauge %s",
		"serve --config %s", "tables %s"}
	asked, every := 0, []int{24, 8, 1}[min(deep.Times(), 2)] // of some thousand
	for _, who := range []string{"reader", "writer"} {
		c := b.client(t, who)
		for f, form := range forms {
			for m, mark := range marks {
				if (f+m)%every != 0 {
					continue
				}
				for _, command := range []string{fmt.Sprintf(form, mark), fmt.Sprintf(form, quoted(mark))} {
					answer := run1(t, c, command)
					asked++
					if !strings.HasPrefix(answer, "\x89PNG") && !strings.HasPrefix(answer, "%PDF") {
						clean(t, command, answer)
					}
					if strings.Contains(answer, "12-34-56") {
						t.Errorf("%q reads a file of this machine", command)
					}
				}
			}
		}
	}
	after := tree(t, here) + tree(t, b.dir)
	if before != after {
		t.Errorf("files changed:\n%s\n%s", before, after)
	}
	t.Logf("%d commands", asked)
}

// run1 runs a command on a connection and returns all its output.
func run1(t testing.TB, c *gossh.Client, command string) string {
	t.Helper()
	s, err := c.NewSession()
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	b := new(words) // both streams write at once
	s.Stdout, s.Stderr = b, b
	if err := s.Run(command); err != nil {
		if _, ended := err.(*gossh.ExitError); !ended {
			t.Fatalf("%.80q: %v", command, err)
		}
	}
	return b.String()
}

// tree lists every file under a folder with its length and time, without the book's own files, which change when it is
// read.
func tree(t testing.TB, dir string) (list string) {
	t.Helper()
	err := filepath.WalkDir(dir, func(path string, d os.DirEntry, err error) error {
		if err != nil || strings.HasPrefix(filepath.Base(path), "book.db") {
			return err
		}
		info, err := d.Info()
		if err == nil && !d.IsDir() {
			list += fmt.Sprintln(path, info.Size(), info.ModTime())
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return list
}
