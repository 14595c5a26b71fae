package learned

import (
	"fmt"
	"slices"

	"brazebooth/calc/formula"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// DialReading is a position of a power source's dial and what it gave.
type DialReading struct {
	At, Gives float64 // in marks of the scale; in m/min or V
	Confirmed bool    // somebody checked a reading that lies far off
}

// Dial is the straight line through a dial's readings: what it gives by its position. The zero value is a dial of which
// nothing is known.
type Dial struct {
	formula.Line
	Pulsed bool `json:"pulsed,omitzero"` // volts read in a pulsed arc; they say nothing of another
}

// Known reports whether there is a line.
func (d *Dial) Known() bool { return d.N > 0 }

// FitDial lays a line through a dial's readings. flagged are the places in the list of readings that lie too far from
// the line through the others to be chance; they are left out until they are confirmed. Where the readings are too few
// the error says which are missing.
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
		return d, flagged, mistake.New("the dial is not judged from "+countOf(len(taken), "reading"), lacks)
	}
	d.Line, err = dialLine(list, taken)
	return d, flagged, err
}

// oddest is the place in taken of the reading that lies furthest from the line through the others, −1 where each may be
// chance.
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

// dialLine is the line through the readings at these places of the list.
func dialLine(list []DialReading, at []int) (formula.Line, error) {
	x, y, mean := make([]float64, len(at)), make([]float64, len(at)), 0.0
	for i, k := range at {
		x[i], y[i] = list[k].At, list[k].Gives
		mean += y[i] / float64(len(at))
	}
	return formula.StraightLine(x, y, tables.DialSigma.V*mean, tables.DialFirm.V)
}

// dialLacks says which readings are missing for a line, "" where they are enough.
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

func countOf(n int, what string) string {
	if n != 1 {
		what += "s"
	}
	return fmt.Sprintf("%d %s", n, what)
}
