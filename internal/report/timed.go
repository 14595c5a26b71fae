package report

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// Beat is one beat of on and off: a picture.
type Beat struct{ *calc.Timed }

// Limits say what limits each range.
type Limits struct{ List []calc.RangeLimit }

// Wider says how the ranges move if the gap is a quarter wider.
type Wider struct{ *calc.Wider }

// Trace is the heat of the last beats: a picture.
type Trace struct{ *calc.Timed }

// Remedies are the changes that were tried because nothing is good.
type Remedies struct {
	List   []calc.Remedy
	Rhythm bool // they are about the rhythm of a timed arc, otherwise about a good zone of the window
}

// Decides says that local codes decide, after an answer that is not a card.
type Decides struct{}

// Timed is everything that a timed arc's answer shows.
func Timed(s *calc.Timed) []Block {
	var list []calc.Figure
	var own, everyArcs []calc.Warning
	for _, name := range [...]string{"wire_feed", "volts", "current"} {
		if f, ok := s.Card.Figure(name); ok {
			list = append(list, f)
		}
	}
	for _, w := range s.Card.Warnings {
		switch {
		case w.Severity != calc.Caution || w.Text == s.Why:
		case strings.HasPrefix(w.Code, "timed"):
			own = append(own, w)
		default:
			everyArcs = append(everyArcs, w)
		}
	}
	return []Block{Head{Card: &s.Card, Title: "Timed arc"}, stopsOf(&s.Card),
		Said{{Text: s.Why}}, Beat{s}, Figures{&s.Card, append(list, s.Figures...), OfTimed},
		seam(s), Limits{s.Limits}, Wider{s.Wider},
		Trace{s}, Remedies{s.Remedies, true}, Cautions{List: own}, Cautions{List: everyArcs, OnCard: true}, Decides{},
		Assumed{s.Card.Assumed}}
}

func (b Beat) words(Options) []Line {
	if len(b.Figures) == 0 {
		return nil
	}
	return []Line{{Kind: Picture, Of: b}}
}

// seam says how many spots a seam takes.
func seam(s *calc.Timed) lines {
	return func(o Options) []Line {
		if s.Count == 0 {
			return nil
		}
		length := quantity.Show(s.Seam, "mm", o.Units.Lead())
		return []Line{{Text: fmt.Sprintf("%d spots for a seam of %s", s.Count, length)}}
	}
}

func (l Limits) words(Options) []Line {
	return under("What ends each range:", each(l.List, func(x *calc.RangeLimit) Line {
		return Line{Kind: Limit, Lead: calc.FigureLabel(x.Figure) + ", " + x.End + " end", Text: x.Text}
	}))
}

func (w Wider) words(o Options) []Line {
	if w.Wider == nil {
		return nil
	}
	text := w.Why
	if w.Off[1] != 0 {
		text = fmt.Sprintf("wire feed %s, on %s, off %s, step %s.",
			quantity.ShowDialed("wire_feed", w.Feed, "m/min", o.Units.Lead()), seconds(w.On), seconds(w.Off),
			quantity.ShowDialed("spot_step",
				quantity.OnDial("spot_step", w.Step, "mm", o.Units.Lead()), "mm", o.Units.Lead()))
		if w.Reason == "two-settings" {
			text = "only with a longer first spot; " + text
		}
	}
	return []Line{{Text: "Gap a quarter wider, " + quantity.Show(w.Gap, "mm", o.Units.Lead()) + ": " + text}}
}

// seconds are the two ends of a range of times.
func seconds(ends [2]float64) string {
	_, from, to := quantity.Ends(ends[0], ends[0], ends[1], "s", quantity.Metric)
	return from + "–" + to + " s"
}

func (t Trace) words(Options) []Line {
	if len(t.Trace) == 0 {
		return nil
	}
	return []Line{{Kind: Picture, Of: t}}
}

func (r Remedies) words(Options) []Line {
	heading := "What would open a good zone:"
	if r.Rhythm {
		heading = "What would give a rhythm:"
	}
	return under(heading, each(r.List, func(x *calc.Remedy) Line {
		return Line{Kind: Remedy, Lead: x.Change, Text: r.text(x), Bad: !x.Opens}
	}))
}

// text says what trying a change showed.
func (r *Remedies) text(x *calc.Remedy) string {
	switch {
	case x.Late:
		return "untried: this job takes long to compute"
	case !x.Tried:
		return "untried: not judged here"
	case !x.Opens:
		return "tried: " + map[bool]string{true: "gives none", false: "opens none"}[r.Rhythm]
	case r.Rhythm && x.Steady:
		return fmt.Sprintf("needs no rhythm: %.0f %% to its nearest edge, %.0f J/mm", x.Margin, x.Heat)
	case r.Rhythm:
		return fmt.Sprintf("gives one: longest on %.0f %% over the shortest", x.Margin)
	}
	text := fmt.Sprintf("opens one, %.0f %% wide to its nearest edge", x.Margin)
	if x.Heat > 0 {
		text += fmt.Sprintf(", %.0f J/mm", x.Heat)
	}
	return text
}

func (Decides) words(Options) []Line { return []Line{{Text: whoDecides}} }
