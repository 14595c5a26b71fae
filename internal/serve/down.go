package serve

import "time"

// seeOut asks everybody to leave, waits for what is being saved, and closes what is left.
func (s *server) seeOut() {
	s.mu.Lock()
	s.down = true
	for x := range s.in {
		x.leave(errDown)
	}
	s.mu.Unlock()
	if !inTime(s.Handover, s.busy.Wait) {
		s.log.Warn("went down before everybody was out", "sessions", s.seats.taken())
	}
	inTime(lastWait, s.closeAll)
}

// lastWait is how long the server waits at its end for what should take no time: closing connections, and the log.
const lastWait = 300 * time.Millisecond

// closeAll closes every connection, also one whose client is not known yet.
func (s *server) closeAll() {
	s.links.Range(func(l, _ any) bool {
		_ = l.(*link).Close()
		return true
	})
	_ = s.ssh.Close()
}

// inTime does something, waits for it no longer than a limit, and reports whether it is done.
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
