package calc

import (
	"math"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc/limit"
	"brazebooth/internal/deep"
)

// liquidNames are the edges that mean nothing between members that are burnt or not wetted.
var liquidNames = []string{limit.Bridges.Edge(), limit.Stays.Edge()}

// From far too cold to far into burn-through, an edge of the liquid is either judged or listed with why not, wherever
// edges are named; the chance does not jump between the two.
func TestEdgesOfTheLiquidAreJudgedBetweenWettedPartsOnly(t *testing.T) {
	jobs := deep.Of(t, []Job{
		{Metal: "mild-steel", Thickness: Some(1.2), Joint: "butt", Gap: Some(0.8), Position: "overhead"},
		{Metal: "mild-steel", Thickness: Some(1), Joint: "lap", Gap: Some(0.7)},
		{Metal: "galvanized", Thickness: Some(0.6), Metal2: "mild-steel", Thickness2: Some(3), Joint: "tee",
			Gap:      Some(1.5),
			Position: "horizontal"},
		{Metal: "copper", Thickness: Some(2), Joint: "butt", Gap: Some(1), Position: "vertical-up"},
		{Metal: "stainless-304", Thickness: Some(1.5), Metal2: "copper", Thickness2: Some(0.8), Joint: "lap",
			Gap: Some(0.5)},
		{Metal: "hsla", Thickness: Some(1.5), Metal2: "brass", Thickness2: Some(1.8), Joint: "butt", Gap: Some(2.9),
			Backing: "copper-bar"},
	}, 2)
	for _, j := range jobs {
		j.Wire, j.Feed = Some(1), Some(5)
		seen := map[string]int{}
		steps := deep.Many(12, 160)
		last := math.NaN()
		for i := range steps + 1 {
			j.Travel = Some(3 * math.Pow(14, float64(i)/float64(steps)))
			card, err := Solve(j)
			if err != nil || card.Zone == "not-modelled" {
				continue
			}
			laid := Laid(&card)
			p, err := ProbeOf(t.Context(), &laid)
			if err != nil {
				t.Fatal(err)
			}
			s, err := p.state(0, false)
			if err != nil {
				t.Fatal(err)
			}
			burnt, dry := card.Zone == "burn-through", s.warmth < 0
			where := map[bool]string{true: "judged", false: "not judged"}[!burnt && !dry]
			seen[where]++
			namedOrNot(t, &card, !burnt && !dry)
			if c := card.Chance.Good; steps >= 160 && math.Abs(c-last) > 12 {
				t.Errorf("%s, travel %.2f: chance %.1f after %.1f", j.Joint, j.Travel.V, c, last)
			} else {
				last = c
			}
		}
		if seen["judged"] == 0 || seen["not judged"] == 0 {
			t.Errorf("%s of %s: %v", j.Joint, j.Metal, seen)
		}
	}
}

// namedOrNot checks that a card names the liquid's edges where they are judged, and else says only why not.
func namedOrNot(t *testing.T, c *Card, judged bool) {
	t.Helper()
	for _, e := range c.Edges {
		if !judged && slices.Contains(liquidNames, e.Name) {
			t.Errorf("%s at %.2f mm/s, %s: “%s” is judged", c.Used.Joint, c.Used.Travel.V, c.Zone, e.Name)
		}
	}
	if judged != (len(c.Unjudged) == 0) {
		t.Errorf("%s at %.2f mm/s, %s: not judged %v", c.Used.Joint, c.Used.Travel.V, c.Zone, c.Unjudged)
	}
	for _, u := range c.Unjudged {
		if !slices.Contains(liquidNames, u.Name) || !strings.Contains(u.Why, "try") {
			t.Errorf("%+v", u)
		}
	}
	if judged {
		return
	}
	for _, name := range []string{"largest_gap", "root_sag", "largest_bead"} {
		if f, ok := c.Figure(name); ok {
			t.Errorf("%s at %.2f mm/s, %s: %+v", c.Used.Joint, c.Used.Travel.V, c.Zone, f)
		}
	}
	for _, w := range c.Warnings {
		if w.Code == "gap-not-bridged" || w.Code == "metal-runs" || w.Code == "gap-untested" {
			t.Errorf("%s at %.2f mm/s, %s: %s", c.Used.Joint, c.Used.Travel.V, c.Zone, w.Text)
		}
	}
	if f, ok := c.Figure("margin"); ok && (strings.HasSuffix(f.Basis.Formula, liquidNames[0]) ||
		strings.HasSuffix(f.Basis.Formula, liquidNames[1])) || slices.Contains(liquidNames, c.Chance.Missed) {
		t.Errorf("%s at %.2f mm/s, %s: nearest is %s, missed most %s", c.Used.Joint, c.Used.Travel.V, c.Zone,
			f.Basis.Formula, c.Chance.Missed)
	}
}

// A window names no edge of the liquid where the base melts through or a member stays dry, and draws none there.
func TestMapsLeaveOutWhatIsNotJudged(t *testing.T) {
	j := Job{Metal: "mild-steel", Thickness: Some(1), Joint: "butt", Gap: Some(0.6), Wire: Some(0.889)}
	w, err := WindowOf(t.Context(), j, CoarseWindow, nil)
	if err != nil {
		t.Fatal(err)
	}
	c, err := ChartOf(t.Context(), &w)
	if err != nil {
		t.Fatal(err)
	}
	burnt := 0
	for k, zone := range w.Zones {
		if zone != "burn-through" {
			continue
		}
		burnt++
		if slices.Contains(liquidNames, w.Nearest[k]) {
			t.Errorf("point %d: nearest is %s", k, w.Nearest[k])
		}
		for _, e := range c.Edges {
			if slices.Contains(liquidNames, e.Name) && !math.IsNaN(e.Inside[k]) {
				t.Errorf("point %d: %s %g", k, e.Name, e.Inside[k])
			}
		}
	}
	ofLiquid := func(e ChartEdge) bool { return slices.Contains(liquidNames, e.Name) }
	if burnt == 0 || !slices.ContainsFunc(c.Edges, ofLiquid) {
		t.Errorf("%d points burn through; edges %v", burnt, len(c.Edges))
	}
}
