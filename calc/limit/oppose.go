package limit

import "math"

// pull is how feed and travel must change for a limit that is not met: 1 more, −1 less, 0 if the setting has no effect
// on it.
type pull [2]int

// hotter and cooler are the pulls for more, and for less, heat and metal.
var hotter, cooler = pull{1, -1}, pull{-1, 1}

// pulls are the limits' pulls. That of Bridges depends on the joint: an open root needs less metal, a gap under a
// fillet more.
var pulls = [Count]pull{
	Wets: hotter, Filled: hotter, Floor: {1, 0}, Fast: {0, -1},
	Solid: cooler, Burn: cooler, Stays: cooler, Zinc: cooler, Spray: {-1, 0}, Slow: {0, 1},
}

// pullOf is a limit's pull; that of Bridges follows from how it changes at this setting.
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

// opposes reports whether one limit needs more of a setting and the other less.
func (p pull) opposes(other pull) bool { return p[0]*other[0] < 0 || p[1]*other[1] < 0 }

// Opposed names the edge that is furthest from being met, and the edge that rules it out: of the edges that need the
// opposite change, the one furthest from being met. second is "" if no judged edge needs the opposite; both are "" if
// no edge is judged. changes and courses are those of Along.
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

// Asked are the changes of feed and of travel that judged edges ask for which are not met.
type Asked struct{ More, Less, Faster, Slower bool }

// Asked are the changes that the limits ask for; courses are those of Along.
func (l *All) Asked(courses *[Count]Courses) (a Asked) {
	for i := range Count {
		if l[i] >= 0 || l.Unjudged(i) != "" {
			continue
		}
		p := pullOf(i, courses)
		a.More, a.Less = a.More || p[0] > 0, a.Less || p[0] < 0
		a.Faster, a.Slower = a.Faster || p[1] > 0, a.Slower || p[1] < 0
	}
	return a
}

// furthest is the judged limit furthest from being met, of those for which counts is true; Count if there is none.
func (l *All) furthest(changes *All, counts func(Limit) bool) Limit {
	at, least := Count, math.Inf(1)
	for i := range Count {
		if changes[i] < least && l.Unjudged(i) == "" && counts(i) {
			at, least = i, changes[i]
		}
	}
	return at
}
