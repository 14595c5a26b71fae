package tui

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// Whoever looks at figures sees what is in the plume: on the card and on the booth view, on every terminal that holds them.
func TestFumeIsNamedBesideFigures(t *testing.T) {
	jobs := []struct {
		job  calc.Job
		fume []string // as the small line says it
	}{
		{calc.Job{Metal: "galvanized", Gauge: 18}, []string{"zinc"}},
		{calc.Job{Metal: "mild-steel", Gauge: 18}, []string{"copper"}},
		{calc.Job{Metal: "galvanized", Metal2: "stainless-304", Gauge: 18, Filler: "cumn13al8"}, []string{"zinc", "manganese", "chromium"}},
		{gapped, []string{"fume"}},
		{calc.Job{Metal: "galvanized", Gauge: 18, Hazard: "tank,sealed"}, []string{"zinc"}},
	}
	for _, size := range [][2]int{{40, 14}, {40, 20}, {60, 14}, {60, 20}, {80, 14}, {80, 24}, {100, 14}, {120, 40}} {
		for _, x := range jobs {
			s := openAt(t, size[0], size[1], Options{Job: x.job, Units: quantity.Both})
			for _, view := range []string{"card", "booth"} {
				text := strings.Join(strings.Fields(s.text()), " ")
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

// The line names what else endangers, says how to see all, and counts the stops.
func TestDangerLine(t *testing.T) {
	th := openAt(t, 80, 24, Options{}).root().th
	c, err := calc.Solve(calc.Job{Metal: "galvanized", Gauge: 18, Hazard: "tank,sealed"})
	if err != nil {
		t.Fatal(err)
	}
	l, _ := dangerLine(&th, &c, map[string]bool{}, 60)
	if got := stripBlock(block{l}); !strings.HasPrefix(got, "■ 2 stops  ▲ zinc fume · arc rays · fire") || !strings.Contains(got, "– c shows all ") {
		t.Errorf("%q", got)
	}
	l, _ = dangerLine(&th, &c, map[string]bool{}, 40)
	if got := stripBlock(block{l}); !strings.HasPrefix(got, "■ 2 stops  ▲ zinc fume") || !strings.Contains(got, "– c: all ") {
		t.Errorf("%q", got)
	}
	if _, ok := dangerLine(&th, &c, map[string]bool{"zinc-fume": true}, 40); ok {
		t.Error("named twice")
	}
}

// Every danger is the short word of a warning that some card carries.
func TestDangersAreWarnings(t *testing.T) {
	c, err := calc.Solve(calc.Job{Metal: "galvanized", Gauge: 18})
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range tables.Dangers() {
		if _, worded := tables.WarningByCode(x.Code); !worded && !c.Warned(x.Code) {
			t.Errorf("no warning %s", x.Code)
		}
	}
}
