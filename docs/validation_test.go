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

// outside is what docs/validation.json holds, which `go test ./calc_test -update` writes.
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

// proves says of each quantity what its rows show and what they do not.
var proves = map[string]string{
	"current from wire feed, copper-base wires": "Spray runs at more current than is computed at the same feed. " +
		"The balance's constant is that of short arcs; hotter drops in spray would explain it, which nothing here shows. " +
		"No row is of a short or a pulsed arc.",
	"current from wire feed, steel wire": "The balance of heat in the wire holds over size and feed for steel. A rule " +
		"of thumb has no scatter of its own; it says nothing of bronze.",
	"strength of a fillet, throat": "Three tests tell the size and hardly the scatter. They are of CuAl7 on plate; " +
		"nothing says that another wire or thin sheet follows.",
	"strength of a fillet, bond": "Five tests of one laboratory lie in each other's band. It holds no other wire, " +
		"sheet or coat.",
	"tensile strength of a deposit": "The value is the guide minimum of a standard, not a typical deposit: it is low " +
		"on purpose, and its band is that of the number's rounding.",
	"melting range of a wire": "Sources differ by more than their digits, since alloys of one name differ. It says " +
		"nothing of what a fast cooling does.",
	"pull of a seam": "Two published factors for welds in steel lie in the band. None is of arc brazing.",
	"zinc oxide into the air": "The computed amount is far above what is published: all the zinc of both bands and all " +
		"faces is counted as leaving into the air. It errs to the side of more air; it is no estimate of exposure.",
}

// untested is what nothing outside has ever tested, and what a shop could measure to test it.
var untested = [][2]string{
	{"bead width, leg and throat", "cut a bead across, measure the width and both legs with a caliper, and write the " +
		"setting, the wire feed in 10 s and the travel beside it"},
	{"wetting angle", "photograph the polished cut and measure the angle at both toes"},
	{"half-width of the burnt or melted zinc, mm", "wipe the soot off and measure from the toe to where the coat is " +
		"whole, on both faces"},
	{"peak temperature at the toe and on the back", "a thermocouple of 0.25 mm, spot welded 3 mm beside the seam"},
	{"whether a gap is bridged, and how far a root sags", "lay beads over gaps of 0.5, 1, 1.5 and 2 mm and cut them"},
	{"the rhythm of a timed arc", "film it with a second hand in view, count on and off, and note where it fell through"},
	{"bead in a position, and what drips", "lay the same bead flat, vertical and overhead and weigh what fell"},
	{"distortion of brazed sheet", "measure the bow of a strip of 300 mm before and after"},
	{"arc efficiency of this process", "a bead into a plate that is dropped into a bucket of water of known weight"},
	{"chance that a setting is good", "keep every trial with its verdict (`book trial`): in ten at 80 %, eight are good"},
}

// docs/validation.md is made of what the checks found.
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
	b.WriteString("## What was seen and not measured\n\n| what | seen | the program | source |\n|---|---|---|---|\n")
	for _, p := range v.Places {
		agrees := map[bool]string{true: "", false: "**otherwise:** "}[p.Seen == p.Says]
		fmt.Fprintf(&b, "| %s | breaks in the %s | %s%s | %s (%s) |\n", p.What, p.Seen, agrees, p.Says, p.Source, p.Known)
	}
	v.checks(&b)
	compare(t, "validation.md", b.String())
}

const validationHead = `# What was computed beside what was measured

Made by tests: ` + "`go test ./calc_test -update`" + ` writes [validation.json](validation.json), then
` + "`go test ./docs -run Validation -update`" + ` this page. How a source is known: *read*; *memory*, where the document
is not at hand, with how sure; *practice*, a rule of the trade without a document.

## What nothing outside has ever tested

No document has these for arc brazing of sheet with its setting beside it. What is shown of them is computed, with a
band that rests on the inputs' own. A shop can measure them. What its own book holds (` + "`book reading`" + `,
` + "`book trial`" + ` with ` + "`--measured-width`, `--measured-leg`, `--measured-throat`, `--measured-zinc`" + `) makes
the same comparison for its own booth: ` + "`brazebooth book validation`" + `.

`

const validationMeasured = `
## By quantity

The ratio is computed over outside. Coverage is how many outside values lie in the computed 95 % band, with the
binomial 95 % interval of that share (Clopper and Pearson): few rows prove little.

![Computed over outside, with bands](validation.svg)

| | quantity | rows | mean ratio | scatter | in the band | what it proves and what not |
|---|---|---|---|---|---|---|
`

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
	return fmt.Sprintf("| %d | %s | %d | %.2f | × %.2f | %d of %d: %.0f–%.0f %% | %s |\n", n, g.name, len(logs), math.Exp(mean),
		math.Exp(spread), in, len(logs), 100*low, 100*high, proves[g.name])
}

func (g *group) table(b *strings.Builder, n int) {
	fmt.Fprintf(b, "### %d. %s\n\n| what | outside | computed | band | ratio | | source |\n|---|---|---|---|---|---|---|\n", n, g.name)
	for i := range g.rows {
		r := &g.rows[i]
		span := fmt.Sprintf("%.4g", r.Outside)
		if r.High > r.Low {
			span = fmt.Sprintf("%.4g–%.4g", r.Low, r.High)
		}
		fmt.Fprintf(b, "| %s | %s %s | %.4g | %.4g–%.4g | %.2f | %s | %s (%s) |\n", r.What, span, r.Unit, r.Computed, r.From,
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

// checks are the formulas, rows and rules that were held to a source, by test.
func (v *outside) checks(b *strings.Builder) {
	fmt.Fprintf(b, "\n## Formulas, rows and rules\n\nThe %d checks of `calc_test/`. They hold that formulas are those of their "+
		"sources and that tables say what was printed; they do not hold that a bead follows. Each value lies in the "+
		"printed digits beside it, or the tests fail.\n", len(v.Checks))
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
