// Mutate asks how good the tests are: it makes one small mistake at a time in a package, as a slip of the hand would, and
// counts how many of them the tests notice. Nothing in the tree is changed. Run it from the top of the project:
//
//	go run ./internal/mutate -n 0 -tests "./internal/quantity -rapid.nofailfile" ./internal/quantity
//	go run ./internal/mutate -n 120 -tests "-short -run Solve ./calc" -tests "-short ./calc ./calc_test" ./calc
//
// A mistake that nobody can notice, since the program does the same with it, is listed in explained.txt with the reason.
package main

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"time"
)

// choice is what was asked for on the command line.
type choice struct {
	n         int
	seed      uint64
	tests     [][]string // each the arguments of one go test, quick ones first
	work      int
	limit     time.Duration
	explained string
	again     string
	folder    string
}

func main() {
	c := asked()
	if err := c.all(); err != nil {
		fmt.Fprintln(os.Stderr, "mutate:", err)
		os.Exit(1)
	}
}

func asked() choice {
	var c choice
	flag.IntVar(&c.n, "n", 100, "mistakes to try; 0 for all")
	flag.Uint64Var(&c.seed, "seed", 1, "which of them")
	flag.Func("tests", "arguments of go test; given again for slower tests, which see only what the quicker ones missed; the package itself where none are given", func(s string) error {
		c.tests = append(c.tests, strings.Fields(s))
		return nil
	})
	flag.IntVar(&c.work, "work", 2, "how many at once")
	flag.DurationVar(&c.limit, "limit", 3*time.Minute, "time for one run; what takes longer counts as noticed")
	flag.StringVar(&c.explained, "explained", "internal/mutate/explained.txt", "mistakes that no test can notice, each with its reason")
	flag.StringVar(&c.again, "again", "", "try only what this file of an earlier run lists as not noticed")
	flag.Parse()
	if flag.NArg() != 1 {
		fmt.Fprintln(os.Stderr, "mutate: one folder is wanted: go run ./internal/mutate ./internal/quantity")
		os.Exit(2)
	}
	c.folder = flag.Arg(0)
	if c.tests == nil {
		c.tests = [][]string{{c.folder}}
	}
	return c
}

// all does the whole of it.
func (c *choice) all() error {
	list, err := slips(c.folder)
	if err != nil {
		return err
	}
	of := len(list)
	if c.again != "" {
		if list, err = missedIn(c.again, list); err != nil {
			return err
		}
	}
	why, err := explanations(c.explained)
	if err != nil {
		return err
	}
	return c.try(pick(list, c.n, c.seed), of, why)
}

// pick takes some of them, the same for the same seed.
func pick(list []slip, n int, seed uint64) []slip {
	rand.New(rand.NewPCG(seed, seed)).Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
	if n > 0 && n < len(list) {
		list = list[:n]
	}
	return list
}
