// Bench measures what a test cannot check: how fast the built program starts and how large it is, compared with common
// programs. Every result is a ratio or a size; each pair runs interleaved, so that a busy machine slows both. It is a
// separate module, never shipped. From the top of the project: go run -C internal/bench .
//
// With an argument it measures something else: load, many guests of a server with a key a second; churn, guests that
// come and go. .ci/compare compares two commits.
package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

func main() {
	err := os.Chdir("../..") // the program's own module
	if err == nil {
		err = choose(os.Args[1:])
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "bench:", err)
		os.Exit(1)
	}
}

func choose(args []string) error {
	if len(args) == 0 {
		return run()
	}
	switch args[0] {
	case "load":
		return load(args[1:])
	case "churn":
		return churn(args[1:])
	}
	return fmt.Errorf("%q is nothing to measure: load, churn, or nothing for the program itself", args[0])
}

func run() error {
	dir, own, err := built()
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	if err := size(own); err != nil {
		return err
	}
	if err := start(own); err != nil {
		return err
	}
	if err := command(own); err != nil {
		return err
	}
	if err := frames(dir, own); err != nil {
		return err
	}
	if err := keys(own); err != nil {
		return err
	}
	return models()
}

// built is the program, built in a new folder.
func built() (dir, program string, err error) {
	if dir, err = os.MkdirTemp("", "bench"); err != nil {
		return "", "", err
	}
	program = filepath.Join(dir, "brazebooth")
	if err = build(program, "."); err != nil {
		return "", "", errors.Join(err, os.RemoveAll(dir))
	}
	return dir, program, nil
}

// build builds a program as it is released: without C, whose loader alone takes a fifth of a short command's time.
func build(out, pkg string) error {
	cmd := exec.Command("go", "build", "-trimpath", "-ldflags", "-s -w", "-o", out, pkg)
	cmd.Env = append(os.Environ(), "CGO_ENABLED=0")
	b, err := cmd.CombinedOutput()
	if err != nil {
		return fmt.Errorf("go build %s: %w\n%s", pkg, err, b)
	}
	return nil
}

func size(own string) error {
	info, err := os.Stat(own)
	if err == nil {
		fmt.Printf("binary                             %.1f MB\n", float64(info.Size())/1e6)
	}
	return err
}

// command compares the card command's processor time with that of an interpreter that only starts; elapsed time would
// include other work of the machine.
func command(own string) error {
	python, err := interpreter()
	if err != nil {
		fmt.Println("card, feed and travel given        not compared: no python3 here")
		return nil
	}
	ratio, err := interleave(60, func() (time.Duration, error) {
		return processor(exec.Command(own, "card", "--feed", "250ipm", "--travel", "6"))
	}, func() (time.Duration, error) { return processor(exec.Command(python, "-c", "pass")) })
	if err == nil {
		fmt.Printf("card, feed and travel given        %.2f x python3 -c pass, processor time\n", ratio)
	}
	return err
}

// interpreter is the path of python3 itself, not of a wrapper script.
func interpreter() (string, error) {
	out, err := exec.Command("python3", "-c", "import sys; print(sys.executable)").Output()
	return strings.TrimSpace(string(out)), err
}

func processor(cmd *exec.Cmd) (time.Duration, error) {
	if err := cmd.Run(); err != nil {
		return 0, err
	}
	return cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime(), nil
}

// interleave runs two measurements in turn and returns the ratio of their medians.
func interleave(n int, a, b func() (time.Duration, error)) (float64, error) {
	var as, bs []time.Duration
	for range n {
		x, err := a()
		if err != nil {
			return 0, err
		}
		y, err := b()
		if err != nil {
			return 0, err
		}
		as, bs = append(as, x), append(bs, y)
	}
	return float64(median(as)) / float64(median(bs)), nil
}

func median(list []time.Duration) time.Duration {
	slices.Sort(list)
	return list[len(list)/2]
}
