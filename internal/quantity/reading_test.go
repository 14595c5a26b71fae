package quantity

import "testing"

// A bare number that may be meant otherwise says how it was read and what to type for the other; all else says nothing.
func TestReading(t *testing.T) {
	for _, x := range []struct {
		field Field
		text  string
		sys   System
		want  string
	}{
		{FieldSize, "0.2", Metric, "0.2 read as inches: 5.08 mm; for millimetres type 0.2mm"},
		{FieldSize, "0,2", Metric, "0,2 read as inches: 5.08 mm; for millimetres type 0,2mm"},
		{FieldSize, " .25 ", Metric, ".25 read as millimetres; for inches type .25in"},
		{FieldSize, "6", Metric, "6 read as millimetres; gauges begin at 7"},
		{FieldSize, "6mm", Metric, ""},
		{FieldSize, "0.2in", Metric, ""},
		{FieldSize, "1.5", Metric, ""},
		{FieldSize, ".060", Metric, ""},
		{FieldSize, "16", Metric, ""},
		{FieldSize, "16ga", Metric, ""},
		{FieldSize, "1/16", Metric, ""},
		{FieldSize, "banana", Metric, ""},
		{FieldSize, "", Metric, ""},
		{FieldGap, "0.2", Metric, "0.2 read as inches: 5.08 mm; for millimetres type 0.2mm"},
		{FieldGap, "0.3", Metric, "0.3 read as millimetres; for inches type 0.3in"},
		{FieldGap, "1.5", Metric, ""},
		{FieldGap, "0", Metric, ""},
		{FieldWire, ".035", Metric, ""},
		{FieldWire, "0.9", Metric, ""},
		{FieldStickOut, "12", Both, ""},
		{FieldFeed, "99", Metric, "99 read as in/min: 2.515 m/min"},
		{FieldFeed, "99", Inch, ""},
		{FieldFeed, "250", Metric, ""},
		{FieldFeed, "6.3", Inch, ""},
		{FieldFeed, "250ipm", Metric, ""},
		{FieldTravel, "12", Inch, "12 read as mm/s; for in/min type 12in/min"},
		{FieldTravel, "12", Metric, ""},
		{FieldTravel, "16s/100mm", Inch, ""},
		{FieldFlow, "25", Both, "25 read as L/min; for cfh type 25cfh"},
		{FieldTemperature, "200", Inch, "200 read as °C; for °F type 200f"},
		{FieldLength, "12", Inch, "12 read as millimetres; for inches type 12in"},
		{FieldCurrent, "93", Inch, ""},
		{FieldPercent, "40", Inch, ""},
		{FieldNumber, "3", Inch, ""},
		{Field(0), "3", Inch, ""},
		{fields, "3", Inch, ""},
	} {
		if got := Reading(x.field, x.text, x.sys); got != x.want {
			t.Errorf("%q in field %d, %s: %q, want %q", x.text, x.field, x.sys, got, x.want)
		}
	}
}

// What a reading says to type is read as it says: in the other unit, and without another word.
func TestReadingIsTypedBack(t *testing.T) {
	for _, x := range []struct {
		field Field
		text  string
		want  float64
	}{
		{FieldSize, "0.2mm", 0.2}, {FieldSize, ".25in", 6.35}, {FieldTravel, "12in/min", 5.08}, {FieldTemperature, "200f", 93.33333},
	} {
		v, err := read(x.field, x.text)
		if err != nil || v-x.want > 1e-4 || x.want-v > 1e-4 {
			t.Errorf("%s is %v, %v", x.text, v, err)
		}
		if got := Reading(x.field, x.text, Inch); got != "" {
			t.Errorf("%q", got)
		}
	}
}
