package canvas

// full is the chance and the reason.
func (s Strip) full() string {
	if s.Chance == "" {
		return s.Reason
	}
	return s.Chance + " good; " + s.Reason
}

// reason is the chance and the reason in some columns: in brief where there is little room, the chance alone where
// there is less.
func (s Strip) reason(room int) string {
	last := s.full()
	if width(last) <= room {
		return last
	}
	for _, form := range [...]string{s.brief(), s.Chance} {
		if form == "" {
			continue
		}
		if last = form; width(last) <= room {
			break
		}
	}
	return last
}

// brief is the chance and the brief reason.
func (s Strip) brief() string {
	if s.Chance == "" || s.Brief == "" {
		return s.Brief
	}
	return s.Chance + ", " + s.Brief
}
