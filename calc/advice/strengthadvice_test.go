package advice_test

import (
	"math"
	"regexp"
	"strconv"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/deep"
)

var (
	adviceLength = regexp.MustCompile(`a seam of (\d+) mm with this throat`)
	adviceThroat = regexp.MustCompile(`, or a throat of ([\d.]+) mm at this length`)
)

// adviceOf is the length and the throat that the page says would be enough; 0 where it says none.
func adviceOf(p *advice.Page) (length, throat float64) {
	for _, r := range p.Reasons {
		if m := adviceLength.FindStringSubmatch(r.Text); m != nil {
			length, _ = strconv.ParseFloat(m[1], 64)
		}
		if m := adviceThroat.FindStringSubmatch(r.Text); m != nil {
			throat, _ = strconv.ParseFloat(m[1], 64)
		}
	}
	return length, throat
}

func overloaded(t *testing.T, j calc.Job) (bool, advice.Page) {
	t.Helper()
	card := mustSolve(t, j)
	p, err := advice.Strength(&card)
	if err != nil {
		t.Fatalf("%+v: %v", j, err)
	}
	for _, w := range p.Warnings {
		if w.Code == "overloaded" {
			return true, p
		}
	}
	return false, p
}

// Who follows the page's advice is not told that the load is too much; a millimetre less is too little.
func TestStrengthAdviceIsEnough(t *testing.T) {
	if testing.Short() {
		t.Skip("hundreds of loads")
	}
	throats := 0
	for _, base := range []calc.Job{
		{Metal: "stainless-304", Thickness: calc.Some(1.5), Joint: "tee", Length: calc.Some(35)},
		{Metal: "mild-steel", Gauge: 18, Joint: "lap", Length: calc.Some(120), Safety: calc.Some(2.7)},
		{Metal: "galvanized", Gauge: 20, Joint: "butt", Length: calc.Some(300), Filler: "cual8"},
		{Metal: "mild-steel", Gauge: 14, Joint: "lap", Leg: calc.Some(2), Length: calc.Some(55)},
		{Metal: "mild-steel", Thickness: calc.Some(2), Joint: "tee", Throat: calc.Some(1.4), Length: calc.Some(80)},
	} {
		base.Feed, base.Travel = calc.Some(6), calc.Some(7) // a suggestion would change with the throat that is asked for
		for _, load := range deep.Of(t, loads(), 3) {
			j := base
			j.Load = calc.Some(load)
			_, p := overloaded(t, j)
			length, throat := adviceOf(&p)
			j.Length = calc.Some(length)
			if bad, p := overloaded(t, j); bad {
				t.Errorf("%s %s: %g kN on the advised %g mm: %v", j.Metal, j.Joint, load, length, p.Warnings)
			}
			j.Length = calc.Some(max(1, length-1))
			if bad, _ := overloaded(t, j); length > 1 && !bad {
				t.Errorf("%s %s: %g kN is said to need %g mm, and a millimetre less will do", j.Metal, j.Joint, load, length)
			}
			if throat >= 0.2 && throat <= 50 { // what a card takes
				throats++
				j.Length, j.Throat = base.Length, calc.Some(throat)
				if bad, p := overloaded(t, j); bad {
					t.Errorf("%s %s: %g kN on the advised throat of %g mm: %v", j.Metal, j.Joint, load, throat, p.Warnings)
				}
			}
		}
	}
	if throats == 0 {
		t.Error("no throat was ever advised")
	}
}

// loads are round ones and odd ones, kN.
func loads() (list []float64) {
	for i := 1; i <= 60; i++ {
		list = append(list, float64(i)/20, 0.37*math.Pow(1.07, float64(i)))
	}
	return append(list, 1.9049, 2, 10, 99.5, 100)
}

// A load with more figures than the allowable one is not said to exceed itself.
func TestOverloadIsToldApart(t *testing.T) {
	j := calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Length: calc.Some(100), Load: calc.Some(1)}
	card := mustSolve(t, j)
	p, err := advice.Strength(&card)
	if err != nil {
		t.Fatal(err)
	}
	allowed, _ := p.Figure("allowable_load")
	j.Load = calc.Some(allowed.Value * 1.001)
	bad, p := overloaded(t, j)
	if !bad {
		t.Fatalf("%g kN is let pass, %g is allowed", j.Load.V, allowed.Value)
	}
	for _, w := range p.Warnings {
		m := regexp.MustCompile(`^([\d.]+) kN is more than the allowable ([\d.]+) kN`).FindStringSubmatch(w.Text)
		if m != nil && m[1] == m[2] {
			t.Error(w.Text)
		}
	}
}

func mustSolve(t *testing.T, j calc.Job) calc.Card {
	t.Helper()
	card, err := calc.Solve(j)
	if err != nil {
		t.Fatalf("%+v: %v", j, err)
	}
	return card
}
