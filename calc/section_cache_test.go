package calc

import (
	"errors"
	"reflect"
	"testing"

	"brazebooth/calc/effort"
	"brazebooth/calc/section"
	"brazebooth/internal/deep"
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

// A section that is used now and then survives any number of others.
func TestSectionCacheKeepsWhatIsUsed(t *testing.T) {
	const most = 8
	k, computed := sectionCache{most: most}, 0
	ask := func(gap float64) {
		_, _ = k.answer(sectionAsked{in: section.Input{Gap: gap}}, func(a *sectionAsked) (heated, error) {
			if a.in.Gap == 0 {
				computed++
			}
			return heated{}, nil
		})
	}
	for other := range 10 * most {
		if other%(most/2) == 0 {
			ask(0)
		}
		ask(float64(other + 1))
		if len(k.young) > most || len(k.old) > most {
			t.Fatalf("%d and %d kept", len(k.young), len(k.old))
		}
	}
	if computed != 1 {
		t.Errorf("computed %d times", computed)
	}
}

// Cards from cached sections equal those that are computed afresh, and count as much work, also after jobs that differ
// in one thing only: what lies behind the root, the gap, the joint, the coat.
func TestSectionCacheChangesNoCard(t *testing.T) {
	deep.Turn(t)
	butt := Job{Metal: "mild-steel", Thickness: Some(1.5), Joint: "butt", Gap: Some(1)}
	jobs := []Job{{Metal: "galvanized", Gauge: 20}, {Metal: "mild-steel", Thickness: Some(6), Joint: "tee"},
		{Metal: "copper", Thickness: Some(2), Joint: "butt", Gap: Some(1)}, butt}
	for _, change := range []func(*Job){
		func(j *Job) { j.Backing = copperBar }, func(j *Job) { j.Backing = steelStrip },
		func(j *Job) { j.Gap = Some(0) }, func(j *Job) { j.Joint = "edge" },
		func(j *Job) { j.Joint, j.Gap = "corner", Opt{} },
		func(j *Job) { j.Joint, j.Gap = "overlay", Opt{} }, func(j *Job) { j.Metal = "galvanized" },
		func(j *Job) { j.Filler = "cual8" }, func(j *Job) { j.Aim = Some(0.5) }, func(j *Job) { j.Preheat = Some(100) },
	} {
		j := butt
		change(&j)
		jobs = append(jobs, j)
	}
	find := func(job Job) (Card, int64) {
		e := effort.New(t.Context())
		c, err := solve(e, job)
		if err != nil {
			t.Fatalf("%+v: %v", job, err)
		}
		return c, e.Work()
	}
	cards, work := make([]Card, len(jobs)), make([]int64, len(jobs))
	for i, job := range jobs {
		cachedSections.forget()
		cards[i], work[i] = find(job)
	}
	for range 2 { // some sections are cached the first time, all of them the second
		for i, job := range jobs {
			if c, n := find(job); !reflect.DeepEqual(c, cards[i]) || n != work[i] {
				t.Errorf("%+v: work %d, afresh %d", job, n, work[i])
			}
		}
	}
}
