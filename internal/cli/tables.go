package cli

import (
	"reflect"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/internal/near"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// table is one of the lists of the package tables.
type table struct {
	name, line string
	rows       any // a slice
}

func allTables() []table {
	return []table{
		{"fillers", "brazing wires: limits, melting range, heat, strength", tables.Fillers},
		{"metals", "base metals: heat flow, melting, strength, gauge system", tables.Metals},
		{"gauges", "sheet gauges 7 to 30 in four systems, inches", tables.Gauges},
		{"wires", "wire diameters with tolerance, usual spools", tables.Wires},
		{"coatings", "sheet coatings, mass on each side", tables.Coatings},
		{"gases", "shielding gases", tables.Gases},
		{"limits", "exposure limits in air", tables.ExposureLimits},
		{"shades", "filter shade by current", tables.Shades},
		{"practice", "the trade's advice", tables.PracticeLines},
		{"cautions", "cautions at length", tables.CautionLines},
		{"hazards", "what stops a job", tables.Hazards},
		{"remedies", "what a bead shows and what to change", tables.Remedies},
		{"sights", "what a test bead may show, drawn", tables.Sights},
		{"causes", "causes of what a bead shows", tables.Causes},
		{"evidence", "how often each cause shows as what", tables.EvidenceRows},
		{"filler-rules", "what speaks for a filler and against it", tables.FillerRules},
		{"pair-rules", "what a joint of two metals asks for", tables.PairRules},
		{"constants", "single figures, such as physical constants", tables.Constants},
	}
}

func (d *Deps) tablesCommand() *cobra.Command {
	cmd := withJSON(&cobra.Command{
		Use:     "tables [NAME]",
		Short:   "Every figure that the answers are computed from, with band and source",
		Example: "  brazebooth tables\n  brazebooth tables fillers",
		Args:    words(0, 1, "more than one table", "one name"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return d.listTables(asJSON(cmd))
			}
			return d.table(args[0], asJSON(cmd))
		},
	})
	cmd.Flags().String("units", "", unitsUsage+", for sentences; a figure stays as in its source")
	return cmd
}

func tableNames() []string {
	return column(allTables(), func(t *table) string { return t.name })
}

func (d *Deps) listTables(asJSON bool) error {
	if asJSON {
		return d.document(1, map[string]any{"tables": tableNames()})
	}
	for _, t := range allTables() {
		d.say("%-12s %s\n", t.name, t.line)
	}
	return nil
}

func (d *Deps) table(name string, asJSON bool) error {
	for _, t := range allTables() {
		if t.name != strings.ToLower(name) {
			continue
		}
		rows := reflect.ValueOf(t.rows)
		if asJSON {
			return d.document(1, map[string]any{"table": t.name, "rows": jsonValue(rows)})
		}
		var b strings.Builder
		for i := range rows.Len() {
			writeRow(&b, rows.Index(i))
		}
		for line := range strings.Lines(b.String()) {
			figures, source, cited := strings.Cut(line, "; ") // "section 4.5" in a source keeps its point
			if cited {
				source = "; " + source
			}
			if strings.HasPrefix(line, "  text ") { // only sentences are converted: a figure stays as in its source
				figures = quantity.Sentence(figures, d.units)
			}
			d.say("%s%s", quantity.Marked(figures, d.comma), source)
		}
		return nil
	}
	like := near.Names(name, tableNames())
	if len(like) == 0 {
		like = tableNames()
	}
	return wrong("there is no table "+quote(name), "type "+near.Or(like))
}
