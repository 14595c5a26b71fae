package quantity

import (
	"math"
	"strings"
	"testing"

	"brazebooth/internal/mistake"
)

// typedUnits has every unit of every field in every spelling, with its value in the base unit. The values are the
// definitions of NIST SP 811 appendix B.8 as printed (with SI prefixes; 1 h = 3600 s; 1 kip = 1000 lbf; 1 t weighs 1000
// kgf).
var typedUnits = []struct {
	parser string
	want   float64
	texts  string // separated by "|"
}{
	{"length", 300, "300 mm|300 millimeter|300 millimetre|300 millimeters|300 millimetres|300|30cm|0.3m|0.3 " +
		"meter|0.3 metre|0.3 meters|0.3 metres|300000um|300000 micron|300000 microns|30 centimetre|30 " +
		"centimetres|300000 micrometre|300000 micrometres"},
	{"length", 254, `10in|10 in.|10 inch|10 inches|10"|10''|10″|10000mil|10000 mils|10000thou`},
	{"length", 914.4, "3ft|3 foot|3 feet|3'|3′|3’"},
	{"feed", 100, "100mm/s|100 mm/sec|100 mm/second|100 mm per " +
		"second|100mmps|6000mm/min|6000mm/minute|6000mmpm|10cm/s|600cm/min|600cm/minute|6m/min|6 " +
		"m/minute|6mpm|0.1m/s|6"},
	{"feed", 100, "100 millimetre per second|100 millimetres per second|6000 millimetre per minute|" +
		"6000 millimetres per minute|10 centimetre per second|10 centimetres per second|600 centimetre per minute|" +
		"600 centimetres per minute|6 metre per minute|6 metres per minute|0.1 metre per second|0.1 metres per second"},
	{"feed", 240 * 25.4 / 60,
		`240in/min|240ipm|240 inch/min|240"/min|240 inches/min|240 in/minute|240 inch/minute|` +
			`240 inches per minute|4in/s|4ips|4"/s|4 inches/second|4 inch per second|` +
			`20 foot per minute|20 feet per minute|20ft/min|20fpm|240`},
	{"current", 93, "93|93a|93 amp|93 amps|93 ampere|93 amperes"},
	{"voltage", 14.8, "14.8|14.8v|14.8 volt|14.8 volts"},
	{"temperature", 100, "100|100c|100°|100 °C|100 ℃|100 deg|100 degc|100 celsius|100 degree|100 degrees|100 degree " +
		"Celsius|100 degrees Celsius|212 degree Fahrenheit|212 degrees Fahrenheit|212f|212 °F|212 ℉|212 degf|212 " +
		"fahrenheit|373.15k|373.15 kelvin"},
	{"flow", 12, "12|12 l/min|12lpm|12 l/minute|12 litre per minute|12 litres per minute|0.72 m3/h|0.72m³/hr|" +
		"0.72 cubic metre per hour|0.72 cubic metres per hour"},
	{"flow", 28.316846592 / 2, "30cfh|30scfh|30 ft3/h|30 ft³/hr|30 cuft/h|30 cu ft/hr|30 cf/h|30 cf/hr|" +
		"30 cubic foot per hour|30 cubic feet per hour"},
	{"force", 5, "5|5kn|5000n|5 kilonewton|5 kilonewtons|5000 newton|5000 newtons"},
	{"force", 2 * 4.4482216152605, "2000lbf|2000lb|2000 lbs|2000 pound|2000 pounds|2000 pound of force|2000 pounds " +
		"of force|2 kip|2kips"},
	{"force", 0.5 * 9.80665, "500kgf|500kg|0.5t"},
	{"duration", 7200, "7200|7200s|7200sec|7200 secs|7200 second|7200 seconds|7200000ms|7200000 millisecond|7200000 " +
		"milliseconds|120min|120 mins|120 minute|120 minutes|2h|2hr|2hrs|2 hour|2 hours"},
	{"mass", 2, "2|2kg|2kilo|2 kilos|2 kilogram|2 kilograms|2000g|2000 gram|2000 grams|0.002t"},
	{"mass", 0.45359237, "1lb|1 lbs|1 pound|1 pounds|16oz|16 ounce|16 ounces"},
	{"price", 25, "25|25/kg|25/kilo|25 EUR per kg|25 EUR per kilogram|25/kilogram"},
	{"price", 12 / 0.45359237, "12/lb|12/lbs|12/pound|12$ per lb|0.75/oz|0.75 /ounce"},
	{"percent", 40, "40|40%|40 percent|40 per cent|40/cent|40 pct"},
	{"number", 1.5, "1.5|1,5"},
}

