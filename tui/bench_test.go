package tui

import (
	"testing"

	tea "charm.land/bubbletea/v2"

	"brazebooth/calc"
)

// The card with feed and travel given: the cost of a key if nothing is searched.
func benchCard(b *testing.B, w, h int) *terminal {
	return openAt(b, w, h, Options{Opening: calc.Job{Metal: "galvanized", Gauge: 16,
		Feed: calc.Some(6.35), Travel: calc.Some(8)}})
}

func BenchmarkView(b *testing.B) {
	s := benchCard(b, 80, 24)
	for b.Loop() {
		_ = s.m.View()
	}
}

func BenchmarkSelect(b *testing.B) {
	for _, size := range [][2]int{{60, 20}, {80, 24}, {120, 40}} {
		b.Run(sizeName(size), func(b *testing.B) {
			s := benchCard(b, size[0], size[1])
			keys := [2]tea.KeyPressMsg{keyPress("right"), keyPress("left")}
			b.ReportAllocs()
			for i := 0; b.Loop(); i++ {
				s.m.Update(keys[i&1])
				_ = s.m.View()
			}
		})
	}
}

// BenchmarkChange goes to and fro between two settings, whose sections calc has cached after the first keys: it
// measures everything else that a key costs.
func BenchmarkChange(b *testing.B) {
	s := benchCard(b, 80, 24)
	s.press("right")
	keys := [2]tea.KeyPressMsg{keyPress("up"), keyPress("down")}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		s.m.Update(keys[i&1])
		_ = s.m.View()
	}
}

// BenchmarkChangeSearched is BenchmarkChange with feed and travel open: Solve searches at each key.
func BenchmarkChangeSearched(b *testing.B) {
	s := openAt(b, 80, 24, Options{Opening: calc.Job{Metal: "galvanized", Gauge: 16}})
	s.press("right", "right", "right", "right")
	keys := [2]tea.KeyPressMsg{keyPress("up"), keyPress("down")}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		s.m.Update(keys[i&1])
		_ = s.m.View()
	}
}

func BenchmarkTypeGauge(b *testing.B) {
	s := openAt(b, 80, 24, Options{})
	s.press("enter")
	keys := [3]tea.KeyPressMsg{keyPress("1"), keyPress("8"), keyPress("ctrl+u")}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		s.m.Update(keys[i%3])
		_ = s.m.View()
	}
}
