package calc

import "math"

// pull is where an edge that is not met wants feed and travel to go: 1 more, −1 less, 0 where the lever does nothing.
type pull [2]int

// hotter and cooler are an edge's pull for more and for less heat and metal: along feed, along travel.
var hotter, cooler = pull{1, -1}, pull{-1, 1}

// pulls are the edges' wants. Bridging has none of its own: an open root wants less, a gap under a fillet more metal.
var pulls = [limitCount]pull{
	lWets: hotter, lFilled: hotter, lFloor: {1, 0}, lFast: {0, -1},
	lSolid: cooler, lBurn: cooler, lStays: cooler, lZinc: cooler, lSpray: {-1, 0}, lSlow: {0, 1},
}

// pull is where an edge wants feed and travel to go, bridging by how it changes here.
func (v *verdict) pull(at limit) pull {
	p := pulls[at]
	if at == lBridges {
		for lever := range p {
			switch slope := v.courses[at][lever].slope; {
			case slope > 0:
				p[lever] = 1
			case slope < 0:
				p[lever] = -1
			}
		}
	}
	return p
}

// opposes reports whether one edge wants more of a lever of which the other wants less.
func (p pull) opposes(other pull) bool { return p[0]*other[0] < 0 || p[1]*other[1] < 0 }

// worst names the edge that is furthest from being met and the one that rules it out: of those that want the opposite
// the one that is furthest from being met. second is "" where nothing judged here wants the opposite.
func (v *verdict) worst() (first, second string) {
	at := v.furthest(func(limit) bool { return true })
	if at == limitCount {
		return "", ""
	}
	wants, name := v.pull(at), edgeNames[at]
	against := v.furthest(func(i limit) bool { return edgeNames[i] != name && wants.opposes(v.pull(i)) })
	if against < limitCount {
		second = "“" + edgeNames[against] + "”"
	}
	return "“" + name + "”", second
}

// furthest is the judged edge furthest from being met of those that count; limitCount for none.
func (v *verdict) furthest(counts func(limit) bool) limit {
	at, least := limitCount, math.Inf(1)
	for i := range limitCount {
		if v.d[i] < least && v.logs.unjudged(i) == "" && counts(i) {
			at, least = i, v.d[i]
		}
	}
	return at
}
