package cli

import (
	"regexp"
	"strings"
	"testing"

	"brazebooth/internal/choice"
	"brazebooth/internal/deep"
)

// wrongWords are typed where a name is wanted, wrongSizes where a number is wanted.
var (
	wrongWords = []string{"titanium", "", "x", "none,tank", "good,cold", ","}
	wrongSizes = []string{"", "banana", "-3", "1e9", "99999999", "0", "5 parsecs", "1,500", "NaN"}
)

// sane matches an error's first line: what it is about, then what is wrong, as one sentence without a full stop.
var sane = regexp.MustCompile(`^brazebooth: [^:]+: [a-z0-9"'−-].*[^.]$`)

// garbled are phrases that no error may have.
var garbled = []string{"cannot be used", "nobody can tell", "of that name", ", or nothing", "%!", "is none:"}

// Every wrong value of every flag gets a sentence that says what is wrong, and a line that says what to type instead.
func TestErrorsAreSentences(t *testing.T) {
	for _, c := range choice.All() {
		values := wrongSizes
		if c.Kind == 0 {
			values = wrongWords
		}
		refused := 0
		for _, v := range values {
			refused += checkError(t, "card", "--"+c.Name+"="+v)
		}
		if refused == 0 {
			t.Errorf("--%s takes every one of %q", c.Name, values)
		}
	}
}

// So does a job that cannot be computed although each value is right by itself.
func TestRefusalsAreSentences(t *testing.T) {
	for _, line := range deep.Of(t, []string{
		"card --metal galvanized --gauge 7ga", "card --metal galvanized --gauge 0.06mm", "gap --arc-on 100s",
		"gap --joint butt --gap 2mm --gauge 12mm",
		"window --gauge 12mm", "overlay --joint lap", "cost --joint plug", "correct --seen good,cold",
		"correct --seen nonsense", "correct --seen ,",
		"card --show nonsense", "card --show ,", "practice --level 99", "card --feed 700in/min --travel 0.3mm/s " +
			"--gauge 30ga", "machine --metal brass",
	}, 7) {
		if checkError(t, strings.Fields(line)...) == 0 {
			t.Logf("%s is answered", line)
		}
	}
}

// checkError runs a command line and returns 1 if it was refused.
func checkError(t *testing.T, args ...string) int {
	t.Helper()
	got := run(args...)
	if got.code == 0 {
		return 0
	}
	errOut := got.err
	t.Log(strings.Join(args, " ") + "\n" + errOut)
	lines := strings.Split(strings.TrimSpace(errOut), "\n")
	if len(lines) != 2 || !sane.MatchString(lines[0]) || lines[1] == "" {
		t.Errorf("%s: no sentence and hint: %q", strings.Join(args, " "), errOut)
	}
	for _, words := range garbled {
		if strings.Contains(errOut, words) {
			t.Errorf("%s: %q in %q", strings.Join(args, " "), words, errOut)
		}
	}
	return 1
}
