package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

// shop is a package of two functions, one of them well tested.
var shop = map[string]string{
	"go.mod": "module shop\n\ngo 1.24\n",
	"shop.go": `package shop

func Area(w, h float64) float64 { return w * h }

func Big(area float64) bool { return area > 100 }
`,
	"shop_test.go": `package shop

import "testing"

func TestArea(t *testing.T) {
	if Area(2, 3) != 6 || Big(99) || !Big(101) {
		t.Fail()
	}
}
`,
}

func inShop(t *testing.T) {
	dir := t.TempDir()
	for name, text := range shop {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	t.Chdir(dir)
}

func TestSlipsAreNamedByTheirLine(t *testing.T) {
	inShop(t)
	list, err := slips(".")
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for i := range list {
		got = append(got, list[i].String())
	}
	want := []string{
		"shop.go: func Area(w, h float64) float64 { return w {* → /} h }",
		"shop.go: func Big(area float64) bool { return area {> → >=} 100 }",
		"shop.go: func Big(area float64) bool { return area > {100 → 101} }",
	}
	if !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
	if source := string(list[0].source()); source != strings.Replace(shop["shop.go"], "w * h", "w / h", 1) {
		t.Errorf("the source with a mistake is %q", source)
	}
}

// A product is noticed; whether 100 itself is big, nobody asks.
func TestVerdicts(t *testing.T) {
	if testing.Short() {
		t.Skip("runs go test four times")
	}
	inShop(t)
	list, err := slips(".")
	if err != nil {
		t.Fatal(err)
	}
	c := choice{tests: [][]string{{"-run", "Nothing", "."}, {"."}}, limit: time.Minute}
	if v := c.verdict("work", &list[0]); v != noticed {
		t.Errorf("%s: %v", &list[0], v)
	}
	if v := c.verdict("work", &list[1]); v != missed {
		t.Errorf("%s: %v", &list[1], v)
	}
	list[2].with = "nonsense"
	if v := c.verdict("work", &list[2]); v != broken {
		t.Errorf("%s: %v", &list[2], v)
	}
	if left, _ := filepath.Glob("*.go"); len(left) != 2 {
		t.Errorf("the folder holds %q", left)
	}
}

func TestOnlyWhatWasMissedIsTriedAgain(t *testing.T) {
	inShop(t)
	list, err := slips(".")
	if err != nil {
		t.Fatal(err)
	}
	earlier := "not noticed: " + list[2].String() + "  (line 5)\nanything else\n"
	if err := os.WriteFile("earlier", []byte(earlier), 0o600); err != nil {
		t.Fatal(err)
	}
	kept, err := missedIn("earlier", list)
	if err != nil || len(kept) != 1 || kept[0].with != "101" {
		t.Errorf("%v, %v", kept, err)
	}
}

func TestExplanations(t *testing.T) {
	t.Chdir(t.TempDir())
	for text, want := range map[string]string{"a\nb\n same\n# note\n\nc\n  other\n": "", " why\n": `explained: "why" explains nothing`, "a\n why\nb\n": `explained: "b" has no reason`} {
		if err := os.WriteFile("explained", []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		why, err := explanations("explained")
		switch {
		case want == "":
			if err != nil || len(why) != 3 || why["a"] != "same" || why["b"] != "same" || why["c"] != "other" {
				t.Errorf("%q, %v", why, err)
			}
		case err == nil || err.Error() != want:
			t.Errorf("%q: %v", text, err)
		}
	}
}

// An explanation goes with its line: when the line is changed, it is looked at again.
func TestExplanationsAreOfThisCode(t *testing.T) {
	why, err := explanations("explained.txt")
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir("../..")
	possible := map[string]bool{}
	folders := map[string]bool{}
	for s := range why {
		file, _, _ := strings.Cut(s, ": ")
		folders[filepath.Dir(file)] = true
	}
	for folder := range folders {
		list, err := slips(folder)
		if err != nil {
			t.Fatal(err)
		}
		for i := range list {
			possible[list[i].String()] = true
		}
	}
	for s := range why {
		if !possible[s] {
			t.Errorf("explained, but not in the code: %s", s)
		}
	}
}
