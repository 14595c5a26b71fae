package serve

import (
	"context"
	"crypto/ed25519"
	"crypto/rand"
	"io"
	"log/slog"
	"net"
	"regexp"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/vt"
	"github.com/spf13/pflag"
	"golang.org/x/crypto/ssh"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tui"
)

// shelf is a book whose functions a test sets.
type shelf struct {
	tui.Keeper
	find func()
	keep func()
}

func (s shelf) List(context.Context, string, string) ([]tui.Entry, error) { s.find(); return nil, nil }
func (s shelf) Keep(context.Context, string, *calc.Card) (string, error) {
	s.keep()
	return "kept", nil
}

// host runs a server that lets everybody in.
func host(t *testing.T, d Deps, more ...string) (addr string, srv *server, stop func()) {
	t.Helper()
	return hostLogging(t, d, slog.DiscardHandler, more...)
}

// hostLogging is host with a log handler.
func hostLogging(t *testing.T, d Deps, log slog.Handler, more ...string) (addr string, srv *server, stop func()) {
	t.Helper()
	srv = newHost(t, d, log, more...)
	l, err := srv.listen(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	return l.Addr().String(), srv, runOn(t, srv, l)
}

// newHost makes a server that lets everybody in.
func newHost(t *testing.T, d Deps, log slog.Handler, more ...string) *server {
	t.Helper()
	s := new(Settings)
	f := pflag.NewFlagSet("", pflag.ContinueOnError)
	s.flags(f)
	if err := f.Parse(append([]string{"--open", "--listen", "127.0.0.1:0"}, more...)); err != nil {
		t.Fatal(err)
	}
	_, private, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	key, err := ssh.NewSignerFromKey(private)
	if err != nil {
		t.Fatal(err)
	}
	if d.NameOf == nil {
		d.NameOf = func([]string) string { return "command" }
	}
	if d.Screens == nil {
		d.Screens = func(args []string) (tui.Options, bool) { return tui.Options{}, len(args) == 0 }
	}
	if d.Keeper == nil {
		d.Keeper = func(Guest, string) (tui.Keeper, func()) { return nil, func() {} }
	}
	srv, err := newServer(s, d, "book", key, slog.New(log))
	if err != nil {
		t.Fatal(err)
	}
	return srv
}

// runOn runs a server until it is stopped or the test ends.
func runOn(t *testing.T, srv *server, l net.Listener) (stop func()) {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	done := make(chan error, 1)
	go func() { done <- srv.run(ctx, l) }()
	var once sync.Once
	stop = func() {
		once.Do(func() {
			cancel()
			if err := <-done; err != nil {
				t.Error(err)
			}
		})
	}
	t.Cleanup(stop)
	return stop
}

// guest is the client side of a session, with an emulated terminal.
type guest struct {
	*ssh.Session
	t   *testing.T
	emu *vt.SafeEmulator
	in  io.Writer
}

func visit(t *testing.T, addr string) *guest {
	t.Helper()
	c, err := ssh.Dial("tcp", addr, &ssh.ClientConfig{User: "x", HostKeyCallback: ssh.InsecureIgnoreHostKey(),
		Timeout: deep.Patience(t)})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = c.Close() })
	s, err := c.NewSession()
	if err != nil {
		t.Fatal(err)
	}
	return &guest{Session: s, t: t}
}

func (g *guest) screens() *guest { return g.asks("") }

// screensOf opens the screens in a terminal of this size.
func (g *guest) screensOf(columns, rows int) *guest { return g.asksIn(columns, rows, "") }

// asks opens a terminal with a command line, as ssh -t does.
func (g *guest) asks(command string) *guest { return g.asksIn(80, 24, command) }

func (g *guest) asksIn(columns, rows int, command string) *guest {
	g.t.Helper()
	if err := g.RequestPty("xterm-256color", rows, columns, nil); err != nil {
		g.t.Fatal(err)
	}
	in, err := g.StdinPipe()
	if err != nil {
		g.t.Fatal(err)
	}
	g.in, g.emu = in, vt.NewSafeEmulator(columns, rows)
	g.Stdout, g.Stderr = g.emu, g.emu
	go func() {
		_, _ = io.Copy(in, g.emu)
		_, _ = io.Copy(io.Discard, g.emu) // an emulator waits until its answers are read
	}()
	// Close the pipe and not the emulator, whose Close is not safe while others read and write.
	g.t.Cleanup(func() { _ = g.emu.InputPipe().(io.Closer).Close() })
	begin := g.Shell
	if command != "" {
		begin = func() error { return g.Start(command) }
	}
	if err := begin(); err != nil {
		g.t.Fatal(err)
	}
	return g
}

func (g *guest) types(keys string) { _, _ = io.WriteString(g.in, keys) }

