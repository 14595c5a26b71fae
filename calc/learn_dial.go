package calc

import (
	"brazebooth/calc/formula"
	"brazebooth/calc/learned"
	"brazebooth/internal/mistake"
)

const dialSource = "least squares through the readings of this power source's dial in the book; the band by " +
	"Fieller's theorem for one more reading (Draper and Smith, memory high)"

// dials are a job's dials, each with the setting that it gives and the figure of its position.
func (j *Job) dials() [2]struct {
	setting, figure string
	dial            *learned.Dial
} {
	return [...]struct {
		setting, figure string
		dial            *learned.Dial
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

// dialFigures adds the positions of the booth's dials for the settings to these.
func dialFigures(card *Card, settings []Figure) []Figure {
	list := settings
	for _, d := range card.Used.dials() {
		f, ok := FigureNamed(settings, d.setting)
		if !ok || !d.dial.Known() {
			continue
		}
		if g, err := dialPosition(d.dial, d.figure, &f); err == nil {
			list = append(list, g)
		}
	}
	return list
}

// dialPosition is a dial's position that gives a setting.
func dialPosition(d *learned.Dial, name string, setting *Figure) (Figure, error) {
	x, low, high, err := d.Where(setting.Value)
	if err != nil {
		return Figure{}, err
	}
	return NewFigure(name, "marks", x, low, high, OwnBasis("{x} + ({v} − {y})/{s}", dialSource, setting.As("v"),
		Derived("x", "mean position of the readings", d.X, "marks"), Derived("y", "what they gave", d.Y, setting.Unit),
		Derived("s", "what one mark of the dial adds", d.Slope, setting.Unit), In("n", "readings", d.N, "1"))), nil
}

// dials says why a dial's position is not on the card.
func (w *warnings) dials() {
	for _, d := range w.card.Used.dials() {
		f, ok := w.card.Figure(d.setting)
		if !ok || !d.dial.Known() {
			continue
		}
		if _, shown := w.card.Figure(d.figure); shown {
			continue
		}
		if _, _, _, err := d.dial.Where(d.dial.Y); err != nil { // not even in the middle of the readings
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
