package calc

import (
	"strings"
	"testing"

	"brazebooth/internal/deep"
)

// openings are jobs over metals, joints, gaps, backings, sheets, modes and positions.
func openings() (jobs []Job) {
	for _, metal := range [...]string{"mild-steel", "galvanized", "copper", "stainless-304"} {
		for _, thick := range [...]float64{0.3, 0.45, 0.5, 0.8, 1.5, 3, 3.1, 6, 12, 25, 26} {
			for _, joint := range [...]string{"lap", "butt", "tee", "corner", "edge", "plug"} {
				for _, gap := range [...]float64{0, 0.3, 0.5, 0.6, 0.7, 1, 2, 3.6, 3.7, 5} {
					for _, backing := range [...]string{"", "copper-bar", "steel-strip", "patch"} {
						if backing != "" && joint != "butt" {
							continue
						}
						for _, mode := range [...]string{"dip", "pulsed", "timed"} {
							jobs = append(jobs, Job{Metal: metal, Thickness: Some(thick), Joint: joint, Gap: Some(gap),
								Backing: backing, Mode: mode, Feed: Some(5), Travel: Some(6)})
						}
					}
				}
			}
		}
	}
	return jobs
}

// namesBacking reports whether a text advises a backing.
func namesBacking(text string) bool {
	for _, word := range [...]string{"copper bar behind", "over a copper bar", "a copper bar or", "try a copper bar",
		"steel strip behind", "backing bar", "patch behind"} {
		if strings.Contains(text, word) {
			return true
		}
	}
	return false
}

// No card advises something that its joint does not take, that it already has, or with which it is not judged.
func TestNoAdviceOverAnOpeningLeadsToARefusal(t *testing.T) {
	advice := 0
	for _, j := range deep.Of(t, openings(), 150) {
		var c Card
		if resolve(j, &c) != nil {
			continue
		}
		text := OverOpening(&c)
		if b := newBoard(&c); j.Mode != "timed" && j.Joint != "plug" {
			why := b.notModelled(&c)
			if text += " " + why; why != "" {
				text += " " + windowHint(&c)
			}
		} else {
			text += " " + openReason(OutsideTimed(&c), &c)
		}
		at := j.short() + ": " + text
		var bare Job
		if bare = j; namesBacking(text) {
			advice++
			bare.Backing = ""
			if j.Joint != "butt" {
				t.Errorf("backing for no butt: %s", at)
			}
			if strings.Contains(text, "copper bar behind") &&
				(j.Backing == copperBar || !steadyJudged(bare, copperBar)) {
				t.Errorf("a bar: %s", at)
			}
			if strings.Contains(text, "steel strip behind") &&
				(j.Backing == steelStrip || !steadyJudged(bare, steelStrip)) {
				t.Errorf("a strip: %s", at)
			}
			if strings.Contains(text, "patch behind") &&
				(j.Backing == patchBehind || !steadyJudged(bare, patchBehind)) {
				t.Errorf("a patch: %s", at)
			}
			if strings.Contains(text, "backing bar") && !steadyJudged(bare, copperBar) {
				t.Errorf("a bar: %s", at)
			}
		}
		if strings.Contains(text, "closed") && c.Used.Gap.V == 0 {
			t.Errorf("closed already: %s", at)
		}
		if strings.Contains(text, "a timed arc where") && (j.Mode == "timed" || c.Used.Gap.V > 3.6 ||
			j.Joint != "butt" && j.Joint != "corner" && c.Used.Gap.V > 0.1 ||
			maxCore(c.Setup.Joined()) > 3 || c.Used.backed() != "") {
			t.Errorf("a timed arc: %s", at)
		}
		if j.Joint != "plug" && strings.Contains(text, "give a") {
			t.Errorf("its own joint: %s", at)
		}
	}
	if advice == 0 {
		t.Error("nothing advises a backing: the test proves nothing")
	}
}

// steadyJudged reports whether a job is judged with that backing under an arc without pauses or its own.
func steadyJudged(j Job, backing string) bool {
	j.Backing = backing
	if judged(j) {
		return true
	}
	pauseless(&j)
	return judged(j)
}

// A vent gap is named for a closed lap of two sheets with zinc and for nothing else.
func TestVentGapIsForCoatedLaps(t *testing.T) {
	for _, j := range openings() {
		var c Card
		if j.Thickness.V != 1.5 || resolve(j, &c) != nil {
			continue
		}
		if want := j.Metal == "galvanized" && c.Used.Joint == "lap" && c.Used.Gap.V == 0; ventable(&c) != want {
			t.Errorf("%s, gap %g: %v", j.short(), j.Gap.V, !want)
		}
	}
}

// A thick edge or corner that one bead does not cover is told to try a joint only where that joint is judged.
func TestTooWideForABeadNamesJudgedJoints(t *testing.T) {
	named := 0
	for _, joint := range []string{"edge", "corner"} {
		for _, metal := range []string{"mild-steel", "galvannealed", "stainless-304", "copper", "grey-iron"} {
			for _, second := range []string{"mild-steel", "copper"} {
				for _, thick := range []float64{3.2, 4, 5, 6.5, 8, 10, 14, 20} {
					var c Card
					j := Job{Metal: metal, Metal2: second, Joint: joint, Thickness: Some(thick)}
					if resolve(j, &c) != nil {
						continue
					}
					text := newBoard(&c).notModelled(&c)
					for _, other := range []string{"lap", "tee"} {
						if !strings.Contains(text, "a "+other) {
							continue
						}
						named++
						var o Card
						if j.Joint = other; resolve(j, &o) != nil || newBoard(&o).notModelled(&o) != "" {
							t.Errorf("%s of %s and %s, %g mm: %s", joint, metal, second, thick, text)
						}
					}
				}
			}
		}
	}
	if named == 0 {
		t.Error("no joint is named: the test says nothing")
	}
}
