package tui

import (
	"fmt"
	"math"
	"strings"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/joint"
	"brazebooth/internal/quantity"
	"brazebooth/internal/report"
	"brazebooth/tui/canvas"
)

// compared is a good bead and the last bead beside each other, at the same scale, and a line about their differences.
func (p *practicePage) compared(th *theme, units quantity.System, w, lines int) (b block) {
	half := (w - 3) / 2
	last, n := p.last(), len(p.beads)
	left, right := twoBeads(th, &p.target, last, half, lines)
	target, whose := "target", fmt.Sprintf("bead %d, yours", n)
	if n == 1 {
		whose = "bead 1, found"
	}
	if _, drawn := beadJoint(&p.target); !drawn {
		target = "target, sketch"
	}
	if _, drawn := beadJoint(last); !drawn {
		whose = fmt.Sprintf("bead %d, sketch", n)
	}
	b.add(newRow(w).put(th.bold, target).to(half+3).put(th.bold, whose).line())
	b.addAll(beside(left, right, half+3, th.quiet, "│  "))
	mark, paint := "≠ ", th.bold
	if last.Verdict == practice.BeadGood {
		mark, paint = "✓ ", th.good
	}
	text := fewer(strings.Join(p.differs(last, units), " · "), "·", func(s string) bool { return width(mark+s) <= w })
	return append(b, flow(newRow(w).put(paint, mark), []piece{{0, paint, text}}, 2, w)...)
}

// twoBeads draws two beads at one scale, without the empty lines above both. A bead without a cross-section is drawn as
// it looks.
func twoBeads(th *theme, target, last *practice.Bead, w, lines int) (left, right block) {
	a, oneDrawn := beadJoint(target)
	c, twoDrawn := beadJoint(last)
	if oneDrawn && twoDrawn {
		scale := max(a.Scale(w, lines), c.Scale(w, lines))
		a.Least, c.Least = scale, scale
	}
	draw := func(j canvas.Joint, drawn bool, bead *practice.Bead) block {
		if drawn {
			return block(j.Draw(th.Theme, w, lines))
		}
		for _, id := range strings.Split(bead.Seen, ",") {
			if b := canvas.DrawSight(th.Theme, id, min(w, 4*lines), lines); b != nil {
				return block(b)
			}
		}
		return make(block, lines)
	}
	left, right = draw(a, oneDrawn, target), draw(c, twoDrawn, last)
	for len(left) > 3 && len(right) > 3 && left[0].Width+right[0].Width == 0 {
		left, right = left[1:], right[1:]
	}
	return left, right
}

// beadJoint is a bead's cross-section for the drawing; false if there is none.
func beadJoint(b *practice.Bead) (canvas.Joint, bool) {
	j, ok := jointOf(&b.Section)
	return j, ok && j.Wet[0] > 0 && (j.Wet[1] > 0 || j.Kind == joint.Overlay)
}

// differs says how the last bead differs from the target, with what an eye sees first at the front.
func (p *practicePage) differs(last *practice.Bead, units quantity.System) []string {
	you, want := &last.Section, &p.target.Section
	if _, ok := beadJoint(last); !ok {
		return []string{report.SeenText(last.Seen), "target: " + report.SeenText(p.target.Seen)}
	}
	var list []string
	length := func(mm float64, more, less string) {
		const seen = 0.15 // mm, the smallest difference that an eye and a rule can tell
		word := more
		if mm < 0 {
			word = less
		}
		if math.Abs(mm) >= seen {
			list = append(list, quantity.Show(math.Round(10*math.Abs(mm))/10, "mm", units.Lead())+" "+word)
		}
	}
	length(you.Wet[0]+you.Wet[1]-want.Wet[0]-want.Wet[1], "wider", "narrower")
	if degrees := (you.Phi - want.Phi) * 180 / math.Pi; math.Abs(degrees) >= 3 {
		list = append(list, fmt.Sprintf("surface %.0f° %s", math.Abs(degrees),
			map[bool]string{true: "fuller", false: "flatter"}[degrees > 0]))
	}
	zinc := func(s *calc.Section) (face, back float64) {
		return max(s.Boiled[0], s.Boiled[1]), max(s.BoiledBack[0], s.BoiledBack[1])
	}
	face, back := zinc(you)
	wantFace, wantBack := zinc(want)
	length(face-wantFace, "more zinc gone", "less zinc gone")
	if (back > 0) != (wantBack > 0) {
		list = append(list, map[bool]string{true: "zinc gone on the back too",
			false: "the back keeps its zinc"}[back > 0])
	}
	if len(list) == 0 {
		list = []string{"as the target, as far as an eye can tell"}
		if last.Verdict != practice.BeadGood {
			list = []string{"its outline is the target's", report.SeenText(last.Seen)}
		}
	}
	return list
}

