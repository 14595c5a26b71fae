package calc

import (
	"sync"

	"brazebooth/calc/section"
	"brazebooth/tables"
)

// heated holds how far the heat of a section reaches, by member.
type heated struct {
	wet        [2]float64 // wetted width, mm
	skin, core [2]float64 // peaks, C
	boiled     [2]float64 // zinc half-widths, mm; NaN beyond the grid
	melted     [2]float64
	boiledBack [2]float64 // the same on the face away from the bead
	meltedBack [2]float64
	back       [2]float64 // half-width where the back is as hot as the toe must be, mm
	molten     [2]float64 // width of each member's edge that melts, mm
	pool       float64    // the puddle's length, mm
	front      float64    // how far it reaches ahead of the arc, mm
	work       int        // see section.Result.Work
}

// sectionAsked holds everything that heated depends on, besides constants of tables.
type sectionAsked struct {
	in      section.Input
	toe     float64    // C, as hot as the back must be
	solid   [2]float64 // C, where each member begins to melt
	members int
}

// solve computes the section.
func (a *sectionAsked) solve() (s heated, err error) {
	w := workspaces.Get().(*section.Workspace)
	r, err := w.Solve(&a.in)
	workspaces.Put(w)
	if err != nil {
		return s, err
	}
	s.wet, s.skin, s.core, s.work = r.Wet, r.Skin, r.Core, r.Work
	s.pool, s.front = r.PoolLength, r.PoolFront
	for i := range 2 {
		s.boiled[i] = r.Front[i].Reach(tables.ZincBoils.V)
		s.melted[i] = r.Front[i].Reach(tables.ZincMelts.V)
		s.boiledBack[i] = r.Back[i].Reach(tables.ZincBoils.V)
		s.meltedBack[i] = r.Back[i].Reach(tables.ZincMelts.V)
	}
	for i := range a.members {
		s.back[i] = known(r.Back[i].Reach(a.toe))
		s.molten[i] = known(r.Front[i].Reach(a.solid[i]))
	}
	return s, nil
}

// mostSections is how many sections a generation holds, half a kilobyte each: enough for some dozens of cards.
const mostSections = 2048

var cachedSections = sectionCache{most: mostSections}

// sectionCache holds the results of the last sections, for all sessions: a change that does not affect the heat, such
// as a price or a length, an earlier setting, or a job that another booth has asked for is answered at once. A section
// that is used goes into the young generation. When that is full it becomes the old one, and the old one is dropped. So
// a section survives a batch of other jobs as long as somebody uses it once in each generation.
type sectionCache struct {
	most       int
	mu         sync.Mutex
	young, old map[sectionAsked]heated
}

// answer returns the cached result, or computes it. Two callers who ask at once both compute: a section takes less than
// a millisecond.
func (k *sectionCache) answer(asked sectionAsked, compute func(*sectionAsked) (heated, error)) (heated, error) {
	if s, ok := k.get(&asked); ok {
		return s, nil
	}
	s, err := compute(&asked)
	if err == nil {
		k.mu.Lock()
		defer k.mu.Unlock()
		k.keep(&asked, s)
	}
	return s, err
}

func (k *sectionCache) get(asked *sectionAsked) (heated, bool) {
	k.mu.Lock()
	defer k.mu.Unlock()
	s, ok := k.young[*asked]
	if !ok {
		if s, ok = k.old[*asked]; ok {
			k.keep(asked, s)
		}
	}
	return s, ok
}

// keep is called with the lock held.
func (k *sectionCache) keep(asked *sectionAsked, s heated) {
	if len(k.young) >= k.most || k.young == nil {
		k.young, k.old = map[sectionAsked]heated{}, k.young
	}
	k.young[*asked] = s
}
