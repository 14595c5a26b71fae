package tui

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
	"brazebooth/tui/canvas"
)

// One key leads through the pages beside the card, and one back to it, at every size.
func TestPartPages(t *testing.T) {
	if testing.Short() {
		t.Skip("every page")
	}
	job := calc.Job{Metal: "galvanized", Gauge: 18, RatedAmps: calc.Some(200), RatedDuty: calc.Some(60),
		Load: calc.Some(1)}
	for _, size := range deep.Of(t, [][2]int{{80, 24}, {60, 20}, {120, 40}, {40, 14}}, 2) {
		s := openAt(t, size[0], size[1], Options{Opening: job})
		s.press("p", "left")
		for _, want := range []string{"arc brazing:", "silicon bronze", "vent gap", "is not an overlay", "joint area",
			"no hole to fill", "duty cycle", "not pulsed", "allowable load", "shrinkage force", "zone hardness",
			"zinc rate", "enter: say what", "no book here", "enter begins", "practise correcting", "wire used",
			"no book here", "no book here", "Decide: fit", "arc brazing:"} {
			s.press("right")
			s.fits(size[0], size[1])
			s.hasNot("…") // no figure and no caution is cut
			if size[1] >= 20 {
				s.has(want)
			}
			if want == "no book here" {
				continue // there every key is typed
			}
			s.press("u", "*")
			s.fits(size[0], size[1])
			s.press("u", "u", "*", "esc")
			s.onCard()
			s.press("p")
		}
	}
}

// p opens the page that was open last.
func TestPagesAreKept(t *testing.T) {
	s := openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "galvanized", Gauge: 18}})
	s.press("p", "right", "right", "esc", "p")
	s.has("[prepare]")
	s.press("left", "left", "left")
	s.has("[sheet]")
}

// A page that is opened again begins at its top: the card may be another one.
func TestPagesBeginAtTheTop(t *testing.T) {
	s := openAt(t, 60, 20, Options{Opening: calc.Job{Metal: "galvanized", Gauge: 18}})
	s.press("p", "right")
	s.has("[filler]", " 1  cusi3")
	s.press("down", "down", "down", "down")
	s.hasNot(" 1  cusi3")
	s.press("esc", "p")
	s.has("[filler]", " 1  cusi3")
}

// A refused job stays refused on every page.
func TestPartPagesStop(t *testing.T) {
	s := openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "brass", Thickness: calc.Some(1)}})
	s.press("p")
	for range pageNames {
		s.press("right")
		if n := s.m.(*root).part.name(); n == pageBook || n == pageMeasure || n == pageRecords || n == pageWalk ||
			n == pagePractice {
			continue // these do not depend on the job
		}
		s.has("stop: Do not arc braze brass")
	}
}

// What stops a job is asked in one short list. An answer goes onto the job and changes the verdict.
func TestStopsAreAsked(t *testing.T) {
	s := openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "mild-steel", Gauge: 18}})
	s.press("p")
	s.has("not answered")
	s.press("enter", "enter")
	s.has("each stops the job", "used tank or drum", "explodes")
	s.press("enter")
	s.has("nothing is marked") // an answer must be marked, it is never taken by accident
	for range 12 {
		s.press("down")
	}
	s.press("space", "enter")
	s.has("the stops are answered", "none")
	s.press("esc")
	s.has("arc brazing: suitable")
	s.press("enter", "enter", "space", "enter", "esc")
	s.has("arc brazing: STOP", "explodes")
	s.press("right", "right")
	s.has("stop: ", "Have it cleaned")
	s.hasNot("tack pitch")
	s.press("left", "left", "enter", "backspace", "esc")
	s.has("not answered")
}

// What a page asks for is typed on it. Nonsense is refused and nothing is lost.
func TestInputs(t *testing.T) {
	s := openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "mild-steel", Gauge: 18, Feed: calc.Some(5.5),
		Travel: calc.Some(9)}})
	s.press("p", "left", "left", "left", "left") // to cost
	s.has("no price was given")
	s.press("enter")
	s.typed("2m")
	s.press("enter")
	s.has("length is set", "2000 mm")
	s.typed("30")
	s.press("enter")
	s.typed("25 EUR/kg")
	s.press("enter")
	s.has("wire price is set")
	s.typed("lots")
	s.press("enter")
	s.has("▲")
	s.press("esc", "esc")
	s.has("wire cost", "EUR")
	s.press("enter")
	s.press("down", "down", "backspace")
	s.has("cleared")
}

