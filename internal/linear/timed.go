package linear

import (
	"fmt"

	"brazebooth/calc"
)

// readTimed reads out on, off and step of a timed arc on this joint.
func (t *talk) readTimed(string) {
	s, err := calc.SolveTimed(t.ctx, t.job, nil)
	if err != nil {
		t.fault(err)
		return
	}
	t.stops()
	t.voice.say(sentence(s.Why))
	for _, name := range [...]string{"wire_feed", "volts", "current"} {
		if f, ok := s.Card.Figure(name); ok {
			t.voice.say(first(t.figure(&f)))
		}
	}
	for i := range s.Figures {
		note := ""
		if f := &s.Figures[i]; (f.Name == "arc_on" || f.Name == "arc_off") && f.Low != f.High {
			note = "which is the working range"
		}
		t.voice.say(first(t.figure(&s.Figures[i], note)))
	}
	if s.Count > 0 {
		t.voice.say(fmt.Sprintf("%d spots for ", s.Count), t.size(s.Seam, "mm"), " of seam.")
	}
	for _, l := range s.Limits {
		t.voice.say(first(calc.FigureLabel(l.Figure)), ", ", l.End, " end: ", sentence(l.Text))
	}
	t.wider(s.Wider)
	for i := range s.Remedies {
		t.voice.say("For a rhythm: ", s.Remedies[i].Change, ": ", rhythm(&s.Remedies[i]), ".")
	}
	if t.job.Mode != "timed" {
		t.voice.show("mode timed puts this on the card.")
	}
}

// wider says how the ranges move when the gap is a quarter wider.
func (t *talk) wider(w *calc.Wider) {
	if w == nil {
		return
	}
	text := "With the gap a quarter wider, " + t.size(w.Gap, "mm") + ": "
	switch {
	case w.Off[1] == 0:
		t.voice.say(text, sentence(w.Why))
		return
	case w.Reason == "two-settings":
		text += "only with a longer first spot; "
	}
	t.voice.say(text, fmt.Sprintf("on %.2f to %.2f seconds, off %.2f to %.2f seconds, step ", w.On[0], w.On[1], w.Off[0], w.Off[1]), t.size(w.Step, "mm"), ".")
}

func rhythm(r *calc.Remedy) string {
	switch {
	case r.Late:
		return "untried, this job takes long to compute"
	case !r.Tried:
		return "untried, the model has no equations for it"
	case r.Opens:
		return fmt.Sprintf("helps, the longest on is %.0f per cent over the shortest", r.Margin)
	}
	return "does not help"
}
