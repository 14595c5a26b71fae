package docs

import (
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var (
	linked  = regexp.MustCompile(`\]\(([^)\s]+)\)`)
	heading = regexp.MustCompile("(?m)^#+ +(.+)$")
	quoted  = regexp.MustCompile("`([^`\n]+)`")
	// A file or folder of the project: its path from the top, or a file's name alone.
	aFile = regexp.MustCompile(`^(\.ci|calc|calc_test|docs|internal|tables|testdata|tui)(/[\w.-]+)*/?$|` +
		`^[\w.-]+\.(go|md|service)$`)
	inDoc   = regexp.MustCompile(`\b[\w/]+\.go\b`)
	aTest   = regexp.MustCompile(`\b(Test|Fuzz|Benchmark)[A-Z]\w*(\.\.\.)?`)
	aFlag   = regexp.MustCompile(`\bflag\.\w+\((?:&\w+, )?"([\w.]+)"`)
	defined = regexp.MustCompile(`(?m)^func ((?:Test|Fuzz|Benchmark)[A-Z]\w*)\(`)
	goTest  = regexp.MustCompile(`go test (?:-race -short )?(\./[^\n` + "`" + `]*)`)
	ciTest  = regexp.MustCompile(`(?m)^\s*(?:\w+=\S+ )*go test (.*)$`)
	codeRun = regexp.MustCompile(`go test (\.(?:/[\w/]+)?) (-run \w+)`)
)

// project lists what the documents may name: files, and tests by folder.
type project struct {
	files map[string]bool     // paths from the top, folders too
	names map[string]bool     // names of files without their folders
	tests map[string][]string // tests, fuzz targets and benchmarks of a folder
	flags map[string]bool     // flags of a folder's tests, as "folder -name"
}

func theProject(t *testing.T) project {
	t.Helper()
	p := project{map[string]bool{}, map[string]bool{}, map[string][]string{}, map[string]bool{}}
	err := fs.WalkDir(os.DirFS(".."), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && d.Name() == ".git" {
			return fs.SkipDir
		}
		p.files[name], p.names[d.Name()] = true, true
		if strings.HasSuffix(name, "_test.go") {
			text, folder := read(t, "../"+name), path.Dir(name)
			for _, m := range defined.FindAllStringSubmatch(text, -1) {
				p.tests[folder] = append(p.tests[folder], m[1])
			}
			for _, m := range aFlag.FindAllStringSubmatch(text, -1) {
				p.flags[folder+" -"+m[1]] = true
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Every relative link of a document leads to a file and, if it names a heading, to that heading.
func TestLinksLeadSomewhere(t *testing.T) {
	n := 0
	for _, doc := range documents(t) {
		for _, m := range linked.FindAllStringSubmatch(read(t, doc), -1) {
			if strings.Contains(m[1], "://") {
				continue
			}
			n++
			name, anchor, _ := strings.Cut(m[1], "#")
			target := filepath.Join(filepath.Dir(doc), name)
			if name == "" {
				target = doc
			}
			if _, err := os.Stat(target); err != nil {
				t.Errorf("%s links to %s: %v", doc, m[1], err)
			} else if anchor != "" && !anchors(read(t, target))[anchor] {
				t.Errorf("%s links to %s: no such heading", doc, m[1])
			}
		}
	}
	if n < 20 {
		t.Errorf("only %d links", n)
	}
}

// anchors are a document's headings as links name them: lower case, hyphens for blanks, no other punctuation.
func anchors(text string) map[string]bool {
	found := map[string]bool{}
	for _, m := range heading.FindAllStringSubmatch(text, -1) {
		found[strings.Map(func(r rune) rune {
			switch {
			case r == ' ':
				return '-'
			case r == '-' || r == '_' || r >= '0' && r <= '9' || r >= 'a' && r <= 'z':
				return r
			}
			return -1
		}, strings.ToLower(m[1]))] = true
	}
	return found
}

// Every file and every test that a document names exists.
func TestNamedFilesAndTestsExist(t *testing.T) {
	p := theProject(t)
	files, tests := 0, 0
	for _, doc := range documents(t) {
		text := read(t, doc)
		for _, m := range quoted.FindAllStringSubmatch(text, -1) {
			name := strings.TrimSuffix(m[1], "/")
			if !aFile.MatchString(name) {
				continue
			}
			files++
			if !p.files[name] && (strings.Contains(name, "/") || !p.names[name]) {
				t.Errorf("%s names %s, which does not exist", doc, m[1])
			}
		}
		for _, name := range aTest.FindAllString(text, -1) {
			tests++
			if !p.hasTest(name) {
				t.Errorf("%s names %s, which does not exist", doc, name)
			}
		}
	}
	if files < 30 || tests < 60 {
		t.Errorf("only %d files and %d tests are named", files, tests)
	}
}

// hasTest looks for a test by its name, or by the beginning of its name if three dots follow.
func (p project) hasTest(name string) bool {
	begin, some := strings.CutSuffix(name, "...")
	for _, list := range p.tests {
		for _, test := range list {
			if test == name || some && strings.HasPrefix(test, begin) {
				return true
			}
		}
	}
	return false
}

// Every `go test` in a document names existing folders, tests and flags.
func TestShownTestsExist(t *testing.T) {
	p := theProject(t)
	n := 0
	for _, doc := range documents(t) {
		for _, m := range goTest.FindAllStringSubmatch(read(t, doc), -1) {
			n++
			p.shown(t, doc, words(strings.ReplaceAll(m[1], "'", `"`)))
		}
	}
	if n < 20 {
		t.Errorf("only %d commands", n)
	}
}

// Every `go test` of .ci/run names existing folders and flags, and each part of its patterns a test: a test that gets
// another name must not leave a check, or come back into one, without notice.
func TestChecksNameTests(t *testing.T) {
	p, n := theProject(t), 0
	text := strings.ReplaceAll(read(t, "../.ci/run"), "\\\n", " ")
	for _, m := range ciTest.FindAllStringSubmatch(text, -1) {
		args := words(strings.Join(strings.Fields(strings.ReplaceAll(m[1], "'", `"`)), " "))
		if slices.Contains(args, "-run") || slices.Contains(args, "-skip") {
			n++
			p.shown(t, ".ci/run", args)
		}
	}
	if n < 6 {
		t.Errorf("only %d commands with a pattern", n)
	}
}

// Every `go test … -run …` in the code, mostly in what a failing test says to do, names an existing folder and test.
func TestCommandsInCodeExist(t *testing.T) {
	p, n := theProject(t), 0
	for name := range p.files {
		if !strings.HasSuffix(name, ".go") {
			continue
		}
		for _, m := range codeRun.FindAllStringSubmatch(read(t, "../"+name), -1) {
			n++
			folder := m[1]
			if folder == "." { // the test's own
				folder = "./" + path.Dir(name)
			}
			p.shown(t, name, append([]string{folder}, words(m[2])...))
		}
	}
	if n < 10 {
		t.Errorf("only %d commands", n)
	}
}

// usual are flags of go test itself, and of the library of golden files.
var usual = []string{"-run", "-skip", "-v", "-bench", "-benchmem", "-benchtime", "-timeout", "-race", "-short",
	"-update"}

func (p project) shown(t *testing.T, doc string, args []string) {
	t.Helper()
	var there, folders []string
	for _, a := range args {
		folder, ok := strings.CutPrefix(a, "./")
		if a == "." {
			folder, ok = ".", true
		}
		if !ok || folder == "..." {
			continue
		}
		root, below := strings.CutSuffix(folder, "/...")
		if !p.files[root] {
			t.Errorf("%s: go test %s: no such folder", doc, a)
		}
		for dir, list := range p.tests {
			if dir == root || below && strings.HasPrefix(dir, root+"/") {
				there, folders = append(there, list...), append(folders, dir)
			}
		}
	}
	for _, a := range args {
		own := func(folder string) bool { return p.flags[folder+" "+a] }
		if strings.HasPrefix(a, "-") && !slices.Contains(usual, a) && !slices.ContainsFunc(folders, own) {
			t.Errorf("%s: go test %s: no flag %s", doc, strings.Join(args, " "), a)
		}
	}
	for i, a := range args {
		if !slices.Contains([]string{"-run", "-skip", "-bench"}, a) || i+1 == len(args) || args[i+1] == "xxx" ||
			args[i+1] == "." {
			continue
		}
		for _, one := range strings.Split(args[i+1], "|") {
			is, err := regexp.Compile(strings.SplitN(one, "/", 2)[0])
			if err != nil {
				t.Errorf("%s: %s: %v", doc, one, err)
				continue
			}
			if !matches(is, there) {
				t.Errorf("%s: go test %s: nothing is called %s", doc, strings.Join(args, " "), one)
			}
		}
	}
}

func matches(is *regexp.Regexp, list []string) bool {
	for _, name := range list {
		if is.MatchString(name) {
			return true
		}
	}
	return false
}

// A package comment names only files that exist in its folder or in the project.
func TestPackageDocsNameFilesThatExist(t *testing.T) {
	p := theProject(t)
	n := 0
	for name := range p.files {
		if path.Base(name) != "doc.go" {
			continue
		}
		n++
		for _, f := range inDoc.FindAllString(read(t, "../"+name), -1) {
			if !p.files[path.Join(path.Dir(name), f)] && !p.files[f] {
				t.Errorf("%s names %s, which does not exist", name, f)
			}
		}
	}
	if n < 2 {
		t.Errorf("only %d descriptions", n)
	}
}
