package shop

import "testing"

// A slip in a name's letters is told from another power source of the same kind, and from a longer name.
func TestASlipIsToldFromAnotherName(t *testing.T) {
	for _, c := range []struct {
		name, other string
		slip        bool
	}{
		{"boot 1", "booth 1", true}, {"Boot 1", "booth 1", true}, {"bosth 12", "booth 12", true}, {"garaeg", "garage",
			true},
		{"booth 2", "booth 1", false}, {"booth 11", "booth 1", false}, {"booth", "booth 1", false}, {"A", "B", false},
		{"left", "right", false}, {"shed", "shop", false}, {"200 A", "250 A", false}, {"booth 1", "booth 1", false},
	} {
		if got := slipOf(c.name, c.other); got != c.slip {
			t.Errorf("%q beside %q: slip %v", c.name, c.other, got)
		}
	}
}
