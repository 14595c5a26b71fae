package limit

import "math"

// course is how a limit of the value l changes along one setting, near where it was computed: l + slope·x + bend·x²,
// where x is the logarithm of the setting's change.
type course struct{ slope, bend float64 }

// Probe is how far below and above a setting limits are computed for their courses, as a logarithm: wide against the
// noise of the cross-section's grid, and about as far as the nearest edge.
const Probe = 0.15

// courseOf fits a course to a limit here and a Probe below and above. A NaN stands for a value that is not known; with
// one of them the course is straight.
func courseOf(here, below, above float64) course {
	switch {
	case math.IsNaN(below):
		return course{slope: (above - here) / Probe}
	case math.IsNaN(above):
		return course{slope: (here - below) / Probe}
	}
	return course{(above - below) / (2 * Probe), (above + below - 2*here) / (2 * Probe * Probe)}
}

// reach is the smallest change, a logarithm, that brings a limit of the value l to zero; infinite where none does. Far
// from where it was computed the course is taken as straight: its bend is not known that well.
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

// Courses are those of one limit along feed and along travel.
type Courses [2]course

// Reach is the smallest change of feed or travel, %, that brings a limit of the value l to zero; below zero where the
// limit is not met, infinite where no change reaches it.
func (c Courses) Reach(l float64) float64 {
	if l >= Far {
		return math.Inf(1)
	}
	change := func(c course) float64 { return 100 * math.Abs(math.Expm1(c.reach(l))) }
	return math.Copysign(min(change(c[0]), change(c[1])), l)
}

// Beside are the limits a Probe below and above a setting, along feed and along travel; see Known.
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

// Along returns each limit's courses through the limits beside it, and the change in per cent that reaches it.
func (l *All) Along(beside *Beside) (c [Count]Courses, d All) {
	for i := range Count {
		here := l[i]
		for axis := range c[i] {
			c[i][axis] = courseOf(here, beside[axis][0][i], beside[axis][1][i])
		}
		d[i] = c[i].Reach(here)
		if l.Unjudged(i) != "" {
			d[i] = math.Inf(1)
		}
	}
	return c, d
}

// Nearest is the limit that the smallest change reaches, with that change; limits that are not met come first.
func Nearest(d *All) (Limit, float64) {
	at := Limit(0)
	for i := range Count {
		if d[i] < d[at] {
			at = i
		}
	}
	return at, d[at]
}

// Reaches are the changes of feed or travel, logarithms, that bring each limit to zero, by the limits' slopes along
// both.
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

// Percent turns a logarithmic change into per cent, at most 999.
func Percent(d float64) float64 { return min(999, 100*math.Expm1(math.Abs(d))) }
