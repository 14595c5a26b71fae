package report

import (
	"context"
	"encoding/json"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/practice"
	"brazebooth/internal/deep"
	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
)

var knownPractice deep.Known[int, Practice]

// practiceOf is a job of a level with two beads, over or open.
func practiceOf(t *testing.T, level int, over bool) *Practice {
	t.Helper()
	p, err := knownPractice.Of(level, func() (Practice, error) { return practised(level) })
	if err != nil {
		t.Fatal(err)
	}
	if !over {
		p.Run, p.Revealed = nil, nil
	}
	return &p
}

// practiceLevels are the levels in tests of forms: the first and the third, which other tests use too, or all.
func practiceLevels() []int {
	if deep.Run() {
		return []int{1, 2, 3, 4, 5}
	}
	return []int{1, 3}
}

func practised(level int) (p Practice, err error) {
	ctx := context.Background()
	job, err := practice.New(ctx, level, 2)
	if err != nil {
		return p, err
	}
	card, err := calc.Solve(job.Start)
	if err != nil {
		return p, err
	}
	p = Practice{Job: &job, Card: &card}
	for _, j := range []calc.Job{job.Start, job.Best} {
		b, err := job.Bead(ctx, j)
		if err != nil {
			return p, err
		}
		p.Beads = append(p.Beads, b)
	}
	run, err := job.Par(ctx)
	if err != nil {
		return p, err
	}
	r, err := job.Reveal(ctx, job.Best)
	p.Run, p.Revealed = &run, &r
	return p, err
}

func TestPracticeJSONKeepsItsSchema(t *testing.T) {
	if testing.Short() {
		t.Skip("compared without -short: nothing here runs side by side")
	}
	schema := loadSchema(t, "practice-schema.json")
	for _, level := range practiceLevels() {
		for _, over := range []bool{false, true} {
			b, err := JSON(practiceOf(t, level, over).Blocks(), "test")
			if err != nil {
				t.Fatal(err)
			}
			for _, fault := range faults(t, schema, b) {
				t.Errorf("level %d, over %v: %s", level, over, fault)
			}
		}
	}
	for _, bad := range []string{`{}`, `{"schema":1,"beads":[{"verdict":"fine"}]}`} {
		if len(faults(t, schema, []byte(bad))) == 0 {
			t.Errorf("%s passes", bad)
		}
	}
}

// An open job reveals nothing: neither the hidden values nor the edges that a bead misses.
func TestPracticeKeepsItsSecret(t *testing.T) {
	open := practiceOf(t, 3, false)
	text := Text(open.Blocks(), Options{Units: quantity.Metric})
	b, err := JSON(open.Blocks(), "test")
	if err != nil {
		t.Fatal(err)
	}
	for _, word := range []string{"hid", "not met", "solution", "unmet", "missed by", "calibration", "arc_efficiency"} {
		if strings.Contains(text, word) || strings.Contains(string(b), word) {
			t.Errorf("an open job says %q:\n%s\n%s", word, text, b)
		}
	}
	over := Text(practiceOf(t, 3, true).Blocks(), Options{Units: quantity.Metric})
	for _, word := range []string{"What this booth hid", "calibration voltage", "not met: ", "The program's own",
		"CAUTION"} {
		if !strings.Contains(over, word) {
			t.Errorf("no %q in\n%s", word, over)
		}
	}
}

// The text fits a page, and the numbers of the JSON are those of the beads.
func TestPracticeText(t *testing.T) {
	if testing.Short() {
		t.Skip("compared without -short: nothing here runs side by side")
	}
	for _, level := range practiceLevels() {
		p := practiceOf(t, level, true)
		for _, sys := range []quantity.System{quantity.Metric, quantity.Inch, quantity.Both} {
			for _, l := range strings.Split(Text(p.Blocks(), Options{Units: sys}), "\n") {
				if plain.Width(l) > width {
					t.Errorf("level %d: %d wide: %s", level, plain.Width(l), l)
				}
			}
		}
		b, err := JSON(p.Blocks(), "test")
		if err != nil {
			t.Fatal(err)
		}
		var d practiceDocument
		if err := json.Unmarshal(b, &d); err != nil || len(d.Beads) != 2 || d.Beads[1].Verdict != "good" ||
			d.Beads[1].Setting.Feed != p.Job.Best.Feed || d.Solution.Best.Feed != p.Job.Best.Feed {
			t.Errorf("level %d: %+v, %v", level, d, err)
		}
	}
}

// A bead without a cross-section is drawn as a sketch of what it shows.
func TestBeadDrawing(t *testing.T) {
	p := practiceOf(t, 2, false)
	if lines, scale := BeadDrawing(&p.Beads[1], 60, 12); len(lines) == 0 || !(scale > 0) ||
		!strings.Contains(strings.Join(lines, ""), "o") {
		t.Errorf("a good bead: %q at %g", lines, scale)
	}
	if lines, scale := BeadDrawing(&practice.Bead{Seen: "burn-through"}, 60, 12); scale != 0 ||
		!strings.Contains(strings.Join(lines, "\n"), `\o/`) {
		t.Errorf("a hole: %q", lines)
	}
}
