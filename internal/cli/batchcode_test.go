package cli

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// With --keep-going a batch continues after a bad row; its exit code 1 says that not every row was answered.
func TestKeptGoingExitsWith1(t *testing.T) {
	for rows, want := range map[string]int{"hsla,18ga,5,8\n": 0, "hsla,18ga,5,8\nhsla,44ga,5,8\nhsla,20ga,4,8\n": 1,
		"hsla,18ga,5,8\n,,,\n": 1} {
		file := filepath.Join(t.TempDir(), "rows.csv")
		if err := os.WriteFile(file, []byte("metal,gauge,feed,travel\n"+rows), 0o600); err != nil {
			t.Fatal(err)
		}
		got := run("batch", file, "--keep-going")
		if got.code != want || strings.Count(got.out, "\n") != 1+strings.Count(rows, "\n") {
			t.Errorf("%q: exit %d, want %d: %s", rows, got.code, want, got.err)
		}
	}
}
