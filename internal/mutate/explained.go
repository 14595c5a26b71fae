package main

import (
	"fmt"
	"os"
	"strings"
)

// explanations reads mistakes with their reasons: a mistake as it is printed, one a line, and under it or under several
// the reason, which begins with a blank. Lines with # are for the reader.
func explanations(name string) (map[string]string, error) {
	b, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	why := map[string]string{}
	var waiting []string
	for line := range strings.Lines(string(b)) {
		line = strings.TrimRight(line, " \n")
		switch {
		case line == "" || line[0] == '#':
		case line[0] != ' ':
			waiting = append(waiting, line)
		case len(waiting) == 0:
			return nil, fmt.Errorf("%s: %q explains nothing", name, strings.TrimSpace(line))
		default:
			for _, s := range waiting {
				why[s] = strings.TrimSpace(line)
			}
			waiting = nil
		}
	}
	if len(waiting) > 0 {
		return nil, fmt.Errorf("%s: %q has no reason", name, waiting[0])
	}
	return why, nil
}
