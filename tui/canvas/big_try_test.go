package canvas

import (
	"fmt"
	"github.com/charmbracelet/colorprofile"
	"testing"
)

func TestTry(t *testing.T) {
	th := ThemeOf(ThemeNone, true, colorprofile.TrueColor, false)
	for _, s := range []Size{SizeM, SizeL, {4, 5}, {5, 6}, {6, 7}, {8, 11}, {10, 12}} {
		for _, x := range []string{"0123456789.,-/>%", "ABCDEFGHIJKLM", "NOPQRSTUVWXYZ", "✓▼▲✕◇~?■"} {
			fmt.Println(s, s.Width(x))
			fmt.Println(BigText(th, s, Plain, x, false))
		}
	}
}
