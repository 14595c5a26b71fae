package advice

import (
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// Every page that computes from a setting says so if it makes no sound joint, and does not say so if it makes
// one.
func TestAnUnsoundSettingIsCalledSo(t *testing.T) {
	pages := map[string]struct {
		of   func(*calc.Card) (Page, error)
		code string
	}{"strength": {Strength, "unsound-no-load"}, "cost": {Cost, "no-price"},
		"distortion": {Distortion, "unsound-setting"}, "haz": {waited(t, Zone), "unsound-setting"},
		"passes": {Passes, "unsound-setting"}}
	var jobs []calc.Job
	for _, m := range tables.Metals {
		for _, joint := range []string{"lap", "tee", "butt", "corner", "edge"} {
			for _, travel := range []float64{3, 7, 14} {
				jobs = append(jobs, calc.Job{Metal: m.ID, Thickness: calc.Some(1.5), Joint: joint, Feed: calc.Some(5),
					Travel: calc.Some(travel), WirePrice: calc.Some(20)})
			}
		}
	}
	for _, j := range deep.Of(t, jobs, 10) {
		c := card(t, j)
		unsound := failing(c) != ""
		for name, page := range pages {
			p, err := page.of(c)
			if err != nil || len(p.Figures) == 0 && len(p.Warnings) == 0 {
				continue // no throat, or not judged
			}
			if name == "strength" && (j.Joint == "edge" || calc.Applies(string(tables.CastIron), c)) {
				continue // carries no load, whatever the setting
			}
			if said := hasWarning(&p, page.code); said != unsound {
				t.Errorf("%s %s at %g mm/s is %s: %s calls it unsound: %v", j.Metal, j.Joint, j.Travel.V, c.Zone,
					name, said)
			}
		}
	}
}
