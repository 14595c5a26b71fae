package report

import (
	"bytes"
	"context"
	"encoding/csv"
	"strconv"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/quantity"
)

var knownTimed deep.Known[calc.Job, calc.Timed]

func timedOf(t *testing.T, j calc.Job) calc.Timed {
	t.Helper()
	s, err := knownTimed.Of(j, func() (calc.Timed, error) { return calc.SolveTimed(context.Background(), j, nil) })
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// timedJobs are jobs with and without a rhythm. The full list also has a closed joint and a metal that must be warm
// throughout.
func timedJobs() []calc.Job {
	list := []calc.Job{{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: calc.Some(2)},
		{Metal: "mild-steel", Gauge: 16, Joint: "butt", Gap: calc.Some(5)}}
	if deep.Run() {
		list = append(list, calc.Job{Metal: "galvanized", Gauge: 20},
			calc.Job{Metal: "copper", Thickness: calc.Some(1), Joint: "butt", Gap: calc.Some(1)})
	}
	return list
}

func TestTimedJSONKeepsItsSchema(t *testing.T) {
	schema := loadSchema(t, "gap-schema.json")
	for _, j := range timedJobs() {
		s := timedOf(t, j)
		b, err := JSON(Timed(&s), "test")
		if err != nil {
			t.Fatal(err)
		}
		for _, fault := range faults(t, schema, b) {
			t.Errorf("%s: %s", j.Metal, fault)
		}
	}
}

func TestTimedTextStaysIn80Columns(t *testing.T) {
	deep.Turn(t)
	for _, units := range []quantity.System{quantity.Metric, quantity.Inch, quantity.Both} {
		for _, j := range timedJobs() {
			s := timedOf(t, j)
			text := Text(Timed(&s), Options{Units: units, Why: true})
			fits(t, string(units)+" "+j.Metal, text)
			if s.Good != strings.Contains(text, "arc on ") {
				t.Errorf("%s: good %v, and its text\n%s", j.Metal, s.Good, text)
			}
		}
	}
}

// The trace as a table: time rises, the arc is 0 or 1, and the back of the edge is never hotter than the average of the
// edge.
func TestTraceCSV(t *testing.T) {
	s := timedOf(t, timedJobs()[0])
	b, err := TraceCSV(&s)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(b)).ReadAll()
	if err != nil || len(rows) != len(s.Trace)+1 {
		t.Fatalf("%d rows for %d points, %v", len(rows), len(s.Trace), err)
	}
	last := -1.0
	for _, r := range rows[1:] {
		var v [5]float64
		for i := range r {
			if v[i], err = strconv.ParseFloat(r[i], 64); err != nil {
				t.Fatal(err)
			}
		}
		if v[0] < last || v[1] != 0 && v[1] != 1 || v[4] > v[2]+0.1 {
			t.Fatalf("row %v after %g s", r, last)
		}
		last = v[0]
	}
}

// The picture of the heat is complete, and its lines and limits are named in it, with either decimal mark.
func TestHeatPicture(t *testing.T) {
	for n, j := range timedJobs() {
		s := timedOf(t, j)
		h := Heat{Timed: &s, Comma: n == 0}
		says := []string{"arc burns", "time, s"}
		if len(s.Trace) > 1 {
			says = append(says, "root edge", "back face", "liquidus", "base melts")
		}
		whole(t, j.Metal, h.PNG, h.SVG, says...)
		if b, err := h.SVG(); err != nil || strings.Contains(string(b), ",3 s, off 0.") {
			t.Errorf("%s: %v: two decimal marks", j.Metal, err)
		}
	}
}

// The plot has its lines where its labels say, and the bar below it is as long as the arc burned.
func TestTracePlot(t *testing.T) {
	s := timedOf(t, timedJobs()[0])
	for _, size := range [][2]int{{80, 12}, {60, 8}, {40, 6}} {
		lines := tracePlot(&s, size[0], size[1], quantity.Metric)
		if len(lines) != size[1] {
			t.Fatalf("%d lines of %d", len(lines), size[1])
		}
		text := strings.Join(lines, "\n")
		for _, word := range []string{"base melts 1470", "liquidus   1025", "e"} {
			if !strings.Contains(text, word) {
				t.Errorf("%v: no %q in\n%s", size, word, text)
			}
		}
		on, _ := s.Card.Figure("arc_on")
		off, _ := s.Card.Figure("arc_off")
		bar := lines[len(lines)-1][plotLeft:]
		share := float64(strings.Count(bar, "#")) / float64(len(bar))
		if want := on.Value / (on.Value + off.Value); share < want-0.1 || share > want+0.1 {
			t.Errorf("the arc burns %.2f of the bar, %.2f of the beat", share, want)
		}
	}
	if text := strings.Join(tracePlot(&s, 80, 12, quantity.Inch), "\n"); !strings.Contains(text, "base melts 2678") ||
		!strings.Contains(text, "liquidus   1877") { // 1470 and 1025 °C
		t.Errorf("in inch units:\n%s", text)
	}
	if tracePlot(&s, 20, 12, quantity.Metric) != nil || tracePlot(&calc.Timed{}, 80, 12, quantity.Metric) != nil {
		t.Error("a plot without room or trace")
	}
}

func TestBeatBar(t *testing.T) {
	s := timedOf(t, timedJobs()[0])
	for _, w := range []int{2, 10, 60} {
		if on, all := beatBar(&s, w); all != w || on < 1 || on >= all {
			t.Errorf("%d wide: %d of %d", w, on, all)
		}
	}
	if _, all := beatBar(&calc.Timed{}, 10); all != 0 {
		t.Error("a bar of no beat")
	}
}
