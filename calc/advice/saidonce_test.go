package advice

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
)

// The caution about the hood names the share that the figure shows; another share only with its reason.
func TestHoodCautionAgreesWithTheFigure(t *testing.T) {
	for _, operating := range []float64{10, 20, 30, 40, 60, 80, 100} {
		p := pageOf(t, Air, calc.Job{Metal: "galvanized", Gauge: 16, Operating: calc.Some(operating)})
		text := ""
		for _, w := range p.Warnings {
			if w.Code == "hood-alone" {
				text = w.Text
			}
		}
		want := fmt.Sprintf("asks for about %.0f %%", value(t, p, "capture_needed").Value)
		if text != "" && !strings.Contains(text, want) {
			t.Errorf("arc-on %g %%: %s; the figure says %s", operating, text, want)
		}
	}
}

// If the last pass has hardly anything to fill, the page says that the others can lay it; it never says 0 mm².
func TestAnAlmostEmptyLastPassIsMentioned(t *testing.T) {
	spared := 0
	for thick := 40; thick <= 80; thick += deep.Many(3, 1) {
		p := pageOf(t, Passes, calc.Job{Metal: "galvanized", Thickness: calc.Some(float64(thick) / 10), Joint: "butt",
			Gap: calc.Some(2)})
		for _, r := range p.Reasons {
			if strings.Contains(r.Text, " has 0 mm²") || strings.Contains(r.Text, "closed root") {
				t.Errorf("%g mm with a gap of 2 mm: %s", float64(thick)/10, r.Text)
			}
			var n, slower, spare float64
			if i := strings.Index(r.Text, "travel "); strings.HasSuffix(r.Text, "is not needed") {
				spared++
				_, err := fmt.Sscanf(r.Text[i:], "travel %g %% slower and pass %g is", &slower, &spare)
				_, err2 := fmt.Sscanf(r.Text, "%g pass", &n)
				area, bead := value(t, p, "groove_area").Value, value(t, p, "bead_area").Value
				if err != nil || err2 != nil || spare != n+1 || n*bead/(1-slower/100) < area*(1-1e-9) {
					t.Errorf("%s: %g beads of %g mm² do not fill %g mm²", r.Text, n, bead, area)
				}
			}
		}
	}
	if spared == 0 {
		t.Error("no thickness has a last pass of hardly anything")
	}
}

// Questions about plugs or overlays are only asked on those joints.
func TestQuestionsSuitTheJoint(t *testing.T) {
	for _, x := range []struct {
		page, joint, name string
		asks              bool
	}{
		{"strength", "lap", "count", false}, {"strength", "lap", "hole", false}, {"strength", "plug", "hole", true},
		{"strength", "plug", "count", true}, {"cost", "lap", "count", true}, {"cost", "lap", "layer", false},
		{"cost", "overlay", "shaft-dia", true}, {"plug", "lap", "hole", true}, {"overlay", "lap", "layer", true},
	} {
		page, ok := EntryByName(x.page)
		if !ok || slices.Contains(page.Asks(x.joint), x.name) != x.asks {
			t.Errorf("%s of a %s asks for %v; %s: want %v", x.page, x.joint, page.Asks(x.joint), x.name, x.asks)
		}
	}
}
