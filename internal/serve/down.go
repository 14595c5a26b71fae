package serve

import "time"

// seeOut asks all sessions to end, waits for running saves, and closes the remaining connections.
func (s *server) seeOut() {
	s.mu.Lock()
	s.down = true
	for x := range s.in {
		x.life.leave(errDown)
	}
	s.mu.Unlock()
	if !inTime(s.Handover, s.busy.Wait) {
		s.log.Warn("went down before everybody was out", "sessions", s.seats.taken())
	}
	inTime(lastWait, s.closeAll)
}

// lastWait is how long the server waits at its end for closing connections and the log, which should take no time.
const lastWait = 300 * time.Millisecond

// closeAll closes every connection, also those that have not logged in yet.
func (s *server) closeAll() {
	s.links.Range(func(l, _ any) bool {
		_ = l.(*link).Close()
		return true
	})
	_ = s.ssh.Close()
}

// inTime runs do, waits for it at most so long, and reports whether it has finished.
func inTime(most time.Duration, do func()) bool {
	done := make(chan struct{})
	go func() { do(); close(done) }()
	select {
	case <-done:
		return true
	case <-time.After(most):
		return false
	}
}
