package tui

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

var boothSizes = [][2]int{{80, 24}, {60, 20}, {120, 40}, {40, 14}, {40, 24}}

// The view shows the card's own five figures in digits, each with its unit, and the zone and the strongest caution whole.
func TestBoothFigures(t *testing.T) {
	if testing.Short() {
		t.Skip("every system at every size")
	}
	for _, size := range boothSizes {
		for _, job := range []calc.Job{{Metal: "galvanized", Gauge: 18}, gapped, {Metal: "brass"}} {
			for _, sys := range []quantity.System{quantity.Metric, quantity.Inch, quantity.Both} {
				s := openAt(t, size[0], size[1], Options{Job: job, Units: sys})
				s.press("right", "b")
				s.fits(size[0], size[1])
				s.uncut("booth", size)
				cells := boothCells(&s.root().session, false)
				if len(cells) != 5 {
					t.Fatalf("%d figures", len(cells))
				}
				for _, c := range cells {
					s.has(c.label, c.unit)
					if size[0] >= narrowWidth {
						s.has(c.alt)
					}
					shownIn(t, s, c)
				}
			}
		}
	}
}

// shownIn fails where the screen does not hold the digits of a figure in any size.
func shownIn(t *testing.T, s *terminal, c boothCell) {
	t.Helper()
	for high := 1; high < 20; high++ {
		for wide := 1; wide < 40; wide++ {
			found := true
			for _, l := range digits(c.number, dot{wide, high}) {
				found = found && strings.Contains(s.text(), strings.TrimRight(l, " "))
			}
			if found {
				return
			}
		}
	}
	t.Fatalf("%s %s is not in digits on the screen:\n%s", c.label, c.number, s.text())
}

// With a decimal comma the digits have one too.
func TestBoothDecimalComma(t *testing.T) {
	s := openAt(t, 80, 24, Options{Job: calc.Job{Metal: "galvanized", Gauge: 18}, Comma: true})
	s.press("b")
	commas := 0
	for _, c := range boothCells(&s.root().session, true) {
		shownIn(t, s, c)
		commas += strings.Count(c.number, ",")
		if strings.Contains(c.number, ".") {
			t.Errorf("%s in digits: %s", c.label, c.number)
		}
	}
	if commas < 2 {
		t.Errorf("%d commas in five figures", commas)
	}
}

// The digits are never smaller than these many lines, whatever the job.
func TestBoothDigitsAreLarge(t *testing.T) {
	for size, least := range map[[2]int]int{{80, 24}: 5, {60, 20}: 3, {120, 40}: 10, {40, 14}: 3} {
		for _, job := range []calc.Job{{Metal: "galvanized", Gauge: 18}, {Metal: "stainless-304", Gauge: 11, Mode: "pulsed"}, gapped} {
			s := openAt(t, size[0], size[1], Options{Job: job})
			s.press("right", "b")
			if n := digitLines(s.text()); n < least {
				t.Errorf("%v, %s: digits of %d lines:\n%s", size, job.Metal, n, s.text())
			}
		}
	}
}

// digitLines is the height of the lowest row of digits on a screen.
func digitLines(text string) int {
	least, run := 0, 0
	for _, l := range append(strings.Split(text, "\n"), "") {
		if strings.ContainsAny(l, "█▀▄") && !strings.ContainsAny(l, "─·▒") { // the bar of a beat is no digit
			run++
			continue
		}
		if run > 0 && (least == 0 || run < least) {
			least = run
		}
		run = 0
	}
	return least
}

// Any key returns and does nothing else; ctrl+c still quits.
func TestAnyKeyLeavesTheBooth(t *testing.T) {
	for _, k := range append([]string{"b", "5", "q", "+", "right", "tab", "f1", "f2", "?", "space"}, anyKeys...) {
		if k == "c" || k == "." { // they show the cautions
			continue
		}
		s := openAt(t, 80, 24, Options{Job: calc.Job{Metal: "galvanized", Gauge: 18}})
		s.press("b")
		s.hasNot("select")
		was := s.root().session.job
		s.press(k)
		s.onCard()
		if m := s.root(); m.session.job != was || m.units != quantity.Metric || m.step() != cardStep || m.overCard() {
			t.Errorf("%s does more than return", k)
		}
	}
	s := toCard(t, 80, 24)
	s.press("b")
	if !s.press("ctrl+c") {
		t.Error("ctrl+c does not quit")
	}
}

