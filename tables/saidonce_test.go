package tables

import (
	"errors"
	"strings"
	"testing"

	"brazebooth/internal/mistake"
)

// A coating's mass that is not listed leads to coats of the same kind. A stainless steel that hardens or
// becomes coarse-grained is not mistaken for 304.
func TestHintsStayWithTheirKind(t *testing.T) {
	for text, want := range map[string]string{"ZF140": "ZF", "G91": "G", "ZF99": "ZF"} {
		_, err := FindCoating(text)
		m := mistake.Of(err)
		if m == nil {
			t.Errorf("%s: %v", text, err)
			continue
		}
		word, _, _ := strings.Cut(strings.TrimPrefix(m.Hint, "type "), ",")
		if letters(fold(word)) != fold(want) {
			t.Errorf("%s: %s", text, m.Hint)
		}
	}
	for _, text := range []string{"stainless 430", "430", "1.4016", "SS409", "ferritic"} {
		if _, err := FindMetal(text); !errors.Is(err, ErrNotBrazed) {
			t.Errorf("%s: %v", text, err)
		}
	}
	if term, ok := FindTerm("flux"); !ok || !strings.Contains(term.Says, "None is needed") {
		t.Errorf("flux: %+v", term)
	}
}
