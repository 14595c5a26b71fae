package tables

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"
)

// Classes that differ by one letter are different coats: of aluminium with silicon, aluminium with zinc, zinc,
// and zinc with magnesium. None is mistaken for another, whatever its mass.
func TestCoatClassesAreNotMixedUp(t *testing.T) {
	says := map[string]string{"AZ": "43 %", "ZM": "as any zinc"}
	for mass := 30; mass <= 430; mass += 5 {
		for _, class := range []string{"AS", "AZ", "ZM", "Z", "ZF", "ZA"} {
			text := class + strconv.Itoa(mass)
			c, err := FindCoating(text)
			if says[class] != "" && !errors.Is(err, ErrNotBrazed) {
				t.Errorf("%s is not refused by name: %v", text, err)
			}
			switch {
			case err == nil && class == "AS":
				if m, _ := FindMetal("aluminized"); c.Kind != AluSilicon || m.ID == "" ||
					math.Abs(2*c.Side.V-float64(mass)) > 4 {
					t.Errorf("%s: %s of %g g/m2 on each side", text, c.Name, c.Side.V)
				}
			case err == nil && c.ID != text:
				t.Errorf("%s is taken for %s", text, c.ID)
			case errors.Is(err, ErrNotBrazed) && (says[class] == "" || !strings.Contains(err.Error(), says[class])):
				t.Errorf("%s: %v", text, err)
			}
		}
	}
}
