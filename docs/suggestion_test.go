package docs

import (
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/plot/plotter"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/picture"
)

// suggested are the joints whose suggestions docs/suggestion.csv lists against the thickness, bare mild steel of 0.6 to
// 3 mm in dip with the usual wire of 1 mm. "on" is the thickness of the other member, 0 if both are alike.
var suggested = []struct {
	name, joint string
	on          float64
}{{"lap", "lap", 0}, {"butt", "butt", 0}, {"lap on 1 mm", "lap", 1}, {"butt to 1 mm", "butt", 1}}

const (
	suggestedFile = "suggestion.csv"
	suggestedHead = "joint,thickness_mm,wire_feed_m_min,travel_mm_s,net_heat_j_mm,chance_percent,verdict\n"
	thinnest      = 0.6
	thickest      = 3.0
	thicker       = 0.04
)

// suggestedRow is the line of the file for one joint and thickness.
func suggestedRow(t *testing.T, of, step int) string {
	t.Helper()
	s := suggested[of]
	thick := calc.Some(math.Round(100*(thinnest+thicker*float64(step))) / 100)
	j := calc.Job{Metal: "mild-steel", Joint: s.joint, Thickness: thick, Wire: calc.Some(1)}
	if s.on > 0 { // the sheet that varies is the lower one of the lap
		j.Thickness, j.Metal2, j.Thickness2 = calc.Some(s.on), j.Metal, thick
	}
	c, err := calc.Solve(j)
	if err != nil {
		t.Fatal(err)
	}
	heat, _ := c.Figure("net_heat")
	return fmt.Sprintf("%s,%.2f,%.3f,%.3f,%.2f,%.1f,%s\n", s.name, thick.V, c.Used.Feed.V, c.Used.Travel.V, heat.Value,
		c.Chance.Good, c.Verdict())
}

// The list of suggestions agrees with the program: some of its lines are checked by default, all with BRAZEBOOTH_DEEP.
// Its pictures are drawn from it. After an intended change: go test ./docs -run Suggestions -update.
func TestSuggestionsAreTheProgram(t *testing.T) {
	steps := int(math.Round((thickest - thinnest) / thicker))
	if *update {
		var all strings.Builder
		all.WriteString(suggestedHead)
		for of := range suggested {
			for step := range steps + 1 {
				all.WriteString(suggestedRow(t, of, step))
			}
		}
		compare(t, suggestedFile, all.String())
	}
	list := read(t, suggestedFile)
	lines := strings.SplitAfter(strings.TrimPrefix(list, suggestedHead), "\n")
	if len(lines) != len(suggested)*(steps+1)+1 {
		t.Fatalf("%s has %d lines", suggestedFile, len(lines))
	}
	r := deep.Rand(t)
	for i := range len(lines) - 1 {
		if *update || !deep.Run() && r.IntN(len(lines)) >= 3 {
			continue
		}
		if want := suggestedRow(t, i/(steps+1), i%(steps+1)); lines[i] != want {
			t.Errorf("%s says %q, the program %q", suggestedFile, lines[i], want)
		}
	}
	for _, p := range []struct {
		file, name     string
		column         int
		low, high, per float64
	}{
		{"suggestion-feed.svg", "wire feed, m/min", 2, 0, 10, 2}, {"suggestion-travel.svg", "travel, mm/s", 3, 0, 15,
			5},
		{"suggestion-heat.svg", "net heat, J/mm", 4, 0, 350, 50}, {"suggestion-chance.svg", "chance, %", 5, 0, 100, 20},
	} {
		q := picture.New("thickness, mm", p.name)
		picture.Steps(&q.X, 0.5, thickest, 0.5)
		picture.Steps(&q.Y, p.low, p.high, p.per)
		drawSuggested(t, q, list, p.column)
		b, err := q.SVG()
		if err != nil {
			t.Fatal(err)
		}
		compare(t, p.file, string(b))
	}
}

// drawSuggested draws one column of the list, with a line for each joint.
func drawSuggested(t *testing.T, q *picture.Picture, list string, column int) {
	t.Helper()
	rows, err := csv.NewReader(strings.NewReader(list)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for n, s := range suggested {
		line := plotter.Line{LineStyle: picture.Stroke(n, 3)}
		for _, row := range rows[1:] {
			x, err1 := strconv.ParseFloat(row[1], 64)
			y, err2 := strconv.ParseFloat(row[column], 64)
			if row[0] != s.name {
				continue
			}
			if err1 != nil || err2 != nil || y < q.Y.Min || y > q.Y.Max {
				t.Fatalf("%v does not fit the picture", row)
			}
			line.XYs = append(line.XYs, plotter.XY{X: x, Y: y})
		}
		q.Add(&line)
		q.Keys = append(q.Keys, picture.Key{Text: s.name, Line: line.LineStyle})
	}
}
