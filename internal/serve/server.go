package serve

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net"
	"path/filepath"
	"runtime/debug"
	"sync"
	"time"

	"charm.land/ssh"
	"charm.land/wish/v2"
	"github.com/pires/go-proxyproto"
	"github.com/spf13/pflag"
	gossh "golang.org/x/crypto/ssh"
	"golang.org/x/time/rate"

	"brazebooth/calc/effort"
	"brazebooth/internal/mistake"
	"brazebooth/tui"
)

// Deps is what a server needs from the program that it serves.
type Deps struct {
	// Command runs a command for a guest and returns its exit code.
	Command func(ctx context.Context, g Guest, book string, args []string, in io.Reader, out, errOut io.Writer) int
	// Keeper is a guest's access to the book, nil if there is none, and a function that waits for running saves.
	Keeper func(g Guest, book string) (k tui.Keeper, saved func())
	// Screens are the options in a command line that opens the screens; false for any other command line.
	Screens func(args []string) (look tui.Options, ok bool)
	// NameOf is a command's name for the log, without its arguments.
	NameOf func(args []string) string
	// Place says why a book cannot be at a place; nil if it can.
	Place func(book string) error
	// PartOf reports whether a file is the book, or one of the files that belong to it.
	PartOf func(book, file string) bool
	// Healthy says what is wrong with the book; nil if nothing is.
	Healthy func(ctx context.Context, book string) error

	Getenv func(string) string
	Err    io.Writer // for warnings and, without a file, the log
	Data   string    // folder for the host key, "" for none
	Config string    // configuration file that is read if no other is named
}

// Bind adds the settings to a command's flags; the inner function then runs the server with them until ctx ends.
func Bind(d Deps) func(f *pflag.FlagSet) func(ctx context.Context, book string) error {
	return func(f *pflag.FlagSet) func(context.Context, string) error {
		s := new(Settings)
		s.flags(f)
		return func(ctx context.Context, book string) error {
			if err := cmp.Or(fill(f, d.Config, d.Getenv), bounds(f)); err != nil {
				return err
			}
			// --book is a flag of every command, but also a setting of this one
			if b := f.Lookup("book"); b != nil && b.Changed {
				book = b.Value.String()
			}
			return run(ctx, s, d, book)
		}
	}
}

// mostLines is how many lines about refused clients are logged before the log is limited to one a second.
const mostLines = 100

// garbage is the garbage collector's target percentage (GOGC). Two thirds of a session's memory are the cells of its
// terminal, which stay. Compared to 50, this value reduces 200 sessions from 1.96 to 1.5 MB each and costs a tenth more
// processor time. GOGC in the environment overrides it.
const garbage = 15

func run(ctx context.Context, s *Settings, d Deps, book string) error {
	if err := cmp.Or(s.check(), s.apart(d, book)); err != nil {
		return err
	}
	effort.Spare()
	if d.Getenv("GOGC") == "" {
		debug.SetGCPercent(garbage)
	}
	log, closeLog, err := openLog(s.Log, d.Err)
	if err != nil {
		return err
	}
	defer closeLog()
	if s.HostKey == "" {
		if d.Data == "" {
			return mistake.New("no folder for the host key was found", "name a file: --host-key FILE")
		}
		s.HostKey = filepath.Join(d.Data, HostKeyFile)
	}
	key, err := hostKey(s.HostKey)
	if err != nil {
		return err
	}
	srv, err := newServer(s, d, book, key, log)
	if err != nil {
		return err
	}
	l, err := srv.listen(ctx)
	if err != nil {
		return mistake.New(err.Error(), "another address: --listen :2223")
	}
	if s.Open {
		_, _ = fmt.Fprintln(d.Err,
			"brazebooth: open to everybody who can reach this port: they can read the whole book")
	}
	_, _ = fmt.Fprintf(d.Err, "brazebooth: serving at %s, host key %s\n", l.Addr(),
		gossh.FingerprintSHA256(key.PublicKey()))
	return srv.run(ctx, l)
}

