package cli

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/deep"
)

// said is the outcome of one run of the program.
type said struct {
	code     int
	out, err string
}

func run(args ...string) said {
	var out, errOut bytes.Buffer
	code := Run(context.Background(), args, Deps{Out: &out, Err: &errOut, Title: "example",
		Example: calc.Job{Metal: "galvanized", Gauge: 16}})
	return said{code, out.String(), errOut.String()}
}

// The scripts in testdata see only that a command failed, and a panic exits with 2 as well: so the exact code is
// checked here.
func TestWrongUseExitsWith2(t *testing.T) {
	for _, line := range []string{
		"card --metal unobtainium", "card --gauge banana", "card --gauge -3mm", "card --gauge 44", "card --feed fast",
		"card --wire 400mm", "card --travel NaN", "card --amps Inf", "card --mode spray", "card --joint weld",
		"card --position sideways", "card --coating paint", "card --filler lead", "card --units furlong",
		"card --gap -1mm",
		"card extra", "card --frobnicate", "card -x", "card --json=perhaps", "card --metal", "solder", "help solder",
		"gauge", "gauge 31", "gauge 16 18", "gauge abc", "tables colours", "tables fillers metals", "version now",
		"wire --wire nonsense", "wire --metal galvanized", "window --mode timed", "window --joint plug",
		"--units furlong", "--theme pink", "--theme=",
		"card --show lunch", "correct --seen ugly", "correct --seen good,pores",
		"correct --seen pores --tried travel", "correct --seen pores --tried travel=9:ugly",
		"correct --seen pores --tried metal=copper:good", "correct --seen",
		"prepare --length -3", "filler --use war", "overlay --joint lap", "strength --joint corner",
		"fit --hazard dragons", "practice --level 0", "practice --level 1 --seed -1", "practice --seed 3",
		"practice --level 1 --travel 90", "practice --level 1 --travel 9 --tried x", "practice --level 1 --keep",
		"practice 3", "cost --count 0.5", "machine --rated-duty 200%",
		"batch", "batch nofile.csv", "batch cli_test.go", "batch - --resume --format csv", "batch . --format csv",
		"completion", "completion dash", "doctor now", "completion bash zsh",
	} {
		got := run(strings.Fields(line)...)
		lines := strings.Split(strings.TrimSuffix(got.err, "\n"), "\n")
		if got.code != 2 || got.out != "" || len(lines) != 2 || lines[1] == "" {
			t.Errorf("%s: code %d, stdout %q, stderr %q; want 2, nothing, what is wrong and what to type", line,
				got.code, got.out, got.err)
		}
	}
}

func TestAnswersExitWith0(t *testing.T) {
	for _, line := range deep.Of(t, []string{
		"", "--units inch", "--theme contrast", "card --gauge 18ga", "card --metal brass --gauge 20",
		"card --filler steel", "card --wire 1.8mm",
		"card --gauge 16 --feed 250ipm --amps 140", "card --metal copper --gauge 1mm --joint butt", "card --joint plug",
		"card --mode timed --joint butt --gap 2mm", "card --help", "help", "help card", "help gauge", "gauge 16ga",
		"tables", "version",
		"wire", "completion bash", "correct", "correct --seen rolled-edge --feed 5 --travel 9",
		"card --feed 5 --travel 9 --show all", "card --feed 5 --travel 9 --show all --markdown",
		"filler --feed 5 --travel 9", "prepare --feed 5 --travel 9",
	}, 14) {
		if got := run(strings.Fields(line)...); got.code != 0 || got.out == "" || got.err != "" {
			t.Errorf("%s: code %d, %d bytes on stdout, stderr %q; want 0, an answer, nothing", line, got.code,
				len(got.out), got.err)
		}
	}
}

