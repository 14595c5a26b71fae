package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"time"
)

// compare runs two commits against each other on this machine: everything is measured in turn, so that what else the machine
// does slows both, and judged by the ratio alone. It fails where even the lower quartile of a ratio is over the limit.
func compare(args []string) error {
	f := flag.NewFlagSet("compare", flag.ContinueOnError)
	rounds := f.Int("n", 15, "rounds")
	limit := f.Float64("limit", 1.15, "how much slower the new one may be")
	if err := f.Parse(args); err != nil {
		return err
	}
	if f.NArg() < 1 || f.NArg() > 2 {
		return errors.New("name the old commit, and the new one if it is not HEAD: go run ./internal/bench compare HEAD~1")
	}
	now := "HEAD"
	if f.NArg() == 2 {
		now = f.Arg(1)
	}
	dir, err := os.MkdirTemp("", "compare")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	var sides [2]string
	for i, commit := range []string{f.Arg(0), now} {
		sides[i] = filepath.Join(dir, []string{"old", "new"}[i])
		if err := checkout(commit, sides[i]); err != nil {
			return err
		}
		defer exec.Command("git", "worktree", "remove", "--force", sides[i]).Run() //nolint:errcheck
	}
	return contest(sides, *rounds, *limit)
}

// checkout puts a commit into a folder of its own and builds what is run of it.
func checkout(commit, folder string) error {
	if out, err := exec.Command("git", "worktree", "add", "--detach", folder, commit).CombinedOutput(); err != nil {
		return fmt.Errorf("%s: %w\n%s", commit, err, out)
	}
	for _, b := range [][]string{{"build", "-o", "program", "."}, {"test", "-c", "-o", "calc.bench", "./calc"}, {"test", "-c", "-o", "tui.bench", "./tui"}} {
		cmd := exec.Command("go", b...)
		cmd.Dir = folder
		if out, err := cmd.CombinedOutput(); err != nil {
			return fmt.Errorf("%s: go %s: %w\n%s", commit, b[0], err, out)
		}
	}
	return nil
}

// trial is something that both sides do.
type trial struct {
	name string
	run  func(folder string) (time.Duration, error)
}

var trials = []trial{
	{"gauge 16", program("gauge", "16")},
	{"card, feed and travel given", program("card", "--feed", "250ipm", "--travel", "6")},
	{"card, suggested", program("card", "--metal", "galvanized", "--gauge", "20ga")},
	{"first frame, 80x24", func(folder string) (time.Duration, error) { return frame("help", filepath.Join(folder, "program")) }},
	{"Solve, given", benchmark("calc", "SolveGiven", "200x")},
	{"Solve, suggested", benchmark("calc", "SolveSearch", "20x")},
	{"Window", benchmark("calc", "Window", "3x")},
	{"a key that selects", benchmark("tui", "Select", "2000x")},
	{"a key that changes", benchmark("tui", "Change", "50x")},
}

func program(args ...string) func(string) (time.Duration, error) {
	return func(folder string) (time.Duration, error) {
		return timed(exec.Command(filepath.Join(folder, "program"), args...))
	}
}

var perOp = regexp.MustCompile(`([0-9.]+) ns/op`)

func benchmark(room, name, times string) func(string) (time.Duration, error) {
	return func(folder string) (time.Duration, error) {
		cmd := exec.Command(filepath.Join(folder, room+".bench"), "-test.run", "^$", "-test.bench", "^Benchmark"+name+"$", "-test.benchtime", times)
		cmd.Dir = filepath.Join(folder, room)
		out, err := cmd.CombinedOutput()
		m := perOp.FindSubmatch(out)
		if err != nil || m == nil {
			return 0, fmt.Errorf("benchmark %s: %w\n%s", name, err, out)
		}
		ns, err := strconv.ParseFloat(string(m[1]), 64)
		return time.Duration(ns), err
	}
}

// contest runs every trial on both sides in turn and judges the ratios.
func contest(sides [2]string, rounds int, limit float64) error {
	slower := 0
	fmt.Printf("%-30s %8s %8s %8s\n", "new over old", "median", "lower", "upper")
	for _, t := range trials {
		ratios, err := ratiosOf(t, sides, rounds)
		if err != nil {
			return err
		}
		low, mid, high := ratios[len(ratios)/4], ratios[len(ratios)/2], ratios[len(ratios)*3/4]
		verdict := ""
		if low > limit {
			verdict = "  slower"
			slower++
		}
		fmt.Printf("%-30s %8.3f %8.3f %8.3f%s\n", t.name, mid, low, high, verdict)
	}
	if slower > 0 {
		return fmt.Errorf("%d of %d are slower by more than the limit of %.2f", slower, len(trials), limit)
	}
	return nil
}

// ratiosOf are the ratios of the rounds, smallest first; who begins changes from round to round.
func ratiosOf(t trial, sides [2]string, rounds int) ([]float64, error) {
	var list []float64
	for n := range rounds {
		var took [2]time.Duration
		for i := range 2 {
			side := (i + n) % 2
			var err error
			if took[side], err = t.run(sides[side]); err != nil {
				return nil, err
			}
		}
		list = append(list, float64(took[1])/float64(took[0]))
	}
	slices.Sort(list)
	return list, nil
}
