package serve

import (
	"context"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"charm.land/ssh"
	gossh "golang.org/x/crypto/ssh"
)

// channel is one session's channel as the library's session handling sees it. The library lets a client set any number
// of environment variables, accepts agent forwarding, and ends a session only with its connection. So channel filters
// the requests and ends the session with its channel.
type channel struct {
	gossh.NewChannel
	server *server
	ctx    *channelContext
}

func (s *server) openChannel(srv *ssh.Server, conn *gossh.ServerConn, asked gossh.NewChannel, ctx ssh.Context) {
	l, ok := ctx.Value(linkKey).(*link)
	if !ok || !l.open() {
		s.meters.refused("too many channels").Inc()
		_ = asked.Reject(gossh.ResourceShortage, "too many sessions in one connection")
		return
	}
	defer l.shut()
	own, end := context.WithCancelCause(ctx)
	defer end(errGone)
	c := &channel{asked, s, &channelContext{Context: ctx, own: own, end: end, link: l,
		sizes: make(chan ssh.Window, 1), over: make(chan struct{})}}
	c.ctx.asked, c.ctx.leave = context.WithCancelCause(own)
	ssh.DefaultSessionHandler(srv, conn, c, c.ctx)
}

// Accept opens the channel. Its requests are filtered; when they end, the channel is over.
func (c *channel) Accept() (gossh.Channel, <-chan *gossh.Request, error) {
	ch, requests, err := c.NewChannel.Accept()
	if err != nil {
		return nil, nil, err
	}
	c.ctx.wire = ch
	c.ctx.out = &outlet{Channel: ch, limit: c.server.Stalled, stalled: c.ctx.stalled}
	late := time.AfterFunc(c.server.Handshake, func() {
		if !c.ctx.started.Load() {
			_ = ch.Close()
			c.ctx.mustEnd()
		}
	})
	sifted := make(chan *gossh.Request)
	go func() {
		defer close(sifted)
		defer late.Stop()
		defer c.ctx.end(errGone)
		defer c.ctx.closed()
		c.sift(requests, sifted)
	}()
	return c.ctx.out, sifted, nil
}

// sift passes on the requests that a session needs. A terminal's new size is kept here: the library blocks until
// somebody takes it, which nobody does before the session begins or in a refused session.
func (c *channel) sift(requests <-chan *gossh.Request, sifted chan<- *gossh.Request) {
	left := sieve{settings: 12, columns: uint32(c.server.Columns), rows: uint32(c.server.Rows)}
	for r := range requests {
		if r.Type == "signal" && ends(r.Payload) && c.ctx.started.Load() {
			c.ctx.leave(errStopped)
			continue
		}
		if r.Type == "window-change" {
			w, ok := left.size(r)
			if ok {
				c.ctx.resize(w)
			}
			_ = r.Reply(ok, nil)
			continue
		}
		if !left.pass(r) {
			_ = r.Reply(false, nil)
			continue
		}
		select {
		case sifted <- r:
		case <-c.ctx.Done():
			_ = r.Reply(false, nil)
		}
	}
}

// sieve passes the requests that a session needs.
type sieve struct {
	settings      int
	columns, rows uint32
}

func (v *sieve) pass(r *gossh.Request) bool {
	switch r.Type {
	case "shell":
		return true
	case "exec":
		return len(r.Payload) <= longestCommand
	case "pty-req":
		return v.terminal(r)
	case "env":
		var set struct{ Name, Value string }
		if gossh.Unmarshal(r.Payload, &set) != nil || !wanted(set.Name) || !word(set.Name) || !word(set.Value) ||
			v.settings == 0 {
			return false
		}
		v.settings--
		return true
	}
	return false // subsystems, agents, X11, other signals, breaks
}

// ends reports whether a signal (RFC 4254, 6.9 and 6.10) is one by which a user stops their own work.
func ends(payload []byte) bool {
	var s struct{ Name string }
	return gossh.Unmarshal(payload, &s) == nil &&
		slices.Contains([]string{"INT", "TERM", "HUP", "QUIT", "KILL"}, s.Name)
}