// The use is picked from its list, or typed.
func TestUseIsPicked(t *testing.T) {
	s := openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "mild-steel", Gauge: 18, Feed: calc.Some(5.5),
		Travel: calc.Some(9)}})
	s.press("p", "enter", "down", "enter", "down", "enter")
	s.has("what fit asks for", "seal")
	s.press("esc")
	s.has("wet service")
}

// A series of test beads: what is seen, one change, onto the card, the next bead. Another job forgets them.
func TestCorrectOnTheScreens(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {60, 20}, {120, 40}, {40, 14}} {
		s := openAt(t, size[0], size[1], Options{Opening: calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap",
			Feed: calc.Some(5.5), Travel: calc.Some(10)}})
		s.press("p")
		for !strings.Contains(s.text(), "[correct]") {
			s.press("right")
		}
		s.has("enter: say what")
		s.press("enter")
		s.fits(size[0], size[1])
		s.has("rolled edge")
		if size[1] >= 20 {
			s.has("█████")
		}
		s.press("space", "enter")
		s.fits(size[0], size[1])
		s.has("bead 1", "change ")
		s.press("enter")
		s.has("lay the next bead")
		s.press("enter")
		for range tables.Sights {
			if s.root().front().(*sightPage).rows[s.root().front().(*sightPage).at].id == "good" {
				break
			}
			s.press("right")
		}
		s.press("enter") // nothing is marked: the drawing under the cursor
		for range 3 {
			s.press("down")
		}
		s.press("up", "up", "up")
		s.has("bead 2", "good")
		s.press("esc", "home")
		if size[0] >= narrowWidth { // a narrow dial has room only for the good span
			s.has("yours")
		}
		if j := s.root().job; !j.Feed.Set && !j.Travel.Set {
			t.Errorf("%v: neither feed nor travel is the hand's", size)
		}
	}
}

func TestAnotherJobForgetsTheBeads(t *testing.T) {
	s := openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: calc.Some(5.5),
		Travel: calc.Some(10)}})
	s.press("p")
	for !strings.Contains(s.text(), "[correct]") {
		s.press("right")
	}
	s.press("enter", "space", "enter")
	s.has("bead 1")
	s.press("tab", "esc", "esc", "esc", "2", "0", "enter", "tab", "tab", "p")
	s.has("[correct]")
	s.hasNot("bead 1")
}

// Only the changed setting is put on the card: assumed values stay assumed. A card that the user changed is not
// overwritten by the answer to an earlier one, and choices that only the pages ask for do not discard the beads.
func TestCorrectKeepsTheRest(t *testing.T) {
	s := openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "mild-steel", Joint: "lap", Feed: calc.Some(6),
		Travel: calc.Some(10)}})
	toCorrect := func() {
		s.press("p")
		for !strings.Contains(s.text(), "[correct]") {
			s.press("right")
		}
	}
	toCorrect()
	s.press("enter", "space", "enter")
	s.has("bead 1")
	m := s.m.(*root)
	before := len(m.session.card.Assumed)
	s.press("enter")
	if after := len(m.session.card.Assumed); after < before-1 || m.session.job.Flow.Set || m.session.job.Gauge != 0 {
		t.Errorf("%d things were assumed, now %d: %+v", before, after, m.session.job.Flow)
	}
	s.press("right", "right", "enter")
	s.typed("2m")
	s.press("enter", "esc", "left", "left")
	s.has("bead 1")
	s.press("enter", "space", "enter")
	s.has("bead 2", "enter: put this change")
	s.press("esc", "up", "p")
	s.has("changed by hand")
	feed := m.session.job.Feed
	s.press("enter")
	if m.session.job.Feed != feed {
		t.Errorf("%v was overwritten by %v", feed, m.session.job.Feed)
	}
}

// An answer that was cancelled says so, and can be computed again.
func TestCorrectGivenUp(t *testing.T) {
	s := openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: calc.Some(6),
		Travel: calc.Some(10)}})
	m := s.m.(*root)
	m.act(openPage("correct"))
	m.push(sightMarks())
	m.Update(keyPress("space"))
	_, cmd := m.Update(keyPress("enter"))
	if cmd == nil {
		t.Fatal("nothing is computed")
	}
	m.Update(keyPress("esc"))
	s.press("p")
	s.has("change ")
}

// The currency of a price changes with the price, and is cleared with the last price.
func TestCurrencyOnTheScreens(t *testing.T) {
	s := openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "mild-steel", Gauge: 18, Feed: calc.Some(6),
		Travel: calc.Some(10)}})
	s.press("p", "left", "left", "left", "left", "enter", "down", "down")
	s.typed("25EUR/kg")
	s.press("enter", "up")
	s.has("in EUR")
	s.typed("$12/lb")
	s.press("enter", "up")
	s.has("in $")
	s.press("backspace")
	s.hasNot("in $")
}

