package choice

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/calc/advice"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

// notChosen are the fields of a job that no choice sets: the book supplies what a booth's readings taught.
var notChosen = []string{
	"Phi", "PhiSigma", "VoltFactor", "VoltFactorSigma", "Readings", "Eta", "EtaSigma", "LearnedFor",
	"FeedDial", "VoltsDial",
	"Pulled", "PulledMean", "PulledSigma", "PulledFor",
	"Rhythm",
}

// fields are the fields of a job that are not empty.
func fields(j *calc.Job) []string {
	var list []string
	v := reflect.ValueOf(*j)
	for i := range v.NumField() {
		if !v.Field(i).IsZero() {
			list = append(list, v.Type().Field(i).Name)
		}
	}
	return list
}

// examples are values of a choice that can be typed: the id of every row, and the examples in its usage.
func examples(t *testing.T, c *Choice) []string {
	t.Helper()
	card, err := calc.Solve(calc.Job{})
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, r := range c.Rows(&Present{Card: &card, Solve: calc.Solve}) {
		if r.ID != Same {
			list = append(list, r.ID)
		}
	}
	if c.Kind != 0 {
		list = append(list, map[quantity.Field]string{
			quantity.FieldSize: "1.5mm", quantity.FieldPrice: "25EUR/kg", quantity.FieldOffset: "-0.5mm",
			quantity.FieldTemperature: "95C", quantity.FieldFeed: "6.3m/min",
			quantity.FieldDuration: "0.4s"}[c.Kind])
		if list[len(list)-1] == "" {
			list[len(list)-1] = "12"
		}
	}
	if c.Kind == quantity.FieldWire {
		list[len(list)-1] = "0.7mm"
	}
	return list
}

// Every field of a job is set by exactly one choice, or is listed above.
func TestEveryFieldOfAJobIsOneChoice(t *testing.T) {
	owner := map[string]string{}
	for _, c := range all {
		for _, text := range examples(t, c) {
			var j calc.Job
			if err := c.Set(&j, text); err != nil {
				t.Fatalf("%s %q: %v", c.Name, text, err)
			}
			for _, f := range fields(&j) {
				if was := owner[f]; was != "" && was != c.Name && f != "Currency" {
					t.Errorf("%s and %s both set %s", was, c.Name, f)
				}
				owner[f] = c.Name
			}
		}
	}
	job := reflect.TypeFor[calc.Job]()
	for i := range job.NumField() {
		f := job.Field(i)
		if (owner[f.Name] == "") != slices.Contains(notChosen, f.Name) {
			t.Errorf("%s is set by %q", f.Name, owner[f.Name])
		}
		tag, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		together := f.Name == "Thickness" || f.Name == "Thickness2" || f.Name == "Currency" // set with another field
		if c := ByName(owner[f.Name]); c != nil && c.Field() != tag && !together {
			t.Errorf("%s is %s in JSON and the choice %s", f.Name, tag, c.Name)
		}
	}
}

// A value that is set counts as given, is shown, can be typed again as it is shown, and is gone after Clear.
func TestSetShowClear(t *testing.T) {
	for _, c := range all {
		for _, text := range examples(t, c) {
			var j, again calc.Job
			if c.Given(&j) || c.Show(&j, quantity.Metric) != "" {
				t.Fatalf("%s is given in an empty job", c.Name)
			}
			if err := c.Set(&j, text); err != nil || !c.Given(&j) {
				t.Fatalf("%s %q: given %v, %v", c.Name, text, c.Given(&j), err)
			}
			shown := c.Show(&j, quantity.Metric)
			if err := c.Set(&again, retyped(c, shown)); err != nil {
				t.Errorf("%s %q is shown as %q: %v", c.Name, text, shown, err)
			}
			same := c.Unit == "" || again.Currency == j.Currency && alike(c.At(&again).V, c.At(&j).V)
			if c.Kind == 0 && again != j || !same {
				t.Errorf("%s %q, typed again as %q, is %+v and not %+v", c.Name, text, shown, again, j)
			}
			before := j
			if err := c.Set(&j, "no such thing, 1x"); err == nil || j != before {
				t.Errorf("%s takes nonsense (%v), or changed the job", c.Name, err)
			}
			if c.Clear(&j); j != (calc.Job{}) {
				t.Errorf("%s %q leaves %+v behind", c.Name, text, j)
			}
		}
	}
}

