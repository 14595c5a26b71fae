package deep

import (
	"flag"
	"os"
	"runtime/debug"
	"strconv"
	"testing"
)

// Roomy lets the tests of a package that makes much and keeps little collect garbage a quarter as often: that was a tenth
// of their time.
func Roomy() { debug.SetGCPercent(400) }

// Main is what TestMain of a package with random tests (pgregory.net/rapid) does: they follow from the seed, make so
// many checks each in a sample and as many as the library does by itself else. A flag that was given stays. It does not
// come back.
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
