package tui

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
	"brazebooth/tui/canvas"
)

// On the card and in the booth view, the figures are always shown together with the fume that the job makes, on every
// terminal that fits them.
func TestFumeIsNamedBesideFigures(t *testing.T) {
	deep.Turn(t)
	jobs := []struct {
		job  calc.Job
		fume []string // as the short line names it
	}{
		{calc.Job{Metal: "galvanized", Gauge: 18}, []string{"zinc"}},
		{calc.Job{Metal: "mild-steel", Gauge: 18}, []string{"copper"}},
		{calc.Job{Metal: "galvanized", Metal2: "stainless-304", Gauge: 18, Filler: "cumn13al8"}, []string{"zinc",
			"manganese", "chromium"}},
		{gapped, []string{"fume"}},
		{calc.Job{Metal: "galvanized", Gauge: 18, Hazard: "tank,sealed"}, []string{"zinc"}},
	}
	for _, size := range [][2]int{{40, 14}, {40, 20}, {60, 14}, {60, 20}, {80, 14}, {80, 24}, {100, 14}, {120, 40}} {
		for _, x := range jobs {
			s := openAt(t, size[0], size[1], Options{Opening: x.job, Units: quantity.Both})
			for _, view := range []string{"card", "booth"} {
				text := strings.ToLower(strings.Join(strings.Fields(s.text()), " "))
				for _, word := range append(x.fume, "fume") {
					if !strings.Contains(text, word) {
						t.Errorf("%s at %v: no %q:\n%s", view, size, word, s.text())
					}
				}
				s.uncut(view, size)
				s.press("b")
			}
		}
	}
}

// What kills at once and the fume are named on the card and in the booth view, on every terminal that fits them. A
// danger that is shown in full above the line is not named in it again. On the card the job's own danger comes first.
func TestTheDeadliestIsNamedFirst(t *testing.T) {
	deep.Turn(t)
	if testing.Short() {
		t.Skip("every size")
	}
	for _, size := range [][2]int{{40, 14}, {40, 20}, {40, 24}, {60, 14}, {60, 20}, {80, 14}, {80, 24}, {100, 14},
		{120, 40}} {
		for _, job := range []calc.Job{{Metal: "galvanized", Gauge: 18}, {Metal: "mild-steel", Gauge: 18},
			{Metal: "brass", Gauge: 18}, {Metal: "mild-steel", Gauge: 16, Feed: calc.Some(3.3), Travel: calc.Some(9)},
			gapped} {
			s := openAt(t, size[0], size[1], Options{Opening: job})
			for _, view := range []string{"card", "booth"} {
				text := strings.Join(strings.Fields(s.text()), " ")
				vessels, shock, fume := strings.Index(text, "vessels"), strings.Index(strings.ToLower(text), "shock"),
					strings.Index(text, " fume")
				if whole := strings.Index(text, "Stop if it held fuel, oil or chemicals"); vessels < 0 {
					vessels = whole
				}
				if vessels < 0 || shock < 0 || fume < 0 || view == "booth" && (shock < vessels || fume < shock) {
					t.Errorf("%s of %s at %v: vessels %d, shock %d, fume %d:\n%s", view, job.Metal, size, vessels,
						shock, fume, s.text())
				}
				s.press("b")
			}
		}
	}
}

// The rows name the other dangers, say how to see all of them, and count the stops.
func TestDangerRows(t *testing.T) {
	th := openAt(t, 80, 24, Options{}).root().th
	stops, err := calc.Solve(calc.Job{Metal: "galvanized", Gauge: 18, Hazard: "tank,sealed"})
	if err != nil {
		t.Fatal(err)
	}
	plain, err := calc.Solve(calc.Job{Metal: "galvanized", Metal2: "stainless-304", Gauge: 18, Filler: "cumn13al8"})
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct {
		card *calc.Card
		said []string
		w    int
		want string
	}{
		{&stops, nil, 80, "■ 2 stops  ▲ closed vessels · shock · zinc, copper fume · fire – c shows all 12"},
		{&stops, nil, 60, "■ 2 stops  ▲ closed vessels · shock · zinc, copper fume – c"},
		{&stops, nil, 40, "■ 2 stops  ▲ vessels · shock ·\n  zinc/copper fume · cadmium – c: all 12"},
		{&stops, []string{"stops"}, 40, "■ 2  ▲ shock · zinc/copper fume – c"},
		{&stops, []string{"stops", "shock", "zinc-fume", "bronze-fume"}, 40, ""},
		{&plain, nil, 40, "■ 1 stop  ▲ vessels · shock – c\n  zinc/manganese/chromium/copper fume"},
	} {
		said := map[string]bool{}
		for _, code := range x.said {
			said[code] = true
		}
		got := stripBlock(dangerBand(&th, x.card, said, x.w))
		if x.want == "" && got != "" || !strings.HasPrefix(got, x.want) {
			t.Errorf("%d columns, said %v:\n%s\nwant\n%s", x.w, x.said, got, x.want)
		}
	}
}

// If there is room for only one caution, a caution about the verdict comes before those of every card.
func TestVerdictCautionComesFirst(t *testing.T) {
	s := openAt(t, 80, 24, Options{Opening: calc.Job{Metal: "mild-steel", Gauge: 16, Feed: calc.Some(3.3),
		Travel: calc.Some(9)}})
	s.has("▲ closed vessels · shock")
	if got := s.root().strip(); got.State != canvas.Cold || got.Do == "" {
		t.Errorf("the strip says %+v", got)
	}
	s.press("b")
	s.has("vessels · shock")
	if got := s.root().strip(); got.State != canvas.Cold {
		t.Errorf("over the booth view the strip says %+v", got)
	}
}

// The list of all cautions begins with what kills at once.
func TestTheListBeginsWithTheDeadliest(t *testing.T) {
	s := open80(t)
	s.press("tab", "tab", "tab", "tab", "c")
	text := s.text()
	vessels, shock, fume := strings.Index(text, "Stop if it held fuel"), strings.Index(text, "Electric shock kills"),
		strings.Index(text, "Extraction on")
	if vessels < 0 || shock < vessels || fume >= 0 && fume < shock {
		t.Errorf("vessels %d, shock %d, fume %d:\n%s", vessels, shock, fume, text)
	}
}

// Every danger is the short name of a warning that some card has.
func TestDangersAreWarnings(t *testing.T) {
	c, err := calc.Solve(calc.Job{Metal: "galvanized", Gauge: 18})
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range tables.Dangers {
		if _, worded := tables.Warnings.ByID(x.Code); !worded && !c.Warned(x.Code) {
			t.Errorf("no warning %s", x.Code)
		}
	}
}
