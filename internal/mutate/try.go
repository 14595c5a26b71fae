package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
)

// try runs the tests against each and prints those that nobody noticed.
func (c *choice) try(list []slip, of int, why map[string]string) error {
	dir, err := os.MkdirTemp("", "mutate")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	for _, tests := range c.tests {
		if out, err := run(nil, tests, c.limit); err != nil {
			return fmt.Errorf("the tests fail without any mistake: %w\n%s", err, out)
		}
	}
	t := tally{why: why}
	jobs := make(chan int)
	var wg sync.WaitGroup
	for w := range c.work {
		own := filepath.Join(dir, fmt.Sprint(w))
		wg.Go(func() {
			for i := range jobs {
				t.count(&list[i], c.verdict(own, &list[i]))
			}
		})
	}
	for i := range list {
		jobs <- i
	}
	close(jobs)
	wg.Wait()
	fmt.Println(t.line(len(list), of))
	return nil
}

// tally counts what came of each.
type tally struct {
	mu                                 sync.Mutex
	why                                map[string]string
	noticed, missed, explained, broken int
}

func (t *tally) count(s *slip, v outcome) {
	t.mu.Lock()
	defer t.mu.Unlock()
	_, known := t.why[s.String()]
	switch {
	case v == broken:
		t.broken++
	case v == noticed:
		t.noticed++
		if known {
			fmt.Printf("explained, yet noticed: %s\n", s)
		}
	case known:
		t.explained++
	default:
		t.missed++
		fmt.Printf("%s%s  (line %d)\n", notNoticed, s, s.line)
	}
}

// line sums up. The share is of those that could be noticed.
func (t *tally) line(tried, of int) string {
	s := fmt.Sprintf("%d mistakes of %d possible: %d noticed, %d not: %.1f %% noticed", tried, of, t.noticed, t.missed, 100*float64(t.noticed)/float64(max(1, t.noticed+t.missed)))
	if t.explained > 0 {
		s += fmt.Sprintf("; %d explained", t.explained)
	}
	if t.broken > 0 {
		s += fmt.Sprintf("; %d did not compile", t.broken)
	}
	return s
}

const notNoticed = "not noticed: "

// missedIn keeps of the list what an earlier run printed as not noticed.
func missedIn(name string, list []slip) ([]slip, error) {
	b, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	wanted := map[string]bool{}
	for line := range strings.Lines(string(b)) {
		if s, ok := strings.CutPrefix(line, notNoticed); ok {
			if at := strings.LastIndex(s, "  (line "); at >= 0 {
				wanted[s[:at]] = true
			}
		}
	}
	var kept []slip
	for i := range list {
		if wanted[list[i].String()] {
			kept = append(kept, list[i])
		}
	}
	return kept, nil
}
