package batch

import (
	"bytes"
	"strings"
	"testing"

	"brazebooth/internal/choice"
)

// A table may have a column for every choice, and for nothing else.
func TestColumnsAreTheChoices(t *testing.T) {
	read := func(name string) error {
		_, err := Run(t.Context(), strings.NewReader(name+"\n"), &bytes.Buffer{}, Options{Format: CSV, Workers: 1})
		return err
	}
	for _, c := range choice.All() {
		if err := read(c.Name); err != nil {
			t.Errorf("%s: %v", c.Name, err)
		}
	}
	for name, is := range map[string]bool{"power-source": true, "thickness": false, "phi": false, "currency": false,
		"hands": false} {
		if err := read(name); (err == nil) != is {
			t.Errorf("a column is called %s: %v", name, err)
		}
	}
}
