package deep

import (
	"flag"
	"os"
	"runtime/debug"
	"strconv"
	"testing"
)

// Roomy makes the tests of a package that allocates much and keeps little collect garbage a quarter as often, which was
// a tenth of their time.
func Roomy() { debug.SetGCPercent(400) }

// Main is TestMain for a package with random tests (pgregory.net/rapid). It sets their seed and their number of checks:
// sample, or the library's default times BRAZEBOOTH_DEEP. Flags of the command line keep their values. It does not
// return.
func Main(m *testing.M, sample int) {
	flag.Parse()
	given := map[string]bool{}
	flag.Visit(func(f *flag.Flag) { given[f.Name] = true })
	for name, n := range map[string]uint64{"rapid.seed": 971 + Seed(), "rapid.checks": uint64(Many(sample, 100))} {
		if !given[name] {
			_ = flag.Set(name, strconv.FormatUint(n, 10))
		}
	}
	os.Exit(m.Run())
}
