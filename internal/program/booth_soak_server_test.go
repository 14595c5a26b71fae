package program

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"io"
	"math/rand/v2"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"time"

	gossh "golang.org/x/crypto/ssh"

	"brazebooth/internal/deep"
)

// ended is the signal that asks a process to end in order.
const ended = syscall.SIGTERM

// booth is a server in its own process that is killed and restarted; its address then changes.
type booth struct {
	*soak
	home    string
	mu      sync.RWMutex // locked for writing while the server is down
	addr    string
	process *exec.Cmd
	heard   chan struct{} // closed when all its output was read
	killed  int
}

// program is this program with its own home folder, on the soak's book.
func (s *soak) program(ctx context.Context, home string, args ...string) *exec.Cmd {
	cmd := exec.CommandContext(ctx, "brazebooth", append(args, "--book", s.book)...)
	cmd.Env = append(os.Environ(), "HOME="+home, "XDG_DATA_HOME="+home, "XDG_CONFIG_HOME="+home, "LC_ALL=C.UTF-8",
		"TERM=xterm")
	return cmd
}

// start runs the server and returns when it listens.
func (b *booth) start() {
	dir := b.keys.dir
	b.process = b.program(context.Background(), b.home, "serve", "--listen", "127.0.0.1:0", "--keys",
		filepath.Join(dir, "keys"), "--writers", filepath.Join(dir, "writers"),
		"--host-key", filepath.Join(dir, "host_key"), "--per-address", "100", "--per-key", "100", "--log",
		b.home+".log")
	told, err := b.process.StderrPipe()
	if err == nil {
		err = b.process.Start()
	}
	if err != nil {
		b.fault("no server: %v", err)
		return
	}
	b.heard = make(chan struct{})
	at := make(chan string, 1)
	go func() {
		defer close(b.heard)
		defer close(at)
		for lines := bufio.NewScanner(told); lines.Scan(); {
			if m := servingAt.FindStringSubmatch(lines.Text()); m != nil {
				at <- m[1]
			} else if damage.MatchString(lines.Text()) || strings.Contains(lines.Text(), "panic") {
				b.fault("a server says: %s", lines.Text())
			}
		}
	}()
	late := time.AfterFunc(deep.Patience(b), func() { _ = b.process.Process.Kill() })
	defer late.Stop()
	if b.addr = <-at; b.addr == "" {
		b.fault("a server does not listen")
	}
}

// stop ends the server, at once or in order.
func (b *booth) stop(by os.Signal) {
	if b.process == nil || b.process.Process == nil {
		return
	}
	if b.process.Process.Signal(by) != nil { // not every system has this signal
		_ = b.process.Process.Kill()
	}
	late := time.AfterFunc(deep.Patience(b), func() { _ = b.process.Process.Kill() })
	defer late.Stop()
	<-b.heard
	_ = b.process.Wait()
	b.process = nil
}

// killServers kills one of the servers after a number of acts, again and again, and restarts it. One in four times the
// server is asked to end instead, so that it closes the book.
func (s *soak) killServers() {
	r := s.plan("servers", 0)
	every := 20 // for a few hundred acts; in a long run the servers live longer, so that more is in their open files
	if deep.Times() > 1 {
		every = 150
	}
	for acts := 30; s.await(acts); acts += every + r.IntN(3*every) {
		b, by := s.servers[r.IntN(len(s.servers))], os.Kill
		if r.IntN(4) == 0 {
			by = ended
		}
		b.mu.Lock()
		b.stop(by)
		b.killed++
		b.start()
		b.mu.Unlock()
	}
}

// caller is a client's connection to a server, for one command or several.
type caller struct {
	*soak
	to     *booth
	r      *rand.Rand
	client *gossh.Client
	left   int // commands for which this connection is still used
}

// asking is a way to run a command: its standard output, standard error and exit code.
type asking func(args []string) (out, told string, code int)

// notWhole replaces the exit code of an answer that may be incomplete.
const notWhole = -1

// ask runs one command without input.
func (l *caller) ask(args []string) (out, told string, code int) {
	return l.run(args, strings.NewReader(""))
}

// run runs one command over SSH.
func (l *caller) run(args []string, in io.Reader) (out, told string, code int) {
	if l.left--; l.client == nil || l.left < 0 {
		if err := l.dial(); err != nil {
			return "", "", notWhole
		}
	}
	s := sessionOrNone(l.client)
	if s == nil {
		l.hangUp()
		return "", "", notWhole
	}
	late := time.AfterFunc(deep.Patience(l), func() { l.fault("no answer to %v", args); l.hangUp() })
	defer late.Stop()
	var o, e bytes.Buffer
	s.Stdin, s.Stdout, s.Stderr = in, &o, &e
	err := s.Run("'" + strings.Join(args, "' '") + "'")
	var exit *gossh.ExitError
	switch {
	case errors.As(err, &exit) && !strings.Contains(e.String(), "the server is going down"):
		code = exit.ExitStatus()
	case err != nil:
		l.hangUp()
		code = notWhole
	}
	return o.String(), e.String(), code
}

func (l *caller) hangUp() {
	_ = l.client.Close()
	l.left = 0
}

func (l *caller) dial() error {
	if l.client != nil {
		l.hangUp()
	}
	l.to.mu.RLock()
	addr := l.to.addr
	l.to.mu.RUnlock()
	conn, err := net.DialTimeout("tcp", addr, deep.Patience(l))
	if err != nil {
		return err
	}
	_ = conn.SetDeadline(time.Now().Add(deep.Patience(l)))
	config := l.keys.config(l, "writer")
	config.Timeout = deep.Patience(l)
	c, chans, requests, err := gossh.NewClientConn(conn, addr, config)
	if err != nil {
		_ = conn.Close()
		return err
	}
	_ = conn.SetDeadline(time.Time{})
	l.client, l.left = gossh.NewClient(c, chans, requests), l.r.IntN(6)
	return nil
}
