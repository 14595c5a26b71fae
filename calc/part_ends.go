package calc

import (
	"math"

	"brazebooth/calc/formula"
	"brazebooth/calc/limit"
	"brazebooth/calc/section"
	"brazebooth/tables"
)

// ends are the limits of a setting where the seam starts and where it ends: a part that warms up is hotter there.
type ends struct {
	start, end limit.All
	rise       float64 // K; 0 for a part that does not warm
}

// worse are the smaller of both limits, one by one.
func (e *ends) worse() limit.All {
	l := e.start
	if e.rise > 0 {
		for i := range l {
			l[i] = min(l[i], e.end[i])
		}
	}
	return l
}

// atEnd reports whether the limit that counts is the one at the seam's end.
func (e *ends) atEnd() bool {
	start, end := e.start.Worst(), e.end.Worst()
	return e.rise > 0 && end < start
}

// ends adds the limits at the seam's end to a state that was found at its start; factor multiplies the heat.
func (h *heatField) ends(s *heatState, factor float64, zinc bool) (ends, error) {
	e := ends{start: h.logs(s)}
	if !h.part.known {
		return e, nil
	}
	in, o, err := h.fed(s.o[oFeed], s.o[oTravel])
	if err != nil {
		return e, err
	}
	in.Heat *= factor
	if e.rise, err = h.part.Rise(in.Heat*in.Travel, in.Travel); err != nil || e.rise == 0 {
		return e, err
	}
	hot := h.margins
	in.Start += e.rise
	hot.start = in.Start
	if in.Start >= in.Filler.Toe-1 {
		return e, formula.Outside("temperature of the part", in.Start, "the whole part gets as hot as the filler")
	}
	end, err := h.solve(&in, &o, zinc)
	if err != nil {
		return e, err
	}
	e.end = hot.logs(&end)
	return e, nil
}

// limits are those of a setting, feed and travel in mm/s, where the heat is a factor times the computed one; for a part
// that warms up the worse of its seam's start and end. With an error they are limit.Hopeless.
func (h *heatField) limits(feed, travel, factor float64) (limit.All, error) {
	zinc := h.zinc > 0
	s, err := h.at(feed, travel, zinc, func(in *section.Input) { in.Heat *= factor })
	if err != nil {
		return limit.Hopeless, err
	}
	e, err := h.ends(&s, factor, zinc)
	if err != nil {
		return limit.Hopeless, err
	}
	return e.worse(), nil
}

// beside are the limits at another feed and travel, mm/s; NaN where the model does not reach.
func (h *heatField) beside(feed, travel float64) limit.All {
	l, err := h.limits(feed, travel, 1)
	if err != nil {
		return limit.Every(math.NaN())
	}
	return l
}

// worst is the least of them.
func (h *heatField) worst(feed, travel float64) float64 {
	l := h.beside(feed, travel)
	return l.Worst()
}

// coldStart says how long a seam is colder at its beginning, in metal that carries the heat ahead of the arc. Steel has
// its full heat after a few millimetres, which is not mentioned.
func (w *warnings) coldStart(s *spread, v *verdict) {
	if travel := s.value[oTravel]; v.modelled && travel > 0 {
		long, member := 0.0, tables.Metal{}
		for _, m := range w.card.Setup.Joined() {
			l, err := formula.SeamStart(travel, m.Metal.Conductivity.V, m.Metal.HeatCapacity.V)
			if err == nil && l > long {
				long, member = l, m.Metal
			}
		}
		if long < coldStartFrom {
			return
		}
		w.tell("seam-start", Info, "4a/v, own fit to a moving source that begins in a cold part",
			"The first %.0f mm or so of the seam are colder than the rest, since %s carries the heat ahead of "+
				"the arc. Begin on a run-on tab of the same metal, or wait with the arc until the metal wets, then "+
				"travel. Judge a test bead beyond that length.",
			5*math.Ceil(long/5), member.Name)
	}
}

// coldStartFrom is the shortest cold start that is mentioned, mm.
const coldStartFrom = 15
