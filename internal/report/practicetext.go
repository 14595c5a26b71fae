package report

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// Practice is a practice job as it stands: what was laid, and, once it is over, what the program would have done and why.
type Practice struct {
	Job      *practice.Booth
	Card     *calc.Card // of the start, by the program's own heat
	Beads    []practice.Bead
	Run      *practice.Run      // nil while the job is open
	Revealed *practice.Revealed // the same
}

// PracticeText writes a practice job in at most 80 columns: every bead in a line or two, the last one drawn.
func PracticeText(p *Practice, o Options) string {
	w := writer{Options: o}
	w.para("", fmt.Sprintf("practice, level %d, seed %d: %s", p.Job.Level, p.Job.Seed, p.Job.Work))
	w.para("", PracticeWork(p.Card, o.Units)+". The booth is simulated: its heat is as far from the card's as a real booth's may be.")
	w.line("")
	for i := range p.Beads {
		w.practiceBead(i+1, &p.Beads[i], o, p.Run != nil)
	}
	last := &p.Beads[len(p.Beads)-1]
	w.practiceDrawing(last)
	if p.Run != nil {
		w.practiceRun(p, o)
	}
	if p.Revealed != nil {
		w.revealed(p.Revealed, o)
	}
	w.para("CAUTION  ", practice.Caution.Text)
	return w.String()
}

// PracticeWork is what a practice job is laid on, in a line.
func PracticeWork(card *calc.Card, sys quantity.System) string {
	o := Options{Units: sys}
	text := memberText(card, 0, o) + " " + jointText(card, o) + ", " + card.Used.Filler + " " + wireText(card.Used.Wire.V) + ", " + card.Used.Mode
	if s := card.Used.SpotStep; s.Set && card.Used.Mode == "timed" {
		text += ", step " + quantity.Show(s.V, "mm", sys)
	}
	return text
}

// practiceBead is how a bead was laid and what it shows; over adds the edges that it missed.
func (w *writer) practiceBead(n int, b *practice.Bead, o Options, over bool) {
	mark := fmt.Sprintf("bead %d  ", n)
	w.para(mark, SettingText(&b.Job, o.Units))
	pad := strings.Repeat(" ", len(mark))
	w.para(pad, LookText(b))
	if over && len(b.Unmet) > 0 {
		w.para(pad, "not met: "+strings.Join(b.Unmet, "; "))
	}
	w.para(pad, "meter: "+MeterText(b))
}

// SettingText is the settings that a hand makes, in a line.
func SettingText(j *calc.Job, sys quantity.System) string {
	var parts []string
	add := func(label, unit string, o calc.Opt) {
		if o.Set {
			parts = append(parts, label+" "+settingValue(o.V, unit, sys))
		}
	}
	add("wire feed", "m/min", j.Feed)
	add("volts", "V", j.Volts)
	if j.Mode == "timed" {
		add("on", "s", j.ArcOn)
		add("off", "s", j.ArcOff)
	} else {
		add("travel", "mm/s", j.Travel)
	}
	stick := j.StickOut
	if !stick.Set {
		return strings.Join(append(parts, "stick-out "+settingValue(tables.DefaultStickOut.V, "mm", sys)+" by eye"), ", ")
	}
	add("stick-out", "mm", stick)
	return strings.Join(parts, ", ")
}

func settingValue(v float64, unit string, sys quantity.System) string {
	if unit == "s" {
		return fmt.Sprintf("%.2f s", v)
	}
	return quantity.Show(v, unit, sys.Lead())
}

// LookText is a bead's verdict with what it shows.
func LookText(b *practice.Bead) string {
	if b.Seen == b.Verdict {
		return seenText(b.Seen)
	}
	return b.Verdict + ": " + seenText(b.Seen)
}

// seenText is what a bead shows in the words of its sights.
func seenText(seen string) string {
	var words []string
	for _, id := range strings.Split(seen, ",") {
		if s, ok := tables.SightByID(id); ok {
			words = append(words, s.Name)
		}
	}
	return strings.Join(words, "; ")
}

// MeterText is what the booth's meter showed.
func MeterText(b *practice.Bead) string {
	var parts []string
	for i := range b.Meter {
		f := &b.Meter[i]
		value, band := quantity.Band(f.Value, f.Low, f.High, f.Unit, quantity.Metric)
		parts = append(parts, value+" "+f.Unit+" ("+band+")")
	}
	return strings.Join(parts, ", ")
}

