package calc

import (
	"errors"
	"reflect"
	"testing"

	"brazebooth/calc/section"
)

// forget makes everything be computed again.
func (k *sections) forget() {
	k.mu.Lock()
	defer k.mu.Unlock()
	k.young, k.old = nil, nil
}

// A section is computed once and kept as long as there is room; what failed is asked again.
func TestKeepOfSections(t *testing.T) {
	const most = 8
	k, computed := sections{most: most}, 0
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
		t.Errorf("%d computed, %d asked for and the last ones twice", computed, 5*most)
	}
	if ask(0); computed != 5*most+1 {
		t.Error("the oldest is still kept")
	}
	for range 2 {
		if _, err := k.answer(sectionAsked{toe: 1}, func(*sectionAsked) (heated, error) {
			computed++
			return heated{}, errors.New("no")
		}); err == nil {
			t.Error("a failure was kept")
		}
	}
	if computed != 5*most+3 {
		t.Errorf("%d computed: what failed once is not tried again", computed)
	}
}

// A card of kept sections is the card that is computed afresh, and takes as much effort.
func TestKeepOfSectionsChangesNoCard(t *testing.T) {
	for _, job := range []Job{{Metal: "galvanized", Gauge: 20}, {Metal: "mild-steel", Thickness: Some(6), Joint: "tee"},
		{Metal: "copper", Thickness: Some(2), Joint: "butt", Gap: Some(1)}} {
		var cards [3]Card
		var work [3]int64
		for i := range cards {
			if i == 0 {
				keptSections.forget()
			}
			e := &effort{ctx: t.Context()}
			c, err := solve(e, job)
			if err != nil {
				t.Fatal(err)
			}
			cards[i], work[i] = c, e.work.Load()
		}
		if !reflect.DeepEqual(cards[0], cards[1]) || !reflect.DeepEqual(cards[1], cards[2]) || work[0] != work[1] ||
			work[1] != work[2] {
			t.Errorf("%+v: work %v", job, work)
		}
	}
}
