package calc

import (
	"sync"

	"brazebooth/calc/section"
	"brazebooth/tables"
)

// heated is what a section's heat reaches, by member.
type heated struct {
	wet        [2]float64 // wetted width, mm
	skin, core [2]float64 // peaks, C
	boiled     [2]float64 // zinc half-widths, mm; NaN beyond the grid
	melted     [2]float64
	boiledBack [2]float64 // the same on the face away from the bead
	meltedBack [2]float64
	back       [2]float64 // where the back is as hot as the toe must be, mm
	molten     [2]float64 // of the edge, mm
	pool       float64    // the puddle's length, mm
	front      float64    // how far it reaches ahead of the arc, mm
	work       int
}

// sectionAsked is all that heated depends on.
type sectionAsked struct {
	in      section.Input
	toe     float64    // C, as hot as the back must be
	solid   [2]float64 // C, where each member begins to melt
	members int
}

// solve computes it.
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

// mostSections is how many sections a generation holds, half a kilobyte each: some dozens of cards.
const mostSections = 2048

var keptSections = sections{most: mostSections}

// sections holds what the last sections gave, for all sessions: who changes what heat does not depend on, as a price or
// a length, who comes back to an earlier setting or asks what another booth has asked does not wait again. Once the
// younger generation is full it becomes the older one, which is forgotten.
type sections struct {
	most       int
	mu         sync.Mutex
	young, old map[sectionAsked]heated
}

// answer returns what is kept, or what compute finds. Two who ask at once both compute: a section takes less than a
// millisecond.
func (k *sections) answer(asked sectionAsked, compute func(*sectionAsked) (heated, error)) (heated, error) {
	if s, ok := k.get(&asked); ok {
		return s, nil
	}
	s, err := compute(&asked)
	if err == nil {
		k.put(&asked, s)
	}
	return s, err
}

func (k *sections) get(asked *sectionAsked) (heated, bool) {
	k.mu.Lock()
	s, ok := k.young[*asked]
	if !ok {
		s, ok = k.old[*asked]
	}
	k.mu.Unlock()
	return s, ok
}

func (k *sections) put(asked *sectionAsked, s heated) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if len(k.young) >= k.most || k.young == nil {
		k.young, k.old = map[sectionAsked]heated{}, k.young
	}
	k.young[*asked] = s
}
