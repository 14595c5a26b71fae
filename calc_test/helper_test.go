// Package calc_test checks the program against the outside: published standards, handbook tables and worked examples,
// one file for each source. Every expected value is typed as it is printed; the tolerance is half the last printed
// digit, or a comment says why it is more. "Worked" values were found with an independent general-purpose library,
// not with this program.
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

// TestMain holds docs/model.md to the number of checks and docs/validation.json to their values, where all of them ran.
func TestMain(m *testing.M) {
	flag.Parse()
	code := m.Run()
	if code == 0 && !testing.Short() && flag.Lookup("test.run").Value.String()+flag.Lookup("test.skip").Value.String()+flag.Lookup("test.list").Value.String() == "" {
		code = max(counted(), recorded())
	}
	os.Exit(code)
}

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

// check makes one outside check a subtest of its own, so that they can be counted.
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

// between is a check whose source gives bounds and no value.
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

// figure is a card's value.
func figure(t *testing.T, card *calc.Card, name string) float64 {
	t.Helper()
	f, ok := card.Figure(name)
	if !ok {
		t.Fatalf("the card has no %s", name)
	}
	return f.Value
}

// must returns the value of a formula that is asked inside its range, where it has no error.
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

// limitFor is the limit of one agent by one body over one span.
func limitFor(agent string, by tables.Body, over tables.Span) (tables.ExposureLimit, bool) {
	i := slices.IndexFunc(tables.ExposureLimits, func(l tables.ExposureLimit) bool {
		return l.Agent == agent && l.Body == by && l.Span == over
	})
	if i < 0 {
		return tables.ExposureLimit{}, false
	}
	return tables.ExposureLimits[i], true
}
