package serve

import (
	"cmp"
	"fmt"
	"net"
	"os"
	"strings"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/spf13/pflag"

	"brazebooth/internal/mistake"
	"brazebooth/internal/plain"
)

// Settings are a server's settings. Each is a flag of the serve command, a name in the [serve] table of the
// configuration file and an environment variable; a flag overrides the environment, and the environment the file. The
// flags' texts say what each means.
type Settings struct {
	Listen, Keys, Writers, HostKey, Config, Log, Metrics, Proxy string // "" for none

	Open, Pace bool

	FPS, PerAddress, Connections, Sessions, PerKey, Channels, InputRate, Paste, Columns, Rows int

	Handover, Handshake, Idle, Stalled, Longest time.Duration
}

// flags adds a flag for each setting; the defaults are safe.
func (s *Settings) flags(f *pflag.FlagSet) {
	f.StringVar(&s.Listen, "listen", ":2222", "address and port")
	f.StringVar(&s.Keys, "keys", "",
		"file of public keys that may look, one on each line as in authorized_keys; read again when it changes")
	f.StringVar(&s.Writers, "writers", "", "file of public keys that may also keep in the book")
	f.BoolVar(&s.Open, "open", false, "let everybody look, without a key")
	f.StringVar(&s.HostKey, "host-key", "",
		"file of the server's own key; without it one is made once in the data folder")
	f.StringVar(&s.Config, "config", "", "configuration file")
	f.StringVar(&s.Log, "log", "", "file to add log lines to; without it standard error")
	f.StringVar(&s.Metrics, "metrics", "", "loopback address for metrics and health, such as 127.0.0.1:9222")
	f.StringVar(&s.Proxy, "proxy", "",
		"addresses of balancers that are believed when they name a client by the PROXY protocol, with commas")
	f.IntVar(&s.FPS, "fps", 60, "frames a second at most, 1 to 120")
	f.BoolVar(&s.Pace, "pace", true, "on a slow line leave frames out instead of letting them pile up")
	f.DurationVar(&s.Handover, "handover", 4*time.Second, "how long the server waits at its end for running saves")
	f.DurationVar(&s.Handshake, "handshake", 10*time.Second, "time that a client has to log in")
	f.IntVar(&s.PerAddress, "per-address", 20, "connections from one address at once")
	f.IntVar(&s.Connections, "connections", 600, "connections at once")
	f.IntVar(&s.Sessions, "sessions", 500, "sessions at once")
	f.IntVar(&s.PerKey, "per-key", 10,
		"sessions of one key at once; all guests from one address without a listed key count as one key")
	f.IntVar(&s.Channels, "channels", 4, "sessions in one connection at once")
	f.DurationVar(&s.Idle, "idle", 30*time.Minute, "a session ends after so long without a key")
	f.DurationVar(&s.Stalled, "stalled", 30*time.Second,
		"a session ends whose client reads almost nothing of its output for so long")
	f.DurationVar(&s.Longest, "longest", 12*time.Hour, "a session ends after so long in any case")
	f.IntVar(&s.InputRate, "input-rate", 4000, "bytes a second taken from a terminal; more waits")
	f.IntVar(&s.Paste, "paste", 2000, "bytes of one paste; the rest is dropped")
	f.IntVar(&s.Columns, "columns", 500, "widest terminal that is drawn for")
	f.IntVar(&s.Rows, "rows", 200, "tallest terminal that is drawn for")
}

// fill sets each setting that no flag has set, from the environment or else from the file: the named one, or the usual
// one if it exists.
func fill(f *pflag.FlagSet, usual string, getenv func(string) string) error {
	named := f.Lookup("config")
	if v := getenv(envName("config")); v != "" && !named.Changed {
		_ = f.Set("config", v)
	}
	file := named.Value.String()
	table, err := serveTable(cmp.Or(file, usual), file != "")
	if err != nil {
		return err
	}
	file = cmp.Or(file, usual)
	for name, value := range table {
		if !isSetting(f, name) {
			return mistake.New(fmt.Sprintf("%s: [serve] has no setting %q", file, plain.Line(name, 40)),
				"brazebooth serve --help lists them")
		}
		switch value.(type) {
		case string, bool, int64:
		default:
			return mistake.New(fmt.Sprintf("%s: %s is neither a text nor a number", file, name),
				"write it as on the command line, in quotes")
		}
	}
	f.VisitAll(func(flag *pflag.Flag) {
		from, value := "", ""
		if v := getenv(envName(flag.Name)); v != "" {
			from, value = envName(flag.Name), v
		} else if v, ok := table[flag.Name]; ok {
			from, value = file+": "+flag.Name, fmt.Sprint(v)
		}
		if flag.Changed || from == "" || err != nil || !isSetting(f, flag.Name) {
			return
		}
		if bad := f.Set(flag.Name, value); bad != nil {
			err = mistake.New(fmt.Sprintf("%s: %q is not valid", from, plain.Line(value, 60)), "it is "+flag.Usage+
				", as "+flag.DefValue)
		}
	})
	return err
}

