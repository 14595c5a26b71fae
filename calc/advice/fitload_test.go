package advice

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// A job with a given load never simply suits: on every joint, metal and mode the load is compared with what the
// page strength allows, or the verdict says why not. Both pages refuse a load from the same kilonewton on.
func TestFitJudgesEveryLoad(t *testing.T) {
	var jobs []calc.Job
	for _, m := range tables.Metals {
		for _, joint := range tables.Joints {
			for _, mode := range []string{"dip", "pulsed"} {
				jobs = append(jobs, calc.Job{Metal: m.ID, Thickness: calc.Some(1.2), Joint: joint.ID, Mode: mode,
					Use:    "load",
					Hazard: "none", Feed: calc.Some(4.5), Travel: calc.Some(6.5), Load: calc.Some(500)})
			}
		}
	}
	for _, joint := range []string{"edge", "lap", "tee"} {
		jobs = append(jobs, calc.Job{Metal: "mild-steel", Thickness: calc.Some(1.2), Joint: joint, Use: "load",
			Hazard: "none",
			Load:   calc.Some(500)})
	}
	for _, j := range deep.Of(t, jobs, 12) {
		c := card(t, j)
		fit, err := Fit(c)
		if err != nil {
			t.Fatal(err)
		}
		said := strings.Contains(strings.Join(texts(&fit), "\n"), "load") || fit.says("kN")
		if fit.Verdict == Suits || fit.Verdict != StopWork && !said {
			t.Errorf("%s %s %s with 500 kN: %s, the load is named %v", j.Metal, j.Joint, j.Mode, fit.Verdict, said)
		}
		s, err := Strength(c)
		allow, ok := s.Figure("allowable_load")
		if err != nil || !ok {
			continue
		}
		for _, share := range []float64{1, 1.001} {
			j.Load = calc.Some(allow.Value * share)
			c := card(t, j)
			fit, err := Fit(c)
			s, err2 := Strength(c)
			if err != nil || err2 != nil {
				t.Fatal(err, err2)
			}
			over := hasWarning(&s, "overloaded")
			if over != (share > 1) || over != fit.says("more than") {
				t.Errorf("%s %s with %g of the allowable load: strength warns %v, fit %v", j.Metal, j.Joint, share,
					over, fit.Reasons)
			}
		}
	}
}

func texts(p *Page) (list []string) {
	for _, r := range p.Reasons {
		list = append(list, r.Text)
	}
	return list
}

func hasWarning(p *Page, code string) bool {
	for _, w := range p.Warnings {
		if w.Code == code {
			return true
		}
	}
	return false
}

// Handbooks end continuous service at 400 °F; that temperature itself is still allowed, in either unit.
func TestServiceEndsAbove400F(t *testing.T) {
	for f := 380; f <= 420; f++ {
		j := calc.Job{Metal: "mild-steel", Thickness: calc.Some(1.2), Feed: calc.Some(4.5), Travel: calc.Some(6.5),
			ServiceTemp: calc.Some(float64(f-32) / 1.8), Use: "seal", Hazard: "none"}
		c := card(t, j)
		s, err := Strength(c)
		fit, err2 := Fit(c)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		if warm := hasWarning(&s, "too-warm"); warm != (f > 400) || warm != (fit.Verdict == AnotherWay) {
			t.Errorf("%d °F: too warm %v, %s", f, warm, fit.Verdict)
		}
	}
}
