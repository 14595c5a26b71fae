package hang

import (
	"fmt"
	"math"

	"brazebooth/calc/formula"
	"brazebooth/tables"
)

// Estimate is a figure with its 95 % band.
type Estimate struct{ V, Low, High float64 }

// inBand is the number of standard deviations from the middle to each end of a 95 % band.
const inBand = 1.959964

// LargestGap returns the widest gap, mm, up to which a setting bridges every narrower one; its band is where
// the chance to bridge falls through 97.5 and 2.5 %. at returns the joint at a gap with its widths, from a
// cross-section. It is called some sixty times, up to most, mm: a figure beyond that is most, and one that even
// a closed root misses is 0. Where the metal in the root decides, which hardly depends on the gap, a small
// change of the setting may change the figure much. An error of at ends the search; ErrRange if "bridges" is
// not judged.
func LargestGap(at func(gap float64) (Joint, error), most float64) (Estimate, error) {
	s := gapSearch{at: at}
	if !(most > narrowest && most <= 100) {
		return Estimate{}, fmt.Errorf("%w: gaps up to %g mm", formula.ErrRange, most)
	}
	var e Estimate
	for _, level := range [...]struct {
		to *float64
		z  float64
	}{{&e.Low, inBand}, {&e.V, 0}, {&e.High, -inBand}} {
		*level.to = s.first(level.z, most)
	}
	return e, s.err
}

// narrowest is the gap at which LargestGap starts, mm: less than a hair.
const narrowest = 0.05

// gapSearch caches margins, because the three levels start from the same gaps.
type gapSearch struct {
	at      func(float64) (Joint, error)
	gaps    []float64
	margins []float64 // over the doubt
	err     error
}

// ask is the margin of a gap in doubts.
func (s *gapSearch) ask(gap float64) float64 {
	if s.err != nil {
		return 0
	}
	var bridges Edge
	j, err := s.at(gap)
	if err == nil {
		bridges, _, err = Edges(&j)
	}
	if err == nil && (bridges.Why != "" || j.Kind != "butt") {
		err = fmt.Errorf("%w: no open root is judged here", formula.ErrRange)
	}
	s.err = err
	return bridges.Margin / bridges.Doubt
}

// first is the narrowest gap whose margin is down to a level.
func (s *gapSearch) first(level, most float64) float64 {
	const wider = 1.22
	for i := 0; s.err == nil; i++ {
		if i == len(s.gaps) {
			gap := narrowest
			if i > 0 {
				gap = min(most, s.gaps[i-1]*wider)
			}
			s.gaps, s.margins = append(s.gaps, gap), append(s.margins, s.ask(gap))
		}
		switch {
		case s.margins[i] < level && i == 0:
			return 0
		case s.margins[i] < level:
			return s.bisect(s.gaps[i-1], s.gaps[i], level)
		case s.gaps[i] == most:
			return most
		}
	}
	return 0
}

func (s *gapSearch) bisect(inside, outside, level float64) float64 {
	for range 12 {
		if mid := math.Sqrt(inside * outside); s.ask(mid) >= level {
			inside = mid
		} else {
			outside = mid
		}
	}
	return math.Sqrt(inside * outside)
}

// SagHeight returns how far the root of an open butt hangs below the sheet, mm, negative if it is drawn in. For its
// band each assumption about arc, root and melt is moved to both its ends; the changes are combined as independent.
func SagHeight(j *Joint, f *tables.Filler) (Estimate, error) {
	m, ok := tables.Melts.ByID(f.ID)
	if err := j.check(); err != nil || !ok || j.Kind != "butt" || !(j.Gap > 0) || j.Backing != "" {
		return Estimate{}, fmt.Errorf("%w: root of a %s in %s: %v", formula.ErrRange, j.Kind, f.ID, err)
	}
	height := func(j *Joint) float64 { o := j.opening(); return o.Root().Sag }
	v := *j
	here, low, high := height(j), 0.0, 0.0
	for _, c := range [...]struct {
		to *float64
		d  tables.Datum
	}{
		{&v.Liquid.Tension, m.Tension}, {&v.Liquid.Density, m.Density}, {&v.Assumed.ArcForce, tables.ArcForce},
		{&v.Assumed.RMS, rmsOf(j.Mode)}, {&v.Assumed.PressureWidth, tables.ArcPressureWidth},
		{&v.Assumed.RootWetted, tables.RootWetted}, {&v.Assumed.RootGrows, tables.RootGrows},
	} {
		for _, end := range [...]float64{c.d.Low, c.d.High} {
			*c.to = end
			if d := height(&v) - here; d < 0 {
				low += d * d
			} else {
				high += d * d
			}
			v = *j
		}
	}
	return Estimate{here, here - math.Sqrt(low), here + math.Sqrt(high)}, nil
}

// LargestBead returns the largest bead that hangs over a joint's chord overhead or horizontal, as deposited
// metal, mm2. It returns ErrRange for other positions and if "hangs" is not judged.
func LargestBead(j *Joint) (Estimate, error) {
	if err := j.hangsAs("overhead", "horizontal"); err != nil {
		return Estimate{}, err
	}
	above := j.holds()
	bead := func(z float64) float64 {
		return max(0, above*math.Exp(z*inBand*j.hangDoubt())+j.Under) / j.Liquid.Swell
	}
	return Estimate{bead(0), bead(-1), bead(1)}, nil
}

// LongestPool returns the longest liquid pool, mm, that stays in a joint vertical-up or vertical-down; 0 if
// none does. It returns ErrRange for other positions and if "hangs" is not judged.
func LongestPool(j *Joint) (Estimate, error) {
	if err := j.hangsAs("vertical-up", "vertical-down"); err != nil {
		return Estimate{}, err
	}
	l := j.Liquid.Length()
	pool := func(z float64) float64 {
		times := math.Exp(z * inBand * j.hangDoubt())
		if j.Position == "vertical-up" {
			return times * 2 * l * l / (tables.PoolTaper.V * max(j.Chord, leastChord))
		}
		return max(0, times*j.front()-j.bulge()) * 3 * l * l / 2
	}
	return Estimate{pool(0), pool(-1), pool(1)}, nil
}

func (j *Joint) hangsAs(a, b string) error {
	if err := j.check(); err != nil {
		return err
	}
	if why := j.hangNotJudged(); why != "" || (j.Position != a && j.Position != b) {
		return fmt.Errorf("%w: a bead that hangs %s: %s", formula.ErrRange, j.Position, why)
	}
	return nil
}
