package serve

import "sync"

// places limits how many places are taken, in all and by each holder: connections by address, sessions by account.
type places struct {
	most, mostEach int

	mu  sync.Mutex
	all int
	of  map[string]int
}

// take takes a place before its holder is known; false if all are taken.
func (p *places) take() bool {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.all >= p.most {
		return false
	}
	p.all++
	return true
}

// give assigns a taken place to its holder. If they have too many, it frees the place and returns false.
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

// free frees a place; who is "" if it was not assigned yet.
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
