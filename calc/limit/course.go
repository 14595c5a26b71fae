package limit

import "math"

// course describes how a limit with the value l changes with one setting, near the place where it was computed: l +
// slope·x + bend·x², where x is the logarithm of the setting's change.
type course struct{ slope, bend float64 }

// Probe is how far below and above a setting limits are computed for their courses, as a logarithm: wide against the
// noise of the cross-section's grid, and about as far as the nearest edge.
const Probe = 0.15

// courseOf fits a course to the values of a limit at a setting and a Probe below and above it. One of the latter may be
// NaN, for not known; then the course is straight.
func courseOf(here, below, above float64) course {
	switch {
	case math.IsNaN(below):
		return course{slope: (above - here) / Probe}
	case math.IsNaN(above):
		return course{slope: (here - below) / Probe}
	}
	return course{(above - below) / (2 * Probe), (above + below - 2*here) / (2 * Probe * Probe)}
}

// reach is the smallest change of the setting, a logarithm, that brings a limit with the value l to zero; infinite if
// no change does. A root further away than three Probes is found on the straight line instead, because the bend is not
// known that well.
func (c course) reach(l float64) float64 {
	if x := c.bent(l); math.Abs(x) <= 3*Probe {
		return x
	}
	if math.Abs(c.slope) < flat {
		return math.Inf(1)
	}
	x := -l / c.slope
	return math.Copysign(max(3*Probe, math.Abs(x)), x)
}

// flat is the slope below which no change of a setting reaches a limit.
const flat = 0.02

// bent is the nearer root of the parabola, infinite where it has none.
func (c course) bent(l float64) float64 {
	root := math.Sqrt(c.slope*c.slope - 4*c.bend*l) // NaN without roots
	if den := math.Abs(c.slope) + root; den > 0 {
		return math.Copysign(2, -c.slope) * l / den
	}
	return math.Inf(1)
}

// Courses are the courses of one limit along feed and along travel.
type Courses [2]course

// Reach is the smallest change of feed or travel, %, that brings a limit with the value l to zero; negative if the
// limit is not met, infinite if no change reaches it.
func (c Courses) Reach(l float64) float64 {
	if l >= Far {
		return math.Inf(1)
	}
	change := func(c course) float64 { return 100 * math.Abs(math.Expm1(c.reach(l))) }
	return math.Copysign(min(change(c[0]), change(c[1])), l)
}

// Beside are the limits a Probe below and above a setting, first along feed, then along travel. Limits that the model
// did not reach are NaN, see All.Known.
type Beside [2][2]All

// BothWays reports whether limits are known on at least one side along feed and along travel.
func (b *Beside) BothWays() bool {
	for axis := range b {
		if !b[axis][0].Known() && !b[axis][1].Known() {
			return false
		}
	}
	return true
}

// Along returns the courses of each limit through the limits beside it, and the smallest change of feed or travel that
// reaches it, %, see Courses.Reach; infinite for a limit that is not judged. Wets has the course and the change of the
// part of it that decides: where its parts cross between two probes, a course through the lesser of them would bend
// where neither does.
func (l *All) Along(beside *Beside) (c [Count]Courses, d All) {
	for i := range Count {
		c[i], d[i] = l.course(i, beside)
	}
	c[Wets], d[Wets] = l.course(Warmth, beside)
	if angle, at := l.course(Angle, beside); at < d[Wets] {
		c[Wets], d[Wets] = angle, at
	}
	for i := range Count {
		if l.Unjudged(i) != "" {
			d[i] = math.Inf(1)
		}
	}
	return c, d
}

// course is the course of one limit, and the smallest change that reaches it, %.
func (l *All) course(i Limit, beside *Beside) (c Courses, d float64) {
	for axis := range c {
		c[axis] = courseOf(l[i], beside[axis][0][i], beside[axis][1][i])
	}
	return c, c.Reach(l[i])
}

// Nearest is the limit with the smallest of the changes d, and that change: the limit that is missed furthest, or if
// all are met the nearest one.
func Nearest(d *All) (Limit, float64) {
	at := Limit(0)
	for i := range Count {
		if d[i] < d[at] {
			at = i
		}
	}
	return at, d[at]
}

// Reaches are the changes of feed or travel, logarithms, that bring each limit to zero, computed from its slopes along
// both; negative if a limit is not met, ±Far if no change reaches it.
func Reaches(l, byFeed, byTravel *All) *All {
	var d All
	for k := range Count {
		d[k] = reach(l[k], byFeed[k], byTravel[k])
		if l.Unjudged(k) != "" {
			d[k] = Far
		}
	}
	return &d
}

// reach is a limit's value over the steeper of its two slopes.
func reach(l, byFeed, byTravel float64) float64 {
	slope := max(math.Abs(byFeed), math.Abs(byTravel))
	if l >= Far {
		return Far
	}
	if slope < flat {
		return math.Copysign(Far, l)
	}
	return l / slope
}

// Percent converts a logarithmic change of either sign to per cent, 0 to 999.
func Percent(d float64) float64 { return min(999, 100*math.Expm1(math.Abs(d))) }

// Steps is how many Probes below and above a setting the limits are followed for an edge that is missed.
const Steps = 3

// Meets is the change of a setting, %, at which a missed limit with the value here is met first, on the way down (sign
// −1) or up (sign 1) in steps of a Probe, straight from one step to the next; infinite if it is met at none of them.
func Meets(here float64, way *[Steps]All, i Limit, sign float64) float64 {
	for k := range way {
		next := way[k][i]
		switch {
		case math.IsNaN(next):
			return math.Inf(1)
		case next >= 0:
			return 100 * math.Abs(math.Expm1(sign*Probe*(float64(k)+here/(here-next))))
		}
		here = next
	}
	return math.Inf(1)
}
