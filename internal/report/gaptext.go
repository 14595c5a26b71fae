package report

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
)

// GapText writes the times of a timed arc as plain text of at most 80 columns.
func GapText(s *calc.Timed, o Options) string {
	w := writer{comma: o.Comma}
	w.head(&s.Card, o)
	w.stops(&s.Card)
	w.para("", s.Why)
	w.line("")
	if len(s.Figures) > 0 {
		w.line("  beat  %s", BeatBar(s, 60))
		w.line("")
	}
	w.spots(s, o)
	w.gapEnds(s)
	w.widerGap(s, o)
	w.heat(s)
	w.timedRemedies(s)
	for _, l := range s.Card.Warnings {
		if l.Severity == calc.Caution && l.Text != s.Why {
			w.para(strings.ToUpper(string(l.Severity))+"  ", l.Text)
		}
	}
	w.para("", whoDecides)
	w.line("")
	w.assumed(&s.Card)
	return w.String()
}

func (w *writer) spots(s *calc.Timed, o Options) {
	for _, name := range [...]string{"wire_feed", "volts", "current"} {
		if f, ok := s.Card.Figure(name); ok {
			w.spot(&f, o)
		}
	}
	for i := range s.Figures {
		w.spot(&s.Figures[i], o)
		if o.Why {
			w.reason(&s.Figures[i])
		}
	}
	if s.Count > 0 {
		w.line("  %-13s %9d for %s of seam", "spots", s.Count, quantity.Show(s.Seam, "mm", lead(o.Units)))
	}
	w.line("")
}

func (w *writer) spot(f *calc.Figure, o Options) {
	value, band := quantity.Band(f.Value, f.Low, f.High, f.Unit, lead(o.Units))
	if f.Low == f.High {
		band = ""
	}
	note := ""
	if (f.Name == "arc_on" || f.Name == "arc_off") && band != "" {
		note = "working range"
	}
	w.line("  %-14s %9s %-7s %-13s %s", calc.FigureLabel(f.Name), value, quantity.Label(f.Unit, lead(o.Units)), band, note)
}

func (w *writer) gapEnds(s *calc.Timed) {
	if len(s.Limits) == 0 {
		return
	}
	w.line("What ends each range:")
	for _, l := range s.Limits {
		w.para(fmt.Sprintf("  %-10s %-5s ", calc.FigureLabel(l.Figure), l.End), l.Text)
	}
	w.line("")
}

func (w *writer) widerGap(s *calc.Timed, o Options) {
	if s.Wider == nil {
		return
	}
	w.para("", WiderText(s.Wider, o.Units))
	w.line("")
}

// WiderText says how the ranges move when the gap is a quarter wider.
func WiderText(wd *calc.Wider, units quantity.System) string {
	at := "Gap a quarter wider, " + quantity.Show(wd.Gap, "mm", lead(units)) + ": "
	switch {
	case wd.Off[1] == 0:
		return at + wd.Why
	case wd.Reason == "two-settings":
		at += "only with a longer first spot; "
	}
	return at + fmt.Sprintf("on %.2f–%.2f s, off %.2f–%.2f s, step %s.", wd.On[0], wd.On[1], wd.Off[0], wd.Off[1],
		quantity.Show(wd.Step, "mm", lead(units)))
}

// heat draws the trace.
func (w *writer) heat(s *calc.Timed) {
	if len(s.Trace) == 0 {
		return
	}
	w.line("Temperature over the last beats, °C (e root edge, c puddle's middle, * both):")
	for _, l := range TracePlot(s, 76, 12) {
		w.line("%s", l)
	}
	w.line("")
}

func (w *writer) timedRemedies(s *calc.Timed) {
	if len(s.Remedies) == 0 {
		return
	}
	w.line("What would give a rhythm:")
	for i := range s.Remedies {
		w.line("  %-28s %s", s.Remedies[i].Change, GapRemedyText(&s.Remedies[i]))
	}
	w.line("")
}

// GapRemedyText says what trying a change showed.
func GapRemedyText(r *calc.Remedy) string {
	switch {
	case r.Late:
		return "untried: this job takes long to compute"
	case !r.Tried:
		return "untried: the model has no equations for it"
	case r.Opens:
		return fmt.Sprintf("does: longest on %.0f %% over the shortest", r.Margin)
	}
	return "tried: does not"
}
