package advice

import (
	"strings"
	"testing"

	"brazebooth/calc"
)

// The page agrees with the card on thick parts: a weld-braze is not called a solid base, a cold part has its
// preheat, a joint that is not judged its reason. A seam in plate that carries nothing is possible with care.
func TestFitOfThickParts(t *testing.T) {
	mm := calc.Some
	for _, x := range []struct {
		job     calc.Job
		verdict string
		has     string
		not     string
	}{
		{calc.Job{Metal: "grey-iron", Thickness: mm(8), Joint: "butt", Hazard: "none"}, WithCare, "weld-braze",
			"stays solid"},
		{calc.Job{Metal: "copper", Thickness: mm(8), Joint: "butt", Wire: mm(1.6), Use: "seal", Hazard: "none"},
			WithCare, "Preheat to", "stays solid"},
		{calc.Job{Metal: "copper", Thickness: mm(6), Joint: "tee", Use: "seal", Hazard: "none"}, AnotherWay,
			"nother process", "Preheat to"},
		{calc.Job{Metal: "mild-steel", Thickness: mm(6), Joint: "lap", Hazard: "none"}, AnotherWay,
			"higher than one bead", "stays solid"},
		{calc.Job{Metal: "mild-steel", Thickness: mm(6), Joint: "butt", Use: "decorative", Hazard: "none"}, WithCare,
			"carries nothing", "weld-braze"},
		{calc.Job{Metal: "mild-steel", Thickness: mm(6), Joint: "butt", Use: "load", Hazard: "none"}, AnotherWay,
			"above about 3 mm", "carries nothing"},
	} {
		c, err := calc.Solve(x.job)
		if err != nil {
			t.Fatal(err)
		}
		p, err := Fit(&c)
		if err != nil {
			t.Fatal(err)
		}
		var all []string
		for _, r := range p.Reasons {
			all = append(all, r.Text)
		}
		if text := strings.Join(all, "\n"); p.Verdict != x.verdict || !strings.Contains(text, x.has) ||
			strings.Contains(text, x.not) {
			t.Errorf("%s %g mm %s: %s\n%s", x.job.Metal, x.job.Thickness.V, x.job.Joint, p.Verdict, text)
		}
	}
}
