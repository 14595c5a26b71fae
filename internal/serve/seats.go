package serve

import "sync"

// seats counts sessions.
type seats struct {
	mu       sync.Mutex
	all      int
	of       map[string]int
	most     int
	mostEach int
}

func (s *seats) take(who string) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	switch {
	case s.all >= s.most:
		return errFull
	case s.of[who] >= s.mostEach:
		return errKeyFull
	}
	s.all++
	s.of[who]++
	return nil
}

func (s *seats) free(who string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.all--
	if s.of[who]--; s.of[who] <= 0 {
		delete(s.of, who)
	}
}

func (s *seats) taken() int {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.all
}
