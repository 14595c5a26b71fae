package calc_test

import (
	"strings"
	"testing"

	"brazebooth/calc"
)

func TestSubstitutedPutsTheNumbersIn(t *testing.T) {
	b := calc.Basis{Formula: "{eta}·{U}·{I}/{v}", Inputs: []calc.Input{
		{Symbol: "eta", Value: 0.84}, {Symbol: "U", Value: 15.25, Unit: "V"}, {Symbol: "I", Value: 96.53, Unit: "A"},
		{Symbol: "v", Value: 6, Unit: "mm/s"}}}
	if got, want := b.Substituted(), "0.84·(15.25 V)·(96.53 A)/(6 mm/s)"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := b.Plain(), "η·U·I/v"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestEveryFormulaIsFilledIn(t *testing.T) {
	for _, j := range []calc.Job{{}, {Mode: "timed", Joint: "butt", Gap: calc.Some(2)}, {Mode: "pulsed",
		Amps: calc.Some(90)}} {
		card := mustSolve(t, j)
		for _, f := range card.Figures {
			if s := f.Basis.Substituted() + f.Basis.Plain(); strings.ContainsAny(s, "{}_") || s == "" {
				t.Errorf("%s: %q", f.Name, s)
			}
			for _, piece := range strings.Split(f.Basis.Formula, "{")[1:] {
				symbol, _, _ := strings.Cut(piece, "}")
				if !hasSymbol(f.Basis.Inputs, symbol) {
					t.Errorf("%s: nothing is put in for %s in %q", f.Name, symbol, f.Basis.Formula)
				}
			}
		}
	}
}

func hasSymbol(inputs []calc.Input, symbol string) bool {
	for _, in := range inputs {
		if in.Symbol == symbol {
			return true
		}
	}
	return false
}
