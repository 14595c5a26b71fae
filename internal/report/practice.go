package report

import (
	"fmt"
	"strings"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// Practice is a practice job: the beads laid so far and, once it is over, what the program would have done and why.
type Practice struct {
	Job      *practice.Booth
	Card     *calc.Card // of the start, computed by the program without the booth's hidden values
	Beads    []practice.Bead
	Run      *practice.Run      // nil while the job is open
	Revealed *practice.Revealed // nil while the job is open
}

// Sketch is a test bead's cross-section: a picture.
type Sketch struct{ *practice.Bead }

// Blocks are everything that a practice job shows.
func (p *Practice) Blocks() []Block {
	list := []Block{p, lines(p.beads), Sketch{p.last()}}
	if p.Run != nil {
		tally := PracticeTally(len(p.Beads), p.last().Verdict, p.Run)
		list = append(list, Said{{Text: tally}}, lines(p.par))
	}
	if p.Revealed != nil {
		list = append(list, lines(p.hidden), lines(p.moved))
	}
	return append(list, Cautions{List: []calc.Warning{practice.Caution}})
}

func (p *Practice) last() *practice.Bead { return &p.Beads[len(p.Beads)-1] }

func (p *Practice) words(o Options) []Line {
	return []Line{
		{Text: fmt.Sprintf("practice, level %d, seed %d: %s", p.Job.Level, p.Job.Seed, p.Job.Work)},
		{Kind: Subject, Text: PracticeWork(p.Card, o.Units) +
			". The booth is simulated: its heat is as far from the card's as a real booth's may be."},
	}
}

// PracticeWork describes in a line the work that a practice job is laid on.
func PracticeWork(card *calc.Card, sys quantity.System) string {
	o := Options{Units: sys}
	text := memberText(card, 0, o) + " " + jointText(card, o)
	if onto := memberText(card, 1, o); !card.Setup.One && onto != memberText(card, 0, o) {
		text += " onto " + onto
	}
	text += ", " + card.Used.Filler + " " + WireText(card.Used.Wire.V) + ", " + card.Used.Mode
	if s := card.Used.SpotStep; s.Set && card.Used.Mode == "timed" {
		text += ", step " + quantity.ShowDialed("spot_step", s.V, "mm", sys)
	}
	return text
}

// beads are the test beads that the user laid.
func (p *Practice) beads(o Options) (list []Line) {
	for i := range p.Beads {
		list = append(list, beadLines(i+1, &p.Beads[i], o, p.Run != nil)...)
	}
	return list
}

// beadLines say how a bead was laid and what it shows; with over, also which edges it missed.
func beadLines(n int, b *practice.Bead, o Options, over bool) []Line {
	list := []Line{{Kind: Bead, Lead: fmt.Sprint(n), Text: SettingText(&b.Job, o.Units)},
		{Kind: OfBead, Text: LookText(b)}}
	if over && len(b.Unmet) > 0 {
		list = append(list, Line{Kind: OfBead, Text: "not met: " + strings.Join(b.Unmet, "; ")})
	}
	return append(list, Line{Kind: OfBead, Text: "meter: " + MeterText(b)})
}

// SettingText is the settings made by hand, in a line.
func SettingText(j *calc.Job, sys quantity.System) string {
	var parts []string
	add := func(label, figure, unit string, o calc.Opt) {
		if o.Set {
			parts = append(parts, label+" "+quantity.ShowDialed(figure, o.V, unit, sys.Lead()))
		}
	}
	add("wire feed", "wire_feed", "m/min", j.Feed)
	add("volts", "volts", "V", j.Volts)
	if j.Mode == "timed" {
		add("on", "arc_on", "s", j.ArcOn)
		add("off", "arc_off", "s", j.ArcOff)
	} else {
		add("travel", "travel", "mm/s", j.Travel)
	}
	add("stick-out", "stickout", "mm", calc.Some(j.StickOut.Or(tables.DefaultStickOut.V)))
	text := strings.Join(parts, ", ")
	if !j.StickOut.Set {
		text += " by eye"
	}
	return text
}

// LookText is a bead's verdict with what it shows.
func LookText(b *practice.Bead) string {
	if b.Seen == b.Verdict {
		return SeenText(b.Seen)
	}
	return b.Verdict + ": " + SeenText(b.Seen)
}

// SeenText is the names of what a bead shows, from its ids separated by commas.
func SeenText(seen string) string {
	var words []string
	for _, id := range strings.Split(seen, ",") {
		if s, ok := tables.Sights.ByID(id); ok {
			words = append(words, s.Name)
		}
	}
	return strings.Join(words, "; ")
}

// MeterText is what the booth's meter showed.
func MeterText(b *practice.Bead) string {
	var parts []string
	for i := range b.Meter {
		v := ValueOf(&b.Meter[i], quantity.Metric)
		parts = append(parts, v.String()+" ("+v.Band()+")")
	}
	return strings.Join(parts, ", ")
}

// BeadDrawing is the bead's cross-section to scale, and the mm of a column. A bead has none if the arc was timed, if it
// bridges nothing, or if its heat is beyond the model; then BeadDrawing returns sketches of what it shows, and 0.
func BeadDrawing(b *practice.Bead, width, height int) (lines []string, perColumn float64) {
	if b.Section.Wet[0] > 0 && b.Section.Wet[1] > 0 {
		if lines, perColumn = Drawing(&b.Section, width, height); lines != nil {
			return lines, perColumn
		}
	}
	for _, id := range strings.Split(b.Seen, ",") {
		if s, ok := tables.Sights.ByID(id); ok && len(lines)+len(s.Drawing) <= max(height, 4) {
			lines = append(lines, s.Drawing...)
		}
	}
	return lines, 0
}

// SketchText is shown under a sketch, which is used for a bead without a drawing of its own.
const SketchText = "a sketch of the sight on a lap, not your bead to scale"

func (s Sketch) words(Options) []Line { return []Line{{Kind: Picture, Of: s}} }

// PracticeTally compares the number of the user's beads with the program's.
func PracticeTally(beads int, verdict string, run *practice.Run) string {
	own := fmt.Sprintf("Your bead %d is %s. The program's own corrections ", beads, verdict)
	if run.Good {
		return own + fmt.Sprintf("took %s to a good one.", quantity.Count(len(run.Steps), "bead"))
	}
	return own + fmt.Sprintf("reached no good bead in %s. %s", quantity.Count(len(run.Steps), "bead"), run.Why)
}

// par is the program's own series of beads, with a setting that is good in this booth.
func (p *Practice) par(o Options) []Line {
	list := []Line{{Kind: Heading, Text: "The program's own beads, from the same start:"}}
	for i := range p.Run.Steps {
		s := &p.Run.Steps[i]
		list = append(list, beadLines(i+1, &s.Bead, o, true)...)
		if text := CorrectionText(s.Change, s.Do, o.Units); text != "" {
			list = append(list, Line{Kind: OfBead, Lead: "CHANGE  ", Text: text})
		}
	}
	best := SettingText(&p.Job.Best, o.Units)
	return append(list, Line{Kind: Named, Lead: "A setting that is good in this booth", Text: best})
}

func (p *Practice) hidden(o Options) []Line {
	list := []Line{{Kind: Verbatim, Text: "What this booth hid       the cards have        here"}}
	for i := range p.Revealed.Hidden {
		h := &p.Revealed.Hidden[i]
		value, band := quantity.Band(h.Value, h.Low, h.High, h.Unit,
			o.Units.Lead()) // ValueOf would round an efficiency to a whole number
		list = append(list, Line{Kind: Hid, Cells: []any{calc.FigureLabel(h.Name), value, band,
			TrueValue(&h.Figure, h.True, o.Units), quantity.Label(h.Unit, o.Units.Lead())}})
	}
	return list
}

// moved is how the hidden values changed the last bead.
func (p *Practice) moved(o Options) []Line {
	list := []Line{
		{Text: "How it moved your last bead, each alone and all together:"},
		{Kind: Verbatim, Text: "                  by the card         voltage efficiency stick-out   all"},
	}
	for i := range p.Revealed.Moved {
		m := &p.Revealed.Moved[i]
		v := ValueOf(&m.Figure, o.Units)
		cells := []any{calc.FigureLabel(m.Name), v.Number, v.Band()}
		for _, x := range [...]float64{m.Alone[0], m.Alone[1], m.Alone[2], m.True} {
			cells = append(cells, TrueValue(&m.Figure, x, o.Units))
		}
		list = append(list, Line{Kind: Moves, Cells: append(cells, v.Unit)})
	}
	return list
}

// TrueValue is a figure's true value, in its unit and with enough digits to tell it from the card's; "-" if the bead
// has none.
func TrueValue(f *calc.Figure, v float64, sys quantity.System) string {
	if !(v > 0) {
		return "-"
	}
	tell := (f.High - f.Low) / 20
	value, _ := quantity.Band(v, v-tell, v+tell, f.Unit, sys.Lead())
	return value
}
