package calc

import (
	"testing"

	"brazebooth/internal/deep"
)

// The throat of a closed butt is that of its cap, beside the pull's line: less than half of the sheet. It grows with
// the opening at the same setting, without a jump, and is never more than the sheet.
func TestButtThroatGrowsWithTheOpening(t *testing.T) {
	var jobs []Job
	for _, metal := range []string{"mild-steel", "galvanized", "dp600", "stainless-304"} {
		for _, mm := range []float64{0.8, 1, 1.5, 2} {
			for _, travel := range []float64{5, 7} {
				jobs = append(jobs, Job{Metal: metal, Thickness: Some(mm), Joint: "butt", Feed: Some(3 + mm),
					Travel: Some(travel)})
			}
		}
	}
	for _, j := range deep.Of(t, jobs, 5) {
		last := 0.0
		for gap := 0.0; gap <= 0.51; gap += 0.1 {
			j.Gap = Some(gap)
			c := card(t, j)
			f, ok := c.Figure("throat")
			if !ok {
				t.Fatalf("%s %g mm, gap %g: no throat", j.Metal, j.Thickness.V, gap)
			}
			sheet := c.Setup.Members[0].Core
			switch {
			case gap == 0 && f.Value > sheet/2:
				t.Errorf("%s %g mm: a closed butt carries like %g mm", j.Metal, j.Thickness.V, f.Value)
			case f.Value > sheet+1e-9 || f.High > sheet+1e-9 || f.Low > f.Value:
				t.Errorf("%s %g mm, gap %g: throat %g, %g to %g", j.Metal, j.Thickness.V, gap, f.Value, f.Low, f.High)
			case gap > 0 && c.Section.BoiledBack[0] > sheet && (f.Value < last-0.02*sheet || f.Value > last+0.35*sheet):
				t.Errorf("%s %g mm, gap %.1f: throat %g after %g", j.Metal, j.Thickness.V, gap, f.Value, last)
			}
			last = f.Value
		}
	}
}

// thicknessScans are jobs with a given feed and travel, whose thickness a scan changes in steps of 2 % from sheet that
// burns through to plate that stays dry.
func thicknessScans() (jobs []Job) {
	for _, metal := range []string{"mild-steel", "galvanized", "stainless-304", "copper", "dp800", "grey-iron"} {
		for _, joint := range []string{"lap", "tee", "butt", "corner"} {
			for _, travel := range []float64{5, 7, 10} {
				jobs = append(jobs, Job{Metal: metal, Joint: joint, Feed: Some(6), Travel: Some(travel)})
			}
		}
	}
	return jobs
}

// Where an end of the heat's band leaves a member dry, the throat's band begins at nothing: it does not rise again as
// the sheet gets thicker and the bead colder. A bead that wets one member has no width. The high ends of the wetted
// widths move bit by bit past where a member is wetted no more, and stay sizes that a bead has.
func TestBandsPastADryMember(t *testing.T) {
	deep.Turn(t)
	dried := 0
	for _, j := range deep.Of(t, thicknessScans(), 3) {
		var last [2]float64
		for mm := 0.6; mm < 8; mm *= 1.02 {
			j.Thickness = Some(mm)
			c := card(t, j)
			throat, bridged := c.Figure("throat")
			_, wide := c.Figure("bead_width")
			one, ok := c.Figure("wetted_width_1")
			two, _ := c.Figure("wetted_width_2")
			if !ok {
				last = [2]float64{}
				continue
			}
			if wide && !(min(one.Value, two.Value) > 0) {
				t.Errorf("%s %s %.2f mm: a bead that wets one member has a width", j.Metal, j.Joint, mm)
			}
			if bridged && min(one.Low, two.Low) == 0 {
				dried++
				if throat.Low != 0 {
					t.Errorf("%s %s %.2f mm: throat from %.2f mm, wetted from %.2f and %.2f mm", j.Metal, j.Joint, mm,
						throat.Low, one.Low, two.Low)
				}
			}
			for i, f := range [2]Figure{one, two} {
				if f.High > 16 || last[i] > 1 && f.High > 1.4*last[i] {
					t.Errorf("%s %s %.2f mm: wetted %d up to %.2f mm after %.2f", j.Metal, j.Joint, mm, i+1, f.High,
						last[i])
				}
				last[i] = f.High
			}
		}
	}
	if dried == 0 {
		t.Error("no cold end leaves a member dry: the test proves nothing")
	}
}
