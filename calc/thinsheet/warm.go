package thinsheet

// quickMetal is the diffusivity, mm2/s, above which heat is faster than the gun: the whole sheet must warm up
// before cycles repeat.
const quickMetal = 40

func (r *Rhythm) quick() bool {
	for i := range r.Arms {
		if r.Arms[i].Base.Diffusivity() > quickMetal {
			return true
		}
	}
	return false
}

// A first estimate of the cycle with which the sheet is warmed up; the cycles that follow correct it.
const (
	warmDuty  = 0.5
	warmSpeed = 4.0  // mm/s
	warmTime  = 6.0  // s
	warmStep  = 0.05 // s
	warmUnder = 50.0 // K, distance of the start from the filler's solidus
)

// warmed is the joint after a steady arc of the mean power without filler, everywhere at least 50 K below the
// filler's solidus; if it were hotter, the first cycles would end wrongly.
func warmed(r *Rhythm, stop func() bool) (*Sheet, error) {
	in := r.Input
	in.Power = warmDuty * r.Power
	in.Feed = 0
	s, err := New(in)
	if err != nil {
		return nil, err
	}
	if !s.Travel(warmSpeed, warmTime, warmStep, stop) {
		return nil, ErrStopped
	}
	s.cap(r.Filler.Solidus - warmUnder)
	s.in.Power, s.in.Feed = r.Power, r.Feed
	s.began, s.added, s.lost, s.left, s.laid, s.gone = s.Energy(), 0, 0, 0, 0, 0
	return s, nil
}

// cap cools every cell that is hotter than most to that temperature.
func (s *Sheet) cap(most float64) {
	n := s.g.ny * s.g.nx
	for c := range s.e {
		if s.t[c] > most && s.mb[c] > 0 {
			h, _ := s.in.Arms[c/n].Base.at(most)
			s.e[c] = s.mb[c] * h
		}
	}
	s.settle(0, len(s.e))
}
