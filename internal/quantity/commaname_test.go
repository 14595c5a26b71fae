package quantity

import "testing"

// A letter, a point or an underscore before a number makes it part of a name; no other character does.
func TestCommaKnowsLetters(t *testing.T) {
	for in, want := range map[string]string{
		"A1.5 Z1.5 a1.5 z1.5 _1.5": "A1.5 Z1.5 a1.5 z1.5 _1.5", "@1.5 [1.5] `1.5` {1.5}": "@1,5 [1,5] `1,5` {1,5}",
		"1.5_mm 2.5 mm":      "1.5_mm 2,5 mm",
		".035 in (0.889 mm)": ".035 in (0,889 mm)", "1.5": "1,5", "9.0": "9,0", "0.9a": "0,9a", "...": "...",
		"..1.5": "..1.5", "1..5": "1..5", "x.1.5": "x.1.5",
	} {
		if got := Comma(in); got != want {
			t.Errorf("Comma(%q) = %q, want %q", in, got, want)
		}
	}
}