// server is one server. Its sessions share only these fields: counts, and lists of sessions and connections.
type server struct {
	Settings
	deps    Deps
	book    string
	log     *slog.Logger
	keys    *keyring
	ssh     *ssh.Server
	meters  *meters
	gate    places   // of connections
	seats   places   // of sessions
	links   sync.Map // *link
	turning chan struct{}
	knocks  rate.Sometimes // limits log lines about refused connections; the metrics count all of them
	guesses rate.Sometimes // and about refused keys

	mu   sync.Mutex
	in   map[*session]struct{}
	down bool
	busy sync.WaitGroup
}

func newServer(s *Settings, d Deps, book string, key gossh.Signer, log *slog.Logger) (*server, error) {
	srv := &server{Settings: *s, deps: d, book: book, log: log, keys: newKeyring(s, log), in: map[*session]struct{}{},
		turning: make(chan struct{}, mostTurned)}
	srv.knocks = rate.Sometimes{First: mostLines, Interval: time.Second} // constant knocking must not fill the disk
	srv.guesses = rate.Sometimes{First: mostLines, Interval: time.Second}
	srv.gate = places{most: s.Connections, mostEach: s.PerAddress, of: map[string]int{}}
	srv.seats = places{most: s.Sessions, mostEach: s.PerKey, of: map[string]int{}}
	srv.meters = newMeters(srv)
	options := []ssh.Option{
		wish.WithVersion("brazebooth"),
		func(o *ssh.Server) error {
			o.Handler, o.ConnCallback = srv.handle, srv.connect
			o.AddHostKey(key)
			o.HandshakeTimeout = s.Handshake
			o.ServerConfigCallback = srv.admit()
			o.ChannelHandlers = map[string]ssh.ChannelHandler{"session": srv.openChannel}
			o.RequestHandlers = map[string]ssh.RequestHandler{} // no forwarding
			o.SubsystemHandlers = map[string]ssh.SubsystemHandler{}
			return nil
		},
	}
	if !s.Open || s.Writers != "" {
		options = append(options, wish.WithPublicKeyAuth(func(_ ssh.Context, key ssh.PublicKey) bool {
			_, ok := srv.keys.guest(key)
			return ok && strong(key) == nil
		}))
	}
	var err error
	srv.ssh, err = wish.NewServer(options...)
	return srv, err
}

// listen opens the port, with keep-alives that notice a vanished client within a minute.
func (s *server) listen(ctx context.Context) (net.Listener, error) {
	c := net.ListenConfig{KeepAliveConfig: net.KeepAliveConfig{Enable: true, Idle: 30 * time.Second,
		Interval: 10 * time.Second, Count: 3}}
	l, err := c.Listen(ctx, "tcp", s.Listen)
	if err != nil || s.Proxy == "" {
		return l, err
	}
	trust, err := s.trust()
	if err != nil {
		return nil, errors.Join(err, l.Close())
	}
	return &proxyproto.Listener{Listener: l, ConnPolicy: trust, ValidateHeader: clientNamed,
		ReadHeaderTimeout: s.Handshake}, nil
}

// run serves until ctx ends, then ends all sessions.
func (s *server) run(ctx context.Context, l net.Listener) error {
	stopMeters, err := s.showMeters(ctx)
	if err != nil {
		return errors.Join(err, l.Close())
	}
	defer stopMeters()
	s.log.Info("serving", "at", l.Addr().String(), "book", s.book != "", "open", s.Open)
	watching, stop := context.WithCancel(ctx)
	defer stop()
	go s.watch(watching)
	failed := make(chan error, 1)
	go func() { failed <- s.ssh.Serve(l) }()
	select {
	case err = <-failed:
	case <-ctx.Done():
		err = nil
	}
	_ = l.Close() // new clients are no longer accepted
	s.seeOut()
	s.log.Info("down")
	return err
}

// watch checks every second whether the files of keys have changed.
func (s *server) watch(ctx context.Context) {
	for tick := time.Tick(time.Second); ; {
		select {
		case <-tick:
			s.revoke()
		case <-ctx.Done():
			return
		}
	}
}

// enter registers a session; false if the server is going down.
func (s *server) enter(x *session) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.down {
		return false
	}
	s.in[x] = struct{}{}
	s.busy.Add(1)
	return true
}

func (s *server) left(x *session) {
	s.mu.Lock()
	defer s.mu.Unlock()
	delete(s.in, x)
	s.busy.Done()
}