// Enter takes the drawing under the cursor if nothing is marked, so that a look needs as few keys as possible.
func TestEnterTakesTheLook(t *testing.T) {
	s := openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "mild-steel", Gauge: 18, Joint: "lap", Feed: calc.Some(6),
		Travel: calc.Some(10)}})
	m := s.root()
	m.act(openPage("correct"))
	s.press("enter", "right", "enter")
	if n := len(m.fix.tries); n != 1 || m.fix.tries[0].Seen != tables.Sights[1].ID {
		t.Errorf("%+v", m.fix.tries)
	}
}

// Every look has a drawing and its whole name in the grid, at every size.
func TestEveryLookIsDrawn(t *testing.T) {
	for _, size := range boothSizes {
		s := openAt(t, size[0], size[1], Options{Opening: calc.Job{Metal: "mild-steel", Gauge: 18}})
		s.root().push(sightMarks())
		for i, x := range tables.Sights {
			if canvas.DrawSight(s.root().th.Theme, x.ID, 18, 4) == nil {
				t.Errorf("%s has no drawing", x.ID)
			}
			p := s.root().front().(*sightPage)
			p.at = i
			s.press("home") // draws the grid
			s.fits(size[0], size[1])
			if first := strings.TrimRight(strings.Fields(x.Name)[0], ",:;"); !strings.Contains(s.text(), "› "+first) {
				t.Errorf("%v: %s is not under the cursor:\n%s", size, x.ID, s.text())
			}
		}
	}
}

// good excludes all other marks in the list of what is seen.
func TestGoodStandsAlone(t *testing.T) {
	p := sightMarks()
	p.toggle()
	p.at = len(p.rows) - 1
	p.toggle()
	if got := p.ids(); len(got) != 1 || got[0] != "good" {
		t.Errorf("%v", got)
	}
	p.at = 1
	p.toggle()
	if got := p.ids(); len(got) != 1 || got[0] != "thin-wide" {
		t.Errorf("%v", got)
	}
}

// With a keypad alone one can walk through every page and back: + and − also turn the pages for typing.
func TestKeypadTurnsEveryPage(t *testing.T) {
	s := openBook(t, &drawer{}, pageNames[0], [2]int{80, 24})
	for range pageNames {
		at := s.root().part.name()
		switch at {
		case pageMeasure, pageBook, pageRecords:
			s.press("-", "+", "+")
		default:
			s.press("6")
		}
		if s.root().part.name() == at {
			t.Fatalf("no way on from the page %s", at)
		}
	}
	s.has("[" + pageNames[0] + "]")
}

// On a terminal of few lines, the lists and settings are more important than their explanations.
func TestLowScreensShowTheFigures(t *testing.T) {
	if testing.Short() {
		t.Skip("every size")
	}
	s := openAt(t, 40, 14, Options{})
	s.press("enter")
	s.has("▸ 16 ga", "15 ga", "14 ga")
	s.press("enter", "enter", "enter", "t")
	s.has("arc on", "arc off", "spot step", "wire feed")
	s.press("esc", "m")
	s.has("▸", "m/min")
	s.press("esc", "p")
	s.has("[fit]", "arc brazing:")
}

// Each page can be left for the next by the key that its foot names, whatever is typed there.
func TestEveryPageTurns(t *testing.T) {
	for _, size := range [][2]int{{40, 14}, {80, 24}} {
		s := openAt(t, size[0], size[1], Options{Book: &drawer{}, Opening: calc.Job{Metal: "galvanized", Gauge: 18}})
		s.press("f4")
		for range pageNames {
			name := s.root().part.name()
			if name == pageBook || name == pageRecords || name == pageMeasure {
				s.has("←→ pages")
				s.typed("pat p")
				s.has("pat p", "f4 pages")
				s.hasNot("p next page", "←→ pages")
			}
			s.press("f4")
			if s.root().part.name() == name {
				t.Fatalf("%s: f4 does not leave", name)
			}
		}
		if got := s.root().part.name(); got != pageNames[0] {
			t.Errorf("f4 does not lead around: %s", got)
		}
	}
}

// On the narrowest terminal the names of the pages before and after are whole.
func TestPageTurnIsWhole(t *testing.T) {
	th := newTheme(look{})
	for at := range pageNames {
		for _, w := range []int{32, 40, 59} {
			if l := pageTurn(&th, at, w); l.Width > w || strings.Contains(l.Text, "…") {
				t.Errorf("%d columns: %q", w, l.Text)
			}
		}
	}
}
