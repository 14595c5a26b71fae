package tui

import (
	"context"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// A map on a coarser grid says so on the screen, at every size, below the marks that it explains.
func TestCoarserMapSaysSo(t *testing.T) {
	for _, size := range [][2]int{{40, 14}, {60, 20}, {80, 24}, {120, 40}} {
		for _, coarser := range []bool{true, false} {
			s := openAt(t, size[0], size[1], Options{Opening: calc.Job{Metal: "galvanized", Gauge: 20},
				Window: func(ctx context.Context, job calc.Job, progress func(float64)) (calc.Window, error) {
					m, err := coarse(ctx, job, progress)
					m.Coarser = coarser
					return m, err
				}})
			s.press("m")
			s.fits(size[0], size[1])
			s.has("GOOD", "◆")
			said := strings.Contains(strings.Join(strings.Fields(s.text()), " "),
				"drawn coarser: 12 by 8 points, since this job takes long to compute")
			if said != coarser {
				t.Errorf("%v, coarser %v:\n%s", size, coarser, s.text())
			}
		}
	}
}

// The same if the figures beside the map need all of the room.
func TestCoarserMapSaysSoBesideMuch(t *testing.T) {
	deep.Turn(t)
	job := calc.Job{Metal: "aluminium-bronze", Gauge: 14, Metal2: "copper", Thickness2: calc.Some(3.46), Joint: "lap",
		Wire: calc.Some(2.4)}
	have, err := coarse(t.Context(), job, nil)
	if err != nil {
		t.Fatal(err)
	}
	have.Coarser = true
	for _, size := range [][2]int{{40, 14}, {60, 20}, {80, 24}, {120, 40}} {
		s := openAt(t, size[0], size[1], Options{Opening: job, Window: func(context.Context, calc.Job,
			func(float64)) (calc.Window, error) {
			return have, nil
		}})
		s.press("m")
		s.fits(size[0], size[1])
		if text := strings.Join(strings.Fields(s.text()), " "); !strings.Contains(text, have.CoarserWords()) {
			t.Errorf("%v:\n%s", size, s.text())
		}
	}
}
