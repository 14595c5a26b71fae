package limit

import "math"

// pull is where a limit that is not met wants feed and travel to go: 1 more, −1 less, 0 where the setting does nothing.
type pull [2]int

// hotter and cooler are the pulls for more and for less heat and metal: along feed, along travel.
var hotter, cooler = pull{1, -1}, pull{-1, 1}

// pulls are the limits' pulls. Bridges has none of its own: an open root wants less metal, a gap under a fillet more.
var pulls = [Count]pull{
	Wets: hotter, Filled: hotter, Floor: {1, 0}, Fast: {0, -1},
	Solid: cooler, Burn: cooler, Stays: cooler, Zinc: cooler, Spray: {-1, 0}, Slow: {0, 1},
}

// pullOf is a limit's pull, that of Bridges by how it changes here.
func pullOf(at Limit, courses *[Count]Courses) pull {
	p := pulls[at]
	if at == Bridges {
		for setting := range p {
			switch slope := courses[at][setting].slope; {
			case slope > 0:
				p[setting] = 1
			case slope < 0:
				p[setting] = -1
			}
		}
	}
	return p
}

// opposes reports whether one limit wants more of a setting of which the other wants less.
func (p pull) opposes(other pull) bool { return p[0]*other[0] < 0 || p[1]*other[1] < 0 }

// Opposed names the edge that is furthest from being met and the one that rules it out: of the edges that want the
// opposite, the one that is furthest from being met. second is "" where no judged edge wants the opposite; both are ""
// where none is judged. changes and courses are those of Along.
func (l *All) Opposed(changes *All, courses *[Count]Courses) (first, second string) {
	at := l.furthest(changes, func(Limit) bool { return true })
	if at == Count {
		return "", ""
	}
	wants, name := pullOf(at, courses), at.Edge()
	against := l.furthest(changes, func(i Limit) bool {
		return i.Edge() != name && wants.opposes(pullOf(i, courses))
	})
	if against < Count {
		second = against.Edge()
	}
	return name, second
}

// furthest is the judged limit furthest from being met of those that count; Count for none.
func (l *All) furthest(changes *All, counts func(Limit) bool) Limit {
	at, least := Count, math.Inf(1)
	for i := range Count {
		if changes[i] < least && l.Unjudged(i) == "" && counts(i) {
			at, least = i, changes[i]
		}
	}
	return at
}
