package program

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"brazebooth/internal/deep"
)

func TestServeAnswersCommandsAsTheProgramDoes(t *testing.T) {
	t.Parallel()
	b := startBooth(t)
	for _, x := range []struct {
		command string
		code    int
		out     string
		told    string
	}{
		{"card --metal galvanized --gauge 20ga --joint lap", 0, "wire feed", ""},
		{`card --metal "galvanized" --gauge '20ga' --json`, 0, `"wire_feed"`, ""},
		{"", 0, "Settings card", ""},
		{"gauge 16", 0, "1.5189", ""},
		{"card --gauge 99ga", 2, "", "--gauge"},
		{"no-such-command", 2, "", "unknown command"},
		{"scp /tmp/x", 2, "", "unknown command"},
		{"card --metal \"galv", 2, "", "quotation mark"},
		{"serve", 2, "", "unknown command"},
	} {
		out, told, code := b.ask(t, "reader", x.command, "")
		if code != x.code || !strings.Contains(out, x.out) || !strings.Contains(told, x.told) {
			t.Errorf("%s: exit %d, out %.200q, told %.200q", x.command, code, out, told)
		}
		if code == 0 && told != "" || code != 0 && out != "" {
			t.Errorf("%s: out %.100q and told %.100q", x.command, out, told)
		}
	}
}

func TestServeKeepsReadersFromTheBook(t *testing.T) {
	t.Parallel()
	b := startBooth(t)
	if _, told, code := b.ask(t, "reader", "book save --name lid --gauge 20ga", ""); code != 2 ||
		!strings.Contains(told, "may look, not keep") {
		t.Errorf("a reader saved: %d, %s", code, told)
	}
	if out, told, code := b.ask(t, "writer", "book save --name lid --gauge 20ga", ""); code != 0 ||
		strings.Contains(out, b.dir) {
		t.Fatalf("a writer could not save, or learned a path: %d, %s %s", code, out, told)
	}
	if out, _, code := b.ask(t, "reader", "book find lid", ""); code != 0 || !strings.Contains(out, "lid") {
		t.Errorf("a reader does not find it: %d, %s", code, out)
	}
	out, _, code := b.ask(t, "reader", "book export -", "")
	if code != 0 || !strings.Contains(out, `"who":"writer"`) || !strings.Contains(out, `"where":"127.0.0.1"`) {
		t.Errorf("the export does not stream, or does not say who saved: %d, %.300s", code, out)
	}
	if _, told, code := b.ask(t, "writer", "book import -", out); code != 0 {
		t.Errorf("the import does not stream: %s", told)
	}
	for _, change := range []string{"delete lid", "edit lid --note x", "restore lid", "trial lid --verdict good",
		"reading --power-source x --feed 5 --stickout 12mm --amps 90 --volts 15",
		"source --name x", "spool --name x --filler cusi3", "person x", "import -"} {
		if out, told, code := b.ask(t, "reader", "book "+change, ""); code == 0 {
			t.Errorf("a reader changed the book by %s: %s %s", change, out, told)
		}
	}
	after, _, _ := b.ask(t, "reader", "book export -", "")
	if after != out {
		t.Error("the book changed")
	}
}

// A guest cannot read or write a file of this machine, or name another book.
func TestServeTouchesNoFileForAGuest(t *testing.T) {
	deep.Turn(t)
	t.Parallel()
	b := startBooth(t)
	writer := b.client(t, "writer")
	askOver(t, writer, "book save --name lid --gauge 20ga --feed 4.1 --travel 8", "")
	there := t.TempDir()
	file := filepath.Join(there, "made")
	secret := filepath.Join(there, "secret")
	if err := os.WriteFile(secret, []byte("{}\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, command := range []string{"book export " + file, "book backup " + file, "book backup -", "book merge -",
		"book import " + secret, "book merge " + secret, "book print lid --pdf " + file,
		"card --gauge 20ga --feed 4.1 --travel 8 --pdf " + file, "window --gauge 20ga --png " + file,
		"window --gauge 20ga --svg " + file,
		"gap --metal mild-steel --gauge 16ga --joint butt --gap 2mm --csv " + file, "book list --book " + file,
		"book save --name x --book " + file,
		"book list --book postgres://nobody@127.0.0.1:1/x",
		"card --gauge 20ga; touch " + file, "$(touch " + file + ")", "`touch " + file + "`",
		"card | tee " + file, "batch " + secret + " --format csv",
		"batch - --format csv --out " + file, "batch - --format csv --out " + file + " --resume",
		"config set units inch", "config path", "doctor", "completion bash", "card > " + file} {
		out, told, code := askOver(t, writer, command, "")
		if code != 2 && code != 1 {
			t.Errorf("%s: exit %d, %.100s %.100s", command, code, out, told)
		}
	}
	list, err := os.ReadDir(there)
	if err != nil || len(list) != 1 {
		t.Errorf("files were made: %v %v", list, err)
	}
	out, _, code := b.ask(t, "reader", "window --gauge 20ga --png -", "")
	if code != 0 || !strings.HasPrefix(out, "\x89PNG") {
		t.Errorf("a picture does not stream: %d, %.20q", code, out)
	}
	out, _, code = b.ask(t, "reader", "batch - --format csv", "metal,gauge,feed,travel\nhsla,18ga,5,8\n")
	if code != 0 || !strings.Contains(out, "\nhsla,18ga,5,8,,marginal") {
		t.Errorf("a batch does not stream: %d, %.200q", code, out)
	}
}

func TestServeIsClosedByDefault(t *testing.T) {
	t.Parallel()
	b := startBooth(t)
	if _, err := b.dial(t, "stranger"); err == nil {
		t.Fatal("a stranger is in")
	}
	if err := os.WriteFile(filepath.Join(b.dir, "keys"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := b.dial(t, "reader"); err == nil {
		t.Error("a key that was taken out lets in")
	}
	if err := os.Remove(filepath.Join(b.dir, "writers")); err != nil {
		t.Fatal(err)
	}
	if _, err := b.dial(t, "writer"); err == nil {
		t.Error("a file of keys that is gone lets in")
	}
}

func TestServeEndsWhoseKeyIsTakenBack(t *testing.T) {
	t.Parallel()
	b := startBooth(t)
	c := b.client(t, "reader")
	s, _ := ptyIn(t, c, "xterm-256color", 80, 24)
	if err := s.Shell(); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(b.dir, "keys"), []byte("# nobody\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	gone := make(chan error, 1)
	go func() { gone <- c.Wait() }()
	select {
	case <-gone:
	case <-time.After(deep.Patience(t)):
		t.Error("the session goes on without its key")
	}
}

func TestServeOpenLooksOnly(t *testing.T) {
	t.Parallel()
	b := startBooth(t, "--open")
	if !strings.Contains(b.told.String(), "open to everybody") {
		t.Error("nobody was warned")
	}
	if out, told, code := b.ask(t, "stranger", "card --gauge 20ga", ""); code != 0 ||
		!strings.Contains(out, "wire feed") {
		t.Errorf("a stranger is not answered: %d %s", code, told)
	}
	if _, _, code := b.ask(t, "stranger", "book save --name x --gauge 20ga", ""); code != 2 {
		t.Errorf("a stranger saves: %d", code)
	}
	if _, told, code := b.ask(t, "writer", "book save --name x --gauge 20ga", ""); code != 0 {
		t.Errorf("a writer cannot save in an open shop: %s", told)
	}
}