func TestEveryUnitInEverySpelling(t *testing.T) {
	typed := map[string]bool{}
	for _, c := range typedUnits {
		for text := range strings.SplitSeq(c.texts, "|") {
			got, err := parsers[c.parser].parse(text)
			if err != nil || math.Abs(got-c.want) > 1e-13*c.want {
				t.Errorf("%s %q: %.15g, %v; want %.15g", c.parser, text, got, err, c.want)
			}
			typed[c.parser+unitText(strings.TrimLeft(fold(text), "0123456789. "))] = true
		}
	}
	for name, units := range map[string][]unit{"length": lengths, "feed": speeds, "current": amps, "voltage": volts,
		"temperature": temperatures, "flow": flows,
		"force": forces, "duration": durations, "price": prices, "percent": percents, "mass": masses} {
		for _, u := range units {
			for spelling := range strings.FieldsSeq(u.names) {
				if !typed[name+spelling] {
					t.Errorf("%s: nobody types %q", name, spelling)
				}
			}
		}
	}
}

// The ranges as the parsers' comments give them: both ends are accepted, a value just beyond is not.
func TestEndsOfEveryRange(t *testing.T) {
	for name, c := range map[string]struct{ in, out string }{
		"size": {"0.05mm 150mm 7 30", "0.049mm 150.1mm"}, "wire": {"0.4 2.4", "0.39 2.41"}, "gap": {"0 25", "25.1"},
		"stickout": {"3 50", "2.9mm 50.1"},
		"length":   {"0 100m", "100.1m"}, "offset": {"-10 10", "-10.1 10.1"}, "feed": {"0.3m/min 40m/min",
			"0.29m/min 40.1m/min"}, "travel": {"0.3 60", "0.29 60.1"},
		"current": {"5 600", "4.9 600.1"}, "voltage": {"5 60", "4.9 60.1"}, "temperature": {"-40 1500", "-40.1 1500.1"},
		"flow":  {"1 60", "0.9 60.1"},
		"force": {"0 10000", "10000.1"}, "duration": {"0 1000000", "1000000.1"},
		"price": {"0 1000000", "1000000.1"}, "percent": {"0 100", "100.1"}, "number": {"0 1000000000", "1000000000.1"},
	} {
		for text := range strings.FieldsSeq(c.in) {
			if v, err := parsers[name].parse(text); err != nil {
				t.Errorf("%s %q: %g, %v", name, text, v, err)
			}
		}
		for text := range strings.FieldsSeq(c.out) {
			if v, err := parsers[name].parse(text); err == nil || !strings.Contains(err.Error(), "out of range") {
				t.Errorf("%s %q: %g, %v; want it out of range", name, text, v, err)
			}
		}
	}
}

// A message gives the range in the field's own unit, in whole figures.
func TestRangesInMessages(t *testing.T) {
	for name, want := range map[string]string{"size": "from 0.05 to 150 mm (.002 to 5.9 in)",
		"wire": "from 0.4 to 2.4 mm (.016 to .094 in)", "length": "from 0 to 100 m (0 to 328 ft)",
		"offset": "from -10 to 10 mm (-.39 to .39 in)", "feed": "from 0.3 to 40 m/min (12 to 1570 in/min)",
		"travel": "from 0.3 to 60 mm/s (0.71 to 140 in/min)", "current": "from 5 to 600 A",
		"temperature": "from -40 to 1500 °C (-40 to 2700 °F)",
		"force":       "from 0 to 10000 kN (0 to 2240000 lbf)", "price": "from 0 to 1000000 a kg",
		"percent": "from 0 to 100%", "number": "from 0 to 1000000000"} {
		_, err := parsers[name].parse("9999999999.5")
		e, ok := err.(*mistake.Error)
		if !ok || !strings.HasSuffix(e.Hint, "; "+want) {
			t.Errorf("%s: %+v, want %q", name, err, want)
		}
	}
}
