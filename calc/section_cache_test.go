package calc

import (
	"errors"
	"reflect"
	"testing"

	"brazebooth/calc/effort"
	"brazebooth/calc/section"
)

// forget empties the cache.
func (k *sectionCache) forget() {
	k.mu.Lock()
	defer k.mu.Unlock()
	k.young, k.old = nil, nil
}

// A section is computed once and cached as long as there is room; an error is not cached.
func TestSectionCache(t *testing.T) {
	const most = 8
	k, computed := sectionCache{most: most}, 0
	ask := func(gap int) float64 {
		s, err := k.answer(sectionAsked{in: section.Input{Gap: float64(gap)}}, func(a *sectionAsked) (heated, error) {
			computed++
			return heated{pool: 2 * a.in.Gap}, nil
		})
		if err != nil || s.pool != 2*float64(gap) {
			t.Fatalf("gap %d: %g, %v", gap, s.pool, err)
		}
		return s.pool
	}
	for gap := range 5 * most {
		ask(gap)
		if len(k.young)+len(k.old) > 2*most {
			t.Fatalf("%d and %d kept", len(k.young), len(k.old))
		}
	}
	for gap := 4 * most; gap < 5*most; gap++ {
		ask(gap)
	}
	if computed != 5*most {
		t.Errorf("%d computed, want %d: the last ones are cached", computed, 5*most)
	}
	if ask(0); computed != 5*most+1 {
		t.Error("the oldest is still cached")
	}
	for range 2 {
		if _, err := k.answer(sectionAsked{toe: 1}, func(*sectionAsked) (heated, error) {
			computed++
			return heated{}, errors.New("no")
		}); err == nil {
			t.Error("a failure was cached")
		}
	}
	if computed != 5*most+3 {
		t.Errorf("%d computed: a failure is not tried again", computed)
	}
}

// A card from cached sections equals the one that is computed afresh, and counts as much work.
func TestSectionCacheChangesNoCard(t *testing.T) {
	for _, job := range []Job{{Metal: "galvanized", Gauge: 20}, {Metal: "mild-steel", Thickness: Some(6), Joint: "tee"},
		{Metal: "copper", Thickness: Some(2), Joint: "butt", Gap: Some(1)}} {
		var cards [3]Card
		var work [3]int64
		for i := range cards {
			if i == 0 {
				cachedSections.forget()
			}
			e := effort.New(t.Context())
			c, err := solve(e, job)
			if err != nil {
				t.Fatal(err)
			}
			cards[i], work[i] = c, e.Work()
		}
		if !reflect.DeepEqual(cards[0], cards[1]) || !reflect.DeepEqual(cards[1], cards[2]) || work[0] != work[1] ||
			work[1] != work[2] {
			t.Errorf("%+v: work %v", job, work)
		}
	}
}
