package calc

import (
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc/limit"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// borderJob is a job anywhere that somebody may ask about: every metal pair, joint, position and mode, 0.2 to 25 mm,
// open and closed, with its settings given.
func borderJob(r *rand.Rand) Job {
	pick := func(ids ...string) string { return ids[r.IntN(len(ids))] }
	thick := func() Opt { return Some(0.2 * math.Pow(25/0.2, r.Float64())) }
	metals := tables.Metals
	j := Job{Metal: metals[r.IntN(len(metals))].ID, Thickness: thick(), Joint: pick("lap", "tee", "butt", "corner",
		"edge", "overlay"),
		Mode: pick("dip", "dip", "pulsed"), Position: pick("flat", "flat", "horizontal", "vertical-up",
			"vertical-down", "overhead"),
		Wire: Some([]float64{0.762, 0.889, 1.143, 1.6}[r.IntN(4)])}
	if r.IntN(2) == 0 {
		j.Metal2, j.Thickness2 = metals[r.IntN(len(metals))].ID, thick()
	}
	if r.IntN(3) == 0 {
		j.Gap = Some(4 * r.Float64())
	}
	if j.Joint == "butt" && r.IntN(4) == 0 {
		j.Backing = pick("copper-bar", "steel-strip", "patch")
	}
	j.Feed, j.Travel = Some(2*math.Pow(6, r.Float64())), Some(3*math.Pow(6, r.Float64()))
	return j
}

// smooth are the figures that move evenly with a job.
var smooth = [...]string{"current", "net_heat", "bead_area", "bead_width", "wetted_width_1", "base_peak_temperature"}

// jumps says which figure of two cards differs by more than 5 %, "" for none. It does not compare across a named
// border: where nothing is judged, where a member is not wetted, between sheet and plate, and where the base melts,
// whose latent heat makes a little more travel count for much. Nor does it compare widths under 4 mm: there the toe's
// isotherm touches the peak, and the change of a width with the heat has no bound.
func jumps(a, b *Card) string {
	for _, c := range []*Card{a, b} {
		switch {
		case c.Zone == "not-modelled", c.Zone == "hot", c.Zone == "burn-through", !(c.Section.Phi > 0):
			return ""
		}
	}
	for _, name := range smooth {
		f, ok := a.Figure(name)
		g, also := b.Figure(name)
		if !ok || !also || f.Value == 0 || g.Value == 0 {
			continue // a member that is not wetted has no width
		}
		if d := math.Abs(f.Value - g.Value); d > 0.05*max(f.Value, g.Value) && !(f.Unit == "mm" && f.Value < 4) {
			return fmt.Sprintf("%s %.4g, then %.4g", name, f.Value, g.Value)
		}
	}
	return ""
}

// borderScan is what a scan of the border counts, for its table in docs/model.md.
type borderScan struct {
	judged, moves, reversed int
	answers, jumps          map[string]int
	jumped                  []string
}

// Every job in the range is judged or has a reason why not, in the words of the border. With fixed settings hardly a
// figure jumps where one input moves by one per cent; a wider gap is never easier to bridge, and a butt overhead never
// holds more metal than a horizontal one.
func TestBorders(t *testing.T) {
	r := deep.Rand(t)
	s := borderScan{answers: map[string]int{}, jumps: map[string]int{}}
	jobs := deep.Many(8, 2000)
	for range jobs {
		s.try(t, borderJob(r))
	}
	if s.judged < jobs/3 {
		t.Errorf("%d jobs were judged", s.judged)
	}
	// What is left are beads that barely wet and members that barely melt beside one that does not: not one move in a
	// hundred.
	if len(s.jumped)*100 > s.moves {
		t.Errorf("%d of %d moves jump:\n%s", len(s.jumped), s.moves, strings.Join(s.jumped, "\n"))
	}
	t.Logf("%d of %d jobs judged, %d reversals; %d of %d moves jump\n%s", s.judged, jobs, s.reversed, len(s.jumped),
		s.moves,
		strings.Join(s.jumped, "\n"))
	for _, m := range []map[string]int{s.answers, s.jumps} {
		for _, key := range slices.Sorted(maps.Keys(m)) {
			t.Logf("%6d %s", m[key], key)
		}
	}
}

func (s *borderScan) try(t *testing.T, j Job) {
	t.Helper()
	c, err := Solve(j)
	if err != nil {
		s.answers["refused: "+kind(err.Error())]++
		return
	}
	switch v := c.Verdict(); v {
	case "good", "marginal", "cold", "hot", "burn-through", "outside":
		s.judged++
		s.answers[v]++
	case "stop":
		s.answers[v]++
		if !c.Stopped() {
			t.Errorf("%+v: a stop without one", j)
		}
	case "not-modelled":
		text := ""
		for _, w := range c.Warnings {
			if w.Code == "not-modelled" {
				text = w.Text
			}
		}
		s.answers["not judged: "+kind(text)]++
		if text == "" || !strings.Contains(text, "test bead") && !strings.Contains(text, "try") {
			t.Errorf("%+v: not judged, and %q", j, text)
		}
	default:
		t.Errorf("%+v: verdict %q", j, v)
	}
	s.evenly(j, &c)
	if !ordered(t, j, &c) {
		s.reversed++
	}
}

// kind is a sentence without its sizes.
func kind(text string) string { return numbers.ReplaceAllString(text, "#") }

var numbers = regexp.MustCompile(`-?[0-9]+([.,][0-9]+)?`)

// evenly moves one input by a per cent at a time, and counts how many moves jump.
func (s *borderScan) evenly(j Job, c *Card) {
	for name, move := range map[string]func(*Job){
		"thickness": func(j *Job) { j.Thickness.V *= 1.01 }, "travel": func(j *Job) { j.Travel.V *= 1.01 },
		"feed": func(j *Job) { j.Feed.V *= 1.01 }, "gap": func(j *Job) { j.Gap.V *= 1.01 },
	} {
		near := j
		if move(&near); near == j || near.Thickness.V > 25 || (near.Thickness.V > 3) != (j.Thickness.V > 3) {
			continue
		}
		d, err := Solve(near)
		if err != nil {
			continue
		}
		s.moves++
		if what := jumps(c, &d); what != "" {
			figure, _, _ := strings.Cut(what, " ")
			s.jumps["jumps of "+figure+" with "+name]++
			s.jumped = append(s.jumped, fmt.Sprintf("%s %.3g mm on %s %.3g mm, %s: with one per cent more %s %s",
				j.Metal,
				j.Thickness.V, j.Metal2, j.Thickness2.V, j.Joint, name, what))
		}
	}
}

// ordered checks what must not be reversed, and reports whether nothing was.
func ordered(t *testing.T, j Job, c *Card) bool {
	t.Helper()
	if j.Gap.V > 0 {
		wide := j
		wide.Gap.V *= 1.2
		if before, after := bridging(t, j), bridging(t, wide); after > before+1e-9 {
			t.Errorf("%+v: a gap a fifth wider is bridged by %.3f instead of %.3f", j, after, before)
			return false
		}
	}
	flat, over := j, j
	flat.Position, over.Position = "horizontal", "overhead"
	a, err1 := Solve(flat)
	b, err2 := Solve(over)
	if err1 != nil || err2 != nil {
		return true
	}
	f, ok1 := a.Figure("largest_bead")
	g, ok2 := b.Figure("largest_bead")
	if ok1 && ok2 && j.Joint == "butt" && g.Value > f.Value*1.001 && f.Value > 0 {
		t.Errorf("%+v: overhead holds %.3g mm², horizontal %.3g", j, g.Value, f.Value)
		return false
	}
	return true
}

// bridging is the margin by which a job's gap is bridged; NaN where none is judged.
func bridging(t *testing.T, j Job) float64 {
	t.Helper()
	card, err := Solve(j)
	if err != nil || card.Zone == "not-modelled" {
		return math.NaN()
	}
	laid := Laid(&card)
	p, err := ProbeOf(t.Context(), &laid)
	if err != nil {
		return math.NaN()
	}
	l, ok := p.Limits(0)
	if !ok || l.Unjudged(limit.Bridges) != "" {
		return math.NaN()
	}
	return l[limit.Bridges]
}

// A member that gets barely too cold for its toe does not make a gap easier to bridge: thin sheet stands or lies on
// thick iron, over gaps that leave it less and less heat.
func TestWiderGapsOverBarelyWettedParts(t *testing.T) {
	for _, c := range deep.Of(t, []Job{
		{Metal: "dp600", Thickness: Some(0.519), Metal2: "grey-iron", Thickness2: Some(24.1), Joint: "tee",
			Mode:     "pulsed",
			Position: "vertical-down", Wire: Some(0.889), Feed: Some(5.229), Travel: Some(14.04)},
		{Metal: "mild-steel", Thickness: Some(0.8), Metal2: "mild-steel", Thickness2: Some(8), Joint: "tee",
			Feed: Some(5), Wire: Some(0.889), Travel: Some(6)}, // at some gaps only
		{Metal: "mild-steel", Thickness: Some(1), Metal2: "ductile-iron", Thickness2: Some(12), Joint: "lap",
			Feed: Some(5),
			Wire: Some(1), Travel: Some(8)},
		{Metal: "stainless-304", Thickness: Some(1.5), Metal2: "copper", Thickness2: Some(3), Joint: "lap",
			Feed: Some(7),
			Wire: Some(1), Travel: Some(4)},
	}, 1) {
		last, pace := math.Inf(1), 1.2
		if !deep.Run() {
			pace = 1.4
		}
		for gap := 0.1 + 0.02*float64(deep.Seed()%3); gap < 2; gap *= pace {
			c.Gap = Some(gap)
			b := bridging(t, c)
			if b > last+1e-9 {
				t.Errorf("%s %g mm on %s: a gap of %.3g mm is bridged by %.3f, after %.3f", c.Metal, c.Thickness.V,
					c.Metal2, gap, b, last)
			}
			if !math.IsNaN(b) {
				last = b
			}
		}
		if math.IsInf(last, 1) {
			t.Errorf("%+v: no gap is judged", c)
		}
	}
}