// boothJobs have between them every verdict that a card may have, and every hazard.
func boothJobs() []calc.Job {
	jobs := []calc.Job{{Metal: "galvanized", Gauge: 18}, {Metal: "brass"}, gapped, {Metal: "galvanized", Gauge: 18, Hazard: "tank,sealed"},
		{Metal: "galvanized", Metal2: "stainless-304", Gauge: 18, Filler: "cumn13al8"}, {Metal: "dp1000", Gauge: 11}, {Metal: "grey-iron", Thickness: calc.Some(8)},
		{Metal: "boron-steel", Gauge: 16, Hazard: "crash"}, {Metal: "mild-steel", Gauge: 18, Feed: calc.Some(3), Travel: calc.Some(10)},
		{Metal: "copper", Gauge: 11, Mode: "pulsed"}, {Metal: "aluminium-bronze", Gauge: 24, Feed: calc.Some(3)}, {Metal: "mild-steel", Gauge: 24, Feed: calc.Some(12)},
		{Metal: "stainless-316", Gauge: 24, Mode: "pulsed"}, {Metal: "silicon-bronze", Gauge: 18, Joint: "plug"}, {Metal: "galvanized", Gauge: 18, Travel: calc.Some(20)}}
	for _, h := range tables.Hazards() {
		jobs = append(jobs, calc.Job{Metal: "galvanized", Gauge: 18, Hazard: h.ID})
	}
	return jobs
}

// The strongest caution stands whole from 60 columns and 20 lines up, whatever it is, and so does every stop or a count of
// them. Below that a part of it may stand, and the key that shows the rest; the figures stay in digits.
func TestBoothSaysTheCautionWhole(t *testing.T) {
	if testing.Short() {
		t.Skip("every verdict at every size")
	}
	verdicts := map[string]bool{}
	whole := map[[2]int]int{}
	for _, job := range boothJobs() {
		for _, sys := range systems() {
			for _, size := range append(boothSizes, [2]int{60, 14}, [2]int{80, 14}, [2]int{60, 24}) {
				s := openAt(t, size[0], size[1], Options{Job: job, Units: sys})
				s.press("right", "b")
				s.uncut("booth", size)
				s.has("– c")
				c := &s.root().session.card
				verdicts[c.Verdict()] = true
				text := flat(s.text())
				said := 0
				for _, x := range loudest(c) {
					if strings.Contains(text, x.Text) {
						said++
					}
				}
				stops, _, _ := tally(c)
				if said > 0 {
					whole[size]++
				} else if size[0] >= narrowWidth && size[1] >= 20 {
					t.Errorf("%v, %s %s: the strongest caution is not whole:\n%s", size, job.Metal, job.Hazard, s.text())
				}
				if said < stops && stops > 1 {
					s.has(fmt.Sprintf("■ %d", stops))
				}
				for _, cell := range boothCells(&s.root().session, false) {
					shownIn(t, s, cell)
				}
			}
		}
	}
	for _, want := range []string{"good", "cold", "hot", "burn-through", "outside", "not-modelled", "stop"} {
		if !verdicts[want] {
			t.Errorf("no card is %s: %v", want, verdicts)
		}
	}
	for _, size := range [][2]int{{40, 24}, {60, 14}, {80, 14}} {
		if n := whole[size]; n < len(boothJobs())*len(systems())*2/3 {
			t.Errorf("%v: only %d cautions are whole", size, n)
		}
	}
}

// Only c and its twin on a keypad do more: they show every caution in full, and the card is behind them.
func TestCautionsFromTheBooth(t *testing.T) {
	for _, k := range []string{"c", "."} {
		s := openAt(t, 80, 60, Options{Job: gapped})
		s.press("right", "b", k)
		m := s.root()
		if m.isOpen(boothView{}) || m.beat.playing() {
			t.Errorf("%s stays on the view", k)
		}
		flat := strings.Join(strings.Fields(s.text()), " ")
		for _, x := range m.session.card.Warnings {
			if !strings.Contains(flat, x.Text) {
				t.Errorf("%s: no %q:\n%s", k, x.Text, s.text())
			}
		}
		s.press("esc")
		s.onCard()
	}
}

// A stop stands in the view, and so does an edge that is missed.
func TestBoothVerdict(t *testing.T) {
	for _, size := range boothSizes {
		s := openAt(t, size[0], size[1], Options{Job: calc.Job{Metal: "brass"}})
		s.press("b")
		s.has("■ STOP: Do not arc braze")
		s = openAt(t, size[0], size[1], Options{Job: calc.Job{Metal: "mild-steel", Gauge: 24, Feed: calc.Some(12)}})
		s.press("b")
		s.has("burn-through", "▲ ")
	}
	th := openAt(t, 80, 24, Options{}).root().th
	c := calc.Card{Zone: "good", Edges: []calc.Edge{{Name: "wets", Met: true, Margin: 5}, {Name: "hand speed", Margin: -3}}}
	if _, word := zoneWord(&th, &c); word != "not met: hand speed" {
		t.Errorf("a missed edge is said as %q", word)
	}
}

