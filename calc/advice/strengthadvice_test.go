package advice_test

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

var (
	adviceLength = regexp.MustCompile(`a seam of (\d+) mm with this throat`)
	adviceThroat = regexp.MustCompile(`, or a throat of ([\d.]+) mm at this length`)
)

// adviceOf is the length and the throat that the page says would be enough; 0 if it names none.
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

// The load is allowed on a seam that follows the page's advice; a millimetre less is too little.
func TestStrengthAdviceIsEnough(t *testing.T) {
	if testing.Short() {
		t.Skip("hundreds of loads")
	}
	const shortest = 30 // mm, of a fillet that carries by EN 1993-1-8; no throat here is over 5 mm
	throats := 0
	for _, base := range []calc.Job{
		{Metal: "stainless-304", Thickness: calc.Some(1.5), Joint: "tee", Length: calc.Some(35)},
		{Metal: "mild-steel", Gauge: 18, Joint: "lap", Length: calc.Some(120), Safety: calc.Some(2.7)},
		{Metal: "galvanized", Gauge: 20, Joint: "butt", Length: calc.Some(300), Filler: "cual8"},
		{Metal: "mild-steel", Gauge: 14, Joint: "lap", Leg: calc.Some(2), Length: calc.Some(55)},
		{Metal: "mild-steel", Thickness: calc.Some(2), Joint: "tee", Throat: calc.Some(1.4), Length: calc.Some(80)},
	} {
		card := mustSolve(t, base) // a suggested setting would change with the throat
		base.Feed, base.Travel = card.Used.Feed, card.Used.Travel
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
			if bad, _ := overloaded(t, j); length > shortest && !bad {
				t.Errorf("%s %s: %g kN is said to need %g mm, and a millimetre less will do", j.Metal, j.Joint, load,
					length)
			}
			if throat >= 0.2 && throat <= 50 { // the range that a card accepts
				throats++
				j.Length, j.Throat = base.Length, calc.Some(throat)
				if bad, p := overloaded(t, j); bad {
					t.Errorf("%s %s: %g kN on the advised throat of %g mm: %v", j.Metal, j.Joint, load, throat,
						p.Warnings)
				}
			}
		}
	}
	if throats == 0 {
		t.Error("no throat was ever advised")
	}
}

// loads are round and odd loads, kN.
func loads() (list []float64) {
	for i := 1; i <= 60; i++ {
		list = append(list, float64(i)/20, 0.37*math.Pow(1.07, float64(i)))
	}
	return append(list, 1.9049, 2, 10, 99.5, 100)
}

// A load just over the allowable one is not printed as the same number.
func TestOverloadPrintsDifferentNumbers(t *testing.T) {
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

// A setting whose bead does not bond has no allowable load, unless a piece was cut and measured; then the page
// says what the load rests on.
func TestNoLoadOnABeadThatDoesNotBond(t *testing.T) {
	var jobs []calc.Job
	for _, metal := range []string{"mild-steel", "copper", "stainless-304", "brass"} {
		for _, joint := range []string{"lap", "butt", "tee"} {
			for _, mm := range []float64{0.6, 1.5, 3, 3.2, 8} {
				for _, travel := range []float64{2, 6, 14} {
					jobs = append(jobs, calc.Job{Metal: metal, Joint: joint, Thickness: calc.Some(mm),
						Feed: calc.Some(5), Travel: calc.Some(travel), Length: calc.Some(100)})
				}
			}
		}
	}
	for _, j := range deep.Of(t, jobs, 6) {
		holdsToItsBead(t, j)
		j.Throat = calc.Some(1.2)
		holdsToItsBead(t, j)
	}
}

func holdsToItsBead(t *testing.T, j calc.Job) {
	t.Helper()
	card := mustSolve(t, j)
	p, err := advice.Strength(&card)
	if err != nil {
		if j.Throat.Set {
			t.Errorf("%s %s %g mm: %v", j.Metal, j.Joint, j.Thickness.V, err)
		}
		return
	}
	_, load := p.Figure("allowable_load")
	said := slices.ContainsFunc(p.Warnings, func(w calc.Warning) bool { return w.Code == "unsound-measured" })
	bonds := card.Zone != "cold" && card.Zone != "hot" && card.Zone != "burn-through"
	if !bonds && (load != j.Throat.Set || said != load) || bonds && j.Throat.Set && !load {
		t.Errorf("%s %s %g mm at %g mm/s is %q, throat given %v: a load %v, said on what it rests %v", j.Metal, j.Joint,
			j.Thickness.V, j.Travel.V, card.Zone, j.Throat.Set, load, said)
	}
}

// The throat of a closed butt is that of its cap at every thickness: it and the load fall as the plate grows,
// without a jump where the plan becomes a V, which the page mentions. Plate too thick for a groove has no
// throat.
func TestClosedButtsLoadDoesNotJump(t *testing.T) {
	from, to := 2.5, 14.0
	if !deep.Run() {
		from += 0.25 * float64(deep.Rand(t).IntN(31))
		to = from + 4
	}
	last := math.Inf(1)
	for mm := from; mm <= to; mm += 0.25 {
		card := mustSolve(t, calc.Job{Metal: "mild-steel", Joint: "butt", Thickness: calc.Some(mm),
			Length: calc.Some(100)})
		f, ok := card.Figure("throat")
		if deep := mm > tables.GrooveMost.V; ok == deep || ok && f.Value > 0.2*mm {
			t.Errorf("%g mm: throat %v %g (from %g)", mm, ok, f.Value, f.Low)
		}
		p, err := advice.Strength(&card)
		vee := slices.ContainsFunc(p.Warnings, func(w calc.Warning) bool {
			return w.Code == "closed-root" && strings.Contains(w.Text, "plans a V of 75°")
		})
		load, ok := p.Figure("allowable_load")
		if err != nil || !ok {
			continue
		}
		if vee != (mm > 3) || load.Value > last || load.Value < 0.85*last && !math.IsInf(last, 1) {
			t.Errorf("%g mm: %g kN after %g, and the V said %v", mm, load.Value, last, vee)
		}
		last = load.Value
	}
}
