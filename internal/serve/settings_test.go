package serve

import (
	"context"
	"errors"
	"io"
	"path/filepath"
	"strings"
	"testing"

	"brazebooth/internal/mistake"

	"github.com/spf13/pflag"
)

// filled are the settings from flags, the environment and a file.
func filled(t *testing.T, args []string, env map[string]string, file string) (*Settings, *pflag.FlagSet, error) {
	t.Helper()
	s, f := new(Settings), pflag.NewFlagSet("serve", pflag.ContinueOnError)
	s.flags(f)
	f.String("book", "", "a flag of every command")
	f.Bool("help", false, "")
	usual := filepath.Join(t.TempDir(), "config.toml")
	if file != "" {
		write(t, usual, file)
	}
	if err := f.Parse(args); err != nil {
		t.Fatal(err)
	}
	return s, f, fill(f, usual, func(name string) string { return env[name] })
}

func TestSettingsGoFlagEnvironmentFileDefault(t *testing.T) {
	const file = "[serve]\nlisten = \":1\"\nkeys = \"of file\"\nidle = \"1m\"\nper-key = 3\nopen = true\nbook = " +
		"\"shop.db\"\n[other]\nx = 1\n"
	env := map[string]string{"BRAZEBOOTH_SERVE_LISTEN": ":2", "BRAZEBOOTH_SERVE_KEYS": "of environment",
		"BRAZEBOOTH_SERVE_PER_KEY": ""}
	s, f, err := filled(t, []string{"--listen", ":3"}, env, file)
	if err != nil {
		t.Fatal(err)
	}
	if s.Listen != ":3" || s.Keys != "of environment" || s.Idle.String() != "1m0s" || s.PerKey != 3 || !s.Open ||
		s.Sessions != 500 || f.Lookup("book").Value.String() != "shop.db" {
		t.Errorf("%+v", s)
	}
	if s, _, err := filled(t, nil, nil, ""); err != nil || s.Listen != ":2222" || s.Open ||
		s.Handshake.String() != "10s" || s.PerAddress != 20 || s.Metrics != "" {
		t.Errorf("the defaults are %+v, %v", s, err)
	}
}

func TestSettingsOfANamedFile(t *testing.T) {
	file := filepath.Join(t.TempDir(), "other.toml")
	write(t, file, "[serve]\nper-key = 7\n")
	for _, way := range []struct {
		args []string
		env  map[string]string
	}{{args: []string{"--config", file}}, {env: map[string]string{"BRAZEBOOTH_SERVE_CONFIG": file}}} {
		if s, _, err := filled(t, way.args, way.env, "[serve]\nper-key = 9\n"); err != nil || s.PerKey != 7 {
			t.Errorf("%v: %d, %v", way, s.PerKey, err)
		}
	}
	if _, _, err := filled(t, []string{"--config", file + "x"}, nil, ""); err == nil || !strings.Contains(err.Error(),
		"no such file") {
		t.Errorf("a file that is not there: %v", err)
	}
	if _, _, err := filled(t, []string{"--config", t.TempDir()}, nil, ""); err == nil || !strings.Contains(err.Error(),
		"is not a regular file") {
		t.Errorf("what is no file: %v", err)
	}
}

func TestSettingsThatAreRefused(t *testing.T) {
	for _, x := range []struct{ file, env, value, want string }{
		{file: "[serve]\nlisten-on = 1", want: `no setting "listen-on"`},
		{file: "[serve]\nhelp = true", want: `no setting "help"`},
		{file: "[serve]\nconfig = \"x\"", want: `no setting "config"`},
		{file: "[serve]\n\"a\\u001b[31m\" = 1", want: `no setting "a"`},
		{file: "[serve]\nidle = 30", want: `idle: "30" is not valid`},
		{file: "[serve]\nper-key = \"many\"", want: `per-key: "many" is not valid`},
		{file: "[serve]\nkeys = [\"a\", \"b\"]", want: "neither a text nor a number"},
		{file: "[serve\n", want: "config.toml"},
		{env: "BRAZEBOOTH_SERVE_PER_KEY", value: "\x1b[31mx", want: `BRAZEBOOTH_SERVE_PER_KEY: "x" is not valid`},
	} {
		_, _, err := filled(t, nil, map[string]string{x.env: x.value}, x.file)
		if err == nil || !strings.Contains(err.Error(), x.want) || strings.Contains(err.Error(), "\x1b") {
			t.Errorf("%q %s: %v", x.file, x.value, err)
		}
	}
}

// Wrong settings are refused before a port is opened.
func TestServeRefusesWrongSettings(t *testing.T) {
	dir := t.TempDir()
	keys := filepath.Join(dir, "keys")
	write(t, keys, "")
	for _, x := range []struct{ args, want string }{
		{"", "neither --keys nor --open"},
		{"--writers " + keys, "neither --keys nor --open"},
		{"--keys " + keys + "x", "cannot be read"},
		{"--open --writers " + dir, "cannot be read"},
		{"--open --fps 0", "--fps"}, {"--open --fps 121", "--fps"},
		{"--open --per-address 0", "--per-address"}, {"--open --connections -1", "--connections"},
		{"--open --sessions 0", "--sessions"},
		{"--open --per-key 0", "--per-key"}, {"--open --channels 0", "--channels"}, {"--open --input-rate 0",
			"--input-rate"},
		{"--open --paste 2000000", "--paste"}, {"--open --columns 0", "--columns"}, {"--open --rows 0", "--rows"},
		{"--open --idle 0s", "--idle"}, {"--open --longest -1s", "--longest"}, {"--open --handshake 0s", "--handshake"},
		{"--open --handover 0s", "--handover"},
		{"--open --metrics :9222", "--metrics"}, {"--open --metrics 0.0.0.0:9222", "--metrics"},
		{"--open --metrics 192.0.2.1:9222", "--metrics"}, {"--open --metrics x", "--metrics"},
		{"--open --proxy balancer", "--proxy"}, {"--open --proxy 10.0.0.0/99", "--proxy"},
		{"--open --log " + dir, "--log"}, {"--open --host-key " + keys, "not a host key"},
		{"--open --listen 127.0.0.1:99999", "--listen"},
	} {
		f := pflag.NewFlagSet("serve", pflag.ContinueOnError)
		run := Bind(Deps{Getenv: func(string) string { return "" }, Err: io.Discard, Data: filepath.Join(dir, "data"),
			PartOf: func(_, _ string) bool { return false }})(f)
		if err := f.Parse(strings.Fields(x.args)); err != nil {
			t.Fatal(err)
		}
		err := run(context.Background(), "")
		var typed *mistake.Error
		if !errors.As(err, &typed) || !strings.Contains(typed.What+typed.Hint, x.want) || typed.Hint == "" {
			t.Errorf("%s: %v", x.args, err)
		}
	}
}
