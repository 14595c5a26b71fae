// Mutate asks how good the tests are: it makes one small mistake at a time in a package, as a slip of the hand would, and
// counts how many of them the tests notice. Nothing in the tree is changed. Run it from the top of the project:
//
//	go run ./internal/mutate -n 200 ./internal/quantity
//	go run ./internal/mutate -n 100 -tests "./calc ./calc_test -short" ./calc
package main

import (
	"context"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"time"
)

func main() {
	n := flag.Int("n", 100, "mistakes to try; 0 for all")
	seed := flag.Uint64("seed", 1, "which of them")
	tests := flag.String("tests", "", "arguments of go test; the package itself where none are given")
	work := flag.Int("work", 2, "how many at once")
	limit := flag.Duration("limit", 3*time.Minute, "time for one run; what takes longer counts as noticed")
	flag.Parse()
	if flag.NArg() != 1 {
		fmt.Fprintln(os.Stderr, "mutate: one folder is wanted: go run ./internal/mutate ./internal/quantity")
		os.Exit(2)
	}
	if *tests == "" {
		*tests = flag.Arg(0)
	}
	list, err := slips(flag.Arg(0))
	if err == nil {
		err = try(pick(list, *n, *seed), len(list), strings.Fields(*tests), *work, *limit)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "mutate:", err)
		os.Exit(1)
	}
}

// pick takes some of them, the same for the same seed.
func pick(list []slip, n int, seed uint64) []slip {
	rand.New(rand.NewPCG(seed, seed)).Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
	if n > 0 && n < len(list) {
		list = list[:n]
	}
	return list
}

// try runs the tests against each and prints those that nobody noticed.
func try(list []slip, of int, tests []string, work int, limit time.Duration) error {
	dir, err := os.MkdirTemp("", "mutate")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	if out, err := run(context.Background(), nil, tests); err != nil {
		return fmt.Errorf("the tests fail without any mistake: %w\n%s", err, out)
	}
	var t tally
	jobs := make(chan int)
	var wg sync.WaitGroup
	for w := range work {
		own := filepath.Join(dir, fmt.Sprint(w))
		wg.Go(func() {
			for i := range jobs {
				t.count(&list[i], verdict(own, &list[i], tests, limit))
			}
		})
	}
	for i := range list {
		jobs <- i
	}
	close(jobs)
	wg.Wait()
	tried := t.noticed + t.missed
	fmt.Printf("%d mistakes of %d possible: %d noticed, %d not: %.1f %% noticed; %d did not compile or broke the run\n",
		len(list), of, t.noticed, t.missed, 100*float64(t.noticed)/float64(max(1, tried)), t.broken)
	return nil
}

type tally struct {
	mu                      sync.Mutex
	noticed, missed, broken int
}

func (t *tally) count(s *slip, v outcome) {
	t.mu.Lock()
	defer t.mu.Unlock()
	switch v {
	case noticed:
		t.noticed++
	case broken:
		t.broken++
	default:
		t.missed++
		fmt.Printf("not noticed: %s\n", s)
	}
}
