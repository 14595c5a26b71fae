// Package calc_test compares the program with outside sources: published standards, handbook tables and worked
// examples, one file per source. Every expected value is typed as it is printed; the tolerance is half the last
// printed digit, or a comment says why it is larger. "Worked" values were found with an independent
// general-purpose library, not with this program.
package calc_test

import (
	"flag"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/tables"
)

// TestMain compares docs/model.md with the number of checks and docs/validation.json with their values, if all
// of them ran.
func TestMain(m *testing.M) {
	flag.Parse()
	code := m.Run()
	selected := slices.ContainsFunc([]string{"test.run", "test.skip", "test.list"},
		func(name string) bool { return flag.Lookup(name).Value.String() != "" })
	if code == 0 && !testing.Short() && !selected {
		code = max(counted(), recorded())
	}
	os.Exit(code)
}

// counted returns 0 if docs/model.md has the number of checks, otherwise 1.
func counted() int {
	b, err := os.ReadFile("../docs/model.md")
	if err != nil {
		fmt.Println(err)
		return 1
	}
	if want := fmt.Sprintf("\n%d checks in `calc_test/`", len(record.Checks)); !strings.Contains(string(b), want) {
		fmt.Printf("docs/model.md does not say %q\n", want)
		return 1
	}
	return 0
}

// check makes each outside check a subtest, so that they can be counted.
func check(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	t.Run(what, func(t *testing.T) {
		t.Helper()
		record.check(t, what, got, want-tolerance, want+tolerance)
		if !(math.Abs(got-want) <= tolerance) {
			t.Errorf("%.9g, want %.9g ± %.3g", got, want, tolerance)
		}
	})
}

// between is a check whose source gives limits and no value.
func between(t *testing.T, what string, got, low, high float64) {
	t.Helper()
	t.Run(what, func(t *testing.T) {
		t.Helper()
		record.check(t, what, got, low, high)
		if !(got >= low && got <= high) {
			t.Errorf("%.9g, want %.9g to %.9g", got, low, high)
		}
	})
}

// figure returns a card's value.
func figure(t *testing.T, card *calc.Card, name string) float64 {
	t.Helper()
	f, ok := card.Figure(name)
	if !ok {
		t.Fatalf("the card has no %s", name)
	}
	return f.Value
}

// must returns the value of a formula that is called inside its range, where it returns no error.
func must(t *testing.T) func(v float64, err error) float64 {
	t.Helper()
	return func(v float64, err error) float64 {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func at(format string, args ...any) string { return fmt.Sprintf(format, args...) }

// limitFor returns the limit of one agent by one body over one span.
func limitFor(agent string, by tables.Body, over tables.Span) (tables.ExposureLimit, bool) {
	i := slices.IndexFunc(tables.ExposureLimits, func(l tables.ExposureLimit) bool {
		return l.Agent == agent && l.Body == by && l.Span == over
	})
	if i < 0 {
		return tables.ExposureLimit{}, false
	}
	return tables.ExposureLimits[i], true
}
