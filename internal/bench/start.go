package main

import (
	"fmt"
	"os"
	"os/exec"
	"regexp"
	"strconv"
)

var clock = regexp.MustCompile(`([0-9.]+) ms clock`)

// start sums the initialisation time of the packages, as the Go runtime counts it.
func start(own string) error {
	cmd := exec.Command(own, "version")
	cmd.Env = append(os.Environ(), "GODEBUG=inittrace=1")
	out, err := cmd.CombinedOutput()
	if err != nil {
		return fmt.Errorf("%w\n%s", err, out)
	}
	total := 0.0
	for _, m := range clock.FindAllSubmatch(out, -1) {
		v, err := strconv.ParseFloat(string(m[1]), 64)
		if err != nil {
			return err
		}
		total += v
	}
	fmt.Printf("package initialisation             %.2f ms (GODEBUG=inittrace=1)\n", total)
	return nil
}