// A failure although the command was right exits with 1.
func TestFailuresExitWith1(t *testing.T) {
	var out, errOut bytes.Buffer
	broken := func(context.Context, ScreenOptions) error { return errors.New("the terminal went away") }
	if code := Run(context.Background(), nil, Deps{Out: &out, Err: &errOut, RunScreens: broken}); code != 1 ||
		!strings.Contains(errOut.String(), "the terminal went away") {
		t.Errorf("screens that fail: code %d, stderr %q", code, errOut.String())
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	errOut.Reset()
	if code := Run(ctx, []string{"window"}, Deps{Out: &out, Err: &errOut}); code != 1 ||
		!strings.Contains(errOut.String(), "cancelled") {
		t.Errorf("a cancelled window: code %d, stderr %q", code, errOut.String())
	}
}

// No arguments means none, whatever this process was started with: a server has arguments of its own.
func TestNoArgumentsAreNotTheServers(t *testing.T) {
	was := os.Args
	defer func() { os.Args = was }()
	os.Args = []string{"brazebooth", "serve", "--listen", "127.0.0.1:0"}
	if got := run(); got.code != 0 || !strings.Contains(got.out, "Settings card") {
		t.Errorf("code %d, out %.200q, stderr %q", got.code, got.out, got.err)
	}
}

func TestTyposAreNamed(t *testing.T) {
	for line, want := range map[string]string{
		"crad":               "type brazebooth card",
		"table":              "type brazebooth tables",
		"guage 16":           "type brazebooth gauge",
		"help widow":         "type brazebooth window",
		"card --guage 16":    "type --gauge",
		"card --stick-out 9": "type --stickout",
		"wire --fed 250ipm":  "type --feed",
		"tables filler":      "type fillers",
		"card --wire":        "type --wire and wire diameter: .035, 1/16 or 0.9mm",
	} {
		got := run(strings.Fields(line)...)
		if _, hint, _ := strings.Cut(strings.TrimSpace(got.err), "\n"); got.code != 2 || !strings.HasPrefix(hint,
			want) {
			t.Errorf("%s: code %d, hint %q, want %q", line, got.code, hint, want)
		}
	}
}

// Every flag that help shows can be suggested for a misspelt one.
func TestEveryFlagCanBeSuggested(t *testing.T) {
	shown := regexp.MustCompile(`--([a-z][a-z0-9-]*)`)
	for _, cmd := range New(Deps{}).Commands() {
		for line := range strings.Lines(cmd.Flags().FlagUsages()) {
			name := shown.FindStringSubmatch(line)
			if name == nil {
				continue
			}
			if !slices.Contains(flagNames(cmd), name[1]) {
				t.Errorf("%s: flagNames lacks %s", cmd.Name(), name[1])
			}
		}
	}
}

// With --json an error is an object too, wherever the flag is on the command line.
func TestErrorsAsJSON(t *testing.T) {
	for _, line := range []string{"card --json --metal unobtainium", "card --metal unobtainium --json",
		"card --json=true --gauge banana", "tables nope --json", "gauge 99 --json", "solder --json"} {
		got := run(strings.Fields(line)...)
		var v map[string]string
		if err := json.Unmarshal([]byte(got.err), &v); err != nil || got.code != 2 || len(v) != 2 ||
			v["error"] == "" || v["hint"] == "" {
			t.Errorf("%s: code %d, stderr %q", line, got.code, got.err)
		}
	}
}

// hostile is text with control characters or odd numbers, for a terminal or a program that reads what is printed.
var hostile = []string{"\x1b[31mred", "\x1b]0;title\a", "\x9b31m", "\u202egalv", "\xff\xfe", "a\x00b", "\r\noops", "",
	" ", "-", "--", "%s%n", strings.Repeat("9", 5000), strings.Repeat("a\u0301", 300), "💥", "1e309", "0x10", "1,5",
	"NaN"}

func checkTame(t *testing.T, args []string, got said) {
	t.Helper()
	if got.code != 0 && got.code != 2 {
		t.Errorf("%q: code %d, stderr %q", args, got.code, got.err)
	}
	if len(got.err) > 1000 {
		t.Errorf("%q: %d bytes of error", args, len(got.err))
	}
	for _, text := range []string{got.out, got.err} {
		if !utf8.ValidString(text) || strings.ContainsFunc(text, func(r rune) bool {
			return r != '\n' && unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r)
		}) {
			t.Errorf("%q: control characters in %.200q", args, text)
		}
	}
}

func TestHostileTextComesBackTame(t *testing.T) {
	deep.Turn(t)
	flags := choice.OnCard()
	if testing.Short() {
		flags = flags[:2] // some texts are numbers, and each of them costs a search
	}
	for _, text := range hostile {
		for _, c := range deep.Of(t, flags, 14) {
			args := []string{"card", "--" + c.Name, text}
			checkTame(t, args, run(args...))
		}
		for _, args := range [][]string{{text}, {"card", text}, {"card", "--" + text}, {"tables", text}, {"gauge",
			text}, {"help", text}, {"card", "--units", text}, {"card", "--json=" + text}} {
			checkTame(t, args, run(args...))
		}
	}
}

func FuzzJobFlag(f *testing.F) {
	for i, text := range hostile {
		f.Add(uint8(i), text)
	}
	f.Fuzz(func(t *testing.T, flag uint8, text string) {
		args := []string{"card", "--" + choice.OnCard()[int(flag)%len(choice.OnCard())].Name, text, "--feed=6m/min",
			"--travel=6"}
		checkTame(t, args, run(args...))
	})
}
