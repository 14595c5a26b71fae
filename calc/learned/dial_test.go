package learned

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// booth is a wire drive whose dial gives a straight line, with the scatter of its readings.
type booth struct {
	zero, slope, sigma float64 // m/min
	r                  *rand.Rand
}

func (b *booth) read(at float64) DialReading {
	return DialReading{At: at, Gives: b.zero + b.slope*at + b.sigma*b.r.NormFloat64()}
}

// anyBooth draws a drive from 2 to 12 m/min over ten marks whose deviation is what tables expects times wide.
func anyBooth(r *rand.Rand, wide float64) booth {
	b := booth{zero: 0.5 + 2*r.Float64(), slope: 0.5 + 0.7*r.Float64(), r: r}
	b.sigma = wide * tables.DialSigma.V * (b.zero + 5*b.slope)
	return b
}

// Simulated booths whose readings scatter as expected or half as much: the band of the next reading at a position holds
// it, and the band of the position for a feed holds the position that gives it, in 94 of 100 or more, from three
// readings to twelve. Where they scatter twice as much, in 80 (three readings) to 90 (twelve).
func TestDialBandsCover(t *testing.T) {
	r := rand.New(rand.NewPCG(20, deep.Seed()))
	booths := deep.Many(200, 20000)
	for _, c := range []struct {
		n           int
		wide        float64
		least, most float64 // of 100
	}{{3, 1, 95, 99.9}, {4, 1, 94, 99.5}, {6, 1, 94, 99}, {12, 1, 93, 98}, {3, 0.5, 97, 100}, {6, 0.5, 97, 100},
		{12, 0.5, 97, 100}, {3, 2, 80, 95}, {6, 2, 86, 96}, {12, 2, 90, 97}} {
		seen, next, place, asked := 0, 0, 0, 0
		for range booths {
			b := anyBooth(r, c.wide)
			var list []DialReading
			for i := range c.n {
				list = append(list, b.read(1+8*float64(i)/float64(c.n-1)))
			}
			d, _, err := FitDial(list)
			if err != nil {
				t.Fatal(err)
			}
			at := 2 + 6*r.Float64()
			later := b.read(at)
			_, low, high, err := d.At(at)
			if err != nil {
				continue // the last reading was flagged
			}
			seen++
			if later.Gives >= low && later.Gives <= high {
				next++
			}
			x, low, high, err := d.Where(later.Gives)
			if err != nil {
				continue // the reading lies beyond the dial's ends
			}
			asked++
			if at >= low && at <= high {
				place++
			}
			if !(low <= x && x <= high) {
				t.Fatalf("%g lies outside %g to %g", x, low, high)
			}
		}
		for _, share := range []float64{100 * float64(next) / float64(seen), 100 * float64(place) / float64(asked)} {
			// A sample of 200 booths scatters by itself: three of its standard deviations; 0.7 of 100 in the whole.
			slack := 300 * math.Sqrt(share/100*(1-share/100)/float64(booths))
			if share < c.least-slack || share > c.most+slack {
				t.Errorf("%d readings, scatter %g: %.1f of 100 held", c.n, c.wide, share)
			}
		}
	}
}

// By hand: (2, 3.0), (4, 5.1), (6, 7.2), (8, 8.9) has the mean (5, 6.05), Sxx 20, Sxy 19.8, slope 0.99; the residuals
// −0.08, 0.04, 0.16, −0.12 − their squares add up to 0.048.
func TestDialByHand(t *testing.T) {
	d, _, err := FitDial([]DialReading{{At: 2, Gives: 3}, {At: 4, Gives: 5.1}, {At: 6, Gives: 7.2}, {At: 8,
		Gives: 8.9}})
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(d.X-5) > 1e-12 || math.Abs(d.Y-6.05) > 1e-12 || math.Abs(d.Slope-0.99) > 1e-12 || d.Sxx != 20 {
		t.Errorf("%+v", d)
	}
	known, firm := tables.DialSigma.V*6.05, tables.DialFirm.V
	if want := math.Sqrt((0.048 + firm*known*known) / (2 + firm)); math.Abs(d.Sigma-want) > 1e-12 {
		t.Errorf("sigma %g, by hand %g", d.Sigma, want)
	}
	if y, low, high, err := d.At(5); err != nil || math.Abs(y-6.05) > 1e-12 || math.Abs(high+low-2*y) > 1e-12 {
		t.Errorf("%g, %g to %g, %v", y, low, high, err)
	}
}

