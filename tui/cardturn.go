package tui

import (
	"brazebooth/internal/choice"
)

// turn changes the row by one step, or says what could be changed instead. In a list the arrow up goes to the row
// before; of a number it is more.
func (r *cardRow) turn(s *session, by int, arrow bool) action {
	if r.ask != nil {
		if arrow {
			by = -by
		}
		job, ok := s.neighbour(r.ask, by)
		if !ok {
			return refuse("the list of "+r.label+" ends here", "enter shows the list")
		}
		return change(job, "")
	}
	set := choice.SettingOf(r.name)
	if set == nil {
		return r.follows()
	}
	return change(set.Turned(s.job, r.fig.Figure.Value, by, s.units), "")
}

// follows says that a row cannot be set.
func (r *cardRow) follows() action {
	return refuse(r.label+" follows from the settings", "change wire feed, volts, travel or stick-out")
}

func (r *cardRow) reset(s *session) action {
	job := s.job
	if r.ask != nil {
		r.ask.Clear(&job)
	} else if set := choice.SettingOf(r.name); set != nil {
		set.Clear(&job)
	}
	if job == s.job {
		return refuse(r.label+" is not yours", "R puts every suggestion back")
	}
	return change(job, "") // the row shows it, and a line that says it would move all below
}

// resetAll leaves every setting open again; the choices stay.
func resetAll(s *session) action {
	job := s.job
	for _, set := range choice.Settings() {
		set.Clear(&job)
	}
	if job == s.job {
		return refuse("every setting is the suggested one", "− and + change one")
	}
	return change(job, "all suggestions back")
}
