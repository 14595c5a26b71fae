package tui

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
	"brazebooth/internal/report"
	"brazebooth/tables"
)

// drawer is a book in memory.
type drawer struct {
	cards     []Entry
	gone      []Entry // deleted
	jobs      map[string]calc.Job
	readings  []calc.Reading
	travel    float64 // of the last reading
	entered   []string
	practised []practice.Outcome
	cuts      []string // test beads
	cutJob    calc.Job // of the last bead
	fail      error
	failCut   error
}

func (d *drawer) Keep(_ context.Context, name string, card *calc.Card) (string, error) {
	if d.fail != nil {
		return "", d.fail
	}
	id := fmt.Sprintf("%016d", len(d.cards))
	d.cards = append([]Entry{{id, "card", name, "2026-03-01", card.Used.Metal}}, d.cards...)
	if d.jobs == nil {
		d.jobs = map[string]calc.Job{}
	}
	d.jobs[id] = card.Job
	return "kept " + name, nil
}

func (d *drawer) List(_ context.Context, kind, text string) ([]Entry, error) {
	if kind == "source" {
		return []Entry{{Name: "booth 1"}}, nil
	}
	var list []Entry
	for _, e := range d.cards {
		if strings.HasPrefix(e.Name, text) {
			list = append(list, e)
		}
	}
	return list, d.fail
}

func (d *drawer) Mark(_ context.Context, _, id string, deleted bool) error {
	if d.fail != nil {
		return d.fail
	}
	if deleted {
		i := slices.IndexFunc(d.cards, func(e Entry) bool { return e.ID == id })
		d.gone = append(d.gone, d.cards[i])
		d.cards = slices.Delete(d.cards, i, i+1)
		return nil
	}
	last := len(d.gone) - 1
	d.cards, d.gone = append(d.cards, d.gone[last]), d.gone[:last]
	return nil
}

func (d *drawer) Load(_ context.Context, id string) (calc.Job, error) { return d.jobs[id], d.fail }

func (d *drawer) Measure(_ context.Context, source string, r calc.Reading, travel float64, job calc.Job) (calc.Job,
	string, error) {
	if d.fail != nil {
		return job, "", d.fail
	}
	d.readings, d.travel = append(d.readings, r), travel
	f, _ := tables.Fillers.ByID("cusi3")
	l, err := calc.Learn(&f, 0.889, "dip", d.readings)
	job.TakeMeter(&l)
	return job, "kept for " + source, err
}

func (d *drawer) Record(_ context.Context, id string) ([]report.Block, error) {
	return []report.Block{report.Said{{Text: "all of " + id}}, report.Said{{Text: "history"}}}, d.fail
}

func (d *drawer) Cut(_ context.Context, job calc.Job, seen, verdict, source string, m Measured) (string, error) {
	if err := cmp.Or(d.failCut, d.fail); err != nil {
		return "", err
	}
	d.cuts, d.cutJob = append(d.cuts, fmt.Sprint(seen, " ", verdict, " ", source, " ", m)), job
	return "kept: a bead that is " + cmp.Or(verdict, "bad"), nil
}

func (d *drawer) Recall(_ context.Context, _ string, job calc.Job) (calc.Job, error) {
	if len(d.readings) == 0 {
		return job, d.fail
	}
	f, _ := tables.Fillers.ByID("cusi3")
	l, err := calc.Learn(&f, 0.889, "dip", d.readings)
	job.TakeMeter(&l)
	return job, err
}

func (d *drawer) Practice(_ context.Context, how practice.Outcome) (string, error) {
	if d.fail != nil {
		return "", d.fail
	}
	d.practised = append(d.practised, how)
	return "kept: practice, " + how.Line(), nil
}

func (d *drawer) Enter(_ context.Context, kind string, given map[string]string) (string, error) {
	if given["rated-amps"] == "much" {
		return "", mistake.New("--rated-amps: much", "type 200A")
	}
	d.entered = append(d.entered, fmt.Sprint(kind, given))
	return "saved " + kind, d.fail
}

func openBook(t *testing.T, d *drawer, page string, size [2]int) *terminal {
	t.Helper()
	now := time.Date(2026, 3, 1, 8, 0, 0, 0, time.UTC)
	// each key comes six seconds after the last
	clock := func() time.Time { now = now.Add(6 * time.Second); return now }
	s := openAt(t, size[0], size[1], Options{Book: d, Now: clock, Gap: unfollowed, Job: calc.Job{
		Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: calc.Some(6.35), Travel: calc.Some(10),
		StickOut: calc.Some(12)}})
	s.press("p")
	for !strings.Contains(s.text(), "["+page+"]") {
		s.press("right")
	}
	return s
}

