package program

import (
	"runtime"
	"testing"
)

func TestLocale(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("elsewhere a terminal is UTF-8")
	}
	for _, c := range []struct {
		env  map[string]string
		name string
		utf8 bool
	}{
		{map[string]string{"LANG": "en_US.UTF-8"}, "en_US.UTF-8", true}, {map[string]string{"LANG": "en_US.UTF-8",
			"LC_ALL": "C"}, "C", false},
		{map[string]string{"LC_CTYPE": "de_DE.utf8", "LANG": "C"}, "de_DE.utf8", true}, {nil, "", false},
	} {
		if name, utf8 := locale(func(k string) string { return c.env[k] }); name != c.name || utf8 != c.utf8 {
			t.Errorf("%v: %q, %v", c.env, name, utf8)
		}
	}
}

func TestBackground(t *testing.T) {
	for text, want := range map[string]string{"15;0": "dark", "0;15": "light", "0;default;15": "light", "": "",
		"nonsense": ""} {
		if got := background(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
