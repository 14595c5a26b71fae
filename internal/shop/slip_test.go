package shop

import "testing"

// A misspelt name is distinguished from another power source's name and from a longer name.
func TestMisspeltOrAnotherName(t *testing.T) {
	for _, c := range []struct {
		name, other string
		slip        bool
	}{
		{"boot 1", "booth 1", true}, {"Boot 1", "booth 1", true}, {"bosth 12", "booth 12", true}, {"garaeg", "garage",
			true},
		{"booth 2", "booth 1", false}, {"booth 11", "booth 1", false}, {"booth", "booth 1", false}, {"A", "B", false},
		{"left", "right", false}, {"shed", "shop", false}, {"200 A", "250 A", false}, {"booth 1", "booth 1", false},
	} {
		if got := misspeltOf(c.name, c.other); got != c.slip {
			t.Errorf("%q beside %q: slip %v", c.name, c.other, got)
		}
	}
}
