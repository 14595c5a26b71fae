// Package calc_test holds the program against the outside: published standards, handbook tables and
// worked examples, one file for each source. Every expected value is typed as it is printed; the
// tolerance is half the last printed digit, or a comment says why it is more. "Worked" values were found
// with an independent general-purpose library, not with this program.
package calc_test

import (
	"fmt"
	"math"
	"testing"
)

// check makes one outside check a subtest of its own, so that they can be counted.
func check(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	t.Run(what, func(t *testing.T) {
		t.Helper()
		if !(math.Abs(got-want) <= tolerance) {
			t.Errorf("%.9g, want %.9g ± %.3g", got, want, tolerance)
		}
	})
}

// must drops the error of a formula that is asked inside its range.
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
