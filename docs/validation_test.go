package docs

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"

	"brazebooth/calc/formula"
	"brazebooth/internal/picture"
)

// outside is the content of docs/validation.json, which `go test ./calc_test -update` writes.
type outside struct {
	Measured []outsideRow `json:"measured"`
	Places   []struct {
		What, Source, Known, Seen, Says string
	}
	Sources []struct{ Test, Text, Known string }
	Checks  []struct {
		Test, What          string
		Computed, Low, High float64
	}
}

type outsideRow struct {
	Quantity, What, Inputs, Source, Known, Unit string
	Outside, Computed                           float64
	Low                                         float64 `json:"outside_low"`
	High                                        float64 `json:"outside_high"`
	From                                        float64 `json:"computed_low"`
	To                                          float64 `json:"computed_high"`
	Inside                                      bool
}

func (r *outsideRow) ratio() float64 { return r.Computed / r.Outside }

// group is the rows of one quantity.
type group struct {
	name string
	rows []outsideRow
}

// docs/validation.md is generated from the results of the checks.
func TestValidationIsWhatTheChecksFound(t *testing.T) {
	var v outside
	if err := json.Unmarshal([]byte(read(t, "validation.json")), &v); err != nil {
		t.Fatal(err)
	}
	var groups []group
	for _, r := range v.Measured {
		if n := len(groups); n == 0 || groups[n-1].name != r.Quantity {
			groups = append(groups, group{name: r.Quantity})
		}
		last := &groups[len(groups)-1]
		last.rows = append(last.rows, r)
	}
	drawn, err := ratios(groups).SVG()
	if err != nil {
		t.Fatal(err)
	}
	compare(t, "validation.svg", string(drawn))
	var b strings.Builder
	b.WriteString(validationHead)
	for _, u := range untested {
		fmt.Fprintf(&b, "- **%s**: %s\n", u[0], u[1])
	}
	b.WriteString(validationNotAtHand)
	for _, u := range notAtHand {
		fmt.Fprintf(&b, "- **%s**: %s\n", u[0], u[1])
	}
	b.WriteString(validationMeasured)
	for n, g := range groups {
		if proves[g.name] == "" {
			t.Errorf("nothing says what %q proves", g.name)
		}
		b.WriteString(g.line(n + 1))
	}
	b.WriteString("\n")
	for n, g := range groups {
		g.table(&b, n+1)
	}
	b.WriteString("## Seen, but not measured\n\n| what | seen | the program | source |\n|---|---|---|---|\n")
	for _, p := range v.Places {
		agrees := map[bool]string{true: "", false: "**otherwise:** "}[p.Seen == p.Says]
		fmt.Fprintf(&b, "| %s | breaks in the %s | %s%s | %s (%s) |\n", p.What, p.Seen, agrees, p.Says, p.Source,
			p.Known)
	}
	v.checks(&b)
	compare(t, "validation.md", b.String())
}

// line is a group's row of the table of quantities.
func (g *group) line(n int) string {
	var logs []float64
	in := 0
	for i := range g.rows {
		logs = append(logs, math.Log(g.rows[i].ratio()))
		if g.rows[i].Inside {
			in++
		}
	}
	mean, spread := stat.MeanStdDev(logs, nil)
	low, high := formula.ShareBounds(in, len(logs))
	return fmt.Sprintf("| %d | %s | %d | %.2f | × %.2f | %d of %d: %.0f–%.0f %% | %s |\n", n, g.name, len(logs),
		math.Exp(mean),
		math.Exp(spread), in, len(logs), 100*low, 100*high, proves[g.name])
}

func (g *group) table(b *strings.Builder, n int) {
	fmt.Fprintf(b, "### %d. %s\n\n| what | outside | computed | band | ratio | | source "+
		"|\n|---|---|---|---|---|---|---|\n", n, g.name)
	for i := range g.rows {
		r := &g.rows[i]
		span := fmt.Sprintf("%.4g", r.Outside)
		if r.High > r.Low {
			span = fmt.Sprintf("%.4g–%.4g", r.Low, r.High)
		}
		fmt.Fprintf(b, "| %s | %s %s | %.4g | %.4g–%.4g | %.2f | %s | %s (%s) |\n", r.What, span, r.Unit, r.Computed,
			r.From,
			r.To, r.ratio(), map[bool]string{true: "in", false: "**out**"}[r.Inside], r.Source, r.Known)
	}
	var inputs []string
	for i := range g.rows {
		if !slices.Contains(inputs, g.rows[i].Inputs) {
			inputs = append(inputs, g.rows[i].Inputs)
		}
	}
	fmt.Fprintf(b, "\nInputs: %s.\n\n", strings.Join(inputs, "; "))
}

// checks writes the formulas, rows and rules that were checked against a source, by test.
func (v *outside) checks(b *strings.Builder) {
	fmt.Fprintf(b, "\n## Formulas, rows and rules\n\nThe %d checks of `calc_test/` make sure that formulas are "+
		"those of their sources and that tables have the printed values; they do not show that a real bead follows "+
		"them. The tests fail if a value is outside the printed digits after it.\n", len(v.Checks))
	for _, s := range v.Sources {
		fmt.Fprintf(b, "\n**%s.** %s\n\n", s.Test, s.Text)
		var list []string
		for _, c := range v.Checks {
			if c.Test != s.Test {
				continue
			}
			bounds := fmt.Sprintf("%.5g–%.5g", c.Low, c.High)
			if c.Low == c.High {
				bounds = fmt.Sprintf("%.5g", c.Low)
			}
			list = append(list, fmt.Sprintf("%s %.5g (%s)", strings.ReplaceAll(c.What, "|", "\\|"), c.Computed, bounds))
		}
		b.WriteString(strings.Join(list, "; ") + "\n")
	}
}

// ratios draws every row's ratio with its band, quantity by quantity.
func ratios(groups []group) *picture.Picture {
	p := picture.New("quantity, as numbered in the table", "computed over outside")
	p.Head = []picture.Line{{Text: "Computed over outside: bars are the computed 95 % bands, the line is agreement",
		Size: picture.Near}}
	low, high, x := 1.0, 1.0, 0.0
	var ticks []plot.Tick
	for n, g := range groups {
		from := x
		for i := range g.rows {
			r := &g.rows[i]
			down, up := r.From/r.Outside, r.To/r.Outside
			low, high = min(low, down), max(high, up)
			p.Add(&plotter.Line{XYs: plotter.XYs{{X: x, Y: down}, {X: x, Y: up}}, LineStyle: picture.Stroke(0, 2)})
			s := plotter.Scatter{XYs: plotter.XYs{{X: x, Y: r.ratio()}}}
			s.Shape, s.Radius, s.Color = picture.Diamond{}, 4, picture.Ink
			p.Add(&s)
			x++
		}
		ticks = append(ticks, plot.Tick{Value: (from + x - 1) / 2, Label: fmt.Sprint(n + 1)})
		x++
	}
	p.Add(&plotter.Line{XYs: plotter.XYs{{X: -1, Y: 1}, {X: x, Y: 1}}, LineStyle: picture.Stroke(1, 1.5)})
	picture.Ratios(&p.Y, low*0.9, high*1.1)
	p.X.Min, p.X.Max, p.X.Tick.Marker = -1, x, plot.ConstantTicks(ticks)
	return p
}
