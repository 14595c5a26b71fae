package advice

import (
	"context"
	"errors"
	"fmt"
	"math"
	"runtime"
	"strings"
	"sync"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/mistake"
	"brazebooth/tables"
)

// contradictions lists contradictions between a card and its pages, and statements without a basis.
func contradictions(job calc.Job, fillers bool) []string {
	c, err := calc.Solve(job)
	var fe *mistake.Error
	if err != nil {
		if !errors.As(err, &fe) || fe.Hint == "" {
			return []string{"no card and no hint: " + err.Error()}
		}
		return nil
	}
	var faults []string
	passes := map[string]float64{}
	say := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }
	checkFigures("card", c.Figures, say)
	checkZones(&c, say)
	for _, p := range Contents() {
		if p.Of == nil || p.Name == "filler" && !fillers {
			continue
		}
		part, err := p.Of(context.Background(), &c)
		if err != nil {
			if !errors.As(err, &fe) || fe.Hint == "" {
				say("%s: no hint: %v", p.Name, err)
			}
			continue
		}
		checkFigures(p.Name, part.Figures, say)
		checkReasons(p.Name, &part, say)
		if f, ok := part.Figure("passes"); ok && f.Value > 1 {
			passes[p.Name] = f.Value
		}
		switch p.Name {
		case "fit":
			checkVerdict(&c, &part, say)
		case "prepare":
			checkPreparation(&c, &part, say)
		case "air":
			checkShades(&part, say)
		case "filler":
			checkRanking(&c, &part, say)
		}
	}
	checkPasses(&c, passes, say)
	return faults
}

func checkFigures(page string, list []calc.Figure, say func(string, ...any)) {
	for _, f := range list {
		bad := math.IsNaN(f.Value) || math.IsInf(f.Value, 0) || math.IsNaN(f.Low) || math.IsInf(f.High, 0)
		if bad || !(f.Low <= f.Value && f.Value <= f.High) || f.Unit == "" || f.Basis.Source == "" ||
			f.Basis.Known == "" {
			say("%s: %s %g (%g to %g) %q from %q, %q", page, f.Name, f.Value, f.Low, f.High, f.Unit, f.Basis.Source,
				f.Basis.Known)
		}
	}
}

func checkReasons(page string, p *Page, say func(string, ...any)) {
	list := p.Reasons
	for _, r := range p.Ranking {
		list = append(append(list, r.For...), r.Against...)
	}
	for _, r := range list {
		if r.Text == "" || r.Known == "" || r.Source == "" || strings.Contains(r.Text, "NaN") {
			say("%s: a reason without its mark: %+v", page, r)
		}
	}
	for _, w := range p.Warnings {
		if w.Text == "" || w.Basis == "" || strings.Contains(w.Text, "NaN") {
			say("%s: a caution without its basis: %+v", page, w)
		}
	}
}

// checkZones checks that the card's words about heat are those of its zone.
func checkZones(c *calc.Card, say func(string, ...any)) {
	for _, w := range c.Warnings {
		switch w.Code {
		case "cold", "hot", "burn-through", "not-modelled":
			if w.Code != c.Zone {
				say("zone %s, caution %s", c.Zone, w.Code)
			}
		}
		if strings.Contains(w.Text, "NaN") || w.Basis == "" {
			say("caution %+v", w)
		}
	}
	met := true
	for _, e := range c.Edges {
		if e.Name == "wets" && !e.Met && c.Zone == "good" || e.Name == "base stays solid" && !e.Met &&
			(c.Zone == "good" || c.Zone == "cold") {
			say("zone %s with %q unmet", c.Zone, e.Name)
		}
		met = met && e.Met
	}
	if m, ok := c.Figure("margin"); ok && (m.Value < 0) == met && m.Value != 0 {
		say("margin %g with every edge met: %v", m.Value, met)
	}
}

// checkVerdict checks that no job suits if the card calls it cold or hot, and that every stop of the card stops
// the job.
func checkVerdict(c *calc.Card, p *Page, say func(string, ...any)) {
	if p.Verdict == Suits && c.Zone != "good" {
		say("it suits, in zone %s", c.Zone)
	}
	if len(p.Reasons) == 0 {
		say("a verdict without a reason")
	}
	if (p.Verdict == StopWork || p.Verdict == AnotherWay) && len(p.Instead) == 0 {
		say("%s, and nothing instead", p.Verdict)
	}
	for _, w := range c.Warnings {
		if w.Severity == calc.Stop && p.Verdict != StopWork {
			say("the card says stop (%s), the verdict %s", w.Code, p.Verdict)
		}
	}
}

// checkPreparation checks that no line contradicts the heat of the same card.
func checkPreparation(c *calc.Card, p *Page, say func(string, ...any)) {
	peak, ok := ironPeak(c)
	for _, r := range p.Reasons {
		if strings.HasPrefix(r.Text, "No preheat") && c.Zone == "cold" {
			say("cold, and no preheat is advised")
		}
		if strings.HasPrefix(r.Text, "the card is cold") && c.Zone != "cold" {
			say("called cold in zone %s", c.Zone)
		}
	}
	iron := calc.Applies(string(tables.CastIron), c)
	warned := false
	for _, w := range p.Warnings {
		warned = warned || w.Code == "iron-peak"
	}
	if warned != (iron && ok && peak.Value >= 1100) {
		say("iron at %g °C, warned: %v", peak.Value, warned)
	}
}

