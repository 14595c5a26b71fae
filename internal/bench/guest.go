package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"sync"
	"time"

	"golang.org/x/crypto/ssh"
)

// guest is one session with a terminal that shows nothing: it reads bytes and records when they come.
type guest struct {
	conn *ssh.Client
	ch   ssh.Channel
	keys int // pressed so far

	mu     sync.Mutex
	sent   time.Time // time of the last key
	first  time.Time // time of the first byte after it
	last   time.Time
	bytes  int
	marker []byte // awaited text
	tail   []byte
	seen   chan struct{}
	err    error
}

const (
	columns = 100
	rows    = 30
	quiet   = 3 * time.Millisecond // a frame is complete when no byte follows for so long
)

// terminal is the request for a terminal (RFC 4254, 6.2).
type terminal struct {
	Term                         string
	Columns, Rows, Width, Height uint32
	Modes                        string
}

// dial connects and logs in.
func (d *door) dial() (*ssh.Client, error) {
	return ssh.Dial("tcp", d.addr, &ssh.ClientConfig{User: "root", Auth: []ssh.AuthMethod{ssh.PublicKeys(d.key)},
		// the server was started by this program
		HostKeyCallback: ssh.InsecureIgnoreHostKey(), Timeout: 60 * time.Second})
}

// enter opens the screens.
func (d *door) enter() (*guest, error) {
	conn, err := d.dial()
	if err != nil {
		return nil, err
	}
	ch, requests, err := conn.OpenChannel("session", nil)
	if err != nil {
		return nil, errors.Join(err, conn.Close())
	}
	go answer(requests)
	g := &guest{conn: conn, ch: ch}
	if err := g.ask("pty-req", ssh.Marshal(&terminal{"xterm-256color", columns, rows, 0, 0, "\x00"})); err != nil {
		return nil, errors.Join(err, conn.Close())
	}
	if err := g.ask("shell", nil); err != nil {
		return nil, errors.Join(err, conn.Close())
	}
	drawn := g.await("help") // the last word of a frame
	go g.listen()
	return g, come(drawn, "no frame")
}

// answer refuses every request as unknown, like usual clients; the answers tell the server what has arrived.
func answer(requests <-chan *ssh.Request) {
	for r := range requests {
		if r.WantReply {
			_ = r.Reply(false, nil)
		}
	}
}

func (g *guest) ask(name string, payload []byte) error {
	ok, err := g.ch.SendRequest(name, true, payload)
	if err == nil && !ok {
		err = fmt.Errorf("%s is refused", name)
	}
	return err
}

func (g *guest) leave() { _ = g.conn.Close() }

func (g *guest) listen() {
	buf := make([]byte, 4<<10)
	for {
		n, err := g.ch.Read(buf)
		g.came(buf[:n], time.Now())
		if err != nil {
			g.mu.Lock()
			g.err = err
			g.mu.Unlock()
			return
		}
	}
}

func (g *guest) came(b []byte, at time.Time) {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.bytes += len(b)
	if g.first.IsZero() {
		g.first, g.last = at, at
	} else if at.Sub(g.last) <= quiet {
		g.last = at
	}
	if g.marker == nil {
		return
	}
	g.tail = append(g.tail, b...)
	if bytes.Contains(g.tail, g.marker) {
		g.marker, g.tail = nil, nil
		close(g.seen)
	}
	g.tail = g.tail[max(0, len(g.tail)-64):]
}

// await returns a channel that is closed when a text has come. It should be one word: a text with a cursor movement
// inside is not found.
func (g *guest) await(text string) <-chan struct{} {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.marker, g.tail, g.seen = []byte(text), nil, make(chan struct{})
	return g.seen
}

// wait presses keys and waits for a text.
func (g *guest) wait(keys, text string) (time.Duration, error) {
	drawn := g.await(text)
	begin := time.Now()
	if err := g.press(keys); err != nil {
		return 0, err
	}
	err := come(drawn, "no "+text)
	return time.Since(begin), err
}

// come waits at most two minutes.
func come(drawn <-chan struct{}, missing string) error {
	select {
	case <-drawn:
		return nil
	case <-time.After(2 * time.Minute):
		return errors.New(missing + " came within two minutes")
	}
}

// press sends a key and starts the measurement.
func (g *guest) press(key string) error {
	g.mu.Lock()
	g.sent, g.first, g.bytes = time.Now(), time.Time{}, 0
	err := g.err
	g.mu.Unlock()
	if err != nil && err != io.EOF {
		return err
	}
	if err != nil {
		return errors.New("the server closed the session")
	}
	_, err = io.WriteString(g.ch, key)
	return err
}

// reply is the reply to the last key.
type reply struct {
	first, full time.Duration
	bytes       int
	none        bool
}

func (g *guest) reply() reply {
	g.mu.Lock()
	defer g.mu.Unlock()
	if g.first.IsZero() {
		return reply{none: true, first: time.Since(g.sent), full: time.Since(g.sent)}
	}
	return reply{first: g.first.Sub(g.sent), full: g.last.Sub(g.sent), bytes: g.bytes}
}
