package calc

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"brazebooth/calc/effort"
	"brazebooth/calc/limit"
	"brazebooth/calc/limit/grid"
	"brazebooth/internal/deep"
)

// inGrid calls use with the limits and the bead, mm2, of each of many settings of a job.
func inGrid(t *testing.T, job Job, use func(l *limit.All, bead float64)) {
	t.Helper()
	var c Card
	if err := resolve(job, &c); err != nil {
		t.Fatal(err)
	}
	b := newBoard(&c)
	b.effort = effort.New(t.Context())
	h := b.heatField(&c)
	low, high := b.steadyFeeds()
	feeds, travels := grid.Axis{Low: low, High: high, N: 20}, grid.Axis{Low: h.slow, High: h.fast, N: 16}
	for i := range feeds.N {
		for k := range travels.N {
			s, err := h.at(feeds.At(float64(i)), travels.At(float64(k)), false)
			if err != nil {
				continue
			}
			l := h.logs(&s)
			use(&l, s.o[oBead])
		}
	}
}

// nearly is how much a point of a grid may miss the edges of the heat: the good zone may lie between two points.
const nearly = 0.03

// widestBridged is the widest opening that any setting of a grid bridges, mm, to 0.05; 0 for none.
func widestBridged(t *testing.T, thick, wire float64, position string) float64 {
	bridged := func(gap float64) (yes bool) {
		inGrid(t, Job{Metal: "mild-steel", Thickness: Some(thick), Joint: "butt", Gap: Some(gap), Wire: Some(wire),
			Position: position}, func(l *limit.All, _ float64) {
			ok := l[limit.Bridges] >= 0
			for i, v := range l {
				ok = ok && (v >= -nearly || limit.Limit(i) == limit.Bridges)
			}
			yes = yes || ok
		})
		return yes
	}
	low, high := 0, 60 // in steps of 0.05 mm
	for high-low > 1 {
		mid := (low + high) / 2
		if bridged(0.05 * float64(mid)) {
			low = mid
		} else {
			high = mid
		}
	}
	return 0.05 * float64(low)
}

// largestThatStays is the largest bead of a grid that meets every edge, mm2; 0 for none.
func largestThatStays(t *testing.T, joint, position string, thick float64) (largest float64) {
	inGrid(t, Job{Metal: "mild-steel", Thickness: Some(thick), Joint: joint, Position: position},
		func(l *limit.All, bead float64) {
			ok := l[limit.Stays] >= 0
			for i, v := range l {
				ok = ok && (v >= -nearly || limit.Limit(i) == limit.Stays)
			}
			if ok {
				largest = max(largest, bead)
			}
		})
	return largest
}

// printedCell is a cell of a table in docs/model.md: its row, and the text that the row must have in that column.
type printedCell struct {
	row    string
	column int
	value  func() string
}

// modelCells are the cells of the tables about open roots and positions.
func modelCells(t *testing.T) (cells []printedCell) {
	for _, thick := range []float64{0.8, 1, 1.5, 2, 3} {
		for k, wire := range []float64{0.762, 0.889, 1.143} {
			cells = append(cells, printedCell{fmt.Sprintf("root in %g mm", thick), 1 + k, func() string {
				return fmt.Sprintf("%.2f", widestBridged(t, thick, wire, "flat"))
			}})
		}
	}
	for _, position := range []string{"flat", "horizontal", "vertical-up", "vertical-down", "overhead"} {
		for k, joint := range []string{"lap", "tee", "butt"} {
			cells = append(cells, printedCell{"bead " + position, 1 + k, func() string {
				return fmt.Sprintf("%.1f", largestThatStays(t, joint, position, 1.5))
			}})
		}
	}
	return cells
}

// docs/model.md prints of roots and positions what the program computes. -v prints the tables' rows.
func TestModelTables(t *testing.T) {
	b, err := os.ReadFile("../docs/model.md")
	if err != nil {
		t.Fatal(err)
	}
	printed := map[string][]string{}
	for line := range strings.SplitSeq(string(b), "\n") {
		if fields := strings.Split(line, "|"); len(fields) > 3 {
			printed[strings.TrimSpace(fields[1])] = fields
		}
	}
	row := ""
	for _, c := range deep.Of(t, modelCells(t), 2) {
		is, fields := c.value(), printed[c.row]
		if testing.Verbose() && deep.Run() {
			if row != c.row {
				row = c.row
				fmt.Printf("\n| %s ", row)
			}
			fmt.Printf("| %s ", is)
		}
		if len(fields) <= c.column+1 || strings.TrimSpace(fields[c.column+1]) != is {
			t.Errorf("%s, column %d: computed %s, printed %q", c.row, c.column, is, fields)
		}
	}
}