// A card is saved under the typed name, found while typing, and opened again.
func TestBookOnTheScreens(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {60, 20}, {120, 40}, {40, 14}} {
		d := &drawer{}
		s := openBook(t, d, "book", size)
		s.has("nothing is kept yet")
		s.typed("tank lid")
		s.fits(size[0], size[1])
		s.has("keep the card as")
		s.press("enter")
		s.has("kept tank lid")
		s.press("esc", "q")
		s.has("q again quits", "the card is kept")
		s.press("up", "q")
		s.has("q again quits", "is not", "kept")
		s.press("p")
		s.typed("tan")
		s.has("tank lid")
		s.press("enter") // a setting was changed after saving
		s.has("not kept")
		s.press("enter")
		s.has("as it was kept")
		if v := s.m.(*root).session.job.Feed.V; v != 6.35 {
			t.Errorf("feed %g came back", v)
		}
	}
}

// A key opens the saved cards from the first screen on, which names that key, and from every screen over the path. In a
// field, letters are typed as usual.
func TestKeptCardsFromTheFirstScreen(t *testing.T) {
	for _, size := range deep.Of(t, [][2]int{{40, 14}, {60, 20}, {80, 24}}, 2) {
		d := &drawer{}
		s := openAt(t, size[0], size[1], Options{Book: d, Job: calc.Job{Metal: "mild-steel", Gauge: 18}})
		s.press("k")
		s.typed("tank lid")
		s.press("down", "enter")

		s = openAt(t, size[0], size[1], Options{Book: d, Gap: unfollowed})
		s.has("f5 kept")
		s.press("f5")
		s.has("find or name:", "tank lid")
		s.press("esc")
		s.has("Which metal?")
		s.press("f5", "enter")
		s.onCard()
		s.has("as it was kept")
		if j := s.root().job; j.Metal != "mild-steel" || j.Gauge != 18 {
			t.Errorf("%v: the job is %+v", size, j)
		}
		for _, keys := range []string{"f1", "*", "m", "t", "p", "g", "tab enter", "right enter"} {
			s.press(strings.Fields(keys)...)
			s.press("f5")
			s.has("find or name:")
			s.press("esc")
			s.onCard()
		}
	}
	s := openAt(t, 80, 24, Options{})
	s.hasNot("f5")
	s.press("f5")
	s.has("Which metal?")
}

// After saving under a name that exists already, the new card is under the cursor.
func TestTheNewestIsUnderTheCursor(t *testing.T) {
	d := &drawer{}
	s := openAt(t, 80, 24, Options{Book: d, Job: calc.Job{Metal: "galvanized", Gauge: 18}})
	s.press("k")
	for range 2 {
		s.typed("tank lid")
		s.press("down", "enter")
	}
	if len(d.cards) != 2 {
		t.Fatalf("kept %v:\n%s", d.cards, s.text())
	}
	if e := s.root().shelf.entry(); e == nil || e.ID != d.cards[0].ID {
		t.Errorf("under the cursor is %v, the newest is %v", e, d.cards[0])
	}
}

// otherBooth deletes a card before it can be opened here.
type otherBooth struct{ *drawer }

func (o otherBooth) Load(ctx context.Context, id string) (calc.Job, error) {
	return calc.Job{}, errors.Join(o.Mark(ctx, "card", id, true), errors.New("it was deleted"))
}

func (o otherBooth) Record(ctx context.Context, id string) ([]report.Block, error) {
	_, err := o.Load(ctx, id)
	return nil, err
}

// A card that another booth has deleted leaves the list when it is opened, with the reason.
func TestDeletedAtAnotherBooth(t *testing.T) {
	for _, keys := range []string{"enter enter", "f4 enter"} { // the book asks once: the card on the screen is not kept
		d := &drawer{cards: []Entry{{"1", "card", "tank lid", "2026-03-01", "galvanized"}}}
		s := openAt(t, 80, 24, Options{Book: otherBooth{d}, Job: calc.Job{Metal: "mild-steel", Gauge: 18}})
		s.press("k")
		s.has("tank lid")
		s.press(strings.Fields(keys)...)
		s.has("it was deleted")
		s.hasNot("tank lid")
	}
}

// q says that a kept card is kept, until a record was deleted: it may have been that card.
func TestKeptUntilDeleted(t *testing.T) {
	d := &drawer{}
	s := openBook(t, d, "book", [2]int{80, 24})
	s.typed("lid")
	s.press("enter", "esc", "q")
	s.has("the card is kept")
	s.press("k", "delete", "delete")
	s.has("deleted; ctrl+z brings it back")
	s.press("esc", "q")
	s.has("the card is not kept")
}

