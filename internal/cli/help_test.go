package cli

import (
	"encoding/json"
	"os"
	"regexp"
	"strings"
	"testing"

	"brazebooth/internal/deep"
)

var schemaNamed = regexp.MustCompile(`described in docs/([a-z-]+\.json)`)

// The schema that a command's help names describes its JSON.
func TestHelpNamesTheSchema(t *testing.T) {
	deep.Turn(t)
	named := map[string]bool{}
	root := New(Deps{})
	for _, w := range waysOf(root, "") {
		if w.flag != "" {
			continue
		}
		cmd, _, err := root.Find(strings.Fields(w.cmd))
		if err != nil {
			t.Fatal(err)
		}
		f := cmd.Flags().Lookup("json")
		if f == nil || !schemaNamed.MatchString(f.Usage) {
			continue
		}
		file := schemaNamed.FindStringSubmatch(f.Usage)[1]
		named[file] = true
		text, err := os.ReadFile("../../docs/" + file)
		if err != nil {
			t.Fatal(err)
		}
		var schema struct {
			Required   []string
			Properties map[string]any
		}
		if err := json.Unmarshal(text, &schema); err != nil {
			t.Fatal(err)
		}
		got := run(append(strings.Fields(w.cmd+" "+answered[w.cmd]), "--json")...)
		var doc map[string]any
		if err := json.Unmarshal([]byte(got.out), &doc); err != nil {
			t.Errorf("%s: %v, %s", w.cmd, err, got.err)
			continue
		}
		for name := range doc {
			if _, ok := schema.Properties[name]; !ok {
				t.Errorf("%s: %s does not know %s", w.cmd, file, name)
			}
		}
		for _, name := range schema.Required {
			if _, ok := doc[name]; !ok {
				t.Errorf("%s: %s wants %s", w.cmd, file, name)
			}
		}
	}
	if len(named) != 4 {
		t.Errorf("named are %v", named)
	}
}

// The help of a flag is right about what happens when it is not given.
func TestHelpOfWhatIsNotGiven(t *testing.T) {
	for cmd, want := range map[string]string{
		"card": "without it one is suggested", "practice": "without it as the last welder left it",
		"window": "and marks this one", "book reading": "", "wire": "",
	} {
		c, _, err := New(Deps{}).Find(strings.Fields(cmd))
		if err != nil {
			t.Fatal(err)
		}
		usage := c.Flags().Lookup("feed").Usage
		if !strings.Contains(usage, want) || want == "" && strings.Contains(usage, "without it") || want != "" &&
			strings.Count(usage, "without it") > 1 {
			t.Errorf("%s --feed: %s", cmd, usage)
		}
	}
	if got := run("gap", "--gauge", "16ga", "--travel", "8"); got.code != 2 || !strings.Contains(got.err,
		"--spot-step") {
		t.Errorf("%+v", got)
	}
	if got := run("book", "source", "A", "B"); got.code != 2 || !strings.Contains(got.err,
		"see brazebooth book source --help") {
		t.Errorf("%+v", got)
	}
	if got := run("book", "lst"); got.code != 2 || !strings.Contains(got.err, "type brazebooth book list") {
		t.Errorf("%+v", got)
	}
}
