package advice

import (
	"fmt"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/tables"
)

// All guests of a server share the tables' lists: no card and no page sorts or changes one.
func TestPagesLeaveTheTablesAsTheyAre(t *testing.T) {
	deep.Turn(t)
	lists := func() string {
		return fmt.Sprint(tables.Metals, tables.Fillers, tables.Gases, tables.Coatings, tables.Joints, tables.Modes,
			tables.Positions, tables.Uses, tables.Causes, tables.Sights, tables.PairRules, tables.FillerRules,
			tables.EvidenceRows, tables.PracticeLines, tables.CautionLines, tables.Hazards, tables.Warnings,
			tables.Notes, tables.Remedies, tables.ExposureLimits, tables.Shades, tables.FilletTests, tables.Wires,
			tables.Spools, tables.Cylinders, tables.Backings, tables.Melts, tables.Holds, tables.SoftSheets)
	}
	before := lists()
	for _, j := range []calc.Job{{}, {Metal: "copper", Thickness: calc.Some(4), Joint: "butt"},
		{Metal: "stainless-304", Metal2: "mild-steel", Mode: "pulsed"}, {Metal: "grey-iron", Joint: "overlay",
			Thickness: calc.Some(8)}, {Joint: "plug"}} {
		c := card(t, j)
		for i := range contents {
			if of := contents[i].Of; of != nil {
				_, _ = of(t.Context(), c) // an error is fine here
			}
		}
		if after := lists(); after != before {
			t.Fatalf("%+v: the pages changed a list of the tables", j)
		}
	}
}