func (g *guest) awaits(text string) {
	g.t.Helper()
	if deep.Comes(g.t, func() bool { return strings.Contains(ansi.Strip(g.emu.Render()), text) }) {
		return
	}
	g.t.Fatalf("the screen never shows %q:\n%s", text, ansi.Strip(g.emu.Render()))
}

func (g *guest) code() int {
	g.t.Helper()
	done := make(chan error, 1)
	go func() { done <- g.Wait() }()
	var err error
	select {
	case err = <-done:
	case <-time.After(deep.Patience(g.t)):
		g.t.Fatal("the session does not end")
	}
	return g.codeOf(err)
}

func (g *guest) codeOf(err error) int {
	g.t.Helper()
	if exit, ok := err.(*ssh.ExitError); ok {
		return exit.ExitStatus()
	}
	if err != nil {
		g.t.Errorf("ended by %v", err)
	}
	return 0
}

// openPage matches the marked page in the list of pages.
var openPage = regexp.MustCompile(`\[(fit|filler|prepare|overlay|machine|passes|plug|pulse|strength|distortion|haz|` +
	`air|correct|measure|walk|practice|cost|book|records|sheet)\]`)

// opensBook goes from the first screen to the page "book".
func (g *guest) opensBook() {
	g.t.Helper()
	g.types("\t\t\t\t")
	g.awaits("←→ pick")
	g.types("p")
	g.awaits("[fit]")
	for at := "fit"; at != "book"; { // one page after the other
		g.types("\x1b[C")
		next := at
		deep.Comes(g.t, func() bool {
			if m := openPage.FindStringSubmatch(ansi.Strip(g.emu.Render())); m != nil {
				next = m[1]
			}
			return next != at
		})
		if next == at || next == "sheet" {
			g.t.Fatalf("no page book after %s", at)
		}
		at = next
	}
}

func TestAPanicEndsOneSession(t *testing.T) {
	addr, srv, _ := host(t, Deps{Keeper: func(Guest, string) (tui.Keeper, func()) {
		return shelf{find: func() { panic("the book fell down") }}, func() {}
	}, Command: func(_ context.Context, _ Guest, _ string, args []string, _ io.Reader, out, _ io.Writer) int {
		if args[0] == "boom" {
			panic("boom")
		}
		_, _ = io.WriteString(out, "fine")
		return 0
	}})
	bad, good := visit(t, addr).screens(), visit(t, addr).screens()
	bad.awaits("example")
	good.awaits("example")
	bad.types("\t\t\t\tp")
	deep.Comes(t, func() bool { // to the page of the book
		bad.types("\x1b[C")
		return srv.meters.panics.Get() > 0
	})
	if code := bad.code(); code != 1 {
		t.Errorf("exit %d", code)
	}
	bad.awaits("this session failed")
	command := visit(t, addr)
	var told strings.Builder
	command.Stderr = &told
	if err := command.Start("boom"); err != nil {
		t.Fatal(err)
	}
	if code := command.code(); code != 1 || !strings.Contains(told.String(), "this session failed") {
		t.Errorf("exit %d, %s", code, &told)
	}
	good.types("\r")
	good.awaits("~16 ga")
	if out, err := visit(t, addr).Output("fine"); err != nil || string(out) != "fine" {
		t.Errorf("%q %v", out, err)
	}
	if n := srv.meters.panics.Get(); n != 2 {
		t.Errorf("%d failures counted", n)
	}
}

// A save finishes even if the guest leaves or the server ends meanwhile.
func TestRunningSavesFinish(t *testing.T) {
	deep.Turn(t)
	for name, cut := range map[string]func(g *guest, stop func()){
		"the guest is gone": func(g *guest, _ func()) { _ = g.Close() },
		"the server ends":   func(_ *guest, stop func()) { stop() },
	} {
		t.Run(name, func(t *testing.T) {
			begun, saved := make(chan struct{}), new(atomic.Bool)
			begin := sync.OnceFunc(func() { close(begun) })
			addr, srv, stop := host(t, Deps{Keeper: func(Guest, string) (tui.Keeper, func()) {
				var wg sync.WaitGroup
				return shelf{find: func() {}, keep: func() {
					wg.Add(1)
					defer wg.Done()
					begin()
					time.Sleep(500 * time.Millisecond)
					saved.Store(true)
				}}, wg.Wait
			}})
			g := visit(t, addr).screens()
			g.awaits("example")
			g.opensBook()
			g.types("lid")
			g.awaits("keep the card as")
			saves := deep.Comes(t, func() bool { // refused until the list is loaded
				g.types("\r")
				select {
				case <-begun:
					return true
				case <-time.After(200 * time.Millisecond):
					return false
				}
			})
			if !saves {
				t.Fatalf("nothing is being saved:\n%s", ansi.Strip(g.emu.Render()))
			}
			cut(g, stop)
			deep.Comes(t, func() bool { return srv.seats.taken() == 0 })
			if !saved.Load() {
				t.Error("the session ended before what it was saving was saved")
			}
		})
	}
}
