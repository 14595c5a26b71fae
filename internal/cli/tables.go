package cli

import (
	"fmt"
	"reflect"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/internal/near"
	"brazebooth/tables"
)

// table is one of the lists that tables/ holds.
type table struct {
	name, line string
	rows       func() any
}

var allTables = [...]table{
	{"fillers", "brazing wires: limits, melting range, heat, strength", func() any { return tables.Fillers() }},
	{"metals", "base metals: heat flow, melting, strength, gauge system", func() any { return tables.Metals() }},
	{"gauges", "sheet gauges 7 to 30 in four systems, inches", func() any { return tables.Gauges() }},
	{"wires", "wire diameters with tolerance, usual spools", func() any { return tables.Wires() }},
	{"coatings", "sheet coatings, mass on each side", func() any { return tables.Coatings() }},
	{"gases", "shielding gases", func() any { return tables.Gases() }},
	{"limits", "exposure limits in air", func() any { return tables.ExposureLimits() }},
	{"shades", "filter shade by current", func() any { return tables.Shades() }},
	{"practice", "the trade's advice", func() any { return tables.PracticeLines() }},
	{"cautions", "cautions at length", func() any { return tables.CautionLines() }},
	{"hazards", "what stops a job", func() any { return tables.Hazards() }},
	{"remedies", "what a bead shows and what to change", func() any { return tables.Remedies() }},
	{"sights", "what a test bead may show, drawn", func() any { return tables.Sights() }},
	{"causes", "what may lie behind it", func() any { return tables.Causes() }},
	{"evidence", "how often each cause shows as what", func() any { return tables.EvidenceRows() }},
	{"filler-rules", "what speaks for a filler and against it", func() any { return tables.FillerRules() }},
	{"pair-rules", "what a joint of two metals asks for", func() any { return tables.PairRules() }},
	{"constants", "figures that belong to no row", func() any { return tables.Constants() }},
}

func (d *Deps) tablesCommand() *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use:     "tables [NAME]",
		Short:   "Every figure the answers rest on, with band and source",
		Example: "  brazebooth tables\n  brazebooth tables fillers",
		Args:    atMostOne,
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return d.listTables(asJSON)
			}
			return d.table(args[0], asJSON)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "JSON")
	return cmd
}

func tableNames() []string {
	names := make([]string, len(allTables))
	for i := range allTables {
		names[i] = allTables[i].name
	}
	return names
}

func (d *Deps) listTables(asJSON bool) error {
	if asJSON {
		return d.encode(map[string]any{"schema": 1, "version": Version, "tables": tableNames()})
	}
	for _, t := range allTables {
		if _, err := fmt.Fprintf(d.Out, "%-12s %s\n", t.name, t.line); err != nil {
			return err
		}
	}
	return nil
}

func (d *Deps) table(name string, asJSON bool) error {
	for _, t := range allTables {
		if t.name != strings.ToLower(name) {
			continue
		}
		rows := reflect.ValueOf(t.rows())
		if asJSON {
			return d.encode(map[string]any{"schema": 1, "version": Version, "table": t.name, "rows": jsonValue(rows)})
		}
		var b strings.Builder
		for i := range rows.Len() {
			writeRow(&b, rows.Index(i))
		}
		for line := range strings.Lines(b.String()) {
			figures, source, cited := strings.Cut(line, "; ") // a source's section 4.5 stays one
			if cited {
				source = "; " + source
			}
			if err := d.say("%s%s", d.marked(figures), source); err != nil {
				return err
			}
		}
		return nil
	}
	like := near.Names(name, tableNames())
	if len(like) == 0 {
		like = tableNames()
	}
	return wrong("no table is called "+quote(name), "type "+near.Or(like))
}
