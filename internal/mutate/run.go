package main

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"time"
)

type outcome int

const (
	missed outcome = iota
	noticed
	broken
)

// verdict runs the tests with one mistake in place of the file, by go's own overlay.
func (c *choice) verdict(dir string, s *slip) outcome {
	file, overlay := filepath.Join(dir, "mistake.go"), filepath.Join(dir, "overlay.json")
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return broken
	}
	if err := os.WriteFile(file, s.source(), 0o600); err != nil {
		return broken
	}
	b, err := json.Marshal(map[string]map[string]string{"Replace": {s.file: file}})
	if err != nil || os.WriteFile(overlay, b, 0o600) != nil {
		return broken
	}
	for _, tests := range c.tests {
		out, err := run([]string{"-overlay", overlay}, tests, c.limit)
		switch {
		case err == nil:
			continue
		case bytes.Contains(out, []byte("[build failed]")), bytes.Contains(out, []byte("[setup failed]")):
			return broken
		}
		return noticed
	}
	return missed
}

// run is one go test. The limit is the tests' own, so that what never ends is stopped and not left behind.
func run(flags, tests []string, limit time.Duration) ([]byte, error) {
	ctx, stop := context.WithTimeout(context.Background(), 2*limit+time.Minute)
	defer stop()
	args := append([]string{"test", "-count=1", "-vet=off", "-failfast", "-timeout=" + limit.String()}, flags...)
	cmd := exec.CommandContext(ctx, "go", append(args, tests...)...)
	cmd.WaitDelay = 5 * time.Second
	return cmd.CombinedOutput()
}
