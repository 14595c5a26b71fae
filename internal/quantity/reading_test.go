package quantity

import "testing"

// If a number without a unit could mean something else, Reading says how it was read and what to type instead;
// otherwise it is "".
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
		{FieldLength, "12", Metric, "12 read as millimetres; for inches type 12in"},
		{FieldLength, "300", Metric, ""},
		{FieldLength, "12mm", Metric, ""},
		{FieldForce, "2000", Metric, "2000 read as kN; for N type 2000N"},
		{FieldForce, "2000", Inch, "2000 read as kN; for lbf type 2000lbf"},
		{FieldForce, "2", Metric, ""},
		{FieldForce, "2kN", Metric, ""},
		{FieldLength, "12", Inch, "12 read as millimetres; for inches type 12in"},
		{FieldCurrent, "93", Inch, ""},
		{FieldPercent, "40", Inch, ""},
		{FieldNumber, "3", Inch, ""},
		{Field(0), "3", Inch, ""},
		{FieldSize, "7", Metric, ""},
		{FieldSize, "3", Metric, "3 read as millimetres; gauges begin at 7"},
		{FieldSize, "7/32", Metric, ""},
		{FieldFeed, "100", Metric, ""},
		{FieldOffset, "0", Inch, ""},
		{FieldLength, "1", Inch, "1 read as millimetres; for inches type 1in"},
		{FieldPrice, "$5", Inch, ""},
		{FieldWire, "0.24", Inch, ""},
		{FieldStickOut, "1.5", Inch, ""},
	} {
		if got := Reading(x.field, x.text, x.sys); got != x.want {
			t.Errorf("%q in field %d, %s: %q, want %q", x.text, x.field, x.sys, got, x.want)
		}
	}
}

// Reading speaks while the other unit gives a likely size, and not beyond.
func TestReadingKnowsWhatIsLikely(t *testing.T) {
	for f, x := range map[Field]struct{ said, silent []string }{
		FieldSize:        {[]string{"0.2", "0.255"}, []string{"0.19", "0.256"}},       // 0.2 to 6.5 mm
		FieldGap:         {[]string{"0.1", "0.314"}, []string{"0.09", "0.315"}},       // 0.1 to 8 mm
		FieldTravel:      {[]string{"2.37", "47.2"}, []string{"2.36", "47.3"}},        // 1 to 20 mm/s
		FieldFlow:        {[]string{"10.6"}, []string{"10.5", "61"}},                  // from 5 L/min
		FieldTemperature: {[]string{"32", "1112"}, []string{"31", "1113"}},            // 0 to 600 C
		FieldLength:      {[]string{"0.2", "196"}, []string{"0.19", "196.88"}},        // 5 to 5000 mm
		FieldOffset:      {[]string{"0.39", "-0.39"}, []string{"0.40", "-0.40"}},      // 10 mm either way
		FieldForce:       {[]string{"2.3"}, []string{"2.2"}},                          // from 0.01 kN
		FieldMass:        {[]string{"0.023", "100000"}, []string{"0.022"}},            // from 0.01 kg
		FieldPrice:       {[]string{"0.0046", "453592"}, []string{"0.004", "453600"}}, // 0.01 to 1e6 a kg
	} {
		for _, text := range x.said {
			if Reading(f, text, Inch) == "" {
				t.Errorf("field %d: nothing is said of %s", f, text)
			}
		}
		for _, text := range x.silent {
			if got := Reading(f, text, Inch); got != "" {
				t.Errorf("field %d: %s", f, got)
			}
		}
	}
	// 12 characters, 13 characters
	for text, typed := range map[string]string{"0.2000000000": "0.2000000000", "0.20000000000": "0.2"} {
		if got, want := Reading(FieldSize, text, Inch), typed+" read as inches: 5.08 mm; for millimetres type "+typed+
			"mm"; got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}

// The text that Reading says to type is read in the other unit, and Reading has nothing to say about that.
func TestReadingIsTypedBack(t *testing.T) {
	for _, x := range []struct {
		field Field
		text  string
		want  float64
	}{
		{FieldSize, "0.2mm", 0.2}, {FieldSize, ".25in", 6.35}, {FieldTravel, "12in/min", 5.08},
		{FieldTemperature, "200f", 93.33333},
	} {
		v, err := Read(x.field, x.text)
		if err != nil || v-x.want > 1e-4 || x.want-v > 1e-4 {
			t.Errorf("%s is %v, %v", x.text, v, err)
		}
		if got := Reading(x.field, x.text, Inch); got != "" {
			t.Errorf("%q", got)
		}
	}
}
