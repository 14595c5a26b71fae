package plain

import (
	"bytes"
	"encoding/json"
	"testing"
)

// The document means the same as before, and has no control characters for a terminal.
func FuzzJSON(f *testing.F) {
	for _, s := range []string{"plain", "\u009b31m", "\u202eabc", "a\x7fb", "\U000e0001", "Gärtnerei 焊", "\u2028",
		"\xff", "\ufffd"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		var doc bytes.Buffer
		enc := json.NewEncoder(&doc)
		enc.SetEscapeHTML(false)
		if err := enc.Encode(map[string]string{"text": s}); err != nil {
			t.Fatal(err)
		}
		safe := JSON(doc.Bytes())
		var a, b map[string]string
		if err := json.Unmarshal(doc.Bytes(), &a); err != nil {
			t.Fatal(err)
		}
		if err := json.Unmarshal(safe, &b); err != nil || a["text"] != b["text"] {
			t.Fatalf("%q became %q (%v)", a["text"], b["text"], err)
		}
		for _, r := range string(safe) {
			if r != '\n' && (r == 0x7f || r >= 0x80 && hidden(r) || r < 0x20) {
				t.Fatalf("%q holds %U", safe, r)
			}
		}
	})
}
