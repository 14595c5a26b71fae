package calc_test

import (
	"testing"

	"brazebooth/tables"
)

// NIOSH Pocket Guide to Chemical Hazards, with the OSHA limits that it prints beside its own (memory high), mg/m3.
func TestPocketGuide(t *testing.T) {
	for _, c := range []struct {
		agent string
		body  tables.Body
		span  tables.Span
		want  float64
	}{
		{"zinc-oxide", tables.NIOSH, tables.ShiftMean, 5}, {"zinc-oxide", tables.NIOSH, tables.ShortTerm, 10},
		{"zinc-oxide", tables.NIOSH, tables.LifeDanger, 500}, {"zinc-oxide", tables.OSHA, tables.ShiftMean, 5},
		{"copper", tables.NIOSH, tables.ShiftMean, 0.1}, {"copper", tables.OSHA, tables.ShiftMean, 0.1},
		{"manganese", tables.NIOSH, tables.ShiftMean, 1}, {"manganese", tables.NIOSH, tables.ShortTerm, 3},
		{"manganese", tables.OSHA, tables.Ceiling, 5}, {"nickel", tables.NIOSH, tables.ShiftMean, 0.015},
		{"nickel", tables.OSHA, tables.ShiftMean, 1}, {"lead", tables.NIOSH, tables.ShiftMean, 0.05},
		{"iron-oxide", tables.NIOSH, tables.ShiftMean, 5}, {"iron-oxide", tables.OSHA, tables.ShiftMean, 10},
		{"tin", tables.NIOSH, tables.ShiftMean, 2}, {"chromium-vi", tables.NIOSH, tables.ShiftMean, 0.0002},
	} {
		l, ok := limitFor(c.agent, c.body, c.span)
		if !ok {
			t.Errorf("no %s %s %s", c.agent, c.body, c.span)
			continue
		}
		check(t, at("%s %s %s", c.agent, c.body, c.span), l.Limit.V, c.want, 0)
	}
}

// ACGIH threshold limit values (memory high; zinc oxide and manganese read): the stricter ones, mg/m3.
func TestThresholdLimitValues(t *testing.T) {
	for agent, want := range map[string]float64{"zinc-oxide": 2, "copper": 0.2, "manganese": 0.02, "lead": 0.05,
		"tin": 2} {
		l, ok := limitFor(agent, tables.ACGIH, tables.ShiftMean)
		if !ok {
			t.Errorf("no %s", agent)
			continue
		}
		check(t, agent, l.Limit.V, want, 0)
	}
}
