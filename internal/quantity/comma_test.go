package quantity

import (
	"strings"
	"testing"
)

func TestComma(t *testing.T) {
	for in, want := range map[string]string{
		"4.23 m/min, 3.66–5.54":           "4,23 m/min, 3,66–5,54",
		"wire .035 in (0.889 mm)":         "wire .035 in (0,889 mm)",
		"brazebooth 0.1.0, section 3.2.6": "brazebooth 0.1.0, section 3.2.6",
		"set to 8.6. Then stop.":          "set to 8,6. Then stop.",
		"0.84·15.2 V·96.5 A/5.87 mm/s":    "0,84·15,2 V·96,5 A/5,87 mm/s",
		"-0.5 and (−16.2)":                "-0,5 and (−16,2)",
		"M2.5 and cards.csv and x_1.5":    "M2.5 and cards.csv and x_1.5",
		"no number":                       "no number",
		".47 in, .31–.71, -.02":           ",47 in, ,31–,71, -,02",
		"wire .035, throat .0442 in":      "wire .035, throat ,0442 in",
		".030–.045 in":                    ",030–,045 in",
		"type .060 or 1.5mm":              "type ,060 or 1,5mm",
		"x.5 ..5 …  .5":                   "x.5 ..5 …  ,5",
		"7.":                              "7.",
		"1e-4.5":                          "1e-4,5",
	} {
		if got := Comma(in); got != want {
			t.Errorf("Comma(%q) = %q, want %q", in, got, want)
		}
	}
}

// A number that is shown with a comma can be typed back.
func TestCommaIsReadBack(t *testing.T) {
	for _, text := range []string{"6,35 m/min", "6,35", "6.35m/min"} {
		if got, err := Read(FieldFeed, text); err != nil || !about(got, 6350./60) {
			t.Errorf("feed %q: %g, %v", text, got, err)
		}
	}
	if got, err := Read(FieldTravel, "8,5 mm/s"); err != nil || got != 8.5 {
		t.Errorf("travel: %g, %v", got, err)
	}
	if s, err := ParseSize("1,5"); err != nil || s.MM != 1.5 {
		t.Errorf("size: %+v, %v", s, err)
	}
	for _, v := range []float64{0.889, 1.31, 4.23, 15.2, 1234.5} {
		shown := Comma(Show(v, "mm", Metric))
		if back, err := Read(FieldLength, shown); err != nil || !about(back, v) {
			t.Errorf("%s: %g, %v", shown, back, err)
		}
	}
}

func about(a, b float64) bool { return a > b*0.997 && a < b*1.003 }

func FuzzComma(f *testing.F) {
	for _, s := range []string{"1.5", "0.1.0", ".035", "…1.5–2.5", "\xff1.5"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got := Comma(s)
		if len(got) != len(s) || strings.ReplaceAll(got, ",", ".") != strings.ReplaceAll(s, ",", ".") ||
			Comma(got) != got {
			t.Fatalf("%q became %q", s, got)
		}
	})
}
