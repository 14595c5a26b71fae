package linear

import (
	"bytes"
	"strings"
	"testing"

	"brazebooth/internal/choice"
)

// Every choice can be asked about by its name.
func TestQuestionsAreTheChoices(t *testing.T) {
	var in strings.Builder
	for _, c := range choice.All() {
		in.WriteString("help " + c.Name + "\n")
	}
	var out bytes.Buffer
	if err := Run(t.Context(), Options{}, strings.NewReader(in.String()), &out); err != nil {
		t.Fatal(err)
	}
	if text := out.String(); strings.Contains(strings.ToLower(text), "no help on") {
		t.Errorf("a choice is unknown:\n%s", text)
	}
}