// beadLine is a bead in short: how it was laid, what it showed.
func beadLine(th *theme, n int, bead *practice.Bead, units quantity.System, w int) (b block) {
	mark, paint := "✗", th.stop
	switch bead.Verdict {
	case practice.BeadGood:
		mark, paint = "✓", th.good
	case practice.BeadAcceptable:
		mark, paint = "▲", th.watch
	}
	b.hang(paint, 0, fmt.Sprintf("%s %d  ", mark, n), report.SettingText(&bead.Job,
		units.Lead())+" – "+report.LookText(bead), w)
	return b
}

// program is the series of beads that the program's own corrections laid.
func (p *practicePage) program(th *theme, units quantity.System, w int) (b block) {
	b.add(newRow(w).put(th.bold, "the program's own beads, from the same start").line())
	for i := range p.run.Steps {
		s := &p.run.Steps[i]
		b.addAll(beadLine(th, i+1, &s.Bead, units, w))
		if text := report.CorrectionText(s.Change, s.Do, units.Lead()); text != "" {
			b.say(th.bold, 5, "change "+text, w)
		}
	}
	b.say(th.quiet, 0, "good in this booth: "+report.SettingText(&p.job.Best, units.Lead()), w)
	return b
}

// truth is what the booth hid and how that changed the last bead.
func (p *practicePage) truth(th *theme, w int, units quantity.System) (b block) {
	sys := units.Lead()
	b.add(newRow(w).put(th.bold, "what this booth hid").line())
	for i := range p.revealed.Hidden {
		h := &p.revealed.Hidden[i]
		value, band := quantity.Band(h.Value, h.Low, h.High, h.Unit, sys)
		unit := quantity.Label(h.Unit, sys)
		b.hang(th.plain, 0, "• ", fmt.Sprintf("%s %s; the cards have %s (%s): %s", calc.FigureLabel(h.Name),
			spaced(report.TrueValue(&h.Figure, h.True, sys), unit), spaced(value, unit), band, h.Basis.Formula), w)
	}
	b.add(newRow(w).put(th.bold, "how it moved your last bead").line())
	for i := range p.revealed.Moved {
		m := &p.revealed.Moved[i]
		v := report.ValueOf(&m.Figure, sys)
		alone := func(k int) string { return report.TrueValue(&m.Figure, m.Alone[k], sys) }
		b.hang(th.plain, 0, "• ", fmt.Sprintf("%s here %s; by the card %s (%s), with the voltage alone %s, "+
			"efficiency alone %s, stick-out alone %s", calc.FigureLabel(m.Name),
			spaced(report.TrueValue(&m.Figure, m.True, sys), v.Unit), v, v.Band(), alone(0), alone(1), alone(2)), w)
	}
	return b
}

// cautions are those of the job's own card, after the caution about practice.
func (p *practicePage) cautions(m *root) tea.Cmd {
	card := p.card
	return m.read("cautions of this practice job", func(th *theme, w int) block {
		return append(cautionLines(th, &practice.Caution, w), cautionPage(th, &card, w)...)
	})
}

// keepText says what is saved, and that nothing is saved without a key press.
func (p *practicePage) keepText(b *block, th *theme, keeps bool, w int) {
	switch {
	case !keeps:
	case p.keeping.kept:
		b.say(th.good, 0, "✓ kept in the book", w)
	case p.keeping.sent:
		b.say(th.quiet, 0, "being kept …", w)
	default:
		b.say(th.bold, 0, "k: keep level, booth, your beads and the program's in the book; else nothing is kept", w)
	}
}
