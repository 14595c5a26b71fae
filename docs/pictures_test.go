package docs

import (
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/report"
)

// docs/window.svg is what `window --svg` draws.
func TestWindowPictureIsTheCommands(t *testing.T) {
	if testing.Short() {
		t.Skip("computes a map")
	}
	ctx := t.Context()
	w, err := calc.WindowOf(ctx, calc.Job{Metal: "galvanized", Gauge: 20}, calc.FullWindow, nil)
	if err != nil {
		t.Fatal(err)
	}
	c, err := calc.ChartOf(ctx, &w)
	if err != nil {
		t.Fatal(err)
	}
	b, err := (&report.Map{Window: &w, Chart: &c}).SVG()
	if err != nil {
		t.Fatal(err)
	}
	compare(t, "window.svg", string(b))
}
