package calc

import "math"

// course is how the logarithm of a limit changes along one setting, near where it was computed: l + slope·x +
// bend·x², x the logarithm of the setting's change.
type course struct{ slope, bend float64 }

// probe is how far to each side a limit is computed: wide against the grid's noise, about as far as the nearest edge.
const probe = 0.15

// courseOf fits a course to a limit here and a probe below and above; straight where one side has no value.
func courseOf(here, below, above float64) course {
	switch {
	case math.IsNaN(below):
		return course{slope: (above - here) / probe}
	case math.IsNaN(above):
		return course{slope: (here - below) / probe}
	}
	return course{(above - below) / (2 * probe), (above + below - 2*here) / (2 * probe * probe)}
}

// reach is the smallest change, a logarithm, that brings a limit of l to zero; infinite where none does. Far from
// where it was computed the course is taken as straight: its bend is not known that well.
func (c course) reach(l float64) float64 {
	if x := c.bent(l); math.Abs(x) <= 3*probe {
		return x
	}
	if math.Abs(c.slope) < 0.02 {
		return math.Inf(1)
	}
	x := -l / c.slope
	return math.Copysign(max(3*probe, math.Abs(x)), x)
}

// bent is the nearer root of the parabola, infinite where it has none.
func (c course) bent(l float64) float64 {
	root := math.Sqrt(c.slope*c.slope - 4*c.bend*l) // NaN without roots
	if den := math.Abs(c.slope) + root; den > 0 {
		return math.Copysign(2, -c.slope) * l / den
	}
	return math.Inf(1)
}

// courses are those of one limit along feed and along travel.
type courses [2]course

// reach is the smallest change of feed or travel, %, that brings a limit of l to zero; below zero where the limit is
// not met, infinite where no change reaches it.
func (c courses) reach(l float64) float64 {
	if l >= far {
		return math.Inf(1)
	}
	change := func(c course) float64 { return 100 * math.Abs(math.Expm1(c.reach(l))) }
	return math.Copysign(min(change(c[0]), change(c[1])), l)
}
