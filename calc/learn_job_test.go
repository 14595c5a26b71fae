package calc_test

import (
	"testing"

	"brazebooth/calc"
)

// Pieces teach only of a joint like theirs: one that differs in joint, filler, metal, thickness, gap or backing has
// another name, and one that differs in its setting or its length has the same.
func TestPiecesAreNamedByTheirJoint(t *testing.T) {
	own := calc.Job{Metal: "mild-steel", Thickness: calc.Some(1.5), Joint: "butt", Filler: "cusi3"}
	key := func(change func(j *calc.Job)) string {
		j := own
		change(&j)
		k, err := calc.PulledKeyOf(j)
		if err != nil {
			t.Fatal(err)
		}
		return k
	}
	seen := map[string]int{}
	for i, change := range []func(j *calc.Job){
		func(*calc.Job) {},
		func(j *calc.Job) { j.Joint = "lap" },
		func(j *calc.Job) { j.Filler = "cual8" },
		func(j *calc.Job) { j.Metal2 = "stainless-304" },
		func(j *calc.Job) { j.Thickness = calc.Some(1.6) },
		func(j *calc.Job) { j.Thickness2 = calc.Some(2) },
		func(j *calc.Job) { j.Gap = calc.Some(0.5) },
		func(j *calc.Job) { j.Gap = calc.Some(1) },
		func(j *calc.Job) { j.Backing = "copper-bar" },
		func(j *calc.Job) { j.Backing, j.Gap = "copper-bar", calc.Some(1) },
		func(j *calc.Job) { j.Backing = "patch" },
	} {
		k := key(change)
		if was, ok := seen[k]; ok {
			t.Errorf("joints %d and %d are both called %q", was, i, k)
		}
		seen[k] = i
	}
	for _, change := range []func(j *calc.Job){
		func(j *calc.Job) { j.Travel = calc.Some(9) },
		func(j *calc.Job) { j.Length = calc.Some(50) },
		func(j *calc.Job) { j.Gap = calc.Some(0) },
		func(j *calc.Job) { j.Backing = "none" },
		func(j *calc.Job) { j.Wire = calc.Some(1) },
	} {
		if k := key(change); seen[k] != 0 || k != key(func(*calc.Job) {}) {
			t.Errorf("%q is another joint than %q", k, key(func(*calc.Job) {}))
		}
	}
}
