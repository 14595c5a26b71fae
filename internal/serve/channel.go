package serve

import (
	"context"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"charm.land/ssh"
	gossh "golang.org/x/crypto/ssh"
)

// channel is one session's channel as the library's session handling sees it. The library lets a client send as many
// settings as it likes, says yes to agent forwarding, and ties a session's life to its connection; so what comes in is sifted
// here, and the session ends with its channel.
type channel struct {
	gossh.NewChannel
	server *server
	ctx    *channelContext
}

// openChannel serves a session channel.
func (s *server) openChannel(srv *ssh.Server, conn *gossh.ServerConn, asked gossh.NewChannel, ctx ssh.Context) {
	l, ok := ctx.Value(linkKey).(*link)
	if !ok || int(l.channels.Add(1)) > s.Channels {
		if ok {
			l.channels.Add(-1)
		}
		s.meters.refused("too many channels").Inc()
		_ = asked.Reject(gossh.ResourceShortage, "too many sessions in one connection")
		return
	}
	l.quiet.Stop()
	own, end := context.WithCancelCause(ctx)
	c := &channel{asked, s, &channelContext{Context: ctx, own: own, end: end, link: l, values: map[any]any{}}}
	ssh.DefaultSessionHandler(srv, conn, c, c.ctx)
	end(errGone)
	if l.channels.Add(-1) == 0 {
		l.quiet.Reset(s.Idle)
	}
}

// Accept opens the channel; its requests are sifted, and it is over when they are.
func (c *channel) Accept() (gossh.Channel, <-chan *gossh.Request, error) {
	ch, requests, err := c.NewChannel.Accept()
	if err != nil {
		return nil, nil, err
	}
	sifted := make(chan *gossh.Request)
	go func() {
		defer close(sifted)
		defer c.ctx.end(errGone)
		defer c.ctx.over.Store(true)
		left := sieve{settings: 12, columns: uint32(c.server.Columns), rows: uint32(c.server.Rows)}
		for r := range requests {
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
	}()
	c.ctx.wire = ch
	time.AfterFunc(c.server.Handshake, func() {
		if !c.ctx.started.Load() {
			_ = ch.Close()
		}
	})
	return ch, sifted, nil
}

// sieve lets through what a session needs.
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
	case "window-change":
		return v.size(r)
	case "env":
		var set struct{ Name, Value string }
		if gossh.Unmarshal(r.Payload, &set) != nil || !wanted(set.Name) || len(set.Value) > 64 || v.settings == 0 {
			return false
		}
		v.settings--
		return true
	}
	return false // subsystems, agents, X11, signals and breaks
}

// longestCommand is more than every flag of every command together.
const longestCommand = 16 << 10

// wanted are the settings of a terminal, and no others.
func wanted(name string) bool {
	switch name {
	case "COLORTERM", "NO_COLOR", "LANG", "TERM_PROGRAM":
		return true
	}
	return strings.HasPrefix(name, "LC_")
}

// terminal keeps a terminal's size within bounds (RFC 4254, 6.2).
func (v *sieve) terminal(r *gossh.Request) bool {
	var p struct {
		Term                         string
		Columns, Rows, Width, Height uint32
		Modes                        string
	}
	if gossh.Unmarshal(r.Payload, &p) != nil || len(p.Term) > 64 || len(p.Modes) > 1024 {
		return false
	}
	p.Columns, p.Rows, p.Modes = min(p.Columns, v.columns), min(p.Rows, v.rows), "\x00"
	r.Payload = gossh.Marshal(&p)
	return true
}

// size is the same for a change (RFC 4254, 6.7); of many at once the library gets few.
func (v *sieve) size(r *gossh.Request) bool {
	var p struct{ Columns, Rows, Width, Height uint32 }
	if gossh.Unmarshal(r.Payload, &p) != nil {
		return false
	}
	p.Columns, p.Rows = min(p.Columns, v.columns), min(p.Rows, v.rows)
	r.Payload = gossh.Marshal(&p)
	return true
}

// channelContext is the life of one channel; the library has one context for a whole connection.
type channelContext struct {
	ssh.Context
	own    context.Context
	end    context.CancelCauseFunc
	link   *link
	wire   gossh.Channel // below the library's session
	mu     sync.Mutex
	values map[any]any

	started atomic.Bool // something was asked for
	over    atomic.Bool // the channel is closed
}

func (c *channelContext) Deadline() (time.Time, bool) { return c.own.Deadline() }
func (c *channelContext) Done() <-chan struct{}       { return c.own.Done() }
func (c *channelContext) Err() error                  { return c.own.Err() }

// SetValue keeps a value for this channel alone.
func (c *channelContext) SetValue(key, value any) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.values[key] = value
}

// Value is the channel's own value, or else the connection's.
func (c *channelContext) Value(key any) any {
	c.mu.Lock()
	v, ok := c.values[key]
	c.mu.Unlock()
	if ok {
		return v
	}
	return c.own.Value(key)
}
