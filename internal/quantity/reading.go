package quantity

import (
	"strings"
)

// likely is the range of likely sizes, in the base unit, of each field in which a number without a unit may be meant in
// another unit. If a field reads such numbers in one unit only, other is the unit that a user of inches may mean, and
// metric the unit that a user of metric units may mean: a seam of 12 and a load of 2000 are probably inches and
// newtons.
var likely = [fields]struct {
	low, high     float64
	other, metric string
}{
	FieldSize:        {low: 0.2, high: 6.5},
	FieldGap:         {low: 0.1, high: 8},
	FieldTravel:      {low: 1, high: 20, other: "in/min"},
	FieldFlow:        {low: 5, high: 30, other: "cfh"},
	FieldTemperature: {low: 0, high: 600, other: "f"},
	FieldPreheat:     {low: 0, high: 600, other: "f"},
	FieldLength:      {5, 5000, "in", "in"},
	FieldOffset:      {low: -10, high: 10, other: "in"},
	FieldForce:       {0.01, 10000, "lbf", "n"},
	FieldPrice:       {low: 0.01, high: 1e6, other: "/lb"},
	FieldMass:        {low: 0.01, high: 1e5, other: "lb"},
}

// A whole number from here up may be meant as a gauge. Numbers below the first gauge are read as a length.
const thickGauge = 3

// A feed of two digits that is read as inches a minute may be metres with the point forgotten: 63 for 6.3.
const slipped = 100

// Reading says how a number without a unit was read, if another reading would be as likely: "0.2 read as inches: 5.08
// mm; for millimetres type 0.2mm". Otherwise it is "". For a field with only one unit for such numbers it speaks only
// to users who see inches, for a load and a length to all.
func Reading(f Field, text string, sys System) string {
	if f == 0 { // of names
		return ""
	}
	sp := &specs[f]
	s, err := scan(sp, text)
	if err != nil || s.unit != "" || s.before != "" || s.fraction || s.v == 0 {
		return ""
	}
	if f == FieldSize && s.whole && s.v >= firstGauge {
		return ""
	}
	v, ok := sp.base(s, s.v)
	if !ok || !sp.holds(v) {
		return ""
	}
	typed := strings.TrimSpace(text) // only digits and marks: anything else would not be a number
	if len(typed) > 12 {
		typed = exactly(s.v)
	}
	is, other := sp.readAs(f, s.v, sys)
	said := typed + " read as " + unitWord(sp.units, is) + sp.inShownUnit(is, v)
	if f == FieldSize && s.whole && s.v >= thickGauge {
		return said + "; gauges begin at " + exactly(firstGauge)
	}
	if w := spelled(sp.units, other).toBase(s.v); other != "" && w >= likely[f].low && w <= likely[f].high {
		return said + "; for " + unitWord(sp.units, other) + " type " + typed + asTyped(sp.units, other)
	}
	if is == "in/min" && sys == Metric && s.v < slipped {
		return said
	}
	return ""
}

// readAs returns the unit in which a number without a unit is read, and the unit in which it may be meant, "" for none.
func (sp *spec) readAs(f Field, v float64, sys System) (is, other string) {
	switch {
	case sp.bare.limit == 0 && sys == Metric:
		return sp.bare.from, likely[f].metric
	case sp.bare.limit == 0:
		return sp.bare.from, likely[f].other
	case v < sp.bare.limit:
		return sp.bare.under, sp.bare.from
	}
	return sp.bare.from, sp.bare.under
}

// inShownUnit is the number in the unit in which messages name the range; "" if it was read in that unit or in the base
// unit.
func (sp *spec) inShownUnit(is string, v float64) string {
	u, from := spelled(sp.units, sp.shown), spelled(sp.units, is)
	if u == from || from == &sp.units[0] {
		return ""
	}
	return ": " + short(u.fromBase(v)) + " " + u.symbol
}

// asTyped is a unit as it is typed after a number: its symbol, if that can be typed.
func asTyped(units []unit, name string) string {
	if symbol := spelled(units, name).symbol; strings.ToLower(symbol) == name {
		return symbol
	}
	return name
}

// unitWord is a unit's name in a sentence.
func unitWord(units []unit, name string) string {
	switch name {
	case "in":
		return "inches"
	case "mm":
		return "millimetres"
	}
	return spelled(units, name).symbol
}