// retyped is a shown value in the form in which it can be typed: a number without a unit that its field does not know,
// a price without the words around it.
func retyped(c *Choice, shown string) string {
	switch c.Kind {
	case quantity.FieldNumber, quantity.FieldCount:
		shown, _, _ = strings.Cut(shown, " ")
	case quantity.FieldPrice:
		price, currency, _ := strings.Cut(shown, " in ")
		number, _, _ := strings.Cut(price, " ")
		shown = number + currency + "/kg"
	}
	return shown
}

// alike compares two numbers to the digits that a shown number has.
func alike(a, b float64) bool { return math.Abs(a-b) <= 0.01*math.Abs(b) }

// Taking a row by its id puts the table's values on a job, and the card then names the row that was taken.
func TestRowsAreWhatTheySay(t *testing.T) {
	base := calc.Job{Metal: "galvanized", Gauge: 18, Hazard: "none"}
	card, err := calc.Solve(base)
	if err != nil {
		t.Fatal(err)
	}
	p := &Present{Card: &card, Job: base, Units: quantity.Metric, Solve: calc.Solve}
	for _, c := range all {
		seen := map[string]bool{}
		for _, r := range c.Rows(p) {
			if r.ID == "" || r.Name == "" || r.Line == "" && c.Kind != quantity.FieldSize || r.Said() == "" ||
				seen[r.ID] {
				t.Errorf("%s: %+v, seen before: %v", c.Name, r, seen[r.ID])
			}
			seen[r.ID] = true
			j := base
			if c.Name == "backing" { // other joints have no backing
				j.Joint = "butt"
			}
			if err := c.Take(&j, r.ID); err != nil {
				t.Errorf("%s %s: %v", c.Name, r.ID, err)
			}
			used, err := calc.Complete(j)
			if err != nil {
				continue // no card can be computed with it: a 30 gauge sheet, a coating that does not fit its metal
			}
			if got := c.Now(&calc.Card{Job: j, Used: used}); got != r.ID && c.Name != "hazard" {
				t.Errorf("%s: %s was taken and the card has %s", c.Name, r.ID, got)
			}
		}
	}
	for _, w := range tables.Wires {
		var j calc.Job
		if err := ByName("wire").Set(&j, w.ID); err != nil || math.Abs(j.Wire.V-w.Diameter.V) > 1e-12 {
			t.Errorf("%s is %.17g mm and not %.17g: %v", w.ID, j.Wire.V, w.Diameter.V, err)
		}
	}
}

// A typed size is found again in the list, and is set as it was typed.
func TestTypedSizes(t *testing.T) {
	card, err := calc.Solve(calc.Job{})
	if err != nil {
		t.Fatal(err)
	}
	for name, texts := range map[string][]string{
		"gauge": {"18", ".060", "12mm", "1/16", "1.23456789"}, "gauge2": {"20ga", "7.5"},
		"wire": {".035", "0.7mm", "1/16"}, "gap": {"0", "0.3mm", "1/16in"},
	} {
		c := ByName(name)
		for _, text := range texts {
			r, err := c.Typed(&Present{Card: &card}, text)
			if err != nil {
				t.Fatalf("%s %s: %v", name, text, err)
			}
			var typed, taken calc.Job
			if err := c.Set(&typed, text); err != nil {
				t.Fatalf("%s %s: %v", name, text, err)
			}
			if err := c.Take(&taken, r.ID); err != nil || taken != typed {
				t.Errorf("%s %s has the id %s, which is %+v, %v", name, text, r.ID, taken, err)
			}
		}
	}
}

