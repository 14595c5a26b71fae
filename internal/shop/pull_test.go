package shop

import (
	"math"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/book"
)

// Pieces of one joint and power source give the bound that was worked out by hand from their loads over length; pieces
// of another thickness, and readings, do not count.
func TestPulledPiecesTeach(t *testing.T) {
	lap := calc.PulledKey
	card, err := calc.Solve(calc.Job{Metal: "galvanized", Thickness: calc.Some(1), Joint: "lap"})
	if err != nil {
		t.Fatal(err)
	}
	key := lap(&card)
	var list []Kept[book.Reading]
	put := func(key string, force, length float64) {
		list = append(list, Kept[book.Reading]{Body: book.Reading{Pull: book.Pulled{For: key, Force: force,
			Length: length}}})
	}
	loads := []float64{17.2, 16.1, 18.3, 15.9, 17.7}
	for _, kN := range loads[:4] {
		put(key, kN, 50)
	}
	put("another joint", 1, 50)
	p := pulledOf(list, key)
	if _, _, err := p.Bound(); err == nil || p.Count != 4 {
		t.Errorf("%d pieces have a bound", p.Count)
	}
	put(key, loads[4]*2, 100)
	p = pulledOf(list, key)
	mean, squares := 0.0, 0.0
	for _, kN := range loads {
		mean += math.Log(kN*1000/50) / 5
	}
	for _, kN := range loads {
		squares += math.Pow(math.Log(kN*1000/50)-mean, 2)
	}
	want := math.Exp(mean - 4.203*math.Sqrt(squares/4)) // k for five pieces, 95/95, as printed
	if bound, k, err := p.Bound(); err != nil || math.Abs(bound/want-1) > 1e-3 || math.Abs(k-4.203) > 0.001 {
		t.Errorf("bound %g with k %g, by hand %g; %v", bound, k, want, err)
	}
	for range 5 {
		put("twins", 10, 50)
	}
	if twins := pulledOf(list, "twins"); twins.Spread() == 0 {
		t.Error("five equal pieces have no spread at all")
	}
}