// isSetting reports whether the file or the environment may set a flag: all but --config and --help.
func isSetting(f *pflag.FlagSet, name string) bool {
	return f.Lookup(name) != nil && name != "help" && name != "config"
}

func envName(flag string) string {
	return "BRAZEBOOTH_SERVE_" + strings.ToUpper(strings.ReplaceAll(flag, "-", "_"))
}

// serveTable is the [serve] table of a configuration file, which must exist only if the user named it.
func serveTable(file string, named bool) (map[string]any, error) {
	if file == "" {
		return nil, nil
	}
	if info, err := os.Stat(file); err == nil && !info.Mode().IsRegular() {
		return nil, mistake.New(file+" is not a regular file", "name a file: --config FILE")
	}
	text, err := os.ReadFile(file)
	if os.IsNotExist(err) && !named {
		return nil, nil
	}
	if err != nil {
		return nil, mistake.New(err.Error(), "name a file that exists: --config FILE")
	}
	var whole struct {
		Serve map[string]any `toml:"serve"`
	}
	if err := toml.Unmarshal(text, &whole); err != nil {
		return nil, mistake.New(file+": "+err.Error(),
			`write it as TOML: a line [serve], then lines like keys = "keys.txt"`)
	}
	return whole.Serve, nil
}

// check refuses wrong settings before anything is opened.
func (s *Settings) check() error {
	if s.Keys == "" && !s.Open {
		return mistake.New("nobody could connect: neither --keys nor --open is given",
			"name a file of public keys: --keys keys.txt; or let everybody look: --open")
	}
	if s.Proxy != "" {
		if _, err := s.trust(); err != nil {
			return mistake.New(fmt.Sprintf("--proxy: %q are not addresses", s.Proxy),
				"type a balancer's address, as 192.0.2.7, or a network, as 192.0.2.0/28, with commas between")
		}
	}
	return cmp.Or(s.readable(), s.loopback())
}

// apart refuses an impossible place for a book, and the book itself where another file is wanted: a log would be
// written into the book, and reading it as a file of keys would release the locks on it.
func (s *Settings) apart(d Deps, book string) error {
	if book != "" {
		if err := d.Place(book); err != nil {
			return err
		}
	}
	for _, f := range [...]struct{ flag, file string }{{"keys", s.Keys}, {"writers", s.Writers},
		{"host-key", s.HostKey}, {"log", s.Log}} {
		if f.file != "" && d.PartOf(book, f.file) {
			return mistake.New("--"+f.flag+": this file is the book, or a part of it",
				"name another file: --"+f.flag+" FILE")
		}
	}
	return nil
}

// readable refuses key files that would let nobody in.
func (s *Settings) readable() error {
	for _, file := range []string{s.Keys, s.Writers} {
		if file == "" {
			continue
		}
		if _, err := os.ReadFile(file); err != nil {
			return mistake.New(fmt.Sprintf("the file of keys cannot be read: %v", err),
				"name one that exists: it holds public keys, one a line")
		}
	}
	return nil
}

func bounds(f *pflag.FlagSet) (err error) {
	f.VisitAll(func(flag *pflag.Flag) {
		most, hint := 1_000_000, "type 1 or more, at most a million"
		if flag.Name == "fps" {
			most, hint = 120, "type 1 to 120"
		}
		n, noNumber := f.GetInt(flag.Name)
		took, noTime := f.GetDuration(flag.Name)
		switch {
		case err != nil || !isSetting(f, flag.Name):
		case noNumber == nil && (n < 1 || n > most):
			err = mistake.New(fmt.Sprintf("--%s: %d", flag.Name, n), hint)
		case noTime == nil && took <= 0:
			err = mistake.New(fmt.Sprintf("--%s: %v", flag.Name, took), "type a time, as 30s, 20m or 12h")
		}
	})
	return err
}

// loopback refuses an address for metrics that other machines can reach.
func (s *Settings) loopback() error {
	if s.Metrics == "" {
		return nil
	}
	host, _, err := net.SplitHostPort(s.Metrics)
	if ip := net.ParseIP(host); err != nil || (ip == nil || !ip.IsLoopback()) && host != "localhost" {
		return mistake.New(fmt.Sprintf("--metrics: %q is not an address of this machine alone", s.Metrics),
			"type one like 127.0.0.1:9222")
	}
	return nil
}
