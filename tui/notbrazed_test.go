package tui

import (
	"strings"
	"testing"

	"brazebooth/calc"
)

// A metal that cannot be brazed is refused with its reason, even if its letters begin other rows. Only an arrow moves
// to those.
func TestUnbrazeableMetalIsRefused(t *testing.T) {
	for _, size := range [][2]int{{40, 14}, {60, 20}, {80, 24}} {
		for _, name := range []string{"aluminium", "aluminum", "alu", "6061", "5052"} {
			s := openAt(t, size[0], size[1], Options{})
			s.typed(name)
			s.has("660", "aluminized")
			s.press("enter")
			s.fits(size[0], size[1])
			if s.root().step() != 0 || s.root().job != ExampleJob() {
				t.Fatalf("%s leads on to %v:\n%s", name, s.root().job, s.text())
			}
		}
	}
}

func TestArrowLeavesTheRefusal(t *testing.T) {
	s := open80(t)
	s.typed("alu")
	s.press("down")
	s.hasNot("660")
	s.press("enter")
	if got := s.root().job.Metal; got != "aluminized" {
		t.Errorf("the first row under it is %q", got)
	}
	s = open80(t)
	s.typed("aluminiu")
	s.press("up", "enter")
	if got := s.root().job.Metal; got == "" {
		t.Errorf("an arrow up takes no row:\n%s", s.text())
	}
}

func TestAluminiumZincCoatIsNotComputed(t *testing.T) {
	s := open80(t)
	s.typed("az50")
	if text := flat(s.text()); !strings.Contains(text, "not computed") || !strings.Contains(text, "try aluminized") {
		t.Errorf("the coat is not refused:\n%s", s.text())
	}
}

// A shaft is bar of mild steel: it is found by the word that welders use.
func TestAShaftIsFound(t *testing.T) {
	s := open80(t)
	s.typed("shaft")
	s.press("enter")
	if got := s.root().job.Metal; got != "mild-steel" {
		t.Errorf("shaft is %q:\n%s", got, s.text())
	}
}

// If no verdict is computed, the card says so in words.
func TestNoVerdictInWords(t *testing.T) {
	for _, size := range [][2]int{{60, 40}, {80, 40}, {120, 50}} {
		s := openAt(t, size[0], size[1], Options{Opening: calc.Job{Metal: "silicon-bronze", Gauge: 18, Joint: "plug"}})
		if z := s.root().session.card.Zone; z != "not-modelled" {
			t.Fatalf("the card's zone is %s", z)
		}
		s.has("Judge it on a test bead")
		s.hasNot("not-modelled")
	}
}
