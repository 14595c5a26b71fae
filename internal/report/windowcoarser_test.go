package report

import (
	"bytes"
	"strings"
	"testing"

	"brazebooth/calc"
	"brazebooth/internal/deep"
	"brazebooth/internal/quantity"
)

// A map on a coarser grid says so in every form, in the same words; no other map mentions it.
func TestCoarserMapsSaySo(t *testing.T) {
	deep.Turn(t)
	schema := loadSchema(t, "window-schema.json")
	m := coarse(t, calc.Job{Metal: "galvanized", Gauge: 20})
	p := pictured(t, &m)
	for _, coarser := range []bool{false, true} {
		m.Coarser = coarser
		words := "drawn coarser: 12 by 8 points, since this job takes long to compute"
		for _, units := range []quantity.System{quantity.Metric, quantity.Inch, quantity.Both} {
			text := Text(Window(&m, nil), Options{Units: units})
			fits(t, "coarser", text)
			if strings.Contains(strings.Join(strings.Fields(text), " "), "The map is "+words+".") != coarser {
				t.Errorf("coarser %v:\n%s", coarser, text)
			}
		}
		if svg, err := p.SVG(); err != nil || bytes.Contains(svg, []byte(">"+words+"<")) != coarser {
			t.Errorf("coarser %v: the picture says it: %v, %v", coarser, !coarser, err)
		}
		b, err := JSON(Window(&m, nil), "test")
		if err != nil || bytes.Contains(b, []byte(`"coarser": true`)) != coarser {
			t.Errorf("coarser %v, %v: %.400s", coarser, err, b)
		}
		for _, fault := range faults(t, schema, b) {
			t.Error(fault)
		}
		pdf, _, err := WallPDF(&Wall{Name: "seam", Card: &m.Card, Map: p}, Letter, quantity.Metric)
		if err != nil {
			t.Fatal(err)
		}
		if coarser {
			readBack(t, pdf, &Wall{Name: "seam", Card: &m.Card}, words)
		}
	}
}

// A remedy that was not tried because that would take long is not called something that the model cannot do.
func TestLateRemediesSaySo(t *testing.T) {
	r := calc.Remedy{Change: "pulsed", Late: true}
	for _, text := range []string{(&Remedies{}).text(&r), (&Remedies{Rhythm: true}).text(&r)} {
		if !strings.Contains(text, "takes long") || strings.Contains(text, "equations") {
			t.Error(text)
		}
	}
}