// If a card cannot be saved, the page says so, and the card stays.
func TestBookThatFails(t *testing.T) {
	d := &drawer{fail: errors.New("disk full")}
	s := openBook(t, d, "book", [2]int{80, 24})
	s.has("disk full")
	s.typed("x")
	s.press("enter")
	s.has("not kept", "the card stays")
	s.press("esc", "esc")
	s.onCard()
}

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

// A card that arrives after its page was left changes nothing.
func TestCardLoadedTooLate(t *testing.T) {
	s := openBook(t, &drawer{}, "book", [2]int{80, 24})
	s.press("esc")
	m := s.m.(*root)
	before := m.session.base()
	m.Update(answered{func(m *root) tea.Cmd { return m.loaded(calc.Job{Metal: "brass", Gauge: 22}, "late", nil) }})
	if m.session.base() != before {
		t.Error("it was opened all the same")
	}
}

// Every kind of record is found while typing, and enter shows one in full.
func TestRecordsOnTheScreens(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {60, 20}, {120, 40}, {40, 14}} {
		d := &drawer{}
		s := openBook(t, d, "records", size)
		s.has("enter a power source")
		card := s.m.(*root).session.card
		if _, err := d.Keep(context.Background(), "tank lid", &card); err != nil {
			t.Fatal(err)
		}
		s.typed("tank")
		s.has("tank lid")
		s.hasNot("keep the card as")
		s.press("enter")
		s.has("all of ", "history")
		s.fits(size[0], size[1])
		s.press("esc")
		s.has("[records]")
		d.fail = errors.New("the server is away")
		s.press("enter")
		s.has("the server is away", "the list stays")
	}
}

// A test bead can be saved from the page of test beads: once, with the verdict that its look means or as acceptable.
func TestTrialOnTheScreens(t *testing.T) {
	d := &drawer{}
	s := openBook(t, d, "correct", [2]int{80, 24})
	s.press("k")
	s.has("no test bead")
	m := s.m.(*root)
	tell := func(seen string) {
		m.fix.saw(m, []string{seen})
		m.fix.applied = true
	}
	m.meter.kept = "booth 1"
	tell("rolled-edge")
	d.fail = errors.New("disk full")
	s.press("k")
	s.has("not kept: disk full")
	d.fail = nil
	s.press("k")
	s.has("kept: a bead that is bad")
	s.press("k")
	s.has("kept already")
	tell("spatter")
	s.press("a")
	tell("good")
	s.press("7")
	if want := []string{"rolled-edge  booth 1 {0 0 0 0}", "spatter acceptable booth 1 {0 0 0 0}",
		"good  booth 1 {0 0 0 0}"}; !slices.Equal(d.cuts, want) {
		t.Errorf("%q", d.cuts)
	}
}

// A power source, a spool, a person: row by row. After a fault all typed text stays.
func TestFormsOnTheScreens(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {60, 20}, {120, 40}, {40, 14}} {
		d := &drawer{}
		s := openBook(t, d, "records", size)
		s.press("enter", "enter")
		s.has("it has no name yet")
		s.typed("booth 1")
		s.press("enter")
		s.typed("much")
		s.press("enter", "enter", "enter", "enter", "enter", "enter")
		s.fits(size[0], size[1])
		s.has("puts it into the book")
		s.press("enter")
		s.has("type 200A")
		s.press("up", "up", "up", "up", "up", "up")
		s.has("rated amps   much")
		s.press("esc")
		s.typed("200A")
		s.press("enter", "enter", "enter", "enter", "enter", "enter", "enter")
		s.has("saved source", "[records]")
		if want := "sourcemap[name:booth 1 rated-amps:200A]"; len(d.entered) != 1 || d.entered[0] != want {
			t.Errorf("%q", d.entered)
		}
		s.press("down", "down", "enter")
		s.has("a person")
		s.press("esc")
		s.has("[records]")
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

// A card can be saved from the card itself. The foot names the key at every size that has room for it, help names it at
// all sizes, and the text typed then is the card's name.
func TestCardIsSavedByAKey(t *testing.T) {
	for _, key := range []string{"k", "s"} {
		for _, size := range [][2]int{{60, 20}, {80, 24}, {120, 40}} {
			d := &drawer{}
			s := openAt(t, size[0], size[1], Options{Book: d, Job: calc.Job{Metal: "galvanized", Gauge: 18}})
			s.has("k keep")
			s.press(key)
			s.has("[book]", "type a name")
			s.typed("tank lid")
			s.press("enter")
			if len(d.cards) != 1 {
				t.Fatalf("%s at %v: kept %v", key, size, d.cards)
			}
			s.press("esc")
			s.onCard()
		}
	}
	s := openAt(t, 40, 200, Options{Job: calc.Job{Metal: "galvanized", Gauge: 18}})
	s.press("f1")
	s.has("keep the card in the book")
}