// longestCommand is longer than all flags of all commands together.
const longestCommand = 16 << 10

// wanted reports whether an environment variable describes a terminal; no others are accepted.
func wanted(name string) bool {
	return strings.HasPrefix(name, "LC_") ||
		slices.Contains([]string{"COLORTERM", "NO_COLOR", "LANG", "TERM_PROGRAM"}, name)
}

// terminal limits a new terminal's size and other values (RFC 4254, 6.2).
func (v *sieve) terminal(r *gossh.Request) bool {
	var p struct {
		Term                         string
		Columns, Rows, Width, Height uint32
		Modes                        string
	}
	if gossh.Unmarshal(r.Payload, &p) != nil || len(p.Term) > 64 || len(p.Modes) > 1024 {
		return false
	}
	// libraries look for a file of the terminal's name, so it must not contain a path
	if !word(p.Term) || strings.Contains(p.Term, "/") {
		p.Term = "xterm"
	}
	p.Columns, p.Rows, p.Modes = min(p.Columns, v.columns), min(p.Rows, v.rows), "\x00"
	r.Payload = gossh.Marshal(&p)
	return true
}

// size limits a changed size (RFC 4254, 6.7).
func (v *sieve) size(r *gossh.Request) (w ssh.Window, ok bool) {
	var p struct{ Columns, Rows, Width, Height uint32 }
	if gossh.Unmarshal(r.Payload, &p) != nil {
		return w, false
	}
	return ssh.Window{Width: int(min(p.Columns, v.columns)), Height: int(min(p.Rows, v.rows))}, true
}

// word reports whether a text is short and visible ASCII.
func word(s string) bool {
	return len(s) <= 64 && strings.IndexFunc(s, func(r rune) bool { return r <= ' ' || r > '~' }) < 0
}

// channelContext is the life of one channel; the library has one context for a whole connection.
type channelContext struct {
	ssh.Context
	own    context.Context // ends when the client is gone
	end    context.CancelCauseFunc
	asked  context.Context // ends earlier, when the guest is asked to leave; its cause says why
	leave  context.CancelCauseFunc
	link   *link
	wire   gossh.Channel   // below the library's session
	out    *outlet         // the channel that the library's session writes to
	sizes  chan ssh.Window // the terminal's latest size
	values sync.Map

	started atomic.Bool   // the client has requested something
	over    chan struct{} // closed when the channel is closed
	last    atomic.Pointer[time.Timer]
}

func (c *channelContext) Deadline() (time.Time, bool) { return c.own.Deadline() }
func (c *channelContext) Done() <-chan struct{}       { return c.own.Done() }
func (c *channelContext) Err() error                  { return c.own.Err() }

// SetValue keeps a value for this channel alone.
func (c *channelContext) SetValue(key, value any) { c.values.Store(key, value) }

// Value is the channel's own value, or else the connection's.
func (c *channelContext) Value(key any) any {
	if v, ok := c.values.Load(key); ok {
		return v
	}
	return c.own.Value(key)
}

func (c *channelContext) resize(w ssh.Window) {
	select {
	case <-c.sizes:
	default:
	}
	c.sizes <- w
}

// stalled ends a session whose client does not read its output.
func (c *channelContext) stalled() {
	if c.started.Load() {
		c.leave(errStalled)
		return
	}
	c.mustEnd()
}

// mustEnd closes the whole connection if its client does not answer the end of a channel, which would otherwise keep
// its seat.
func (c *channelContext) mustEnd() {
	t := time.AfterFunc(2*graceful, func() { _ = c.link.Close() })
	if !c.last.CompareAndSwap(nil, t) { // an earlier timer stays
		t.Stop()
	}
	select {
	case <-c.over:
		c.last.Load().Stop()
	default:
	}
}

func (c *channelContext) closed() {
	close(c.over)
	if t := c.last.Load(); t != nil {
		t.Stop()
	}
}
