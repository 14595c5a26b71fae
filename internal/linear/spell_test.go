package linear

import (
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/choice"
	"brazebooth/internal/deep"
	"brazebooth/internal/quantity"
	"brazebooth/tables"
)

func TestSpell(t *testing.T) {
	for _, x := range []struct{ text, want string }{
		{"push 10–20°, do not drag", "push 10 to 20 degrees, do not drag"},
		{"150 to 200 °F (66 to 93 °C) through", "150 to 200 degrees Fahrenheit (66 to 93 degrees Celsius) through"},
		{"at 500 °C.", "at 500 degrees Celsius."},
		{"the tightest limit here, 0.1 mg/m3.", "the tightest limit here, 0.1 milligrams per cubic metre."},
		{"72 in 100 beads", "72 in 100 beads"},
		{"half an inch, 0.5 in (12.7 mm)", "half an inch, 0.5 inches (12.7 millimetres)"},
		{"leave up to .004 in between them", "leave up to .004 inch between them"},
		{".5 in nozzle, 1/2 in bore, .5 in 100", ".5 inch nozzle, 1/2 inch bore, .5 in 100"},
		{"±15 % of it – or more", "plus or minus 15 per cent of it, or more"},
		{"type 16ga or 0.9mm", "type 16ga or 0.9mm"},
		{"from -16 to 41 %", "from minus 16 to 41 per cent"},
		{"a hot-dip coat", "a hot-dip coat"},
		{"\x1b[31mred\u202e ☃", "?[31mred? ?"},
	} {
		if got := spell(x.text); got != x.want {
			t.Errorf("%q is spelled %q, not %q", x.text, got, x.want)
		}
	}
}

func TestFormula(t *testing.T) {
	for _, x := range []struct{ text, want string }{
		{"π/4·d²·vw", "pi over 4 times d squared times vw"},
		{"(a + b) = −c", "(a plus b) is minus c"},
	} {
		if got := formula(x.text); got != x.want {
			t.Errorf("%q is read as %q, not %q", x.text, got, x.want)
		}
	}
	b := calc.Basis{Formula: "{k}·{U}·{I}/{v}", Inputs: []calc.Input{{Symbol: "k", Value: 0.8, Unit: "1"},
		{Symbol: "U", Value: 15.2, Unit: "V"}, {Symbol: "I", Value: 96.5, Unit: "A"}, {Symbol: "v", Value: 5.87,
			Unit: "mm/s"}}}
	const want = "0.8 times 15.2 volts times 96.5 amps over 5.87 millimetres per second"
	if got := numbers(&b); got != want {
		t.Errorf("%q is not %q", got, want)
	}
}

// Every text that the program may print has words for each of its symbols.
func TestEveryTextIsSpelled(t *testing.T) {
	deep.Turn(t)
	var texts []string
	for _, w := range tables.Warnings {
		texts = append(texts, w.Text, w.Source)
	}
	for _, w := range tables.Terms {
		texts = append(texts, w.Word, w.Says, unitList(w.Unit), w.Source)
	}
	for _, h := range tables.Hazards {
		texts = append(texts, h.Name, h.Why, h.Instead)
	}
	for _, s := range tables.Sights {
		texts = append(texts, s.Name)
	}
	for _, l := range tables.CautionLines {
		texts = append(texts, l.Text, l.Source)
	}
	tk := newTalk(t.Context(), Options{}, &strings.Builder{})
	tk.card, _ = calc.Solve(calc.Job{})
	for _, c := range choice.All() {
		texts = append(texts, c.Help())
		for _, r := range tk.rows(c) {
			texts = append(texts, r.ID, r.Said())
		}
	}
	for i := range tk.card.Figures {
		b := &tk.card.Figures[i].Basis
		texts = append(texts, formula(b.Plain()), numbers(b), b.Source)
	}
	for _, text := range texts {
		got := spell(text)
		if strings.Count(got, "?") > strings.Count(text, "?") || strings.ContainsAny(got, "~|^") || odd(got) >= 0 {
			t.Errorf("no words for a sign in %q: %q", text, got)
		}
	}
}

// Values that are read out can be typed back.
func TestSpokenValuesCanBeTyped(t *testing.T) {
	for _, f := range choice.OnCard() {
		if f.Unit == "" {
			continue
		}
		for _, sys := range [...]quantity.System{quantity.Metric, quantity.Inch} {
			v := map[string]float64{"preheat": 95, "flow": 12, "amps": 90, "volts": 15, "feed": 6.35,
				"wire": 0.889, "run-in": 0.06}[f.Name]
			if v == 0 {
				v = 4
			}
			number, sign := quantity.Convert(v, f.Unit, sys)
			said := inUnit(quantity.Show(number, "1", sys), sign)
			var j calc.Job
			if err := f.Set(&j, said); err != nil {
				t.Errorf("%s: %q cannot be typed: %v", f.Name, said, err)
			} else if got := f.At(&j).V; got < v*0.99 || got > v*1.01 {
				t.Errorf("%s: %q is %g, not %g", f.Name, said, got, v)
			}
		}
	}
}