func checkShades(p *Page, say func(string, ...any)) {
	least, ok1 := p.Figure("shade_minimum")
	usual, ok2 := p.Figure("shade_suggested")
	if ok1 && ok2 && usual.Value < least.Value {
		say("shade %g suggested, %g the least", usual.Value, least.Value)
	}
}

// checkRanking checks that the first filler is not ruled out, except on brass.
func checkRanking(c *calc.Card, p *Page, say func(string, ...any)) {
	if p.Ranking[0].RuledOut && c.Setup.Members[0].Metal.Family != tables.BrassFam && (c.Setup.One ||
		c.Setup.Members[1].Metal.Family != tables.BrassFam) {
		say("every filler is ruled out")
	}
}

// checkJobs checks jobs on all processors and reports contradictions.
func checkJobs(t *testing.T, jobs []calc.Job, fillers bool) {
	t.Helper()
	var wg sync.WaitGroup
	var mu sync.Mutex
	next := make(chan calc.Job)
	told := 0
	for range runtime.GOMAXPROCS(0) {
		wg.Go(func() {
			for j := range next {
				for _, f := range contradictions(j, fillers) {
					mu.Lock()
					if told++; told < 20 {
						t.Errorf("%s %d ga %s %s %s: %s", j.Metal, j.Gauge, j.Joint, j.Filler, j.Mode, f)
					}
					mu.Unlock()
				}
			}
		})
	}
	for _, j := range jobs {
		next <- j
	}
	close(next)
	wg.Wait()
	if told >= 20 {
		t.Errorf("%d contradictions in all", told)
	}
}

// Tests every metal, joint, filler and mode with feed and travel given. Each combination gets a few gauges, not
// the same ones: the step has no factor in common with the 22 gauges, and its start is random.
func TestNothingContradicts(t *testing.T) {
	deep.Turn(t)
	var jobs []calc.Job
	step := []int{613, 13, 3}[min(deep.Times(), 2)]
	n := deep.Rand(t).IntN(step)
	for _, m := range tables.Metals {
		for _, joint := range tables.Joints {
			for _, mode := range tables.Modes {
				for _, f := range tables.Fillers {
					for g := 7; g <= 28; g++ {
						if n++; n%step == 0 {
							jobs = append(jobs, calc.Job{Metal: m.ID, Gauge: g, Joint: joint.ID, Filler: f.ID,
								Mode: mode.ID, Feed: calc.Some(5.5), Travel: calc.Some(8), Hazard: "none",
								Use: "decorative"})
						}
					}
				}
			}
		}
	}
	checkJobs(t, jobs, false)
}

// Tests a sample with suggested settings, unlike members and every page.
func TestNothingContradictsWhereSettingsAreSuggested(t *testing.T) {
	n := deep.Many(6, 250)
	if testing.Short() {
		n = 10
	}
	r := deep.Rand(t)
	metals, joints, fillers, modes, uses := tables.Metals, tables.Joints, tables.Fillers, tables.Modes,
		tables.Uses
	jobs := make([]calc.Job, n)
	for i := range jobs {
		j := calc.Job{Metal: metals[r.IntN(len(metals))].ID, Gauge: 8 + r.IntN(21),
			Joint: joints[r.IntN(len(joints))].ID, Mode: modes[r.IntN(len(modes))].ID,
			Use: uses[r.IntN(len(uses))].ID, Hazard: "none"}
		if r.IntN(2) == 0 {
			j.Filler = fillers[r.IntN(len(fillers))].ID
		}
		if r.IntN(2) == 0 {
			j.Metal2, j.Gauge2 = metals[r.IntN(len(metals))].ID, 8+r.IntN(21)
		}
		if r.IntN(3) == 0 {
			j.Load, j.Length = calc.Some(0.1+5*r.Float64()), calc.Some(20+500*r.Float64())
		}
		if r.IntN(2) == 0 {
			j.ShaftDia, j.Layer, j.RatedAmps, j.RatedDuty = calc.Some(5+200*r.Float64()),
				calc.Some(0.3+5*r.Float64()), calc.Some(80+300*r.Float64()), calc.Some(20+80*r.Float64())
			j.WirePrice, j.LabourRate, j.SteelPrice, j.NozzleBore = calc.Some(50*r.Float64()),
				calc.Some(80*r.Float64()), calc.Some(5*r.Float64()), calc.Some(8+15*r.Float64())
			j.Count, j.Preheat, j.ServiceTemp = calc.Some(1+50*r.Float64()), calc.Some(-20+200*r.Float64()),
				calc.Some(300*r.Float64())
		}
		jobs[i] = j
	}
	checkJobs(t, jobs[:n*9/10], false)
	checkJobs(t, jobs[n*9/10:], true) // with every filler ranked: eight searches each
}
