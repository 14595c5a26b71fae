package serve

import "sync"

// places counts what is taken, in all and by each who takes: connections by their addresses, sessions by their
// accounts.
type places struct {
	most, mostEach int

	mu  sync.Mutex
	all int
	of  map[string]int
}

// take takes a place, before it is known for whom.
func (p *places) take() bool {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.all >= p.most {
		return false
	}
	p.all++
	return true
}

// give says for whom a place was taken. Where they have too many, the place is free again.
func (p *places) give(who string) bool {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.of[who] >= p.mostEach {
		p.all--
		return false
	}
	p.of[who]++
	return true
}

// free gives a place back; "" for one that was given to nobody.
func (p *places) free(who string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.all--
	if p.of[who]--; p.of[who] <= 0 {
		delete(p.of, who)
	}
}

func (p *places) taken() int {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.all
}
