package learned

import (
	"fmt"
	"slices"

	"brazebooth/calc/formula"
	"brazebooth/internal/mistake"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// DialReading is a position of a power source's dial and the wire feed or volts that were measured there.
type DialReading struct {
	At, Gives float64 // marks of the scale; m/min or V
	Confirmed bool    // a reading far off the others that somebody checked
}

// Dial is the straight line through a dial's readings: feed or volts as a function of its position. The zero value is a
// dial about which nothing is known.
type Dial struct {
	formula.Line
	Pulsed bool `json:"pulsed,omitzero"` // volts that were read in a pulsed arc, which do not hold for any other arc
}

// Known reports whether there is a line.
func (d *Dial) Known() bool { return d.N > 0 }

// FitDial fits a line to a dial's readings. flagged are the indices of readings that are too far from the line through
// the others to be chance; they are left out unless they are confirmed. If the readings are too few, the error says
// which are missing.
func FitDial(list []DialReading) (d Dial, flagged []int, err error) {
	taken := make([]int, len(list))
	for i := range list {
		taken[i] = i
	}
	for len(taken) > 4 {
		odd := oddest(list, taken)
		if odd < 0 {
			break
		}
		flagged = append(flagged, taken[odd])
		taken = slices.Delete(taken, odd, odd+1)
	}
	slices.Sort(flagged)
	if lacks := dialLacks(list, taken); lacks != "" {
		return d, flagged, mistake.New("the dial is not judged from "+quantity.Count(len(taken), "reading"), lacks)
	}
	d.Line, err = dialLine(list, taken)
	return d, flagged, err
}

// oddest is the index in taken of the reading that is furthest from the line through the others; −1 if the deviation of
// each may be chance.
func oddest(list []DialReading, taken []int) int {
	odd, most := -1, 1.0
	for i, at := range taken {
		if list[at].Confirmed {
			continue
		}
		l, err := dialLine(list, slices.Delete(slices.Clone(taken), i, i+1))
		if err != nil {
			continue
		}
		if far := l.Off(list[at].At, list[at].Gives) / l.Far(); far > most {
			odd, most = i, far
		}
	}
	return odd
}

// dialLine is the line through the readings with these indices.
func dialLine(list []DialReading, at []int) (formula.Line, error) {
	x, y, mean := make([]float64, len(at)), make([]float64, len(at)), 0.0
	for i, k := range at {
		x[i], y[i] = list[k].At, list[k].Gives
		mean += y[i] / float64(len(at))
	}
	return formula.StraightLine(x, y, tables.DialSigma.V*mean, tables.DialFirm.V)
}

// dialLacks says which readings are missing for a line; "" if there are enough.
func dialLacks(list []DialReading, taken []int) string {
	var places []float64
	for _, k := range taken {
		if !slices.Contains(places, list[k].At) {
			places = append(places, list[k].At)
		}
	}
	switch n := 3 - len(places); {
	case n == 1:
		return "read it at one more position: two show no bend"
	case n > 1:
		return fmt.Sprintf("read it at %d more positions, low, middle and high", n)
	}
	return ""
}
