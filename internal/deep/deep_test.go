package deep

import (
	"errors"
	"slices"
	"strconv"
	"testing"
)

// A sample has the first and last case and the right size, each case once and in order. Two samples of a test differ,
// and both are the same in each run with the same seed.
func TestOf(t *testing.T) {
	t.Setenv("BRAZEBOOTH_DEEP", "")
	t.Setenv("BRAZEBOOTH_SEED", "")
	all := make([]int, 100)
	for i := range all {
		all[i] = i
	}
	for _, few := range []int{2, 3, 10, 99} {
		got := Of(t, all, few)
		if len(got) != few || got[0] != 0 || got[few-1] != 99 || !slices.IsSorted(got) ||
			len(slices.Compact(slices.Clone(got))) != few {
			t.Errorf("%d of 100: %v", few, got)
		}
	}
	any := map[int]bool{}
	for range 100 {
		got := Of(t, all, 1)
		if len(got) != 1 {
			t.Fatalf("1 of 100: %v", got)
		}
		any[got[0]] = true
	}
	if len(any) < 30 {
		t.Errorf("1 of 100, a hundred times: only %d of them", len(any))
	}
	if got := Of(t, all[:3], 5); len(got) != 3 {
		t.Errorf("5 of 3: %v", got)
	}
	drawn := func(seed string) (list [2][]int) {
		t.Setenv("BRAZEBOOTH_SEED", seed)
		draws.Delete(t.Name())
		return [2][]int{Of(t, all, 10), Of(t, all, 10)}
	}
	first, again, other := drawn("1"), drawn("1"), drawn("2")
	if slices.Equal(first[0], first[1]) || !slices.Equal(first[0], again[0]) || !slices.Equal(first[1], again[1]) ||
		slices.Equal(first[0], other[0]) {
		t.Errorf("%v, then %v, by another seed %v", first, again, other)
	}
	t.Setenv("BRAZEBOOTH_DEEP", "1")
	if got := Of(t, all, 2); len(got) != 100 {
		t.Errorf("deep: %d of 100", len(got))
	}
}

// Five seeds run every test that takes long once, and each of them leaves to the others what it does not run.
func TestTurns(t *testing.T) {
	const tests = 200
	ran, most := 0, 0
	for seed := range 5 {
		t.Setenv("BRAZEBOOTH_SEED", strconv.Itoa(10+seed))
		own := 0
		for i := range tests {
			name := "Test" + strconv.Itoa(i)
			t.Setenv("BRAZEBOOTH_TURN", "")
			its := runs(name)
			t.Setenv("BRAZEBOOTH_TURN", "others")
			if its {
				own++
			}
			if runs(name) == its {
				t.Errorf("seed %d: %s is its own and the others' (%v)", seed, name, its)
			}
		}
		ran, most = ran+own, max(most, own)
	}
	if ran != tests || most > tests/3 {
		t.Errorf("%d of %d tests ran, %d with one seed", ran, tests, most)
	}
}

func TestMany(t *testing.T) {
	for deep, want := range map[string]int{"": 5, "0": 5, "1": 40, "3": 120} {
		t.Setenv("BRAZEBOOTH_DEEP", deep)
		if got := Many(5, 40); got != want {
			t.Errorf("BRAZEBOOTH_DEEP=%s: %d", deep, got)
		}
	}
}

// A typing error in BRAZEBOOTH_DEEP does not run the sample.
func TestNumberIsOne(t *testing.T) {
	t.Setenv("BRAZEBOOTH_DEEP", "yes")
	defer func() {
		if recover() == nil {
			t.Error("no panic")
		}
	}()
	Run()
}

// A Known answer is computed once, also an error.
func TestKnown(t *testing.T) {
	var k Known[int, int]
	asked := 0
	for range 3 {
		if v, err := k.Of(7, func() (int, error) { asked++; return 49, errors.New("odd") }); v != 49 || err == nil {
			t.Errorf("%d, %v", v, err)
		}
	}
	if asked != 1 {
		t.Errorf("computed %d times", asked)
	}
}
