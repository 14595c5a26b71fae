package cli

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"brazebooth/internal/plain"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// gaugeRow is one gauge number in one system.
type gaugeRow struct {
	System  string  `json:"system"`
	Inches  float64 `json:"inches"`
	MM      float64 `json:"mm"`
	Minimum float64 `json:"minimum_inches,omitempty"`
	Use     string  `json:"use"`
	Source  string  `json:"source"`
}

// systems in the order that a shop meets them, with what each is for and where its numbers are from.
var systems = [...]struct {
	id          tables.GaugeSystem
	use, source string
}{
	{tables.MSG, "uncoated steel", "manufacturers' standard gauge, GNU units 2.22 definitions (read)"},
	{tables.GSG, "galvanized steel, coat included", "SMACNA tables after ASTM A924 (read)"},
	{tables.USSG, "stainless steel", "15 USC 206 (read)"},
	{tables.BS, "copper, brass, bronze", "ASTM B258 (read)"},
}

func (d *Deps) gaugeCommand() *cobra.Command {
	var asJSON bool
	cmd := &cobra.Command{
		Use:     "gauge N",
		Short:   "A sheet gauge in all four systems, in mm and inches; of a thickness the gauges next to it",
		Example: "  brazebooth gauge 16\n  brazebooth gauge 1.5mm",
		Args:    oneArg("a gauge from 7 to 30, or a thickness", "brazebooth gauge 16, or 1.5mm"),
		RunE: func(_ *cobra.Command, args []string) error {
			s, err := quantity.ParseSize(args[0])
			switch {
			case err != nil:
				return err
			case s.Gauge == 0:
				return d.gaugesBeside(s.MM, asJSON)
			}
			return d.gauge(s.Gauge, asJSON)
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "JSON")
	return cmd
}

func (d *Deps) gauge(n int, asJSON bool) error {
	rows := make([]gaugeRow, 0, len(systems))
	for _, s := range systems {
		in, ok := tables.GaugeThickness(n, s.id)
		if !ok {
			continue
		}
		row := gaugeRow{System: string(s.id), Inches: in, MM: in * quantity.MMPerInch, Use: s.use, Source: s.source}
		if s.id == tables.GSG {
			row.Minimum = in - tables.GaugeTolerance(n)
		}
		rows = append(rows, row)
	}
	if asJSON {
		return d.encode(map[string]any{"schema": 1, "version": Version, "gauge": n, "systems": rows})
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%d gauge\n", n)
	for _, r := range rows {
		b.WriteString(d.marked(fmt.Sprintf("  %-5s %.4f in  %.4f mm  %s", r.System, r.Inches, r.MM, r.Use)))
		if r.Minimum > 0 {
			b.WriteString(d.marked(fmt.Sprintf(" (minimum %.4f in)", r.Minimum)))
		}
		fmt.Fprintf(&b, "\n        %s\n", r.Source)
	}
	b.WriteString("One number, " + strconv.Itoa(len(rows)) + " thicknesses: say the metal too, or measure.\n")
	if n == 7 {
		b.WriteString("Galvanized sheet has no 7 gauge.\n")
	}
	_, err := d.Out.Write([]byte(b.String()))
	return err
}

// encode writes JSON as the card does.
func (d *Deps) encode(v any) error {
	var doc bytes.Buffer
	enc := json.NewEncoder(&doc)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(v); err != nil {
		return err
	}
	_, err := d.Out.Write(plain.JSON(doc.Bytes()))
	return err
}
