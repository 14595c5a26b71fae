package calc

import (
	"slices"

	"brazebooth/calc/limit"
)

// What cautions advise about feed and travel.
const (
	moreFeed     = "more wire feed"
	lessFeed     = "less wire feed"
	goFaster     = "faster"
	goSlower     = "slower"
	moreMetal    = "more metal"
	slowerTravel = "a slower travel"
)

// askedOf are the changes that the edges ask for which a setting misses. Without a cross-section they are those of
// bead, arc and hand.
func (b *board) askedOf(card *Card, s *spread, v *verdict) limit.Asked {
	if v.modelled {
		return v.logs.Asked(&v.courses)
	}
	if b.chain.plug || b.chain.timed {
		return limit.Asked{}
	}
	l := limit.Every(limit.Far)
	m := newMargins(b, card)
	m.simple(&s.value, nil, &l)
	return l.Asked(new([limit.Count]limit.Courses))
}

// unopposed are those ways to mend an edge of which no other missed edge asks for the opposite: a card does not say
// both more and less.
func (w *warnings) unopposed(ways ...string) []string {
	opposed := map[string]bool{moreFeed: w.asked.Less, moreMetal: w.asked.Less, lessFeed: w.asked.More,
		goFaster: w.asked.Slower, goSlower: w.asked.Faster, slowerTravel: w.asked.Faster}
	return slices.DeleteFunc(ways, func(way string) bool { return opposed[way] })
}

// mending is the sentence with the ways of a caution that no other missed edge opposes, or with otherwise where none is
// left.
func (w *warnings) mending(otherwise string, ways ...string) string {
	if left := w.unopposed(ways...); len(left) > 0 {
		return sentenceCase(orElse(left)) + "."
	}
	return otherwise
}

// orElse is either of some ways to mend an edge, where the second of two is the lesser.
func orElse(ways []string) string {
	if len(ways) == 2 {
		return ways[0] + ", or " + ways[1]
	}
	return either(ways)
}
