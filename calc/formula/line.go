package formula

import "math"

// Line is a straight line through readings: y = Y + Slope·(x − X), with the scatter of the readings about it.
// It is comparable and holds numbers only.
type Line struct {
	X     float64 `json:"x"` // mean of the places
	Y     float64 `json:"y"` // value there
	Slope float64 `json:"slope"`
	Sxx   float64 `json:"sxx"`   // sum of squared distances of the places from X
	Sigma float64 `json:"sigma"` // standard deviation of a reading about the line
	Free  float64 `json:"free"`  // degrees of freedom of Sigma
	N     float64 `json:"n"`     // number of readings
	Least float64 `json:"least"` // smallest place that was read
	Most  float64 `json:"most"`  // largest
}

// StraightLine fits a line by least squares through the values y at the places x. Sigma combines the residuals
// with earlier knowledge: readings repeat with a standard deviation of known, in y's unit, which counts as much
// as firm readings (0: nothing is known). Errors: fewer than three readings, fewer than three places, values
// that are not finite. Source: Draper and Smith, Applied Regression Analysis, ch. 1 (memory high); the prior by
// the conjugate scaled inverse chi-squared distribution, Gelman and others, Bayesian Data Analysis, ch. 14
// (memory high).
func StraightLine(x, y []float64, known, firm float64) (Line, error) {
	n := float64(len(x))
	if len(x) != len(y) || n < 3 {
		return Line{}, Outside("readings", n, "three or more")
	}
	l := Line{N: n, Least: x[0], Most: x[0], Free: n - 2 + firm}
	for i := range x {
		l.X += x[i] / n
		l.Y += y[i] / n
		l.Least, l.Most = min(l.Least, x[i]), max(l.Most, x[i])
	}
	sxy, third := 0.0, false
	for i := range x {
		l.Sxx += (x[i] - l.X) * (x[i] - l.X)
		sxy += (x[i] - l.X) * (y[i] - l.Y)
		third = third || x[i] > l.Least && x[i] < l.Most
	}
	if !third {
		return Line{}, Outside("places", l.Most-l.Least, "three different ones or more")
	}
	l.Slope = sxy / l.Sxx
	left := firm * known * known
	for i := range x {
		d := y[i] - l.Y - l.Slope*(x[i]-l.X)
		left += d * d
	}
	l.Sigma = math.Sqrt(left / l.Free)
	return l, l.Sound()
}

// Sound returns an error if readings cannot have given this line.
func (l *Line) Sound() error {
	sum := l.X + l.Y + l.Slope + l.Sxx + l.Sigma + l.Free + l.N + l.Least + l.Most
	if math.IsNaN(sum) || math.IsInf(sum, 0) || math.IsInf(l.X*l.Slope, 0) {
		return Outside("a line's number", sum, "finite numbers")
	}
	if !(l.N >= 3 && l.Free >= 1 && l.Sxx > 0 && l.Sigma > 0 && l.Least < l.Most && l.X >= l.Least && l.X <= l.Most) {
		return Outside("readings of a line", l.N, "three or more at different places")
	}
	return nil
}

// reach is how many times Sigma is half the width of the 95 % interval.
func (l *Line) reach() float64 { return studentsT(0.975, l.Free) }

// At is the value at a place with the 95 % interval of the next reading there: ± t·Sigma·√(1 + 1/n +
// (x−X)²/Sxx). It returns an error outside the places that were read. Source: as StraightLine, section 1.4.
func (l *Line) At(x float64) (y, low, high float64, err error) {
	if !(x >= l.Least && x <= l.Most) {
		return 0, 0, 0, Outside("place", x, "what was read")
	}
	y = l.Y + l.Slope*(x-l.X)
	half := l.reach() * l.Sigma * math.Sqrt(1+1/l.N+(x-l.X)*(x-l.X)/l.Sxx)
	return y, y - half, y + half, nil
}

// Where is the place of a value with the 95 % interval of the places at which the next reading may be that
// value: all x for which it lies within At's interval. Errors: the place is outside those that were read; the
// interval has no end, because the slope cannot be told from zero. Source: Fieller 1954; Draper and Smith,
// section 1.7 or 3.2 by edition, inverse regression (memory high).
func (l *Line) Where(y float64) (x, low, high float64, err error) {
	t := l.reach() * l.Sigma / l.Slope
	firm := 1 - t*t/l.Sxx
	if !(firm > 0) {
		return 0, 0, 0, Outside("slope", l.Slope, "more than its own doubt")
	}
	x = (y - l.Y) / l.Slope // from X
	if !(l.X+x >= l.Least && l.X+x <= l.Most) {
		return 0, 0, 0, Outside("place", l.X+x, "what was read")
	}
	mid := x / firm
	half := math.Abs(t) / firm * math.Sqrt(x*x/l.Sxx+firm*(1+1/l.N))
	return l.X + x, l.X + mid - half, l.X + mid + half, nil
}

// Off is the distance of a reading from the line in standard deviations of the next reading there; the place
// may be outside those that were read.
func (l *Line) Off(x, y float64) float64 {
	d := y - l.Y - l.Slope*(x-l.X)
	return math.Abs(d) / (l.Sigma * math.Sqrt(1+1/l.N+(x-l.X)*(x-l.X)/l.Sxx))
}

// Far is the number of standard deviations beyond which one of the line's readings, or one more, is too far off
// to be chance: the odds are 1 in 200 for all of them together.
func (l *Line) Far() float64 { return studentsT(1-0.0025/(l.N+1), l.Free) }
