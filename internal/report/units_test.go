package report

import (
	"fmt"
	"regexp"
	"slices"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/correct"
	"brazebooth/internal/deep"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// unitJobs make the pages mention quantities that an ordinary job does not have: openings, preheat, warmed zinc,
// passes, plugs, loads, a small part, gas, a carriage.
var unitJobs = []calc.Job{
	{Metal: "galvanized", Gauge: 18, Joint: "lap", Preheat: calc.Some(150), Gap: calc.Some(1), Flow: calc.Some(30)},
	{Metal: "mild-steel", Thickness: calc.Some(2), Joint: "butt", Gap: calc.Some(1.5), Mode: "timed"},
	{Metal: "mild-steel", Thickness: calc.Some(3), Joint: "butt", Gap: calc.Some(2), Backing: "copper-bar"},
	{Metal: "mild-steel", Thickness: calc.Some(8), Joint: "butt", Length: calc.Some(300), Use: "load",
		Load: calc.Some(5)},
	{Metal: "galvannealed", Thickness: calc.Some(0.15), Joint: "corner", Travel: calc.Some(20), Flow: calc.Some(5)},
	{Metal: "mild-steel", Gauge: 16, Joint: "plug", Hole: calc.Some(4), Feed: calc.Some(6), Load: calc.Some(2)},
	{Metal: "copper", Thickness: calc.Some(3), Joint: "plug", Hole: calc.Some(9), Feed: calc.Some(6)},
	{Metal: "grey-iron", Thickness: calc.Some(6), Joint: "lap", Preheat: calc.Some(60), StickOut: calc.Some(25)},
	{Metal: "grey-iron", Thickness: calc.Some(6), Joint: "overlay", Feed: calc.Some(9), Travel: calc.Some(3),
		Layer: calc.Some(6)},
	{Metal: "dp800", Gauge: 18, Joint: "lap", Preheat: calc.Some(300), PartWidth: calc.Some(60), Metal2: "ductile-iron",
		Thickness2: calc.Some(3), Length: calc.Some(300)},
	{Metal: "stainless-316", Gauge: 18, Joint: "tee", Use: "load", Load: calc.Some(10), ServiceTemp: calc.Some(250),
		Wire: calc.Some(0.7), WirePrice: calc.Some(25), GasPrice: calc.Some(8), LabourRate: calc.Some(45)},
	{Metal: "silicon-bronze", Gauge: 18, Joint: "overlay", Preheat: calc.Some(95), Position: "vertical-up",
		ShaftDia: calc.Some(40)},
}

// Metric and inch quantities as they may appear in a sentence, with a blank before the unit.
var (
	metricWords = regexp.MustCompile(`\d (?:mm|m|mm/s|m/min|m/s|°C|C|K|kg|g|g/m|L|L/min|m³|m³/h|mm²|mm³|MPa|kN|N|bar|` +
		`J/mm)(?:[ .,;:)]|$)`)
	inchWords = regexp.MustCompile(`\d (?:in|in/min|ft|ft/min|°F|lb|oz|lbf|ksi|cfh|cfm|ft³|in²|kJ/in)(?:[.,;:)]|$)`)
	// soldAs are names of things that are sold: a wire, a bottle, a spool.
	soldAs = regexp.MustCompile(`\d(?: mm| in)? wire|wire of [\d./]+ (?:mm|in)|[\d.]+ in spools|` +
		`\d+ L \d+ bar bottles \([\d.]+ (?:m|ft)³\)`)
	// saidInBoth are quantities that the trade gives in both systems. They stay in the metric system too.
	saidInBoth = regexp.MustCompile(`\d \S+ \([\d./]+(?: to [\d./]+)? \S+\)`)
	// bare is a number without a unit where a quantity may stand.
	bare = regexp.MustCompile(`(?:about|from|at|under|over|lays|liquid at|place of|hold to) \d+(?:\.\d+)?` +
		`(?:[,;:)]|\.?$|\. | (?:grey|it|or more|lets) )`)
	// counted are numbers that count something.
	counted = regexp.MustCompile(`\d+ (?:in|of) 100|puddle, never under \d+|shade \d+|over \d+ %|` +
		`about \d+ (?:beads?|spots|minutes|pieces)`)
)

// On every page, the sentences have their quantities in the reader's units, and no quantity lost its unit.
func TestSentencesAreInTheReadersUnits(t *testing.T) {
	deep.Turn(t)
	saw := map[quantity.System]int{}
	check := func(blocks []Block, of string) {
		for _, sys := range [...]quantity.System{quantity.Metric, quantity.Inch} {
			other := map[quantity.System]*regexp.Regexp{quantity.Metric: inchWords, quantity.Inch: metricWords}[sys]
			own := map[quantity.System]*regexp.Regexp{quantity.Metric: metricWords, quantity.Inch: inchWords}[sys]
			for _, l := range Words(blocks, Options{Units: sys}) {
				if slices.Contains(asComputed[:], l.Kind) {
					continue
				}
				texts := []string{l.Lead, l.Value, l.Text}
				if l.Row != nil {
					texts = append(texts, l.Row.Long, l.Row.Short)
				}
				for _, text := range texts {
					text = soldAs.ReplaceAllString(text, "")
					if own.MatchString(text) {
						saw[sys]++
					}
					elsewhere := text
					if sys == quantity.Metric {
						elsewhere = saidInBoth.ReplaceAllString(text, "")
					}
					if m := other.FindString(elsewhere); m != "" {
						t.Errorf("%s, %s: %q in %q", of, sys, m, text)
					}
					if m := bare.FindString(counted.ReplaceAllString(text, "")); m != "" {
						t.Errorf("%s: %q has no unit in %q", of, m, text)
					}
				}
			}
		}
	}
	for _, job := range append(slices.Clone(unitJobs), mediaJobs(t)...) {
		for name, blocks := range findings(t, job) {
			check(blocks, fmt.Sprintf("%s %s, %s", job.Metal, job.Joint, name))
		}
	}
	for i, s := range tables.Sights {
		job := calc.Job{Metal: "galvanized", Gauge: 18, Joint: "lap", Feed: calc.Some(5),
			Travel: calc.Some(6 + float64(i%5))}
		if p, err := correct.Next(t.Context(), []correct.Try{{Job: job, Seen: s.ID}}); err == nil {
			check(Page(&p, nil), "correct "+s.ID)
		}
	}
	if saw[quantity.Metric] < 100 || saw[quantity.Inch] < 100 {
		t.Errorf("only %v sentences with quantities", saw)
	}
}