// The ranges stand at every figure or at none, so that none looks as if it had no range.
func TestBoothRanges(t *testing.T) {
	if testing.Short() {
		t.Skip("every range at every size")
	}
	sizes := append([][2]int{{40, 16}, {50, 14}, {70, 30}, {100, 20}}, boothSizes...)
	all := 0
	for _, size := range sizes {
		for _, job := range []calc.Job{{Metal: "galvanized", Gauge: 18}, gapped} {
			for _, sys := range []quantity.System{quantity.Metric, quantity.Inch, quantity.Both} {
				s := openAt(t, size[0], size[1], Options{Job: job, Units: sys})
				s.press("right", "b")
				ranges, shown := 0, 0
				for _, c := range boothCells(&s.root().session, false) {
					if c.band != "" {
						ranges++
						shown += min(1, strings.Count(s.text(), c.band))
					}
				}
				if shown != 0 && shown != ranges {
					t.Errorf("%v, %s: %d of %d ranges:\n%s", size, sys, shown, ranges, s.text())
				}
				if shown == ranges {
					all++
				}
			}
		}
	}
	if all < 20 {
		t.Errorf("only %d views show their ranges", all)
	}
}

// A caution that has no room is shown by whole clauses: as many as fit, and always the first.
func TestClauses(t *testing.T) {
	const text = "STOP: Do not: it melts; it burns. Use solder."
	for _, x := range []struct {
		w, lines int
		want     string
	}{
		{60, 1, text}, {35, 1, "STOP: Do not: it melts; it burns. …"}, {34, 1, "STOP: Do not: it melts; …"}, {25, 1, "STOP: Do not: it melts; …"},
		{15, 1, "STOP: Do not: …"}, {4, 1, "STOP: Do not: …"},
		{25, 2, text},
	} {
		if got := clauses(text, func(s string) bool { return len(wrap(s, x.w)) <= x.lines }); got != x.want {
			t.Errorf("in %d lines of %d: %q, want %q", x.lines, x.w, got, x.want)
		}
	}
	if got := clauses("no clause in here at all", func(string) bool { return false }); got != "no clause in here at all" {
		t.Errorf("%q", got)
	}
}

// Wrapped text loses no word, whatever room its first line has, and no line is longer than its room.
func TestRunning(t *testing.T) {
	const text = "Extraction on, head out of the plume, respirator: zinc fume gives metal fume fever."
	for first := -3; first <= 60; first++ {
		lines := running(text, first, 30)
		if got := strings.Join(strings.Fields(strings.Join(lines, " ")), " "); got != text {
			t.Fatalf("first line of %d: %q", first, got)
		}
		for i, l := range lines {
			if i == 0 && width(l) > max(0, first) || i > 0 && width(l) > 30 {
				t.Errorf("first line of %d: %q is too long", first, l)
			}
		}
	}
}

// The bar of a timed arc follows the clock in the view, and rests when the view is left.
func TestBoothBeat(t *testing.T) {
	for _, size := range boothSizes {
		s := openAt(t, size[0], size[1], Options{Job: gapped})
		s.press("right", "b")
		m := s.root()
		if !m.beat.playing() {
			t.Fatal("the beat does not play")
		}
		on, _ := m.session.card.Figure("arc_on")
		off, _ := m.session.card.Figure("arc_off")
		at := time.Unix(0, 0)
		look := func(seconds float64) string {
			m.Update(beatTick{at: at.Add(time.Duration(seconds * float64(time.Second))), run: m.beat.run})
			s.fits(size[0], size[1])
			return s.text()
		}
		look(0)
		if text := look(on.Value / 2); !strings.Contains(text, "ON    1") || strings.Contains(text, "▒") {
			t.Fatalf("half way through on:\n%s", text)
		}
		if text := look(on.Value + off.Value/2); !strings.Contains(text, "off   1") || !strings.Contains(text, "▒") {
			t.Fatalf("half way through off:\n%s", text)
		}
		if text := look(on.Value*1.5 + off.Value); !strings.Contains(text, "ON    2") {
			t.Fatalf("in the second beat:\n%s", text)
		}
		s.press("b")
		if _, cmd := m.Update(beatTick{at: at.Add(time.Minute), run: m.beat.run}); cmd != nil || m.beat.playing() {
			t.Error("it plays on")
		}
	}
}

