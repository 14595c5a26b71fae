package limit

import (
	"math"
	"slices"
)

// Limit is one border of the operating window.
type Limit int

// The limits, in the order in which a card lists them.
const (
	Wets    Limit = iota // the bead's toe is flat enough, and both members get hot enough to be wetted
	Solid                // the base metal's skin does not melt
	Burn                 // the base metal's core does not melt
	Filled               // the bead has the metal that the joint needs
	Bridges              // the liquid bridges the gap
	Stays                // the liquid stays where it is laid
	Floor                // the current is high enough for a steady arc
	Spray                // the current is below the spray transition
	Zinc                 // the zinc boils off no further than is accepted
	Slow                 // the travel is not too slow for a hand
	Fast                 // the travel is not too fast for a hand
	Count                // the number of limits
)

// The two parts of Wets, which is the lesser of them, stand after the limits. They are logarithms and no edges of their
// own.
const (
	// How much hotter the colder member's skin gets than the bead's toe must be; if negative, it is not wetted.
	Warmth = Count
	// How much flatter the bead's steeper toe stands than it must.
	Angle = Count + 1
)

// Far is the value of a limit that does not apply.
const Far = 20

// edges names the edge that each limit belongs to. Limits of one edge follow each other.
var edges = [Count]string{
	Wets: "wets", Solid: "base stays solid", Burn: "no burn-through", Filled: "joint filled",
	Bridges: "gap bridged", Stays: "metal stays up",
	Floor: "arc steady", Spray: "arc steady", Zinc: "zinc band", Slow: "hand speed", Fast: "hand speed",
}

// Edge is the name of the edge that the limit belongs to, as a card shows it.
func (l Limit) Edge() string { return edges[l] }

// All holds all limits at a setting and, after them, the parts of Wets.
type All [Count + 2]float64

// Hopeless are the limits of a setting that the model does not reach, which is therefore never suggested. Do not change
// it.
var Hopeless = Every(-Far)

// Every are limits that all have one value.
func Every(v float64) (l All) {
	for i := range l {
		l[i] = v
	}
	return l
}

// Known reports whether the model reached the setting.
func (l *All) Known() bool { return !math.IsNaN(l[0]) }

// Worst is the smallest of all, Warmth included.
func (l *All) Worst() float64 { return slices.Min(l[:Angle]) }

// Zone is the thermal zone: cold, good, hot or burn-through.
func (l *All) Zone() string {
	switch {
	case l[Burn] < 0:
		return "burn-through"
	case l[Solid] < 0:
		return "hot"
	case l[Wets] < 0:
		return "cold"
	}
	return "good"
}

// Verdict is the zone, or "outside" where the heat is good and another limit is not met.
func (l *All) Verdict() string {
	if zone := l.Zone(); zone != "good" || l.Worst() >= 0 {
		return zone
	}
	return "outside"
}

// Unjudged says why a limit means nothing at a setting, "" where it means something: liquid metal bridges and holds
// only between members that are there and wetted.
func (l *All) Unjudged(at Limit) string {
	switch {
	case at != Bridges && at != Stays:
	case l[Burn] < 0:
		return "the base melts through here, and nothing is left that the metal could hold to; try a setting that " +
			"does not burn through"
	case l[Warmth] < 0:
		return "a member stays too cold to be wetted here, so that no metal holds to it; try a setting that wets"
	}
	return ""
}

// Unbroken gives Stays a value where the metal wets so little that it is not judged: there it counts as missed, by no
// more than at the last place where it is judged. A limit that ended there would make suggestions jump from job to job,
// because they are found on curves through the limits.
func (l *All) Unbroken() {
	const missed, hardly = -1, 0.05 // logarithms: more than four doubts; of Wets, a quarter of a doubt
	if l[Stays] >= Far && l[Wets] < hardly {
		l[Stays] = missed
	}
	l[Stays] = max(missed, l[Stays])
}

// Weighed is how many values Weigh writes.
const Weighed = 8

// Weigh writes the Weighed limits that a chance is computed from, in addition to those of the hand's speed. The two
// limits of the base metal count as one, the nearer.
func (l *All) Weigh(into []float64) {
	const furthest = 3 // a margin beyond this changes no chance
	list := [Weighed]float64{l[Wets], min(l[Solid], l[Burn]), l[Filled], l[Floor], l[Spray], l[Zinc], l[Bridges],
		l[Stays]}
	for i, m := range list {
		into[i] = max(-furthest, min(furthest, m))
	}
}

// Between interpolates linearly between the limits a (f = 0) and b (f = 1).
func Between(a, b *All, f float64) (l All) {
	for i := range l {
		l[i] = a[i]*(1-f) + b[i]*f
	}
	return l
}
