package tui

import (
	"errors"
	"math"
	"testing"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
)

// A reading is entered row by row, with the watch. Each row says how it read its number before anything is saved. The
// reading then narrows the card.
func TestMeasureOnTheScreens(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {60, 20}, {120, 40}, {40, 14}, {32, 10}} {
		d := &drawer{}
		s := openBook(t, d, "measure", size)
		s.has("power source")
		s.press("enter") // booth 1
		for range 2 {
			s.press("space", "space") // six seconds
			s.has("6.0 s")
			s.typed("635mm")
			s.has("6.35 m/min")
			s.press("enter")
			s.fits(size[0], size[1])
		}
		for _, x := range [][2]string{{"12mm", "= 12 mm"}, {"97A", "= 97 A"}, {"15.6", "= 15.6 V"},
			{"4.2", "= 4.2 marks"}, {"", ""}} {
			s.typed(x[0])
			s.has(x[1])
			s.press("enter")
		}
		s.press("space", "space")
		s.typed("60mm")
		s.has("= 10.0 mm/s")
		s.press("enter", "end")
		s.has("enter keeps")
		s.press("enter")
		s.has("kept, and on the card")
		if len(d.readings) != 1 || d.readings[0].Amps != 97 || d.readings[0].StickOut != 12 ||
			d.readings[0].FeedDial != calc.Some(4.2) || d.readings[0].VoltsDial.Set || len(d.cuts) != 0 {
			t.Fatalf("%+v, %q", d.readings, d.cuts)
		}
		if math.Abs(d.travel-10) > 0.01 {
			t.Errorf("the travel kept is %.2f mm/s", d.travel)
		}
		card := s.m.(*root).session.card
		f, _ := card.Figure("current")
		if (f.High-f.Low)/f.Value > 0.15 || !card.Job.PhiSigma.Set {
			t.Errorf("current %+v", f)
		}
		s.press("esc")
		if size[0] >= 60 {
			s.has("on booth 1")
		}
	}
}

// The sizes of a cut bead go into the book as a test bead, alone or with a reading. If the book refuses the bead, its
// rows stay, and the reading is not sent a second time.
func TestMeasuredBead(t *testing.T) {
	d := &drawer{}
	s := openBook(t, d, "measure", [2]int{80, 24})
	fill := func(rows map[int]string) {
		for at := range measureCount {
			if text := rows[at]; text != "" {
				s.root().meter.to(at)
				s.typed(text)
			}
		}
		s.root().meter.to(askSave)
	}
	fill(map[int]string{askSource: "booth 1", askWidth: "6.1", askZinc: "4mm"})
	s.press("enter")
	s.has("without a verdict")
	s.typed("splendid")
	s.press("enter")
	s.has("no verdict")
	s.press("esc")
	s.typed("good")
	s.press("end", "esc") // typed into the field, then cleared
	s.typed("good")
	s.root().meter.to(askSave)
	s.press("enter")
	s.has("kept: a bead that is good")
	if len(d.cuts) != 1 || d.cuts[0] != " good booth 1 {6.1 0 0 4}" || len(d.readings) != 0 {
		t.Fatalf("%q, %d readings", d.cuts, len(d.readings))
	}
	d.failCut = errors.New("disk full")
	fill(map[int]string{askPull: "635mm", askPullAgain: "640mm", askStickOut: "12mm", askAmps: "97A", askLeg: "3mm",
		askVerdict: "bad"})
	s.press("enter")
	s.has("the reading is kept, the bead is not")
	d.failCut = nil
	s.press("enter")
	if len(d.readings) != 1 || len(d.cuts) != 2 || d.cuts[1] != " bad booth 1 {0 3 0 0}" {
		t.Errorf("%d readings, %q", len(d.readings), d.cuts)
	}
}

// A timed arc's bead is saved with its rhythm as it was laid. No other arc is asked for one.
func TestMeasuredRhythm(t *testing.T) {
	d := &drawer{}
	s := openBook(t, d, "measure", [2]int{120, 40})
	s.hasNot("arc on")
	m := s.root()
	job := m.session.base()
	job.Mode = "timed"
	m.changed(job, "")
	s.press("down")
	s.has("arc on", "arc off", "spot step")
	for at, text := range map[int]string{askSource: "booth 1", askSeen: "good", askOn: "0.31", askOff: "0.5s",
		askStep: "3"} {
		m.meter.to(at)
		s.press("ctrl+u")
		s.typed(text)
	}
	m.meter.to(askSave)
	s.press("enter")
	if j := d.cutJob; len(d.cuts) != 1 || j.ArcOn.V != 0.31 || j.ArcOff.V != 0.5 || j.SpotStep.V != 3 ||
		j.Mode != "timed" {
		t.Errorf("%q, %+v", d.cuts, j)
	}
}