// A clock of an earlier playing moves nothing: two would make it run twice as often.
func TestOneClockOnly(t *testing.T) {
	s := openAt(t, 80, 24, Options{Job: gapped})
	s.press("right", "b")
	m := s.root()
	old := m.beat.run
	s.press("b", "b")
	if _, cmd := m.Update(beatTick{time.Unix(0, 0), old}); cmd != nil {
		t.Error("the clock of the first playing runs on")
	}
	if _, cmd := m.Update(beatTick{time.Unix(0, 0), m.beat.run}); cmd == nil {
		t.Error("the clock of the present playing stands")
	}
}

// While the heat is still followed the view says so; the bar begins when it is done.
func TestBoothWaitsForTheBeat(t *testing.T) {
	go1 := make(chan struct{})
	m := New(Options{Job: gapped, Gap: func(ctx context.Context, job calc.Job, progress func(float64)) (calc.Timed, error) {
		<-go1
		return calc.SolveTimed(ctx, job, progress)
	}})
	m.Update(tea.WindowSizeMsg{Width: 60, Height: 20})
	_, cmd := m.Update(keyPress("right"))
	found := make(chan tea.Msg)
	work := cmd().(tea.BatchMsg)
	go func() { found <- work[0]() }()
	m.Update(keyPress("b"))
	s := &terminal{t, m}
	s.has("rough until their heat is followed")
	close(go1)
	if _, cmd := m.Update(<-found); cmd == nil || !s.root().beat.playing() {
		t.Error("the beat does not begin")
	}
}

// A job without a card of its own says so in the view.
func TestBoothOfTheLastJob(t *testing.T) {
	s := openAt(t, 60, 20, Options{Job: calc.Job{Metal: "galvanized", Gauge: 18}})
	m := s.root()
	m.session.solve = func(calc.Job) (calc.Card, error) { return calc.Card{}, fmt.Errorf("no card") }
	m.session.choose(calc.Job{Metal: "copper"})
	s.press("b")
	s.has("card is of the last job")
}

// A number without digits of its own, or a terminal too small for them, has the figures as text.
func TestBoothWithoutDigits(t *testing.T) {
	th := openAt(t, 80, 24, Options{}).root().th
	cells := []boothCell{{label: "wire feed", number: "1 1/2", unit: "m"}}
	if allDrawable(cells) || allDrawable([]boothCell{{}}) {
		t.Error("there are no digits for that")
	}
	if text := stripBlock(boothLines(&th, cells, 40)); !strings.Contains(text, "1 1/2 m") {
		t.Errorf("%q", text)
	}
	if _, ok := gridOf(cells, 10, 2); ok {
		t.Error("no digits fit into two lines")
	}
}

// A large digit is the digit that it says: read back dot by dot it gives the number, at every size of dot.
func TestDigits(t *testing.T) {
	for _, number := range []string{"0123456789", "14.8", "-3.50"} {
		for _, d := range []dot{{1, 1}, {2, 1}, {2, 2}, {2, 3}, {3, 2}, {4, 4}, {5, 7}} {
			lines := digits(number, d)
			if len(lines) != d.lines() {
				t.Fatalf("%d lines, not %d", len(lines), d.lines())
			}
			for _, l := range lines {
				if width(l) != digitsWidth(number, d) {
					t.Errorf("%s at %v: %d cells, not %d", number, d, width(l), digitsWidth(number, d))
				}
			}
			if got := readDigits(t, lines, d); got != number {
				t.Errorf("%s at %v is read as %s", number, d, got)
			}
		}
	}
}

// readDigits reads drawn digits back, looking at the middle of each dot.
func readDigits(t *testing.T, lines []string, d dot) string {
	t.Helper()
	ink := func(row, col int) bool {
		half := row*d.high + d.high/2
		c := []rune(lines[half/2])[col*d.wide+d.wide/2]
		return c == '█' || c == '▀' && half%2 == 0 || c == '▄' && half%2 == 1
	}
	columns := width(lines[0]) / d.wide
	text := ""
	for col := 0; col < columns; {
		found := false
		for _, r := range "0123456789.-" {
			g, _ := glyph(r)
			if col+len(g[0]) > columns {
				continue
			}
			same := true
			for row := range g {
				for i := range g[row] {
					same = same && ink(row, col+i) == (g[row][i] == '#')
				}
			}
			if same {
				text, col, found = text+string(r), col+len(g[0])+1, true
				break
			}
		}
		if !found {
			t.Fatalf("no digit at dot %d of\n%s", col, strings.Join(lines, "\n"))
		}
	}
	return text
}
