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
func verdict(dir string, s *slip, tests []string, limit time.Duration) outcome {
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
	ctx, stop := context.WithTimeout(context.Background(), limit)
	defer stop()
	out, err := run(ctx, []string{"-overlay", overlay}, tests)
	switch {
	case err == nil:
		return missed
	case bytes.Contains(out, []byte("[build failed]")), bytes.Contains(out, []byte("[setup failed]")):
		return broken
	}
	return noticed
}

func run(ctx context.Context, flags, tests []string) ([]byte, error) {
	args := append([]string{"test", "-count=1", "-vet=off", "-failfast"}, flags...)
	cmd := exec.CommandContext(ctx, "go", append(args, tests...)...)
	cmd.WaitDelay = 5 * time.Second
	return cmd.CombinedOutput()
}