// Two pulls that differ, and text that is no number, are refused: nothing is saved, neither from their row nor from the
// last one.
func TestMeasureRefuses(t *testing.T) {
	d := &drawer{}
	s := openBook(t, d, "measure", [2]int{80, 24})
	s.press("enter")
	s.typed("635mm")
	s.press("enter")
	s.typed("700mm")
	s.press("enter")
	s.has("differ by 10 %")
	if s.root().meter.at != askPullAgain {
		t.Error("it went on all the same")
	}
	s.typed("much")
	s.press("enter")
	s.has("▲")
	s.press("down")
	s.typed("12mm")
	s.press("down")
	s.typed("97A")
	s.root().meter.to(askSave)
	s.press("enter")
	if s.root().meter.at != askPullAgain || len(d.readings) != 0 {
		t.Errorf("on row %d, %d readings kept", s.root().meter.at, len(d.readings))
	}
	s.press("esc")
	s.press("space", "enter")
	s.has("the watch runs")
	s.press("space", "up")
	if s.root().meter.at != askPull || s.root().meter.field.String() != "635mm" {
		t.Error("one step back is not one key, or has lost what was typed")
	}
	empty := openBook(t, d, "measure", [2]int{80, 24})
	empty.press("enter")
	empty.root().meter.to(askSave)
	empty.press("enter")
	empty.has("nothing is measured yet")
	for _, x := range []struct {
		rows map[int]string
		at   int
	}{
		{map[int]string{askAmps: "97"}, askPull},
		{map[int]string{askPull: "635", askPullAgain: "635"}, askAmps},
		{map[int]string{askPull: "635"}, askPullAgain},
		{map[int]string{askPull: "635", askPullAgain: "635", askAmps: "97"}, askStickOut},
		{map[int]string{askFeedDial: "4"}, askPull},
		{map[int]string{askVoltsDial: "4"}, askVolts},
		{map[int]string{askWidth: "6"}, askVerdict},
		{map[int]string{askWidth: "900", askVerdict: "good"}, askWidth},
		{map[int]string{askVerdict: "good", askSeen: "sunshine"}, askSeen},
	} {
		p := &measurePage{form: form{at: askSave}, mode: "dip"}
		p.values[askSource] = "booth 1"
		for at, text := range x.rows {
			p.values[at] = text
		}
		s.root().meter = *p
		s.press("enter")
		if at := s.root().meter.at; at != x.at || len(d.readings)+len(d.cuts) != 0 {
			t.Errorf("%v: on row %d, want %d", x.rows, at, x.at)
		}
	}
}

// A reading that is being sent is not sent again, and the answer changes the card only by what was learned.
func TestMeasureOnce(t *testing.T) {
	d := &drawer{}
	s := openBook(t, d, "measure", [2]int{80, 24})
	m := s.m.(*root)
	m.meter = measurePage{form: form{at: askSave}}
	for at, text := range map[int]string{askSource: "booth 1", askPull: "635mm", askPullAgain: "635mm",
		askStickOut: "12mm", askAmps: "97A"} {
		m.meter.values[at] = text
	}
	first := m.act(m.meter.next())
	if first == nil || !m.meter.busy {
		t.Fatal("nothing is under way")
	}
	if a := m.meter.press(m, tea.KeyPressMsg{Code: tea.KeyEnter}); a != nil {
		t.Errorf("enter again: %T", a)
	}
	m.changed(calc.Job{Metal: "mild-steel", Gauge: 16, Joint: "lap", Feed: calc.Some(7), Travel: calc.Some(10)}, "")
	m.Update(first())
	job := m.session.base()
	if len(d.readings) != 1 || job.Gauge != 16 || job.Feed.V != 7 || !job.Phi.Set || m.meter.busy {
		t.Errorf("%d readings, gauge %d, feed %.1f, learned %v", len(d.readings), job.Gauge, job.Feed.V, job.Phi.Set)
	}
}

// Stepping back through a reading keeps all typed text. A travel that no hand can hold is refused; a typed travel is
// accepted; naming a known power source puts its readings on the card.
func TestMeasureSteps(t *testing.T) {
	d := &drawer{readings: []calc.Reading{{Feed: 6.35, StickOut: 12, Amps: 97}}}
	s := openBook(t, d, "measure", [2]int{40, 14})
	s.press("enter")
	s.has("booth 1 taught")
	if !s.root().session.job.Phi.Set {
		t.Error("nothing was brought back")
	}
	s.press("pgdown")
	s.fits(40, 14)
	for _, v := range []string{"635mm", "635mm", "12mm", "97A", "15.2"} {
		s.typed(v)
		s.press("enter")
	}
	s.press("up")
	s.has("volts", "15.2", "= 15.2 V")
	s.press("enter", "enter", "enter")
	s.typed("0.4s/100mm")
	s.press("enter")
	s.has("is no travel")
	if _, err := travelOf("116mm", 1); err == nil {
		t.Error("116 mm/s by hand")
	}
	s.press("esc")
	s.typed("10s/100mm")
	s.press("enter", "end", "enter")
	if len(d.readings) != 2 || d.readings[1].Volts != 15.2 || math.Abs(d.travel-10) > 0.01 {
		t.Errorf("%+v, %.1f mm/s", d.readings, d.travel)
	}
}
