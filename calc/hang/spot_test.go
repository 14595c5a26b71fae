package hang

import "testing"

// What makes a spot's puddle heavier or its chord wider never makes it stay better, over the whole range.
func TestSpotsFallInOrder(t *testing.T) {
	for _, place := range places {
		for _, c := range []struct {
			what  string
			at    func(*Joint) *float64
			a, b  float64
			holds bool // only across the root: on a wall what hangs is the bead
		}{
			{"gap", func(j *Joint) *float64 { return &j.Gap }, 0.3, 4, true},
			{"current", func(j *Joint) *float64 { return &j.Amps }, 20, 250, true},
			{"bead", func(j *Joint) *float64 { return &j.Bead }, 4, 30, false},
		} {
			last := [2]float64{Most, Most}
			for i := range 60 {
				j := usualJoint(t, "butt", place)
				*c.at(&j) = c.a + (c.b-c.a)*float64(i)/59
				if c.what == "gap" { // a wider gap takes more metal
					j.Bead = 2 * j.Gap * j.Thick[0]
				}
				list, err := SpotEdges(&j)
				if err != nil {
					t.Fatal(err)
				}
				for n, e := range list {
					if e.Why != "" || c.holds && n > 0 {
						continue
					}
					if e.Margin > last[n]+1e-9 {
						t.Errorf("%s, %s %g: %s by %.4f after %.4f", place, c.what, *c.at(&j), e.Name, e.Margin, last[n])
					}
					last[n] = e.Margin
				}
			}
		}
	}
}

// A closed joint lying flat has nothing that could fall, and a filler whose melt is unknown is not judged.
func TestSpotsThatAreNotJudged(t *testing.T) {
	j := usualJoint(t, "lap", "flat")
	j.Gap = 0
	if list, err := SpotEdges(&j); err != nil || list[0].Margin != Most || list[1].Margin != Most {
		t.Errorf("%+v, %v", list, err)
	}
	j = usualJoint(t, "butt", "overhead")
	j.Liquid = Liquid{}
	if list, err := SpotEdges(&j); err != nil || list[0].Why == "" || list[1].Why == "" {
		t.Errorf("%+v, %v", list, err)
	}
	j.Gap = -1
	if _, err := SpotEdges(&j); err == nil {
		t.Error("a gap below zero went through")
	}
}