// The band of a position ends where the value lies just on the edge of the band there; values beyond the readings are
// not judged.
func TestDialThereAndBack(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 1))
	for range 300 {
		b := anyBooth(r, 1)
		var list []DialReading
		for i := range 5 + r.IntN(6) {
			list = append(list, b.read(1+float64(i)))
		}
		if r.IntN(2) == 0 { // a dial that turns the other way
			for i := range list {
				list[i].At = 20 - list[i].At
			}
		}
		d, _, err := FitDial(list)
		if err != nil {
			t.Fatal(err)
		}
		a, _, _, err := d.At(d.Least)
		z, _, _, err2 := d.At(d.Most)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		y := a + (z-a)*r.Float64()
		_, low, high, err := d.Where(y)
		if err != nil {
			t.Fatal(err)
		}
		wide := d // asked beyond what was read, for the check alone
		wide.Least, wide.Most = -1e3, 1e3
		for _, x := range []float64{low, high} {
			_, from, to, err := wide.At(x)
			if err != nil || math.Min(math.Abs(from-y), math.Abs(to-y)) > 1e-9 {
				t.Fatalf("%g at the end %g: %g to %g, %v", y, x, from, to, err)
			}
		}
		for _, beyond := range []float64{math.Min(a, z) - 0.01, math.Max(a, z) + 0.01} {
			if x, _, _, err := d.Where(beyond); err == nil {
				t.Fatalf("%g beyond %g to %g is found at %g", beyond, a, z, x)
			}
		}
	}
}

// One mistyped reading is left out and named until it is confirmed; where readings are too few the error says which are
// missing.
func TestDialOddAndFew(t *testing.T) {
	b := booth{zero: 1, slope: 1, sigma: 0.08, r: rand.New(rand.NewPCG(22, 1))}
	var list []DialReading
	for i := range 7 {
		list = append(list, b.read(1+float64(i)))
	}
	straight, flagged, err := FitDial(list)
	if err != nil || len(flagged) > 0 {
		t.Fatal(flagged, err)
	}
	odd := append(slices.Clone(list), DialReading{At: 4.2, Gives: 9})
	if d, flagged, err := FitDial(odd); err != nil || !slices.Equal(flagged, []int{7}) || d != straight {
		t.Errorf("%+v, %v, %v", d, flagged, err)
	}
	odd[7].Confirmed = true
	if d, flagged, err := FitDial(odd); err != nil || len(flagged) > 0 || d.N != 8 {
		t.Errorf("%+v, %v, %v", d, flagged, err)
	}
	for want, few := range map[string][]DialReading{
		"3 more positions": nil, "2 more positions": {{At: 1, Gives: 2}, {At: 1, Gives: 2.1}, {At: 1, Gives: 2.1}},
		"one more position": {{At: 1, Gives: 2}, {At: 3, Gives: 4}, {At: 3, Gives: 4.1}},
	} {
		_, _, err := FitDial(few)
		if m := mistake.Of(err); m == nil || !strings.Contains(m.Hint, want) {
			t.Errorf("%v gives %v", few, err)
		}
	}
}

// A dial that bends by some per cent of what it gives in the middle: the bend shows as scatter, and the band still
// holds the next reading in 9 of 10.
func TestBentDialsAreCovered(t *testing.T) {
	r := rand.New(rand.NewPCG(24, deep.Seed()))
	for _, bend := range []float64{-0.06, -0.03, 0.03, 0.06} {
		held, asked := 0, 0
		for range deep.Many(300, 10000) {
			b := anyBooth(r, 1)
			read := func(at float64) DialReading {
				d := b.read(at)
				d.Gives += bend * (b.zero + 5*b.slope) * (1 - (at-5)*(at-5)/16)
				return d
			}
			var list []DialReading
			for i := range 6 {
				list = append(list, read(1+8*float64(i)/5))
			}
			d, _, err := FitDial(list)
			if err != nil {
				t.Fatal(err)
			}
			next := read(1.5 + 7*r.Float64())
			if _, low, high, err := d.At(next.At); err == nil {
				asked++
				if next.Gives >= low && next.Gives <= high {
					held++
				}
			}
		}
		if share := 100 * float64(held) / float64(asked); share < 90 {
			t.Errorf("bent by %g: %.1f of 100 held", bend, share)
		}
	}
}
