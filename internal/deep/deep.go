// Package deep decides how much of a large test runs: a sample of its cases, or all of them. Only tests import it.
//
// The environment decides, so that one setting reaches every package of a run:
//
//	BRAZEBOOTH_DEEP=1    all cases; a larger number makes that many times as many where there is no end to them
//	BRAZEBOOTH_SEED=7    another sample, and another course of whatever a test draws by chance
//	BRAZEBOOTH_TURN=others  the tests that take long and that the seed leaves out
package deep

import (
	"hash/crc32"
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

// Times is the value of BRAZEBOOTH_DEEP; 0 asks for a sample.
func Times() int { return int(number("BRAZEBOOTH_DEEP", 0)) }

// Run reports whether all cases are asked for.
func Run() bool { return Times() > 0 }

// Seed is the seed of all random numbers in tests.
func Seed() uint64 { return number("BRAZEBOOTH_SEED", 1) }

// number is a whole number from the environment. Anything else panics, so that a typing error does not run the default.
func number(name string, otherwise uint64) uint64 {
	text := os.Getenv(name)
	if text == "" {
		return otherwise
	}
	n, err := strconv.ParseUint(text, 10, 31)
	if err != nil {
		panic(name + "=" + text + " is not a whole number")
	}
	return n
}

// Many is the number of repetitions of an endless test: sample, or whole times BRAZEBOOTH_DEEP.
func Many(sample, whole int) int {
	if Run() {
		return whole * Times()
	}
	return sample
}

// draws counts the calls of Rand by each test.
var draws sync.Map

// Rand is a random source for one test. It is the same in each run with the same seed, which a failure prints; each
// call by a test gives another one.
func Rand(t testing.TB) *rand.Rand {
	t.Helper()
	count, again := draws.LoadOrStore(t.Name(), new(atomic.Uint64))
	if !again {
		t.Cleanup(func() {
			draws.Delete(t.Name())
			if t.Failed() {
				t.Logf("drawn by BRAZEBOOTH_SEED=%d", Seed())
			}
		})
	}
	h := count.(*atomic.Uint64).Add(1)
	for _, c := range []byte(t.Name()) {
		h = h*1099511628211 + uint64(c)
	}
	return rand.New(rand.NewPCG(Seed(), h))
}

// Of returns the cases that a test runs, in their order: all of them, or a sample of few: the first, the last and
// random ones between. A sample of one is a random case.
func Of[T any](t testing.TB, all []T, few int) []T {
	t.Helper()
	if Run() || len(all) <= few {
		return all
	}
	if few == 1 {
		return all[Rand(t).IntN(len(all)):][:1]
	}
	chosen := append([]int{0, len(all) - 1}, Rand(t).Perm(len(all) - 2)[:few-2]...)
	for i := 2; i < few; i++ {
		chosen[i]++
	}
	slices.Sort(chosen)
	sample := make([]T, few)
	for i, n := range chosen {
		sample[i] = all[n]
	}
	return sample
}

// turns is how many seeds it takes until every test that calls Turn has run.
const turns = 5

// Turn skips a test that takes long unless it is its turn: each seed runs a fifth of these tests, and five seeds that
// follow each other run all of them. With BRAZEBOOTH_DEEP each of them runs, with BRAZEBOOTH_TURN=others those that the
// seed leaves out, and with -short those that the test itself does not skip.
func Turn(t testing.TB) {
	t.Helper()
	if !Run() && !testing.Short() && !runs(t.Name()) {
		t.Skipf("takes long: BRAZEBOOTH_SEED=%d runs it", turn(t.Name()))
	}
}

// turn is the least seed that runs a test.
func turn(name string) uint64 { return uint64(crc32.ChecksumIEEE([]byte(name)) % turns) }

func runs(name string) bool {
	others := os.Getenv("BRAZEBOOTH_TURN") == "others"
	return (turn(name) == Seed()%turns) != others
}

// Patience is how long a test waits for an event: long enough for a slow machine, and short enough that the test fails
// with its own message before the whole run times out.
func Patience(t testing.TB) time.Duration {
	t.Helper()
	if d, ok := t.(interface{ Deadline() (time.Time, bool) }); ok {
		if end, limited := d.Deadline(); limited {
			return time.Until(end) / 4
		}
	}
	return 10 * time.Minute
}

// Comes waits until ok is true, at most for a test's Patience, and reports whether it was.
func Comes(t testing.TB, ok func() bool) bool {
	t.Helper()
	for end := time.Now().Add(Patience(t)); time.Now().Before(end); time.Sleep(10 * time.Millisecond) {
		if ok() {
			return true
		}
	}
	return ok()
}
