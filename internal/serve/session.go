package serve

import (
	"context"
	"errors"
	"fmt"
	"io"
	"runtime/debug"
	"time"

	tea "charm.land/bubbletea/v2"
	"charm.land/ssh"
	"golang.org/x/time/rate"

	"brazebooth/internal/plain"
	"brazebooth/tui"
)

// session is one guest at one terminal, or one command.
type session struct {
	ssh.Session
	server *server
	life   *channelContext
	guest  Guest
	idle   *idling
	talk   bool // questions and answers line by line, until the guest ends them
}

// graceful is how long the screens may take to restore the terminal, and a client to answer a closed channel.
const graceful = 1500 * time.Millisecond

// handle serves a session from its first request to its exit code.
func (s *server) handle(sess ssh.Session) {
	life, ok := sess.Context().(*channelContext)
	if !ok {
		_ = sess.Exit(1)
		return
	}
	life.started.Store(true)
	defer life.mustEnd()
	x := &session{Session: sess, server: s, life: life}
	defer life.leave(nil)
	if why := s.welcome(x); why != nil {
		x.tell(why)
		_ = sess.Exit(1)
		time.AfterFunc(graceful, func() { _ = life.link.Close() }) // it was allowed when it connected, but is no longer
		return
	}
	who := x.guest.account()
	if full := s.seat(who, x.guest.listed); full != nil {
		s.meters.refused("sessions").Inc()
		x.tell(full)
		_ = sess.Exit(1)
		return
	}
	defer s.seats.free(who)
	s.serve(x)
}

// seat takes a place for a session, or says why there is none.
func (s *server) seat(who string, listed bool) error {
	switch {
	case !s.seats.take():
		return errFull
	case s.seats.give(who):
		return nil
	case listed:
		return errKeyFull
	}
	return errAddressFull
}

// welcome finds out who the guest is, by the present key files. A connection keeps the role of its first session: if
// the role has changed, the connection is closed, since an older session would continue with the old role.
func (s *server) welcome(x *session) error {
	g, ok := s.keys.guest(x.PublicKey())
	g.From = x.life.link.address
	if g.Name == "" {
		g.Name = plain.Line(x.User(), 40)
	}
	x.guest = g
	if !ok {
		return errNotIn
	}
	if !x.life.link.guest.CompareAndSwap(nil, &g) && !x.life.link.guest.Load().mayAs(&g) {
		return errChanged
	}
	return nil
}

// serve runs the screens or the command and logs the session, without its content.
func (s *server) serve(x *session) {
	if !s.enter(x) {
		x.tell(errDown)
		_ = x.Exit(1)
		return
	}
	defer s.left(x)
	x.idle = newIdling(s.Idle, func() { x.life.leave(errIdle) })
	defer x.idle.stop()
	longest := time.AfterFunc(s.Longest, func() { x.life.leave(errLongest) })
	defer longest.Stop()
	stop := context.AfterFunc(x.life.asked, x.hurry)
	defer stop()

	begin := time.Now()
	name, run := s.choose(x)
	few := rate.Sometimes{First: 3, Interval: time.Minute} // every row of a batch may fail
	x.guest.Fault = func(err error) {
		few.Do(func() {
			s.log.Error("this went wrong", "who", x.guest.Name, "from", x.guest.From, "command", name, "what",
				plain.Line(err.Error(), 1000))
		})
	}
	in, out, ended := x.life.link.in.Load(), x.life.link.out.Load(), ""
	code := s.guarded(x, run)
	if cause := context.Cause(x.life.asked); cause != nil && !errors.Is(cause, context.Canceled) {
		ended = cause.Error()
	}
	s.meters.ended(name, code, time.Since(begin))
	s.log.Info("session", "who", x.guest.Name, "key", x.guest.Key, "from", x.guest.From, "command", name, "code", code,
		"ms", time.Since(begin).Milliseconds(), "in", x.life.link.in.Load()-in, "out", x.life.link.out.Load()-out,
		"ended", ended)
	_ = x.Exit(code)
	_ = x.CloseWrite()
	if errors.Is(context.Cause(x.life.asked), errDown) {
		x.heardOut()
	}
}

// choose picks screens or a command, with its name for the log.
func (s *server) choose(x *session) (name string, run func(*session) int) {
	pty, _, terminal := x.Pty()
	places := terminal && pty.Term != "" && pty.Term != "dumb" // the terminal can place text
	args, _ := split(x.RawCommand())
	switch look, opens := s.deps.Screens(args); {
	case opens && places:
		return "screens", func(x *session) int { return s.screens(x, look) }
	case len(args) == 0 && terminal: // it cannot place text
		x.talk = true
		return "plain", func(x *session) int { return s.answer(x, []string{"--plain"}) }
	}
	name = s.deps.NameOf(args)
	x.talk = name == "plain"
	return name, s.command
}

// guarded stops a panic in one session from ending the server.
func (s *server) guarded(x *session, run func(*session) int) (code int) {
	defer func() {
		if r := recover(); r != nil {
			s.failed(x, r, debug.Stack())
			code = 1
		}
	}()
	return run(x)
}

func (s *server) failed(x *session, what any, stack []byte) {
	s.meters.panics.Inc()
	s.log.Error("a session failed", "who", x.guest.Name, "from", x.guest.From, "what", plain.Line(fmt.Sprint(what),
		200), "stack", string(stack))
	x.tell(errFailed)
}

// screens runs the screens until they end, in the units, the colours and the decimal mark of look.
func (s *server) screens(x *session, look tui.Options) int {
	pty, _, _ := x.Pty()
	env := append(x.Environ(), "TERM="+pty.Term)
	keeper, saved := s.deps.Keeper(x.guest, s.book)
	defer saved() // running saves finish, even when the client has left
	o := look
	o.Env, o.Profile, o.FPS, o.Book, o.Context = env, tui.ProfileOf(env), s.FPS, keeper, x.life.asked
	o.Width, o.Height = max(1, pty.Window.Width), max(1, pty.Window.Height)
	in := newTap(newInput(x.life, heard{x}, &s.Settings))
	o.Leaving = in.end
	stopEnd := context.AfterFunc(x.life, in.end)
	defer stopEnd()
	ctx, done := patiently(x.life)
	defer done()
	p := tui.NewProgram(ctx, o, in, s.slowly(x))
	go resize(x.life, x.life.sizes, p)
	stop := context.AfterFunc(x.life.asked, p.Quit)
	_, err := p.Run()
	stop()
	switch cause := context.Cause(x.life.asked); {
	case errors.Is(cause, errGone):
	case cause != nil:
		x.tell(cause)
	case errors.Is(err, tea.ErrProgramPanic):
		s.failed(x, "the screens", nil)
	case err == nil, errors.Is(err, errOver):
		return 0
	}
	return 1
}

// slowly is a writer to a terminal that is no faster than the line, unless --pace is off.
func (s *server) slowly(x *session) io.Writer {
	if !s.Pace {
		return x
	}
	return newPace(x.life, x, func() error {
		_, err := x.life.wire.SendRequest("keepalive@openssh.com", true, nil)
		return err
	}, s.Stalled, x.life.stalled)
}

// resize passes the terminal's sizes to the screens; of several in quick succession only the last.
func resize(ctx context.Context, sizes <-chan ssh.Window, p *tea.Program) {
	for {
		select {
		case w := <-sizes:
			if w.Width > 0 && w.Height > 0 {
				p.Send(tea.WindowSizeMsg{Width: w.Width, Height: w.Height})
			}
			time.Sleep(30 * time.Millisecond)
		case <-ctx.Done():
			return
		}
	}
}
