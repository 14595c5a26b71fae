package calc

import (
	"fmt"
	"slices"

	"brazebooth/calc/formula"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// DialReading is where a dial of a power source stood and what it gave.
type DialReading struct {
	At, Gives float64 // the scale's own marks; m/min or V
	Confirmed bool    // one that lies far off, that somebody checked and lets stand
}

// Dial is the straight line through a dial's readings: what it gives over where it stands. The zero value is a dial of
// which nothing is known.
type Dial struct {
	formula.Line
	Pulsed bool `json:"pulsed,omitzero"` // of volts: read in a pulsed arc, and good for no other
}

// Known reports whether there is a line.
func (d *Dial) Known() bool { return d.N > 0 }

// LearnDial fits a dial's readings. Flagged are the places in the list of those that lie too far from the line through
// the others to be chance; they are left out until they are confirmed. The error of too few says what is missing.
func LearnDial(list []DialReading) (d Dial, flagged []int, err error) {
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

// oddest is the place in taken of the reading that lies furthest from the line through the others, −1 where none lies
// too far to be chance.
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

// dialLacks says which readings are missing for a line, "" for none.
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

const dialSource = "least squares through the readings of this power source's dial in the book; the band by " +
	"Fieller's theorem for one more reading (Draper and Smith, memory high)"

// dials of a job by the setting that each gives.
func (j *Job) dials() [2]struct {
	setting, figure string
	dial            *Dial
} {
	return [...]struct {
		setting, figure string
		dial            *Dial
	}{{"wire_feed", "feed_dial", &j.FeedDial}, {"volts", "volts_dial", &j.VoltsDial}}
}

// checkDials refuses lines that no readings can have given.
func checkDials(j *Job) error {
	for _, d := range j.dials() {
		if d.dial.Line == (formula.Line{}) {
			continue
		}
		if err := d.dial.Sound(); err != nil {
			return mistake.In(d.figure, "these readings give no line", "leave it out, or take it from the book: "+
				"brazebooth book dials")
		}
	}
	return nil
}

// ownMode leaves out a volts dial that was read in another arc than a completed job has.
func ownMode(j Job) Job {
	if j.VoltsDial.Pulsed != (j.Mode == "pulsed") {
		j.VoltsDial = Dial{}
	}
	return j
}

// dialFigures are where the booth's dials stand for the settings, behind these.
func dialFigures(card *Card, settings []Figure) []Figure {
	list := settings
	for _, d := range card.Used.dials() {
		f, ok := FigureNamed(settings, d.setting)
		if !ok || !d.dial.Known() {
			continue
		}
		if g, err := d.dial.position(d.figure, &f); err == nil {
			list = append(list, g)
		}
	}
	return list
}

// position is where the dial stands for a setting.
func (d *Dial) position(name string, setting *Figure) (Figure, error) {
	x, low, high, err := d.Where(setting.Value)
	if err != nil {
		return Figure{}, err
	}
	return NewFigure(name, "marks", x, low, high, OwnBasis("{x} + ({v} − {y})/{s}", dialSource, setting.As("v"),
		Derived("x", "mean position of the readings", d.X, "marks"), Derived("y", "what they gave", d.Y, setting.Unit),
		Derived("s", "what one mark of the dial adds", d.Slope, setting.Unit), In("n", "readings", d.N, "1"))), nil
}

// dials says where a dial's position is not judged.
func (w *warnings) dials() {
	for _, d := range w.card.Used.dials() {
		f, ok := w.card.Figure(d.setting)
		if !ok || !d.dial.Known() {
			continue
		}
		if _, shown := w.card.Figure(d.figure); shown {
			continue
		}
		if _, _, _, err := d.dial.Where(d.dial.Y); err != nil { // even in the middle of what was read
			w.tell("dial", Info, dialSource, "%s: not judged, because the %.0f readings scatter more than the dial "+
				"moves them. Read it again at positions further apart.", FigureLabel(d.figure), d.dial.N)
			continue
		}
		a, _, _, _ := d.dial.At(d.dial.Least)
		b, _, _, _ := d.dial.At(d.dial.Most)
		w.tell("dial", Info, dialSource, "%s: not judged, because %.3g %s lies outside what was read, %.3g to "+
			"%.3g. Read the dial there: book reading.", FigureLabel(d.figure), f.Value, f.Unit, min(a, b), max(a, b))
	}
}
