package calc_test

import (
	"testing"

	"brazebooth/calc"
)

func TestNameAndNote(t *testing.T) {
	for _, c := range [][3]string{{"Argon", "", "Argon"}, {"Bare sheet", "bare sheet, cleaned",
		"bare sheet, cleaned"}, {"Argon", "Flows slowly", "Argon. Flows slowly"}} {
		if got := calc.NameAndNote(c[0], c[1]); got != c[2] {
			t.Errorf("%q, want %q", got, c[2])
		}
	}
}

// Telling lists a figure's inputs, strongest first, without those that this card computed.
func TestTellingInputs(t *testing.T) {
	b := calc.Basis{Inputs: []calc.Input{{Name: "little", Sensitivity: 0.4}, {Name: "feed", Sensitivity: 3},
		{Name: "area", Sensitivity: 9, Derived: true}, {Name: "travel", Sensitivity: -5}}}
	list := b.Telling()
	if len(list) != 2 || list[0].Name != "travel" || list[1].Name != "feed" {
		t.Errorf("%+v", list)
	}
}
