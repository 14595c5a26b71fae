package near

import (
	"reflect"
	"testing"
)

func TestNames(t *testing.T) {
	names := []string{"gauge", "gap", "gas", "stickout", "metal"}
	for word, want := range map[string][]string{
		"guage": {"gauge"}, "stick": {"stickout"}, "ga": {"gauge", "gap", "gas"}, "metals": {"metal"}, "x": nil,
		"banana": nil, "": nil,
	} {
		if got := Names(word, names); len(got) != len(want) || len(want) > 0 && !reflect.DeepEqual(got, want) {
			t.Errorf("Names(%q) = %q, want %q", word, got, want)
		}
	}
}

func TestOr(t *testing.T) {
	for want, names := range map[string][]string{"": nil, "a": {"a"}, "a or b": {"a", "b"}, "a, b or c": {"a", "b",
		"c"}} {
		if got := Or(names); got != want {
			t.Errorf("Or(%q) = %q, want %q", names, got, want)
		}
	}
}
