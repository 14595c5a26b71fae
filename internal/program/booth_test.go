package program

import (
	"bytes"
	"context"
	"crypto/ed25519"
	"crypto/rand"
	"encoding/pem"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"

	gossh "golang.org/x/crypto/ssh"

	"brazebooth/internal/cli"
	"brazebooth/internal/deep"
	"brazebooth/internal/serve"
	"brazebooth/tui"
)

// testBooth is a server in this process, with keys of a reader, a writer and a stranger.
type testBooth struct {
	dir, addr, book string
	stop            func() int // ends the server like SIGTERM and returns its exit code
	told            *words
	shown           string // the first host key that was shown
}

// words collects the output of a server, and can be read at any time.
type words struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (w *words) Write(p []byte) (int, error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.b.Write(p)
}

func (w *words) String() string {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.b.String()
}

var servingAt = regexp.MustCompile(`serving at (\S+),`)

// startBooth runs a server with the necessary arguments and these more.
func startBooth(t testing.TB, more ...string) *testBooth {
	t.Helper()
	b := &testBooth{dir: t.TempDir(), told: new(words)}
	b.book = filepath.Join(b.dir, "book.db")
	b.people(t)
	args := append([]string{"serve", "--listen", "127.0.0.1:0", "--keys", filepath.Join(b.dir, "keys"), "--writers",
		filepath.Join(b.dir, "writers"),
		"--host-key", filepath.Join(b.dir, "host_key"), "--book", b.book}, more...)
	b.run(t, args)
	return b
}

// people makes the keys of a reader, a writer and a stranger, and the files of keys for the first two.
func (b *testBooth) people(t testing.TB) {
	t.Helper()
	for _, who := range []string{"reader", "writer", "stranger"} {
		makeKey(t, filepath.Join(b.dir, who))
	}
	for file, who := range map[string]string{"keys": "reader", "writers": "writer"} {
		text, err := os.ReadFile(filepath.Join(b.dir, who+".pub"))
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(b.dir, file), text, 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

// run starts the server and waits until it listens.
func (b *testBooth) run(t testing.TB, args []string) {
	t.Helper()
	d := serving()
	d.Err, d.Getenv, d.Config = b.told, func(string) string { return "" }, ""
	ctx, cancel := context.WithCancel(context.Background())
	code := make(chan int, 1)
	go func() {
		code <- cli.Run(ctx, args, cli.Deps{In: strings.NewReader(""), Out: b.told, Err: b.told, Serve: serve.Bind(d),
			Example: tui.ExampleJob(), Title: tui.ExampleTitle})
	}()
	var once sync.Once
	var ended int
	b.stop = func() int {
		once.Do(func() { cancel(); ended = <-code })
		return ended
	}
	t.Cleanup(func() { b.stop() })
	listens := deep.Comes(t, func() bool {
		m := servingAt.FindStringSubmatch(b.told.String())
		if m != nil {
			b.addr = m[1]
		}
		return m != nil
	})
	if !listens {
		t.Fatalf("the server does not listen: %s", b.told)
	}
}

// makeKey writes a key pair as ssh-keygen does; the comment is the file's name.
func makeKey(t testing.TB, file string) {
	t.Helper()
	public, private, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	block, err := gossh.MarshalPrivateKey(private, "")
	if err != nil {
		t.Fatal(err)
	}
	key, err := gossh.NewPublicKey(public)
	if err != nil {
		t.Fatal(err)
	}
	line := strings.TrimSpace(string(gossh.MarshalAuthorizedKey(key))) + " " + filepath.Base(file) + "\n"
	for name, text := range map[string][]byte{file: pem.EncodeToMemory(block), file + ".pub": []byte(line)} {
		if err := os.WriteFile(name, text, 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

// client connects as reader, writer or stranger.
func (b *testBooth) client(t testing.TB, who string) *gossh.Client {
	t.Helper()
	c, err := b.dial(t, who)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = c.Close() })
	return c
}

func (b *testBooth) dial(t testing.TB, who string) (*gossh.Client, error) {
	t.Helper()
	return gossh.Dial("tcp", b.addr, b.config(t, who))
}

// config is the login of reader, writer or stranger.
func (b *testBooth) config(t testing.TB, who string) *gossh.ClientConfig {
	text, err := os.ReadFile(filepath.Join(b.dir, who))
	if err != nil {
		t.Error(err)
	}
	key, err := gossh.ParsePrivateKey(text)
	if err != nil {
		t.Error(err)
	}
	// the test's own server
	return &gossh.ClientConfig{User: who, Auth: []gossh.AuthMethod{gossh.PublicKeys(key)},
		HostKeyCallback: gossh.InsecureIgnoreHostKey(), Timeout: deep.Patience(t)}
}

// ask runs one command with the library's client, over a new connection.
func (b *testBooth) ask(t testing.TB, who, command, in string) (out, told string, code int) {
	t.Helper()
	c, err := b.dial(t, who)
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close()
	return askOver(t, c, command, in)
}

// askOver runs one command over an existing connection, since making one takes longer than most commands.
func askOver(t testing.TB, c *gossh.Client, command, in string) (out, told string, code int) {
	t.Helper()
	s, err := c.NewSession()
	if err != nil {
		t.Fatal(err)
	}
	var o, e bytes.Buffer
	s.Stdin, s.Stdout, s.Stderr = strings.NewReader(in), &o, &e
	err = s.Run(command)
	if exit, ok := err.(*gossh.ExitError); ok {
		code = exit.ExitStatus()
	} else if err != nil {
		t.Fatal(err)
	}
	return o.String(), e.String(), code
}

// openSSH is a call of the OpenSSH client; the test is skipped if there is none.
func (b *testBooth) openSSH(t testing.TB, who string, more ...string) *exec.Cmd {
	t.Helper()
	program, err := exec.LookPath("ssh")
	if err != nil {
		t.Skip("no OpenSSH client here: install openssh-client")
	}
	host, port, err := net.SplitHostPort(b.addr)
	if err != nil {
		t.Fatal(err)
	}
	args := []string{"-F", "none", "-o", "StrictHostKeyChecking=no", "-o", "UserKnownHostsFile=" +
		filepath.Join(b.dir, "known_hosts"),
		"-o", "IdentitiesOnly=yes", "-o", "BatchMode=yes", "-o", "LogLevel=ERROR", "-i", filepath.Join(b.dir, who),
		"-p", port}
	for i, a := range more {
		// the host comes before the command
		if !strings.HasPrefix(a, "-") && (i == 0 || more[i-1] != "-o" && more[i-1] != "-L" && more[i-1] != "-R" &&
			more[i-1] != "-S") {
			return exec.Command(program, append(append(append(args, more[:i]...), host), more[i:]...)...)
		}
	}
	return exec.Command(program, append(append(args, more...), host)...)
}