// Setting a gauge replaces the thickness and the other way round, and another metal brings its own coating.
func TestFieldsSetTogether(t *testing.T) {
	j := calc.Job{Metal: "mild-steel", Gauge: 16, Coating: "G60", Gauge2: 18, Metal2: "copper", Coating2: "none"}
	for _, x := range []struct {
		name, text string
		then       func(*calc.Job)
	}{
		{"gauge", "1.5mm", func(j *calc.Job) { j.Gauge, j.Thickness = 0, calc.Some(1.5) }},
		{"gauge2", "2mm", func(j *calc.Job) { j.Gauge2, j.Thickness2 = 0, calc.Some(2) }},
		{"metal", "galvanized", func(j *calc.Job) { j.Metal, j.Coating = "galvanized", "" }},
		{"metal", "mild-steel", func(*calc.Job) {}},
		{"metal2", "brass", func(j *calc.Job) { j.Metal2, j.Coating2 = "brass", "" }},
	} {
		got, want := j, j
		x.then(&want)
		if err := ByName(x.name).Set(&got, x.text); err != nil || got != want {
			t.Errorf("%s %s: %+v, %v", x.name, x.text, got, err)
		}
	}
	paid := calc.Job{}
	for _, err := range []error{ByName("wire-price").Set(&paid, "25EUR/kg"), ByName("gas-price").Set(&paid, "8")} {
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := ByName("steel-price").Set(&paid, "$3/kg"); err == nil {
		t.Error("two currencies in one job")
	}
	if ByName("wire-price").Clear(&paid); paid.Currency != "EUR" {
		t.Errorf("the currency went with the first price of two: %+v", paid)
	}
	if ByName("gas-price").Clear(&paid); paid != (calc.Job{}) {
		t.Errorf("no price is left: %+v", paid)
	}
}

// No name, label or other name belongs to two choices, and the settings are exactly the choices that can be stepped.
func TestNamesAreOfOneChoice(t *testing.T) {
	seen := map[string]string{}
	for _, c := range all {
		for _, name := range append([]string{c.Name, c.Label(), c.Figure, strings.ToUpper(c.Field())}, c.Also...) {
			if name == "" {
				continue
			}
			if got := Called(name); got != c {
				t.Errorf("%q is %v and not %s", name, got, c.Name)
			}
			if was := seen[Plain(name)]; was != "" && was != c.Name {
				t.Errorf("%q is %s and %s", name, was, c.Name)
			}
			seen[Plain(name)] = c.Name
		}
		number := c.Kind != 0 && c.Kind != quantity.FieldSize
		if (c.Kind == 0) != (c.Find != nil) || (c.Unit != "") != number || c.Usage == "" {
			t.Errorf("%s is neither a name nor a sheet nor a number: %+v", c.Name, c)
		}
		turns, setting := c.step[0] > 0 && c.step[1] > 0, slices.Contains(Settings(), c)
		if turns != setting || turns && SettingOf(c.Figure) != c || c.Hand && !turns {
			t.Errorf("%s: a setting %v, its steps %v", c.Name, setting, c.step)
		}
	}
	for _, name := range []string{"", " ", "-", "nothing"} {
		if c := Called(name); c != nil || ByName(name) != nil {
			t.Errorf("%q is %s", name, c.Name)
		}
	}
}

// A setting that is stepped up and down again is where it was, on full steps.
func TestTurned(t *testing.T) {
	for _, c := range Settings() {
		for v := 0.5; v < 40; v += 0.37 {
			for _, sys := range []quantity.System{quantity.Metric, quantity.Inch} {
				turned := func(from float64, by int) float64 {
					j := c.Turned(calc.Job{}, from, by, sys)
					return c.At(&j).V
				}
				up := turned(v, 1)
				down := turned(up, -1)
				if up <= v || down >= up || turned(down, 1) != up {
					t.Fatalf("%s: %g up is %g, down %g", c.Name, v, up, down)
				}
			}
		}
	}
}

// Every page asks only for known choices, and every word for a hazard that stops a job does stop it.
func TestWhatPagesNeed(t *testing.T) {
	for _, page := range advice.Contents() {
		if got := Open(&calc.Job{}, page.Needs); !slices.Equal(got, page.Needs) {
			t.Errorf("%s needs %q, open are %q", page.Name, page.Needs, got)
		}
	}
	var reached []string
	for _, word := range tables.HazardWords() {
		var j calc.Job
		if err := ByName("hazard").Set(&j, word); err != nil {
			t.Error(err)
		}
		reached = append(reached, strings.Split(j.Hazard, ",")...)
	}
	for _, h := range tables.Hazards {
		if !slices.Contains(reached, h.ID) {
			t.Errorf("no word of %q is %s", tables.HazardWords(), h.ID)
		}
	}
}