// BeadDrawing is the bead's cross-section to scale, and mm a column; where there is none, because the arc was timed, the
// bead bridges nothing or the heat is beyond the model, the drawings of what is seen, and 0.
func BeadDrawing(b *practice.Bead, width, height int) (lines []string, perColumn float64) {
	if b.Section.Wet[0] > 0 && b.Section.Wet[1] > 0 {
		if lines, perColumn = Drawing(&b.Section, width, height); lines != nil {
			return lines, perColumn
		}
	}
	for _, id := range strings.Split(b.Seen, ",") {
		if s, ok := tables.SightByID(id); ok && len(lines)+len(s.Drawing) <= max(height, 4) {
			lines = append(lines, s.Drawing...)
		}
	}
	return lines, 0
}

// SketchText stands under what is no drawing of the bead itself, but the sight's own.
const SketchText = "a sketch of the sight on a lap, not your bead to scale"

func (w *writer) practiceDrawing(b *practice.Bead) {
	lines, perColumn := BeadDrawing(b, 60, 12)
	w.line("")
	for _, l := range lines {
		w.line("    %s", l)
	}
	if perColumn > 0 {
		w.line("    / first member  \\ second  o bead; ten columns are %.1f mm", 10*perColumn)
	} else if len(lines) > 0 {
		w.line("    %s", SketchText)
	}
	w.line("")
}

// practiceRun is the program's own row of beads, beside the trainee's.
func (w *writer) practiceRun(p *Practice, o Options) {
	w.para("", PracticeTally(len(p.Beads), p.Beads[len(p.Beads)-1].Verdict, p.Run))
	w.line("")
	w.line("The program's own beads, from the same start:")
	for i := range p.Run.Steps {
		s := &p.Run.Steps[i]
		w.practiceBead(i+1, &s.Bead, o, true)
		if text := CorrectionText(s.Change, s.Do, o.Units); text != "" {
			w.para("        CHANGE  ", text)
		}
	}
	w.para("A setting that is good in this booth: ", SettingText(&p.Job.Best, o.Units))
	w.line("")
}

// PracticeTally sets a hand's beads beside the program's.
func PracticeTally(beads int, verdict string, run *practice.Run) string {
	own := fmt.Sprintf("Your bead %d is %s. ", beads, verdict)
	if run.Good {
		return own + fmt.Sprintf("The program's own corrections took %s to a good one.", quantity.Count(len(run.Steps), "bead"))
	}
	return own + fmt.Sprintf("The program's own corrections reached no good bead in %s. %s", quantity.Count(len(run.Steps), "bead"), run.Why)
}

// revealed is the hidden truth and what it did.
func (w *writer) revealed(r *practice.Revealed, o Options) {
	w.line("What this booth hid       the cards have        here")
	for i := range r.Hidden {
		h := &r.Hidden[i]
		value, band := quantity.Band(h.Value, h.Low, h.High, h.Unit, o.Units.Lead())
		w.line("  %-22s  %6s %-12s  %6s %s", calc.FigureLabel(h.Name), value, band, HiddenText(h, o.Units), quantity.Label(h.Unit, o.Units.Lead()))
	}
	w.line("")
	w.line("How it moved your last bead, each alone and all together:")
	w.line("                  by the card         voltage efficiency stick-out   all")
	for i := range r.Moved {
		m := &r.Moved[i]
		value, band := quantity.Band(m.Value, m.Low, m.High, m.Unit, o.Units.Lead())
		w.line("  %-16s%6s %-12s %7s %9s %9s %6s %s", calc.FigureLabel(m.Name), value, band, MovedText(m, m.Alone[0], o.Units), MovedText(m, m.Alone[1], o.Units),
			MovedText(m, m.Alone[2], o.Units), MovedText(m, m.True, o.Units), quantity.Label(m.Unit, o.Units.Lead()))
	}
	w.line("")
}

// HiddenText is a hidden value in the digits that tell it from the cards'.
func HiddenText(h *practice.Hidden, sys quantity.System) string {
	value, _ := quantity.Band(h.True, h.True-(h.High-h.Low)/20, h.True+(h.High-h.Low)/20, h.Unit, sys.Lead())
	return value
}

// MovedText is a moved value in a figure's unit; "-" where the bead has none.
func MovedText(m *practice.Moved, v float64, sys quantity.System) string {
	if !(v > 0) {
		return "-"
	}
	value, _ := quantity.Band(v, v-(m.High-m.Low)/20, v+(m.High-m.Low)/20, m.Unit, sys.Lead())
	return value
}
